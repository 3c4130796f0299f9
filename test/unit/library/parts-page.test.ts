/** The page of all kinds follows from their files. A desk writes it and fails once; CI refuses. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { makePartPage } from '../../../server/scripts/part-page.mjs';
import { root } from '../../fixture/bench';
import { libraryFiles } from './library-files';

it('keeps the page in step with the part files', async () => {
  const stale: string[] = [];
  for (const [path, text] of await makePartPage(root)) {
    const file = join(root, path);
    if (existsSync(file) && readFileSync(file, 'utf8') === text) continue;
    stale.push(path);
    if (!process.env.CI) writeFileSync(file, text);
  }
  expect(stale, 'out of date; run npm run generate').toEqual([]);
});

it('has a heading for every kind, once', async () => {
  const text = [...(await makePartPage(root)).values()].join('');
  const headings = [...text.matchAll(/^### (\S+)$/gm)].map(([, kind]) => kind ?? '');
  expect(headings.sort()).toEqual(
    libraryFiles('parts')
      .map(({ name }) => name)
      .sort(),
  );
});
