/** What is printed and painted on parts: colour bands and letter code, by the rules of IEC 60062. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BandColour,
  bandsFor,
  digitCode,
  letterCode,
  readBands,
  readDigitCode,
  readLetterCode,
  series,
  toleranceLetter,
} from '../../../server/src/circuit';

const bands = (...args: Parameters<typeof bandsFor>): string => {
  const found = bandsFor(...args);
  return found.ok ? found.bands.join(' ') : found.why;
};

describe('colour bands', () => {
  test.each<[number, number, string]>([
    [470, 0.05, 'yellow violet brown gold'],
    [470, 0.2, 'yellow violet brown'],
    [470, 0.1, 'yellow violet brown silver'],
    [470, 0.01, 'yellow violet black black brown'],
    [4700, 0.05, 'yellow violet red gold'],
    [10_000, 0.05, 'brown black orange gold'],
    [4.7, 0.05, 'yellow violet gold gold'],
    [0.47, 0.05, 'yellow violet silver gold'],
    [1e6, 0.05, 'brown black green gold'],
    [4640, 0.01, 'yellow blue yellow brown brown'],
    [464, 0.05, 'yellow blue yellow black gold'],
    [2.2, 0.02, 'red red black silver red'],
    [0, 0.05, 'black'],
  ])('%d ohm within %d', (ohms, tolerance, text) => {
    expect(bands(ohms, tolerance)).toBe(text);
  });

  test('a sixth band carries the temperature coefficient', () => {
    expect(bands(10_000, 0.01, 100)).toBe('brown black black red brown brown');
    expect(readBands(['brown', 'black', 'black', 'red', 'brown', 'brown'])).toEqual({
      ohms: 10_000,
      tolerance: 0.01,
      perKelvin: 100,
    });
  });

  test.each([
    [4641, 0.01, /no more than three digits/],
    [470, 0.03, /no band for this tolerance/],
    [464, 0.2, /read as two/],
    [-1, 0.05, /no bands for this resistance/],
    [Number.NaN, 0.05, /no bands for this resistance/],
    [1e14, 0.05, /no bands for this resistance/],
  ])('%d ohm within %d is refused', (ohms, tolerance, why) => {
    expect(bands(ohms, tolerance)).toMatch(why);
  });

  test('the same bands read back as the same value', () => {
    const value = fc.tuple(fc.integer({ min: 10, max: 99 }), fc.integer({ min: -2, max: 8 }));
    const tolerance = fc.constantFrom(0.1, 0.05, 0.02, 0.01, 0.005, 0.0025, 0.001, 0.2);
    fc.assert(
      fc.property(value, tolerance, ([digits, power], share) => {
        const ohms = Number(`${digits}e${power}`);
        const found = bandsFor(ohms, share);
        if (share === 0.2 || found.ok) {
          expect(found.ok && readBands(found.bands)).toEqual({ ohms, tolerance: share });
        } else {
          // Three digits of a very small value have no multiplier band.
          expect(power).toBeLessThan(-1);
        }
      }),
    );
  });

  test('nonsense is not read', () => {
    const wrong: BandColour[][] = [
      [],
      ['brown'],
      ['gold', 'red', 'red', 'gold'],
      ['red', 'red', 'red', 'black'],
      ['red', 'red', 'red', 'red', 'red', 'white'],
      ['red', 'red', 'red', 'red', 'red', 'red', 'red'],
    ];
    for (const one of wrong) {
      expect(readBands(one)).toBeUndefined();
    }
  });
});

describe('letter code', () => {
  test.each<[number, 'ohm' | 'F', string]>([
    [0.47, 'ohm', 'R47'],
    [4.7, 'ohm', '4R7'],
    [100, 'ohm', '100R'],
    [4700, 'ohm', '4k7'],
    [47_000, 'ohm', '47k'],
    [2.2e6, 'ohm', '2M2'],
    [5.9e4, 'ohm', '59k'],
    [4640, 'ohm', '4k64'],
    [4.7e-9, 'F', '4n7'],
    [1e-7, 'F', '100n'],
    [2.2e-6, 'F', '2\u00b52'],
    [3.3e-13, 'F', 'p33'],
  ])('%d %s is %s both ways', (value, unit, code) => {
    expect(letterCode(value, unit)).toBe(code);
    expect(readLetterCode(code, unit)?.value).toBeCloseTo(value, 15);
  });

  test('a tolerance has a letter', () => {
    expect(letterCode(4700, 'ohm', 0.05)).toBe('4k7J');
    expect(readLetterCode('4K7J', 'ohm')).toEqual({ value: 4700, tolerance: 0.05 });
    expect(readLetterCode('100RF', 'ohm')).toEqual({ value: 100, tolerance: 0.01 });
    expect(toleranceLetter(0.01)).toBe('F');
    expect(toleranceLetter(0.07)).toBeUndefined();
    expect(letterCode(4700, 'ohm', 0.07)).toBeUndefined();
  });

  test('what the code cannot say is not said', () => {
    for (const value of [0, -1, Number.NaN, 12345]) {
      expect(letterCode(value, 'ohm')).toBeUndefined();
    }
    for (const text of ['', 'R', 'J', '4x7', '4k7Q', '4k7JJ', 'hello']) {
      expect(readLetterCode(text, 'ohm')).toBeUndefined();
    }
  });

  test('every value of E96 in eight decades comes back', () => {
    for (let power = -1; power <= 6; power += 1) {
      for (const mantissa of series('E96')) {
        const value = Number(`${mantissa}e${power}`);
        const code = letterCode(value, 'ohm', 0.01) ?? '';
        expect(readLetterCode(code, 'ohm'), code).toEqual({ value, tolerance: 0.01 });
      }
    }
  });
});

describe('digit code', () => {
  test.each<[number, 'ohm' | 'F', string]>([
    [100e-9, 'F', '104'],
    [22e-12, 'F', '220'],
    [4.7e-9, 'F', '472'],
    [4.7e-12, 'F', '4p7'],
    [4700, 'ohm', '472'],
    [10, 'ohm', '100'],
    [4.7, 'ohm', '4R7'],
    [0.47, 'ohm', 'R47'],
    [1e6, 'ohm', '105'],
  ])('%d %s is %s, both ways', (value, unit, code) => {
    expect(digitCode(value, unit)).toBe(code);
    expect((readDigitCode(code, unit) ?? 0) / value).toBeCloseTo(1, 12);
  });

  test('three figures and the zeros', () => {
    expect(digitCode(4640, 'ohm', 3)).toBe('4641');
    expect(readDigitCode('4641', 'ohm')).toBe(4640);
    expect(digitCode(47.5, 'ohm', 3)).toBe('47R5');
  });

  test('every value of E96 in eight decades comes back', () => {
    for (const mantissa of series('E96')) {
      for (let power = -1; power < 7; power += 1) {
        const value = Number(`${mantissa}e${power}`);
        const code = digitCode(value, 'ohm', 3);
        expect((readDigitCode(code ?? '', 'ohm') ?? 0) / value, `${value}: ${code}`).toBeCloseTo(1, 9);
      }
    }
  });

  test('what it cannot say is not said, and what is none is not read', () => {
    expect(digitCode(4640, 'ohm')).toBeUndefined();
    expect(digitCode(-1, 'ohm')).toBeUndefined();
    expect(digitCode(1e12, 'ohm')).toBeUndefined();
    expect(['012', '47', '4k7', '', '12345', 'R0'].map((code) => readDigitCode(code, 'ohm'))).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });
});
