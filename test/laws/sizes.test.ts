/** Files stay small: a rule with its examples 200 lines, any other file 300, 450 with a reason given here. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { expect, it } from 'vitest';
import { root } from '../fixture/bench';

/** Longer files, each with its reason. An entry that is no longer needed fails. */
const exempt: Readonly<Record<string, string>> = {};

function sizes(folder: string): [string, number][] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.(ts|mjs)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((file) => !/[\\/](generated|dist|node_modules)[\\/]/.test(file))
    .map((file) => [
      relative(root, file).replaceAll('\\', '/'),
      readFileSync(file, 'utf8').trimEnd().split('\n').length,
    ]);
}

it('keeps files small', () => {
  const all = ['client', 'server/src', 'server/scripts', 'test'].flatMap(sizes);
  expect(all.length).toBeGreaterThan(50);
  const limit = (file: string) => (exempt[file] ? 450 : /^server\/src\/rules\/[^/]+$/.test(file) ? 200 : 300);
  expect(all.filter(([file, lines]) => lines > limit(file))).toEqual([]);
  const lines = new Map(all);
  expect(Object.keys(exempt).filter((file) => (lines.get(file) ?? 0) <= 300)).toEqual([]);
});

it('has a page of its own in every layer', () => {
  const layers = readdirSync(join(root, 'server/src'));
  for (const layer of layers) {
    const page = readFileSync(join(root, 'server/src', layer, 'README.md'), 'utf8');
    expect(page.length, layer).toBeGreaterThan(100);
  }
});
