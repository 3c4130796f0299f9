/** Generated files agree with what they are made from. A desk writes them and fails once; CI refuses. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { makeSchemaSources } from '../../server/scripts/schema-sources.mjs';
import { rules } from '../../server/src/rules/generated/registry';
import { root } from '../fixture/bench';
import { makePages, renewReadme } from '../fixture/pages';

const command = 'npm run generate';

function compare(texts: ReadonlyMap<string, string>): void {
  const stale: string[] = [];
  for (const [path, text] of texts) {
    const file = join(root, path);
    let before: string | undefined;
    try {
      before = readFileSync(file, 'utf8');
    } catch {
      before = undefined;
    }
    if (before === text) continue;
    stale.push(path);
    if (!process.env.CI) writeFileSync(file, text);
  }
  expect(stale, `out of date; run ${command}`).toEqual([]);
}

it('keeps pages, README table and rule ids in step with the rules and the boards', {
  timeout: 60_000,
}, async () => {
  const texts = await makePages();
  texts.set('README.md', renewReadme(readFileSync(join(root, 'README.md'), 'utf8')));
  compare(texts);
});

it('keeps types and validators in step with the schemas', { timeout: 60_000 }, async () => {
  compare(await makeSchemaSources(root));
});

it('has a page for every rule and no page without one', () => {
  const pages = readdirSync(join(root, 'server/docs/rules')).filter((name) => name !== 'README.md');
  expect(pages.sort()).toEqual(rules.map((rule) => `${rule.id}.md`).sort());
});

it('has a page and a drawing for every board and none without one', () => {
  const ids = readdirSync(join(root, 'hardware-schemas/boards')).map((name) =>
    name.slice(0, -'.json'.length),
  );
  const pages = readdirSync(join(root, 'server/docs/boards')).filter((name) => name !== 'README.md');
  expect(ids.length).toBeGreaterThan(8);
  expect(pages.sort()).toEqual(ids.flatMap((id) => [`${id}.md`, `${id}.svg`]).sort());
});
