// A whole sketch read from nothing into pin uses, beside the bare parse of the same text: how both grow with the lines.
import { performance } from 'node:perf_hooks';
import { setImmediate as nextTurn } from 'node:timers/promises';
import { millis, printTable, quantile } from './figures.mjs';
import { generateBuild } from './generate.mjs';
import { createBareParser } from './keystrokes.mjs';

const FILE = '/bench/bench.ino';

/** Runs `work` often enough to trust the median, fewer times where one run is long. */
async function medianOf(work, short) {
  const times = [];
  const until = performance.now() + (short ? 400 : 1500);
  for (let run = 0; run < 4 || (performance.now() < until && run < 200); run += 1) {
    const before = performance.now();
    work();
    times.push(performance.now() - before);
    // Native trees are freed between two turns of the event loop.
    await nextTurn();
  }
  // The first runs compile what is hot.
  return quantile(times.slice(2), 0.5);
}

/** Prints one row a size. @param program what test/bench/program.ts exports, with the library's texts */
export async function benchFullRun(program, { short }) {
  const { createSketchParser, readSketch, openLibrary, library } = program;
  const parser = await createSketchParser();
  const bare = await createBareParser(program, parser.engine);
  const open = openLibrary(library, () => undefined);
  const board = open.hardware.board('nano-v3', '')?.value;
  if (board === undefined) {
    throw new Error('the library has no nano-v3');
  }
  const rows = [];
  for (const lines of short ? [100, 1000, 10_000] : [100, 1000, 10_000, 50_000]) {
    const { sketch } = generateBuild(lines, 10);
    let uses = 0;
    const full = await medianOf(() => {
      const parsed = parser.parse(FILE, sketch);
      uses = readSketch([parsed], board.platform, open.calls).uses.length;
      parsed.dispose();
    }, short);
    const parse = await medianOf(() => bare.parse(sketch).delete?.(), short);
    rows.push([
      String(sketch.split('\n').length),
      String(uses),
      millis(parse),
      millis(full),
      (full / parse).toFixed(2),
    ]);
  }
  console.log('\nfrom nothing to pin uses, milliseconds, median');
  printTable(['lines', 'uses', 'bare parse', 'full run', 'ratio'], rows);
}
