/** Sums that show themselves: brackets where they are needed, and the text's own arithmetic gives the value. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  besideEachOther,
  faultIn,
  figure,
  logarithm,
  minus,
  over,
  type Piece,
  plain,
  plus,
  squared,
  sumOf,
  times,
} from '../../../server/src/circuit/sum';

const volts = (value: number): Piece => figure(value, 'V');
const ohms = (value: number): Piece => figure(value, 'ohm');

describe('text', () => {
  test.each<[Piece, string]>([
    [over(minus(volts(5), volts(2.1)), ohms(470)), '(5.0 V \u2212 2.1 V) / 470 ohm'],
    [minus(volts(9), plus(volts(2), volts(3))), '9.0 V \u2212 (2.0 V + 3.0 V)'],
    [over(volts(5), times(plain(2), ohms(100))), '5.0 V / (2 \u00d7 100 ohm)'],
    [over(over(volts(5), ohms(10)), plain(2)), '5.0 V / 10 ohm / 2'],
    [times(squared(figure(0.08, 'A')), ohms(22)), '(80 mA)\u00b2 \u00d7 22 ohm'],
    [besideEachOther(ohms(100), ohms(300)), '100 ohm \u00d7 300 ohm / (100 ohm + 300 ohm)'],
    [logarithm(over(volts(5), volts(1))), 'ln(5.0 V / 1.0 V)'],
  ])('%j', (piece, text) => {
    expect(piece.text).toBe(text);
  });

  test('a single figure is no sum, and what nothing limits is unlimited', () => {
    expect(sumOf(ohms(330), 'ohm').text).toBe('330 ohm');
    expect(sumOf(over(volts(5), ohms(0)), 'A').text).toBe('5.0 V / 0 ohm = unlimited');
    expect(over(volts(0), ohms(0)).value).toBe(0);
  });
});

test('whoever does the printed sum again gets the printed result', () => {
  // Whole numbers without units are printed as they are, so that the text is a formula by itself.
  const leaf = fc.integer({ min: 1, max: 999 }).map(plain);
  const { sum } = fc.letrec<{ sum: Piece; pair: [Piece, Piece] }>((tie) => ({
    pair: fc.tuple(tie('sum'), tie('sum')),
    sum: fc.oneof(
      { maxDepth: 4, withCrossShrink: true },
      leaf,
      tie('pair').map(([a, b]) => plus(a, b)),
      tie('pair').map(([a, b]) => minus(a, b)),
      tie('pair').map(([a, b]) => times(a, b)),
      tie('pair').map(([a, b]) => over(a, b)),
      tie('sum').map(squared),
    ),
  }));
  fc.assert(
    fc.property(sum, ({ text, value }) => {
      fc.pre(Number.isFinite(value) && Math.abs(value) < 1e12);
      const formula = text.replaceAll('\u2212', '-').replaceAll('\u00d7', '*').replaceAll('\u00b2', '**2');
      const again = Number(new Function(`return ${formula}`)());
      fc.pre(Number.isFinite(again));
      expect(Math.abs(again - value)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(value)));
    }),
  );
});

test('faults name the figure', () => {
  expect(faultIn({ supply: 5, current: Number.NaN })).toBe('the current is not a number');
  expect(faultIn({ supply: -5 })).toBe('the supply must be above zero');
  expect(faultIn({ supply: 1e20 })).toBe('the supply is beyond anything in a build');
  expect(faultIn({ supply: 5 })).toBeUndefined();
});
