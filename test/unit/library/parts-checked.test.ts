/**
 * Every kind of part in the checker: a right build is silent, and a wrong one is told by the rule that is there for it.
 */
import { beforeAll, expect, it } from 'vitest';
import type { Finding } from '../../../server/src/base/finding';
import { openTestBench, type TestBench } from '../../fixture/bench';
import { filesOf } from './build-notation';
import { libraryFiles } from './library-files';
import { type PartBuild, rightBuilds } from './part-builds';

import { moreRightBuilds } from './part-builds-more';
import { mistakes } from './part-mistakes';

let bench: TestBench;
beforeAll(async () => {
  bench = await openTestBench();
});

const right = { ...rightBuilds, ...moreRightBuilds };

function findings(build: PartBuild): readonly Finding[] {
  return bench.analyse(filesOf(build)).findings;
}

const told = (found: readonly Finding[]): string[] => found.map(({ rule, message }) => `${rule}: ${message}`);

it('has a right build of every kind', () => {
  const kinds = new Set(Object.keys(right).map((name) => name.split(' ')[0]));
  const missing = libraryFiles('parts').filter(({ name }) => !kinds.has(name));
  expect(missing.map(({ name }) => name)).toEqual([]);
});

it.each(Object.entries(right))('is silent on a right build of %s', (name, build) => {
  expect(build.parts.x).toMatchObject({ kind: name.split(' ')[0] });
  expect(told(findings(build))).toEqual([]);
});

it('knows mistakes with at least twenty kinds', () => {
  const kinds = mistakes.map(({ parts }) => (parts.x as { readonly kind: string }).kind);
  expect(new Set(kinds).size).toBeGreaterThanOrEqual(20);
});

it.each(mistakes.map((one) => [one.about, one] as const))('finds %s', (_, { found, ...build }) => {
  const all = findings(build);
  expect(new Set(all.map(({ key }) => key)).size).toBe(all.length);
  expect(told(all).sort()).toEqual([...found].sort().map((start) => expect.stringContaining(start)));
});

it('warns in the hover of a part that can hurt', () => {
  const files = filesOf(right.relay ?? { parts: {}, wires: [] });
  const text = files['hardware.jsonc'] ?? '';
  const hover = bench.analyse(files).hover('hardware.jsonc', text.indexOf('"x"') + 1)?.markdown ?? '';
  expect(hover).toContain('**Caution.** Mains on the contacts kills');
  expect(hover).toContain('a leg of the coil');
});
