// How fast `wiretrue check` goes through a folder of sketches, on one core and on two, beside a compiler that only looks
// at the syntax of the same files. Run alone: node test/bench/check-folders.mjs [folders]
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import { printTable } from './figures.mjs';
import { makeFolders } from './make-folders.mjs';

const self = fileURLToPath(import.meta.url);
const root = resolve(self, '../../..');
const cli = join(root, 'server/dist/cli.js');
const core = '/usr/share/arduino/hardware/arduino/avr';
/** Files that the compiler is given; its time is the same for each, so more would only take longer. */
const COMPILED = 60;

/** Seconds of one run bound to some cores, and the most memory it held, in megabytes. */
function timeCheck(folder, jobs, format = 'json') {
  const cores = Array.from({ length: jobs }, (_, at) => at).join(',');
  const command = [process.execPath, cli, 'check', '--jobs', String(jobs), '--format', format, folder];
  const before = performance.now();
  const { status, stdout, stderr } = spawnSync('taskset', ['-c', cores, '/usr/bin/env', ...command], {
    encoding: 'utf8',
    maxBuffer: 1e9,
  });
  const seconds = (performance.now() - before) / 1000;
  if (status !== 1) {
    throw new Error(`check ended with ${status}: ${stderr}`);
  }
  return { seconds, stdout };
}

/** Seconds that the compiler takes for some files, `jobs` of them at a time. */
async function timeCompiler(files, jobs) {
  const waiting = [...files];
  const options = [
    '-x',
    'c++',
    '-std=gnu++11',
    '-fsyntax-only',
    '-mmcu=atmega328p',
    '-DF_CPU=16000000L',
    '-DARDUINO=10819',
  ];
  const includes = [`-I${core}/cores/arduino`, `-I${core}/variants/standard`, '-include', 'Arduino.h'];
  const before = performance.now();
  const one = async () => {
    for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
      const process = spawn('avr-g++', [...options, ...includes, file], {
        stdio: ['ignore', 'ignore', 'pipe'],
      });
      let said = '';
      process.stderr.on('data', (text) => {
        said += text;
      });
      const status = await new Promise((done) => process.on('close', done));
      if (status !== 0) {
        throw new Error(`avr-g++ refuses ${file}: ${said.slice(0, 500)}`);
      }
    }
  };
  await Promise.all(Array.from({ length: jobs }, one));
  return (performance.now() - before) / 1000;
}

/** Prints a row for every number of cores. */
export async function benchCheckFolders(count) {
  const folder = mkdtempSync(join(tmpdir(), 'check-folders-'));
  try {
    const { files, lines } = makeFolders(folder, count);
    const cores = [1, 2].filter((jobs) => jobs <= availableParallelism());
    // On a machine that others work on, the figures are theirs as well.
    console.log(`load before: ${loadavg()[0]?.toFixed(1)}`);
    // The first run warms the disk's cache.
    timeCheck(folder, 1, 'annotations');
    const rows = [];
    let alone;
    let report;
    const compiles =
      existsSync(join(core, 'cores/arduino/Arduino.h')) && spawnSync('avr-g++', ['--version']).status === 0;
    for (const jobs of cores) {
      const { seconds, stdout } = timeCheck(folder, jobs);
      alone ??= seconds;
      report ??= stdout;
      if (stdout !== report) {
        throw new Error(`the report of ${jobs} threads differs from that of one`);
      }
      const compiler = compiles
        ? ((await timeCompiler(files.slice(0, COMPILED), jobs)) / Math.min(COMPILED, files.length)) *
          files.length
        : Number.NaN;
      rows.push([
        String(jobs),
        seconds.toFixed(2),
        (count / seconds).toFixed(0),
        (lines / seconds / 1000).toFixed(1),
        (alone / seconds).toFixed(2),
        compiler.toFixed(1),
        (compiler / seconds).toFixed(1),
      ]);
    }
    const { summary } = JSON.parse(report);
    console.log(
      `\ncheck of ${count} folders, ${lines} lines; ${summary.errors} errors, ${summary.warnings} warnings; avr-g++ -fsyntax-only on ${Math.min(COMPILED, files.length)} of the files, times ${(files.length / Math.min(COMPILED, files.length)).toFixed(1)}`,
    );
    printTable(['cores', 'seconds', 'folders/s', 'klines/s', 'speed-up', 'compiler s', 'times faster'], rows);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (process.argv[1] === self) {
  await benchCheckFolders(Number(process.argv[2] ?? 1000));
}
