// Writes the pages of the rules, their index, the table in README.md and the list of rule ids. The texts come from
// test/fixture/pages.ts; a law test makes the same texts in memory and compares.
import { readFile, rm } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { makePartPage } from './part-page.mjs';
import { writeChanged } from './prepare-sources.mjs';

const root = resolve(fileURLToPath(import.meta.url), '../../..');
const bundle = join(root, 'server/dist/pages.mjs');

await build({
  absWorkingDir: root,
  entryPoints: ['test/fixture/pages.ts'],
  outfile: bundle,
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'esm',
  external: ['tree-sitter', 'tree-sitter-cpp', 'web-tree-sitter'],
  // The bundle lies two folders below the root, as the test bench's own file does.
  define: { 'import.meta.url': JSON.stringify(pathToFileURL(join(root, 'test/fixture/bench.ts')).href) },
  banner: {
    js: "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(process.cwd() + '/x.js');",
  },
  mainFields: ['module', 'main'],
  logLevel: 'warning',
});
const { makePages, renewReadme } = await import(pathToFileURL(bundle).href);
const texts = await makePages();
const readme = join(root, 'README.md');
for (const [path, text] of await makePartPage(root)) texts.set(path, text);
texts.set('README.md', renewReadme(await readFile(readme, 'utf8')));
for (const [path, text] of texts) {
  if (await writeChanged(join(root, path), text)) console.log(`updated ${path}`);
}
await rm(bundle);
