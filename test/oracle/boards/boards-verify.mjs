// Prints what every board of the library has against it: `npm run boards:verify`.
//   --json         everything as JSON
//   --only TEXT    boards whose id holds TEXT
//   --figures      also every figure that nobody looked up
// Ends with 1 where a board contradicts a header of its core or cannot be read without a problem.
import { mkdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { build } from 'esbuild';

const self = fileURLToPath(import.meta.url);
const root = resolve(self, '../../../..');
const bundle = join(root, '.test-output/boards/verify.cjs');
const { values: options } = parseArgs({
  options: {
    json: { type: 'boolean', default: false },
    only: { type: 'string', default: '' },
    figures: { type: 'boolean', default: false },
  },
});

mkdirSync(join(root, '.test-output/boards'), { recursive: true });
await build({
  absWorkingDir: root,
  entryPoints: ['test/oracle/boards/verify.ts'],
  outfile: bundle,
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'cjs',
  // jsonc-parser's CommonJS entry loads its parts in a way that no bundler follows.
  mainFields: ['module', 'main'],
  define: { 'import.meta.url': 'bundleUrl' },
  // The bundle asks for files beside the sources it was made of: it stands for one that lies where they do.
  banner: {
    js: `const bundleUrl = ${JSON.stringify(new URL('../../unit/hardware/bundle.ts', import.meta.url).href)};`,
  },
  logLevel: 'warning',
});
const program = createRequire(self)(bundle);
process.exitCode = program.runVerify(root, options, (text) => process.stdout.write(text));
