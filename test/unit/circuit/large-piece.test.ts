/** Large pieces: the sparse sum against the full one, and reaches by slopes against corners. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Element } from '../../../server/src/base/circuit';
import { within } from '../../../server/src/base/range';
import { checkNetwork } from '../../../server/src/circuit/check-network';
import { coreElements } from '../../../server/src/circuit/core';
import { exploreCorners } from '../../../server/src/circuit/corners';
import { spreadLarge } from '../../../server/src/circuit/large-piece';
import { compilePiece } from '../../../server/src/circuit/linear-part';
import { addSparse, factoriseSparse, makeSparseRows } from '../../../server/src/circuit/sparse-lu';
import { randomNetwork, richNetwork } from '../../oracle/circuit/random-networks';
import { diode, resistor, solve, source } from './elements';

describe('sparse equations', () => {
  test('solve what they were made of', () => {
    const entry = fc.tuple(fc.nat(19), fc.nat(19), fc.double({ min: -10, max: 10, noNaN: true }));
    fc.assert(
      fc.property(
        fc.array(entry, { maxLength: 60 }),
        fc.array(fc.nat(100), { minLength: 20, maxLength: 20 }),
        (entries, wanted) => {
          const rows = makeSparseRows(20);
          // A dominant diagonal keeps the matrix regular, so that the answer is known.
          for (let at = 0; at < 20; at += 1) addSparse(rows, at, at, 700);
          for (const [row, column, value] of entries) addSparse(rows, row, column, value);
          const right = new Float64Array(20);
          rows.forEach((entriesOfRow, row) => {
            for (const [column, value] of entriesOfRow) {
              right[row] = (right[row] ?? 0) + value * (wanted[column] ?? 0);
            }
          });
          const solution = factoriseSparse(rows)?.solve(right);
          wanted.forEach((value, at) => {
            expect(Math.abs((solution?.[at] ?? Number.NaN) - value)).toBeLessThan(1e-9);
          });
        },
      ),
    );
  });

  test('say so where they have no answer', () => {
    const rows = makeSparseRows(3);
    addSparse(rows, 0, 0, 1);
    addSparse(rows, 1, 0, 1);
    addSparse(rows, 2, 2, 1);
    expect(factoriseSparse(rows)).toBeUndefined();
  });
});

describe('large pieces', () => {
  test('the same figures as the full sum, on 200 networks of all elements', () => {
    let compared = 0;
    let other = 0;
    for (let seed = 1; seed <= 200; seed += 1) {
      const network = richNetwork(seed);
      const elements = network.elements.flatMap(coreElements);
      for (const piece of checkNetwork({ ground: '0', elements }).pieces) {
        const part = compilePiece(piece);
        const full = exploreCorners(part);
        const sparse = spreadLarge(part);
        if (full === undefined || sparse === undefined) {
          throw new Error(`seed ${seed} has no solution`);
        }
        const differs = full.nominal.some((value, at) => {
          const least = at < part.nodes.length ? 1e-6 : 1e-9;
          return Math.abs(value - (sparse.nominal[at] ?? 0)) > least + 1e-6 * Math.abs(value);
        });
        compared += 1;
        other += differs ? 1 : 0;
      }
    }
    expect(compared).toBeGreaterThan(190);
    // Transistors that hold one another may come to rest in another way.
    expect(other).toBeLessThanOrEqual(2);
  });

  test('reaches by slopes are those of the corners where figures are 1 % and nothing bends', () => {
    let compared = 0;
    for (let seed = 1; seed <= 300; seed += 1) {
      const elements = randomNetwork(seed)
        .elements.filter(({ type }) => type !== 'diode')
        .slice(0, 6);
      const toleranced = elements.map(
        (element): Element =>
          element.type === 'resistor' ? { ...element, ohms: within(element.ohms.typ, 0.01) } : element,
      );
      for (const piece of checkNetwork({ ground: '0', elements: toleranced.flatMap(coreElements) }).pieces) {
        const part = compilePiece(piece);
        const [full, slopes] = [exploreCorners(part), spreadLarge(part)];
        full?.nominal.forEach((_, at) => {
          const width = (full.high[at] ?? 0) - (full.low[at] ?? 0);
          if (width < 1e-9) return;
          compared += 1;
          for (const end of ['low', 'high'] as const) {
            expect(Math.abs((full[end][at] ?? 0) - (slopes?.[end][at] ?? 0)), `seed ${seed}`).toBeLessThan(
              0.04 * width,
            );
          }
        });
      }
    }
    expect(compared).toBeGreaterThan(200);
  });

  test('2,000 lamps and resistors on one rail are solved, each as it would be alone', () => {
    const elements = Array.from({ length: 1000 }, (_, at): Element[] => [
      resistor(`r${at}`, 'v', `x${at}`, within(470, 0.05)),
      diode(`d${at}`, `x${at}`, 'GND', within(2, 0.1)),
    ]).flat();
    const point = solve(source('s', 'v', 'GND', within(5, 0.05), 0.001), ...elements);
    expect(point.converged).toBe(true);
    const alone = solve(source('s', 'v', 'GND', within(5, 0.05), 0.001), ...elements.slice(0, 2));
    // A thousand lamps pull the rail down by some 6 mV.
    expect(Math.abs((point.amps.d0?.typ ?? 0) / (alone.amps.d0?.typ ?? 1) - 1)).toBeLessThan(0.004);
    for (const end of ['min', 'max'] as const) {
      expect(Math.abs((point.amps.d0?.[end] ?? 0) / (alone.amps.d0?.[end] ?? 1) - 1)).toBeLessThan(0.03);
    }
  });
});
