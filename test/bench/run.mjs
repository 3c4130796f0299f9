// Prints the figures that the budgets speak of. See README.md beside this file.
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { cpus } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { benchCircuit } from './circuit.mjs';
import { benchColdStart } from './cold-start.mjs';
import { benchFullRun } from './full-run.mjs';
import { benchKeystrokes, benchMemory } from './keystrokes.mjs';

const self = fileURLToPath(import.meta.url);
const root = resolve(self, '../../..');
const bundle = join(root, '.test-output/bench/program.cjs');
const short = process.argv.includes('--short');

function loadProgram() {
  const program = createRequire(self)(bundle);
  return { ...program, library: program.loadLibrary(join(root, 'hardware-schemas')) };
}

if (process.argv.includes('--memory')) {
  await benchMemory(loadProgram(), 1000);
} else {
  mkdirSync(join(root, '.test-output/bench'), { recursive: true });
  await build({
    absWorkingDir: root,
    entryPoints: ['test/bench/program.ts'],
    outfile: bundle,
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'cjs',
    // jsonc-parser's CommonJS entry loads its parts in a way that no bundler follows.
    mainFields: ['module', 'main'],
    external: ['tree-sitter', 'tree-sitter-cpp', 'web-tree-sitter'],
    define: { 'import.meta.url': 'bundleUrl' },
    banner: { js: "const bundleUrl = require('node:url').pathToFileURL(__filename).href;" },
    logLevel: 'warning',
  });
  console.log(`Node.js ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown processor'}`);
  await benchKeystrokes(loadProgram(), { short });
  await benchFullRun(loadProgram(), { short });
  // Memory is measured in a process that has done nothing else.
  const { status } = spawnSync(process.execPath, [self, '--memory'], { stdio: 'inherit' });
  await benchCircuit(root, { short });
  await benchColdStart(root, { short });
  process.exitCode = status ?? 1;
}
