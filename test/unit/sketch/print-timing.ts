/**
 * Prints how long a keystroke takes on sketches of several lengths. Not a test: figures depend on the machine.
 * Run: npx esbuild test/unit/sketch/print-timing.ts --bundle --platform=node --format=cjs --external:tree-sitter*
 * --external:web-tree-sitter --outfile=server/dist/print-timing.cjs && node --expose-gc server/dist/print-timing.cjs
 */
import { createSketchParser, readSketch } from '../../../server/src/sketch';
import { loadEngine } from '../../../server/src/sketch/syntax/engine';
import { longSketch } from './long-sketch';
import { libraries, platform } from './platform';

function percentile(times: readonly number[], part: number): string {
  const sorted = [...times].sort((a, b) => a - b);
  return (sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? 0).toFixed(2);
}

/** Behind a semicolon somewhere in the text, always another one. */
function placeOf(text: string, key: number): number {
  return text.indexOf(';', Math.floor(((key * 7919) % 997) * (text.length / 1000))) + 1;
}

async function main(): Promise<void> {
  const parser = await createSketchParser();
  const engine = await loadEngine('native', undefined, () => {});
  for (const lines of (process.argv[2] ?? '1000,5000,20000,50000').split(',').map(Number)) {
    let text = longSketch(lines);
    const keys = lines > 5000 ? 60 : 500;
    const warm = 20;
    const bare: number[] = [];
    const parse: number[] = [];
    const facts: number[] = [];
    const whole: number[] = [];
    const started = performance.now();
    let parsed = parser.parse('long.ino', text);
    const parsedAt = performance.now();
    let result = readSketch([parsed], platform, libraries);
    const readAt = performance.now();
    let tree = engine.parse(text);
    for (let key = 0; key < keys; key += 1) {
      const at = placeOf(text, key);
      const insert = ' ';
      const next = text.slice(0, at) + insert + text.slice(at);
      const begin = performance.now();
      parsed = parser.reparse(parsed, next, [{ start: at, end: at, text: insert }]);
      const middle = performance.now();
      result = readSketch([parsed], platform, libraries);
      const end = performance.now();
      const before = text.slice(0, at).split('\n');
      const point = { row: before.length - 1, column: before.at(-1)?.length ?? 0 };
      const to = { row: point.row, column: point.column + insert.length };
      const bareStart = performance.now();
      tree?.edit({
        startIndex: at,
        oldEndIndex: at,
        newEndIndex: at + insert.length,
        startPosition: point,
        oldEndPosition: point,
        newEndPosition: to,
      });
      tree = engine.parse(next, tree);
      const bareEnd = performance.now();
      text = next;
      // Native trees are freed between two turns of the event loop, as they are between two keystrokes.
      await new Promise((resolve) => setImmediate(resolve));
      if (key < warm) continue;
      bare.push(bareEnd - bareStart);
      parse.push(middle - begin);
      facts.push(end - middle);
      whole.push(end - begin);
    }
    globalThis.gc?.();
    const memory = (process.memoryUsage().rss / 1e6).toFixed(0);
    console.log(
      `${text.split('\n').length} lines, ${result.uses.length} uses: first parse ${(parsedAt - started).toFixed(1)} ms, ` +
        `first facts ${(readAt - parsedAt).toFixed(1)} ms; a keystroke: bare parse ${percentile(bare, 0.5)}, ` +
        `reparse and form ${percentile(parse, 0.5)}, facts ${percentile(facts, 0.5)}, ` +
        `together ${percentile(whole, 0.5)} (p99 ${percentile(whole, 0.99)}) ms; ${memory} MB; ` +
        `${result.problems.length} problems`,
    );
    parsed.dispose();
  }
}

void main();
