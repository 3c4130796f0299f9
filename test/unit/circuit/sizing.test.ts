/** The series resistor of a lamp: known sums, the promise at the worst corner, and reasons where nothing fits. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exactly, within } from '../../../server/src/base/range';
import {
  explainSeries,
  quickAmps,
  quickOhms,
  type SeriesWish,
  seriesAmps,
  seriesAmpsOnCurve,
  sizeSeriesResistor,
  valuesBetween,
} from '../../../server/src/circuit';
import { diode, resistor, solve, source } from './elements';

const e12 = valuesBetween('E12', 10, 1e6);
const green = { min: 1.9, typ: 2.1, max: 2.4 };
const wish: SeriesWish = {
  supply: within(5, 0.05),
  forward: green,
  atAmps: 0.02,
  sourceOhms: { min: 15, typ: 25, max: 40 },
  limitAmps: 0.02,
  stock: e12,
  tolerance: 0.05,
};

describe('quick sums', () => {
  test('3.3 V and 10 mA take 330 ohm', () => {
    expect(quickOhms(3.3, 0.01)).toBeCloseTo(330, 9);
  });

  test('3.3 V over 470 ohm give 7.0 mA with the drop neglected', () => {
    expect(quickAmps(3.3, 470)).toBeCloseTo(0.00702, 5);
  });

  test.each([
    [
      { supply: 5, forward: 2.1, ohms: 470, sourceOhms: 25 },
      '(5.0 V \u2212 2.1 V) / (470 ohm + 25 ohm) = 5.9 mA',
    ],
    [{ supply: 3.3, forward: 0, ohms: 470, sourceOhms: 0 }, '3.3 V / 470 ohm = 7.0 mA'],
    [{ supply: 5, forward: 2, ohms: 0, sourceOhms: 25 }, '(5.0 V \u2212 2.0 V) / 25 ohm = 120 mA'],
    [{ supply: 5, forward: 2, ohms: 0, sourceOhms: 0 }, '(5.0 V \u2212 2.0 V) / 0 ohm = unlimited'],
    [{ supply: 1.5, forward: 2, ohms: 100, sourceOhms: 0 }, '(1.5 V \u2212 2.0 V) / 100 ohm = 0 A'],
  ])('%j is explained as %s', (run, text) => {
    expect(explainSeries(run)).toBe(text);
  });

  test('the curve gives what the engine gives', () => {
    const figures = fc.record({
      supply: fc.double({ min: 0.5, max: 24, noNaN: true }),
      forward: fc.double({ min: 1, max: 3.6, noNaN: true }),
      ohms: fc.double({ min: 1, max: 1e5, noNaN: true }),
      sourceOhms: fc.double({ min: 0, max: 100, noNaN: true }),
    });
    fc.assert(
      fc.property(figures, (run) => {
        const point = solve(
          source('s', 'p', 'GND', run.supply, run.sourceOhms),
          resistor('r', 'p', 'x', run.ohms),
          diode('d', 'x', 'GND', run.forward),
        );
        const engine = point.amps.d?.typ ?? Number.NaN;
        // The engine also counts saturation and leakage, which together stay below 10 nA here.
        expect(Math.abs(seriesAmpsOnCurve(run, 0.02) - engine)).toBeLessThanOrEqual(1e-8 + 1e-6 * engine);
      }),
      { numRuns: 500 },
    );
  });

  test('without volts nothing flows, without resistance everything', () => {
    expect(seriesAmpsOnCurve({ supply: 0, forward: 2, ohms: 100, sourceOhms: 0 }, 0.02)).toBe(0);
    expect(seriesAmpsOnCurve({ supply: 5, forward: 2, ohms: 0, sourceOhms: 0 }, 0.02)).toBe(
      Number.POSITIVE_INFINITY,
    );
    expect(seriesAmps({ supply: 5, forward: 0, ohms: 0, sourceOhms: 0 })).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('sizeSeriesResistor', () => {
  test('3.3 V and 10 mA, drop neglected: 330 ohm', () => {
    const sized = sizeSeriesResistor({
      supply: exactly(3.3),
      forward: exactly(0),
      sourceOhms: exactly(0),
      wantedAmps: 0.01,
      limitAmps: 0.02,
      stock: e12,
      tolerance: 0.05,
    });
    expect(sized).toMatchObject({ ok: true, ohms: 330 });
  });

  test('without a wish it takes the smallest value that is safe', () => {
    const sized = sizeSeriesResistor(wish);
    // (5.25 V - 1.9 V) / 20 mA - 15 ohm is 152.5 ohm at least, 5 % below its print: 180 ohm.
    expect(sized).toMatchObject({ ok: true, ohms: 180 });
    expect(sized.ok && sized.amps.max).toBeLessThanOrEqual(0.02);
    expect(sized.ok && sized.quick.neglected).toBeCloseTo(5 / 180, 9);
    expect(sized.ok && sized.sum).toBe('(5.0 V \u2212 2.1 V) / (180 ohm + 25 ohm) = 14.1 mA');
  });

  test('with a wish it takes the nearest that is safe', () => {
    const sized = sizeSeriesResistor({ ...wish, wantedAmps: 0.005, stock: [220, 330, 470, 1000] });
    // 2.97 V over 1025 ohm and 495 ohm are 2.9 mA and 6.0 mA.
    expect(sized).toMatchObject({ ok: true, ohms: 470 });
  });

  test('the power at the worst corner', () => {
    const sized = sizeSeriesResistor({ ...wish, stock: [470] });
    const amps = sized.ok ? sized.amps.max : Number.NaN;
    expect(sized.ok && sized.watts).toBeCloseTo(amps ** 2 * 470 * 0.95, 9);
  });

  test.each<[Partial<SeriesWish>, RegExp]>([
    [{ stock: [] }, /no resistor/],
    [{ stock: [0, Number.NaN, -5] }, /no resistor/],
    [
      { stock: [47, 100] },
      /the largest in stock, 100 ohm, lets 30\.\d mA through .* 20 mA are allowed, .* 161 ohm/,
    ],
    [{ supply: exactly(1.8) }, /gives 1\.8 V and the lamp needs 2\.1 V/],
    [{ supply: exactly(-5) }, /drives nothing/],
    [{ supply: exactly(Number.NaN) }, /figure of the sum is missing/],
    [{ limitAmps: 0 }, /above zero/],
    [{ tolerance: 1 }, /out of its range/],
    [
      { supply: exactly(48), watts: 0.25, stock: [3300, 4700], limitAmps: 0.02 },
      /would take 4\d\d mW and stands 250 mW/,
    ],
  ])('%j has a reason', (change, why) => {
    expect(sizeSeriesResistor({ ...wish, ...change })).toMatchObject({
      ok: false,
      why: expect.stringMatching(why),
    });
  });

  test('the engine never finds more than was promised', () => {
    const volts = fc.double({ min: 2.7, max: 24, noNaN: true });
    fc.assert(
      fc.property(volts, fc.double({ min: 1e-3, max: 0.03, noNaN: true }), (supply, limitAmps) => {
        const one = { ...wish, supply: within(supply, 0.05), limitAmps };
        const sized = sizeSeriesResistor(one);
        if (!sized.ok) {
          throw new Error(sized.why);
        }
        const point = solve(
          source('s', 'p', 'GND', one.supply, one.sourceOhms),
          resistor('r', 'p', 'x', within(sized.ohms, 0.05)),
          diode('d', 'x', 'GND', green),
        );
        expect(point.amps.d?.max).toBeLessThanOrEqual(limitAmps * (1 + 1e-6));
        expect(point.amps.d?.max).toBeCloseTo(sized.amps.max, 6);
      }),
    );
  });
});
