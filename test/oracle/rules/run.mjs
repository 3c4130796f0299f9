// Prints what the rule book finds of the faults put into clean builds. See README.md beside this file.
//   --json              everything as one JSON object
//   --only TEXT         seeds whose rule or build holds TEXT
//   --faults            every miss, extra finding and broken fix
//   --remarks           information and hints on clean builds
import { mkdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { build } from 'esbuild';

const self = fileURLToPath(import.meta.url);
const root = resolve(self, '../../../..');
const bundle = join(root, '.test-output/rules/program.cjs');
const { values: options } = parseArgs({
  options: {
    json: { type: 'boolean', default: false },
    only: { type: 'string', default: '' },
    faults: { type: 'boolean', default: false },
    remarks: { type: 'boolean', default: false },
  },
});

mkdirSync(join(root, '.test-output/rules'), { recursive: true });
await build({
  absWorkingDir: root,
  entryPoints: ['test/oracle/rules/program.ts'],
  outfile: bundle,
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'cjs',
  // jsonc-parser's CommonJS entry loads its parts in a way that no bundler follows.
  mainFields: ['module', 'main'],
  external: ['tree-sitter', 'tree-sitter-cpp', 'web-tree-sitter'],
  define: { 'import.meta.url': 'bundleUrl' },
  // The bundle asks for files beside the sources it was made of: it stands for one that lies where they do.
  banner: {
    js: `const bundleUrl = ${JSON.stringify(new URL('../../fixture/bundle.ts', import.meta.url).href)};`,
  },
  logLevel: 'warning',
});
const program = createRequire(self)(bundle);
process.exitCode = await program.runMeasurement(root, options, (text) => process.stdout.write(text));
