/** Budgets and run times on random figures: they add up, scale, and stay within what heat allows. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { within } from '../../../server/src/base/range';
import { budgetOf, budgetWords, regulatorBudget, runTime } from '../../../server/src/circuit';
import { isSound, number, spread } from './outcome';

describe('budgets', () => {
  const amps = number(0, 1).map((value) => within(value, 0.2));

  test('add up, name the largest first, and say when they are passed', () => {
    fc.assert(
      fc.property(fc.array(amps, { maxLength: 20 }), number(0, 5), (draws, limit) => {
        const budget = budgetOf(
          draws.map((range, at) => ({ name: `d${at}`, amps: range })),
          limit,
        );
        const total = draws.reduce((sum, range) => sum + range.max, 0);
        expect(budget.used.max).toBeCloseTo(total, 9);
        expect(budget.sum.value).toBeCloseTo(total, 9);
        expect(budgetWords(budget)).toMatch(/ of /);
        expect(budget.exceeded === 'never').toBe(total <= limit * (1 + 1e-9));
        const worst = Math.max(0, ...draws.map((range) => range.max));
        if (draws.length > 0) expect(draws[Number(budget.largest[0]?.slice(1))]?.max).toBe(worst);
      }),
    );
  });

  test('a draw that is no number makes the budget as bad as can be, never NaN', () => {
    const budget = budgetOf(
      [{ name: 'x', amps: { min: Number.NaN, typ: Number.NaN, max: Number.NaN } }],
      0.5,
    );
    expect(budget.exceeded).toBe('usually');
    expect(budget.sum.text).toMatch(/unlimited|unknown/);
  });

  test('the junction stays within bounds exactly up to the current that heat allows', () => {
    fc.assert(
      fc.property(number(6, 20), number(20, 200), number(-20, 80), (input, kelvinPerWatt, ambient) => {
        const at = (load: number) =>
          regulatorBudget({
            input: within(input, 0.05),
            output: within(5, 0.02),
            amps: within(load, 0),
            kelvinPerWatt,
            ambient,
            maxJunction: 125,
          });
        const first = at(0.01);
        isSound(first);
        if (!first.ok) return;
        const most = first.heatAmps.value;
        const [below, above] = [at(most * 0.999), at(most * 1.001)];
        expect(below.ok && below.junction.value).toBeLessThanOrEqual(125);
        expect(above.ok && above.junction.value).toBeGreaterThan(125);
        expect(above.ok && above.faults.join(' ')).toMatch(/junction gets/);
      }),
    );
  });

  test('twice the draw is half the time', () => {
    fc.assert(
      fc.property(spread(-1, 1.5), spread(-4, 0), (ampHours, draw) => {
        const once = runTime({ ampHours, phases: [{ amps: draw, seconds: 1 }] });
        const twice = runTime({ ampHours, phases: [{ amps: 2 * draw, seconds: 1 }] });
        isSound(once);
        expect(once.ok && twice.ok && once.hours / twice.hours).toBeCloseTo(2, 9);
        expect(once.ok && once.hours).toBeCloseTo(ampHours / draw, 6);
      }),
    );
  });
});
