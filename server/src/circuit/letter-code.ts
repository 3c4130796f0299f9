/**
 * The letter and digit code printed on bodies and in parts lists: the letter stands where the decimal point would be
 * lost in print. Reading without a tolerance letter is base/quantity.ts; this writes it and knows the tolerance.
 * Source: IEC 60062 (2016), letter and digit code for resistance, capacitance and tolerance (from memory).
 */
import { parseQuantity } from '../base/quantity';

type Coded = 'ohm' | 'F';

/** Letters by power of ten, descending. Lower-case k, as people write it. */
const LETTERS: Readonly<Record<Coded, readonly (readonly [number, string])[]>> = {
  ohm: [
    [9, 'G'],
    [6, 'M'],
    [3, 'k'],
    [0, 'R'],
  ],
  F: [
    [-3, 'm'],
    [-6, '\u00b5'],
    [-9, 'n'],
    [-12, 'p'],
  ],
};

/** Relative tolerances by letter, symmetrical ones only. */
const TOLERANCE_LETTERS: readonly (readonly [string, number])[] = [
  ['E', 0.00005],
  ['L', 0.0001],
  ['P', 0.0002],
  ['W', 0.0005],
  ['B', 0.001],
  ['C', 0.0025],
  ['D', 0.005],
  ['F', 0.01],
  ['G', 0.02],
  ['H', 0.03],
  ['J', 0.05],
  ['K', 0.1],
  ['M', 0.2],
  ['N', 0.3],
];

/** The letter of a relative tolerance, or undefined where the standard has none. */
export function toleranceLetter(tolerance: number): string | undefined {
  return TOLERANCE_LETTERS.find(([, value]) => Math.abs(value - tolerance) <= value * 1e-9)?.[0];
}

/**
 * Writes a value in the code: 4700 ohm as "4k7", 0.47 ohm as "R47", 100 ohm as "100R", 4.7 nF as "4n7"; with a
 * tolerance that has a letter, "4k7J". Undefined where the value is not above zero or needs more than four digits.
 */
export function letterCode(value: number, unit: Coded, tolerance?: number): string | undefined {
  if (!(value > 0) || !Number.isFinite(value)) {
    return undefined;
  }
  const digits = Number(value.toPrecision(4));
  const letters = LETTERS[unit];
  const scale = letters.find(([power]) => digits >= Number(`1e${power}`)) ?? letters.at(-1);
  const letter = tolerance === undefined ? '' : toleranceLetter(tolerance);
  if (scale === undefined || letter === undefined || Math.abs(digits - value) > value * 1e-9) {
    return undefined;
  }
  const scaled = String(Number((digits / Number(`1e${scale[0]}`)).toPrecision(4)));
  if (!/^\d+(?:\.\d+)?$/.test(scaled)) {
    return undefined;
  }
  const [whole = '', part = ''] = scaled.split('.');
  return `${whole === '0' && part !== '' ? '' : whole}${scale[1]}${part}${letter}`;
}

/** Reads the code with its tolerance letter: "4k7J" is 4700 within 0.05. Undefined where it is not the code. */
export function readLetterCode(text: string, unit: Coded): { value: number; tolerance?: number } | undefined {
  const match = /^(\d*[A-Za-z\u00b5\u03bc]\d*)([A-Z])?$/.exec(text.trim());
  const code = match?.[1];
  const quantity = code === undefined || !/\d/.test(code) ? undefined : parseQuantity(code, unit);
  if (!quantity?.ok) {
    return undefined;
  }
  const letter = match?.[2];
  if (letter === undefined) {
    return { value: quantity.value };
  }
  const tolerance = TOLERANCE_LETTERS.find(([name]) => name === letter)?.[1];
  return tolerance === undefined ? undefined : { value: quantity.value, tolerance };
}
