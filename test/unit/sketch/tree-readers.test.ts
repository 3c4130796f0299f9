/** The two ways to read a tree give the same, of sound texts, of broken ones, and of trees that were edited. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CursorReader } from '../../../server/src/sketch/syntax/cursor-reader';
import { loadEngine, type SyntaxTree } from '../../../server/src/sketch/syntax/engine';
import { MemoryReader } from '../../../server/src/sketch/syntax/memory-reader';
import { readsAlike } from '../../../server/src/sketch/syntax/reader-trial';
import type { TreeReader } from '../../../server/src/sketch/syntax/tree-reader';
import { longSketch } from './long-sketch';
import { samples } from './samples';

const whole = { isWhole: true, toSource: (offset: number) => offset };

function listed(reader: TreeReader, tree: SyntaxTree): unknown[] {
  const found: unknown[] = [];
  reader.visit(tree, (top) => {
    const { type, start, end, faulty } = top;
    found.push({ type, start, end, faulty, ...top.plain(whole, start) });
  });
  return found;
}

const engine = await loadEngine('wasm', undefined, () => {});
const cursor = new CursorReader();

function parse(text: string, previous?: SyntaxTree): SyntaxTree {
  const tree = engine.parse(text, previous);
  if (tree === undefined) throw new Error('the parser gave up');
  return tree;
}

const folder = join(import.meta.dirname, '../../oracle/sketches');
const ours = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.(ino|cpp|h)$/.test(name))
  .map((name) => readFileSync(join(folder, name), 'utf8'));

describe('a tree in memory', () => {
  it('is read where it lies: the trial of the layout was passed', () => {
    expect(engine.reader).toBeInstanceOf(MemoryReader);
  });

  it(`reads as through the cursor: ${ours.length} sketches and the samples`, () => {
    expect(ours.length).toBeGreaterThan(150);
    for (const text of [...samples, ...ours, longSketch(2000), '', ' ', '// nothing', 'ä', '\uFEFFint x;']) {
      const tree = parse(text);
      expect(listed(engine.reader, tree)).toEqual(listed(cursor, tree));
      tree.delete?.();
    }
  });

  it('reads so with a stretch taken out, before and after the tree was edited', () => {
    fc.assert(
      fc.property(fc.nat(), fc.nat(), fc.integer({ min: 1, max: 60 }), (which, place, length) => {
        const text = ours[which % ours.length] ?? '';
        const start = place % (text.length + 1);
        const end = Math.min(text.length, start + length);
        const after = text.slice(0, start) + text.slice(end);
        const old = parse(text);
        const pointAt = (offset: number) => {
          const lines = text.slice(0, offset).split('\n');
          return { row: lines.length - 1, column: lines[lines.length - 1]?.length ?? 0 };
        };
        old.edit({
          startIndex: start,
          oldEndIndex: end,
          newEndIndex: start,
          startPosition: pointAt(start),
          oldEndPosition: pointAt(end),
          newEndPosition: pointAt(start),
        });
        for (const tree of [parse(after, old), parse(after)]) {
          expect(listed(engine.reader, tree)).toEqual(listed(cursor, tree));
          tree.delete?.();
        }
        old.delete?.();
      }),
      { numRuns: 300 },
    );
  });

  it('fails the trial where something is read otherwise', () => {
    const shifted: TreeReader = {
      visit: (tree, visit) =>
        cursor.visit(tree, (top) => visit({ ...copyOf(top), end: top.end + (top.type === 'ERROR' ? 1 : 0) })),
    };
    expect(readsAlike(cursor, cursor, parse)).toBe(true);
    expect(readsAlike(cursor, shifted, parse)).toBe(false);
  });
});

function copyOf(top: Parameters<Parameters<TreeReader['visit']>[1]>[0]) {
  const { type, start, end, faulty } = top;
  return { type, start, end, faulty, plain: top.plain.bind(top) };
}
