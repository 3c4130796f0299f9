/** What every rule owes its readers. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rules } from '../../server/src/rules/generated/registry';
import { root } from '../fixture/bench';
import { readFixture } from '../fixture/read-fixture';

/** Rules that cannot be shown by an example, each with its reason. An entry that is no longer needed fails. */
const withoutExample: Readonly<Record<string, string>> = {};

describe.each(rules.map((rule) => [rule.id, rule] as const))('%s', (id, rule) => {
  it('is named like its file and says what is wrong', () => {
    expect(readdirSync(join(root, 'server/src/rules'))).toContain(`${id}.ts`);
    expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(rule.title).toMatch(/^[A-Za-z].*\.$/);
    expect(rule.why).toMatch(/^[A-Z].*[.]$/s);
    expect(rule.source.length).toBeGreaterThan(10);
  });

  it('shows a build where it speaks and one where it is silent', () => {
    const builds = rule.examples.map((example) => readFixture(example.build));
    const speaks = builds.some((build) => build.marks.some((mark) => mark.rule === id));
    const silent = builds.some((build) => build.marks.every((mark) => mark.rule !== id));
    expect({ speaks, silent }).toEqual(
      withoutExample[id] ? { speaks: false, silent: expect.any(Boolean) } : { speaks: true, silent: true },
    );
    const abouts = rule.examples.map((example) => example.about);
    expect(new Set(abouts).size).toBe(abouts.length);
    const texts = rule.examples.map((example) => example.build);
    expect(new Set(texts).size).toBe(texts.length);
  });
});

it('exempts no rule that is not there', () => {
  const ids = new Set(rules.map((rule) => rule.id));
  expect(Object.keys(withoutExample).filter((id) => !ids.has(id))).toEqual([]);
});
