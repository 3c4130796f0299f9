// From a keystroke to findings, beside the bare incremental parse of the same strokes; and what memory does meanwhile.
import { performance } from 'node:perf_hooks';
import { setImmediate as nextTurn } from 'node:timers/promises';
import { millis, printTable, quantile } from './figures.mjs';
import { generateBuild } from './generate.mjs';
import { strokes } from './strokes.mjs';

const FILE = '/bench/bench.ino';
const MANIFEST = '/bench/hardware.jsonc';
/** Strokes at the beginning that are not counted: the virtual machine compiles what is hot. */
const WARM_UP = 60;

/** The bare parser, the same one that the product runs on: reads an edited tree again. */
export async function createBareParser(program, engine) {
  const bare = await program.loadEngine(engine, undefined, () => {});
  return {
    parse: (text, tree) => bare.parse(text, tree),
    edit(tree, before, { start, end, text }) {
      const place = (within, offset) => {
        const line = within.lastIndexOf('\n', offset - 1);
        let row = 0;
        for (let at = within.indexOf('\n'); at !== -1 && at < offset; at = within.indexOf('\n', at + 1)) {
          row += 1;
        }
        return { row, column: offset - line - 1 };
      };
      const after = before.slice(0, start) + text + before.slice(end);
      tree.edit({
        startIndex: start,
        oldEndIndex: end,
        newEndIndex: start + text.length,
        startPosition: place(before, start),
        oldEndPosition: place(before, end),
        newEndPosition: place(after, start + text.length),
      });
    },
  };
}

async function measureBare(program, build, count, engine) {
  const parser = await createBareParser(program, engine);
  const times = [];
  let text = build.sketch;
  let tree = parser.parse(text);
  for (const stroke of strokes(build.sketch, build.typeAt, count)) {
    parser.edit(tree, text, stroke.change);
    text = stroke.text;
    const old = tree;
    const before = performance.now();
    tree = parser.parse(text, old);
    times.push(performance.now() - before);
    old.delete?.();
    await nextTurn();
  }
  return times.slice(WARM_UP);
}

async function measureWhole(program, parser, build, count) {
  const analyser = program.createAnalyser(program.library, () => undefined);
  const manifest = { file: MANIFEST, text: build.manifest };
  let parsed = parser.parse(FILE, build.sketch);
  let findings = analyser.analyse({ manifest, sources: [parsed] }).findings.length;
  const times = [];
  const reading = [];
  for (const stroke of strokes(build.sketch, build.typeAt, count)) {
    const before = performance.now();
    parsed = parser.reparse(parsed, stroke.text, [stroke.change]);
    reading.push(performance.now() - before);
    findings = analyser.analyse({ manifest, sources: [parsed] }).findings.length;
    times.push(performance.now() - before);
    // Strokes come one by one, and a turn of the event loop between them: native trees are let go only there.
    await nextTurn();
  }
  parsed.dispose();
  return { times: times.slice(WARM_UP), reading: reading.slice(WARM_UP), findings };
}

/** Prints the table of keystrokes. */
export async function benchKeystrokes(program, { short }) {
  const parser = await program.createSketchParser({ log: () => {} });
  console.log(`\nkeystroke to findings, milliseconds (parser engine: ${parser.engine})`);
  const rows = [];
  for (const lines of short ? [100, 1000] : [100, 1000, 10_000]) {
    const count = WARM_UP + (lines > 5000 ? 120 : short ? 120 : 600);
    for (const wires of [10, 60]) {
      const build = generateBuild(lines, wires);
      const bare = await measureBare(program, build, count, parser.engine);
      const { times, reading, findings } = await measureWhole(program, parser, build, count);
      const median = quantile(times, 0.5);
      rows.push([
        String(build.lines),
        String(wires),
        millis(quantile(bare, 0.5)),
        millis(quantile(bare, 0.99)),
        millis(quantile(reading, 0.5)),
        millis(median),
        millis(quantile(times, 0.99)),
        (median / quantile(bare, 0.5)).toFixed(2),
        String(findings),
        String(times.length),
      ]);
    }
  }
  const heads = [
    'lines',
    'wires',
    'bare median',
    'bare p99',
    'median',
    'p99',
    'ratio',
    'findings',
    'strokes',
  ];
  printTable(heads, rows);
}

/** Prints the resident memory of this process after `count` strokes, as it is without any forced collection. */
export async function benchMemory(program, count) {
  const parser = await program.createSketchParser({ log: () => {} });
  const build = generateBuild(1000, 60);
  const megabytes = (bytes) => `${(bytes / 1024 / 1024).toFixed(0)} MB`;
  const atStart = megabytes(process.memoryUsage.rss());
  await measureWhole(program, parser, build, count);
  const after = megabytes(process.memoryUsage.rss());
  // maxRSS counts kilobytes.
  const most = megabytes(process.resourceUsage().maxRSS * 1024);
  console.log(
    `\nresident memory, ${build.lines} lines, 60 wires: ${atStart} with parser and library loaded, ` +
      `${after} after ${count} strokes, ${most} at most`,
  );
}
