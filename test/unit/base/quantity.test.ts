/** Figures as people write them, and back. Expected values follow from the SI prefixes and IEC 60062 by hand. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatQuantity,
  formatRange,
  formatTolerance,
  parseQuantity,
  parseTolerance,
  type Unit,
} from '../../../server/src/base/quantity';
import { exactly, within } from '../../../server/src/base/range';

const units: readonly Unit[] = ['ohm', 'V', 'A', 'W', 'F', 'H', 'Hz', 'm', 's', 'Ah', 'Wh', 'degC'];

describe('parseQuantity', () => {
  test.each<[string, Unit, number]>([
    ['20 mA', 'A', 0.02],
    ['20mA', 'A', 0.02],
    ['20 ma', 'A', 0.02],
    ['0.25 W', 'W', 0.25],
    ['.5 W', 'W', 0.5],
    ['330', 'ohm', 330],
    ['330 ohm', 'ohm', 330],
    ['330 \u03a9', 'ohm', 330],
    ['330 \u2126', 'ohm', 330],
    ['330 R', 'ohm', 330],
    ['100R', 'ohm', 100],
    ['4.7k', 'ohm', 4700],
    ['4.7 kohm', 'ohm', 4700],
    ['4.7 K', 'ohm', 4700],
    ['1M', 'ohm', 1e6],
    ['10 mohm', 'ohm', 0.01],
    ['0R', 'ohm', 0],
    ['4k7', 'ohm', 4700],
    ['4K7', 'ohm', 4700],
    ['4k7 ohm', 'ohm', 4700],
    ['R47', 'ohm', 0.47],
    ['2M2', 'ohm', 2.2e6],
    ['1e3', 'ohm', 1000],
    ['4n7', 'F', 4.7e-9],
    ['4\u00b57', 'F', 4.7e-6],
    ['100 nF', 'F', 1e-7],
    ['100 \u03bcF', 'F', 1e-4],
    ['3V3', 'V', 3.3],
    ['-5 V', 'V', -5],
    ['\u22125 V', 'V', -5],
    ['4.8', 'V', 4.8],
    ['16 MHz', 'Hz', 16e6],
    ['20 cm', 'm', 0.2],
    ['20 m', 'm', 20],
    ['12 inches', 'm', 0.3048],
    ['250 ms', 's', 0.25],
    ['10 min', 's', 600],
    ['2000 mAh', 'Ah', 2],
    ['-10 degC', 'degC', -10],
  ])('reads %s in %s', (text, unit, value) => {
    expect(parseQuantity(text, unit)).toEqual({ ok: true, value });
  });

  test('reads numbers as they are', () => {
    expect(parseQuantity(470, 'ohm')).toEqual({ ok: true, value: 470 });
    expect(parseQuantity('-0', 'V')).toEqual({ ok: true, value: 0 });
  });

  test.each<[string | number, Unit, RegExp]>([
    ['', 'ohm', /missing/],
    ['abc', 'V', /not a figure/],
    ['5 V', 'A', /not a unit of current/],
    ['1m', 'ohm', /m is a thousandth and M is a million/],
    ['20 MA', 'A', /m is a thousandth and M is a million/],
    ['4,7k', 'ohm', /decimal point/],
    ['1 000', 'ohm', /not a unit/],
    ['4k7J', 'ohm', /not a unit/],
    ['4k7k', 'ohm', /not a unit/],
    ['-5', 'ohm', /negative/],
    [-1e-9, 'F', /negative/],
    [Number.NaN, 'V', /large/],
    [Number.POSITIVE_INFINITY, 'V', /large/],
    ['1e400', 'V', /large/],
    ['9e99 ohm', 'ohm', /large/],
    ['5 constructor', 'm', /not a unit/],
    ['1toString2', 'ohm', /not a unit/],
    ['9'.repeat(5000), 'ohm', /too long/],
  ])('refuses %s in %s', (text, unit, why) => {
    const read = parseQuantity(text, unit);
    expect(read).toMatchObject({ ok: false, why: expect.stringMatching(why) });
  });

  test('never throws and never gives anything but a finite number', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.double(), fc.stringMatching(/^[0-9RkKMnpu.eE+ -]{1,8}[a-zA-Z]{0,4}$/)),
        fc.constantFrom(...units),
        (text, unit) => {
          const read = parseQuantity(text, unit);
          expect(read.ok ? Number.isFinite(read.value) : read.why.length > 0).toBe(true);
        },
      ),
    );
  });
});

describe('parseTolerance', () => {
  test.each([
    ['5 %', 0.05],
    ['5%', 0.05],
    ['\u00b11 %', 0.01],
    ['+/- 0.5 percent', 0.005],
    ['20%', 0.2],
  ])('reads %s', (text, value) => {
    expect(parseTolerance(text)).toEqual({ ok: true, value });
  });

  test.each([['5'], ['0.05'], ['-5 %'], ['100 %'], ['five %'], ['']])('refuses %s', (text) => {
    expect(parseTolerance(text).ok).toBe(false);
  });

  test('a number could be a share or percent and is refused', () => {
    expect(parseTolerance(5).ok).toBe(false);
    expect(parseTolerance(0.05).ok).toBe(false);
  });
});

describe('formatQuantity', () => {
  test.each<[number, Unit, string]>([
    [3.3 / 470, 'A', '7.0 mA'],
    [7.0451e-3, 'A', '7.0 mA'],
    [9.96e-3, 'A', '9.96 mA'],
    [9.9601e-3, 'A', '10 mA'],
    [0.15049, 'A', '150 mA'],
    [0.0313, 'A', '31.3 mA'],
    [0.02, 'A', '20 mA'],
    [330, 'ohm', '330 ohm'],
    [4700, 'ohm', '4.7 kohm'],
    [4640, 'ohm', '4.64 kohm'],
    [1000, 'ohm', '1 kohm'],
    [0.47, 'ohm', '0.47 ohm'],
    [5, 'V', '5.0 V'],
    [12.6, 'V', '12.6 V'],
    [-5, 'V', '-5.0 V'],
    [0.25, 'W', '250 mW'],
    [0.99996, 'A', '1.0 A'],
    [999.96, 'ohm', '1.0 kohm'],
    [1e-7, 'F', '100 nF'],
    [4.7e-3, 'F', '4700 \u00b5F'],
    [0.2, 'm', '20 cm'],
    [150, 's', '2.5 min'],
    [14400, 's', '4 h'],
    [16e6, 'Hz', '16 MHz'],
    [0, 'V', '0 V'],
    [-0, 'A', '0 A'],
    [Number.NaN, 'V', 'unknown'],
    [Number.POSITIVE_INFINITY, 'A', 'unknown'],
  ])('prints %d %s as %s', (value, unit, text) => {
    expect(formatQuantity(value, unit)).toBe(text);
  });

  test('shows more on demand', () => {
    expect(formatQuantity(3.3 / 470, 'A', 4)).toBe('7.02 mA');
    expect(formatQuantity(20.04e-3, 'A', 4)).toBe('20.04 mA');
  });

  test('what is printed reads back as nearly the same', () => {
    const size = fc.double({ min: -11.9, max: 11.9, noNaN: true }).map((power) => 10 ** power);
    fc.assert(
      fc.property(size, fc.constantFrom(...units), fc.constantFrom(3, 5, 8), (value, unit, digits) => {
        const text = formatQuantity(value, unit, digits);
        const read = parseQuantity(text, unit);
        expect(text).not.toMatch(/e[+-]?\d/);
        if (!read.ok) {
          throw new Error(`${text}: ${read.why}`);
        }
        // Half a step of the last decimal that is shown, at the smallest leading digit.
        expect(Math.abs(read.value - value) / value).toBeLessThanOrEqual(
          0.51 * 10 ** -Math.max(1, digits - 2),
        );
      }),
      { numRuns: 2000 },
    );
  });

  test('values of the preferred series print and read back exactly', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 999 }), fc.integer({ min: -2, max: 6 }), (digits, power) => {
        const value = Number(`${digits}e${power - 2}`);
        expect(parseQuantity(formatQuantity(value, 'ohm'), 'ohm')).toEqual({ ok: true, value });
      }),
    );
  });
});

describe('formatRange', () => {
  test.each([
    [{ min: 0.0051, typ: 0.0064, max: 0.0079 }, 'A', '5.1 / 6.4 / 7.9 mA'],
    [within(470, 0.05), 'ohm', '447 / 470 / 494 ohm'],
    [{ min: 4.5, typ: 5, max: 5.5 }, 'V', '4.5 / 5.0 / 5.5 V'],
    [{ min: 20e3, typ: 35e3, max: 50e3 }, 'ohm', '20 / 35 / 50 kohm'],
    [{ min: -1e-6, typ: 0, max: 0.02 }, 'A', '0.0 / 0.0 / 20.0 mA'],
    [exactly(0.02), 'A', '20 mA'],
    [{ min: Number.NaN, typ: 0, max: 1 }, 'A', 'unknown'],
  ] as const)('prints %j %s as %s', (range, unit, text) => {
    expect(formatRange(range, unit)).toBe(text);
  });
});

test('tolerances print in percent', () => {
  expect(formatTolerance(0.05)).toBe('5 %');
  expect(formatTolerance(0.001)).toBe('0.1 %');
});
