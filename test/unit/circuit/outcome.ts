/** What every sizing and budget owes: sums without NaN, or a reason in words. */
import fc from 'fast-check';
import { expect } from 'vitest';
import type { Sum } from '../../../server/src/circuit';

export const number = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });
/** Numbers of every size between two powers of ten. */
export const spread = (low: number, high: number): fc.Arbitrary<number> =>
  number(low, high).map((power) => 10 ** power);

type Outcome =
  | { readonly ok: true; readonly sums: readonly Sum[] }
  | { readonly ok: false; readonly why: string };

/** A refusal is a clause; a choice has sums without NaN. */
export function isSound(outcome: Outcome): void {
  if (outcome.ok) {
    expect(outcome.sums.length).toBeGreaterThan(0);
    for (const { value, text } of outcome.sums) {
      expect(Number.isNaN(value), text).toBe(false);
      expect(text).not.toMatch(/NaN|undefined|Infinity/);
    }
  } else {
    expect(outcome.why).toMatch(/^[^A-Z].+[^.]$/);
    expect(outcome.why).not.toMatch(/NaN|undefined|Infinity/);
  }
}
