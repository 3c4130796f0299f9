/** Wire gauges against the standard's and a handbook's tables. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gaugeMillimetres, ohmsPerMetre, squareMillimetresOf, wireDrop } from '../../../server/src/circuit';

/**
 * Gauge, millimetres, square millimetres, ohms per kilometre at 20 degC.
 * Source: Standard Handbook for Electrical Engineers, 14th edition, as tabulated on public reference pages; 2/0 to 4/0
 * are gauges -1 to -3. Diameters agree with ASTM B258.
 */
const table: readonly (readonly [number, number, number, number])[] = [
  [-3, 11.7, 107, 0.161],
  [-2, 10.4, 85, 0.203],
  [-1, 9.27, 67.4, 0.256],
  [0, 8.25, 53.5, 0.322],
  [1, 7.35, 42.4, 0.407],
  [2, 6.54, 33.6, 0.513],
  [4, 5.19, 21.2, 0.815],
  [6, 4.12, 13.3, 1.3],
  [8, 3.26, 8.37, 2.06],
  [10, 2.59, 5.26, 3.28],
  [12, 2.05, 3.31, 5.21],
  [14, 1.63, 2.08, 8.29],
  [16, 1.29, 1.31, 13.2],
  [18, 1.02, 0.823, 20.9],
  [20, 0.812, 0.518, 33.3],
  [22, 0.644, 0.326, 53],
  [24, 0.511, 0.205, 84.2],
  [26, 0.405, 0.129, 134],
  [28, 0.321, 0.081, 213],
  [30, 0.255, 0.0509, 339],
  [32, 0.202, 0.032, 538],
  [36, 0.127, 0.0127, 1360],
  [40, 0.0799, 0.005, 3440],
];

describe('gauges', () => {
  test.each(table)('gauge %d is %d mm', (awg, millimetres, area, ohms) => {
    const near = (ours: number | undefined, theirs: number, share = 0.012): void => {
      expect(Math.abs((ours ?? 0) - theirs)).toBeLessThanOrEqual(share * theirs);
    };
    near(gaugeMillimetres(awg), millimetres, 0.006);
    near(squareMillimetresOf({ awg }), area);
    near(ohmsPerMetre(squareMillimetresOf({ awg }) ?? 0) * 1000, ohms);
  });

  test('the two ends of the standard are exact, and six gauges halve the diameter nearly (ASTM B258)', () => {
    expect(gaugeMillimetres(36)).toBeCloseTo(0.005 * 25.4, 12);
    expect(gaugeMillimetres(-3)).toBeCloseTo(0.46 * 25.4, 9);
    expect((gaugeMillimetres(10) ?? 0) / (gaugeMillimetres(16) ?? 1)).toBeCloseTo(2.005, 3);
  });

  test('a square millimetre of copper has 17.2 mohm a metre, and 39 % more at 120 degC', () => {
    expect(ohmsPerMetre(1)).toBeCloseTo(0.017241, 9);
    expect(ohmsPerMetre(1, 120) / ohmsPerMetre(1)).toBeCloseTo(1.393, 9);
  });

  test('the drop shows its sums', () => {
    const drop = wireDrop({ thickness: { awg: 24 }, metres: 2, amps: 1.5, supply: 5 });
    expect(drop.ok && drop.sums.map(({ text }) => text)).toEqual([
      '2 \u00d7 2 m \u00d7 84.21 mohm/m = 0.337 ohm',
      '1.5 A \u00d7 0.3369 ohm = 505 mV',
    ]);
    expect(drop.ok && drop.share).toBeCloseTo(0.101, 3);
  });

  test('thicker is never worse, longer never better, and current scales it', () => {
    const gauge = fc.integer({ min: -3, max: 40 });
    const length = fc.double({ min: 0.01, max: 100, noNaN: true });
    fc.assert(
      fc.property(gauge, length, fc.double({ min: 0.001, max: 10, noNaN: true }), (awg, metres, amps) => {
        const volts = (thickness: number, far: number, flow: number): number => {
          const drop = wireDrop({ thickness: { awg: thickness }, metres: far, amps: flow });
          return drop.ok ? drop.volts.value : Number.NaN;
        };
        const usual = volts(awg, metres, amps);
        expect(volts(awg - 1, metres, amps) < usual || awg === -3).toBe(true);
        expect(volts(awg, metres * 2, amps) / usual).toBeCloseTo(2, 9);
        expect(volts(awg, metres, amps * 3) / usual).toBeCloseTo(3, 9);
      }),
    );
  });

  test.each([
    [{ thickness: { awg: 99 }, metres: 1, amps: 1 }, /no wire of that thickness/],
    [{ thickness: { squareMillimetres: -1 }, metres: 1, amps: 1 }, /no wire of that thickness/],
    [{ thickness: { awg: 24 }, metres: 0, amps: 1 }, /length must be above zero/],
    [{ thickness: { awg: 24 }, metres: 1, amps: Number.NaN }, /current must be a number/],
    [{ thickness: { awg: 24 }, metres: 1, amps: 1, degrees: -400 }, /no wire at that temperature/],
  ])('%j is refused', (wish, why) => {
    const drop = wireDrop(wish);
    expect(drop.ok ? '' : drop.why).toMatch(why);
  });
});
