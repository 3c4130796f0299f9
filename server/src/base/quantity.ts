/**
 * Figures as people write and read them. A build is typed with "4k7", "20 mA" and "5 %"; every layer beneath counts
 * in plain SI numbers; every message shows figures again. Both ways live here so that they cannot disagree.
 */
import type { Range } from './range';
import { PREFIXES, UNITS, type Unit, type UnitFacts } from './units';

export type { Unit } from './units';

/** A number in the wanted unit, or the reason why the text is none: a clause without capital and full stop. */
export type Quantity =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly why: string };

/** Nothing in a build is larger; a figure beyond it is a slip of the keyboard. */
const LARGEST = 1e15;
/** Longer text is no figure, and is not quoted back in full. */
const LONGEST_TEXT = 40;

const NUMBER = /^([+\u2212-]?)(\d+\.?\d*|\.\d+)(?:e([+-]?\d{1,3})(?![\d.]))?/i;
const POINT_LETTER = /^(\d*)([A-Za-z\u00b5\u03bc])(\d+)\s*(.*)$/;

/**
 * Reads a figure: "20 mA", "0.25 W", "330", "4.7k", "20 cm", "2000 mAh", and with the letter code of IEC 60062
 * "4k7", "R47", "100R", "4n7". A bare number is taken in the wanted unit itself.
 * @returns the value in `unit`, or why it is none. Never throws.
 */
export function parseQuantity(text: string | number, unit: Unit): Quantity {
  const facts = UNITS[unit];
  if (typeof text === 'number') {
    return checked(text, facts);
  }
  const trimmed = text.trim();
  if (trimmed === '') {
    return wrong(`a figure is missing; write ${facts.quantity} as in ${facts.example}`);
  }
  if (trimmed.length > LONGEST_TEXT) {
    return wrong(`this is too long for a figure; write ${facts.quantity} as in ${facts.example}`);
  }
  const coded = parsePointLetter(trimmed, facts);
  if (coded !== undefined) {
    return checked(coded, facts);
  }
  const match = NUMBER.exec(trimmed);
  if (match === null) {
    return wrong(`"${trimmed}" is not a figure; write ${facts.quantity} as in ${facts.example}`);
  }
  const suffix = trimmed.slice(match[0].length).trim();
  if (/^[,']\s*\d/.test(suffix)) {
    return wrong(`"${trimmed}" has a comma; write the decimal point as a dot and no thousands separator`);
  }
  const scale = parseSuffix(suffix, facts);
  if (typeof scale === 'string') {
    return wrong(scale);
  }
  // The decimal exponent goes into the text, so that "4.7k" is 4700 to the last bit.
  const sign = match[1] === '-' || match[1] === '\u2212' ? '-' : '';
  const exponent = Number(match[3] ?? 0) + scale.exponent;
  const value = Number(`${sign}${match[2]}e${exponent}`);
  // Twelve inches are 304.8 mm, and not 304.79999999999996.
  return checked(scale.factor === 1 ? value : Number((value * scale.factor).toPrecision(15)), facts);
}

/**
 * Reads a tolerance: "5 %", "5%", "±1 %", "0.5 percent".
 * @returns the relative tolerance, 0.05 for 5 %, or why it is none. A bare number is refused: it could be either.
 */
export function parseTolerance(text: string | number): Quantity {
  const trimmed = typeof text === 'number' ? String(text) : text.trim();
  const shown = trimmed.length > LONGEST_TEXT ? 'this' : `"${trimmed}"`;
  const match = /^(?:\u00b1|\+\/-)?\s*(\d{1,3}(?:\.\d{0,6})?|\.\d{1,6})\s*(%|percent)?$/.exec(trimmed);
  if (match === null) {
    return wrong(`${shown} is not a tolerance; write it as in 5 %`);
  }
  if (match[2] === undefined) {
    return wrong(`${shown} has no percent sign; write a tolerance as in 5 %`);
  }
  const value = Number(`${match[1]}e-2`);
  return value < 1
    ? { ok: true, value }
    : wrong(`a tolerance of ${shown} leaves no value; it must be below 100 %`);
}

function wrong(why: string): Quantity {
  return { ok: false, why };
}

function checked(value: number, facts: UnitFacts): Quantity {
  if (!Number.isFinite(value) || Math.abs(value) > LARGEST) {
    return wrong(`${facts.quantity} cannot be that large; write it as in ${facts.example}`);
  }
  if (value < 0 && !facts.signed) {
    return wrong(`${facts.quantity} cannot be negative`);
  }
  return { ok: true, value: value === 0 ? 0 : value };
}

function parsePointLetter(text: string, facts: UnitFacts): number | undefined {
  const match = POINT_LETTER.exec(text);
  if (match === null) {
    return undefined;
  }
  const [, whole = '', letter = '', part = '', rest = ''] = match;
  const exponent = Object.hasOwn(facts.pointLetters, letter) ? facts.pointLetters[letter] : undefined;
  if (exponent === undefined || (rest !== '' && !isUnitWord(rest, facts))) {
    return undefined;
  }
  return Number(`${whole === '' ? '0' : whole}.${part}e${exponent}`);
}

function isUnitWord(text: string, facts: UnitFacts): boolean {
  return facts.words.some((word) => endsWithWord(text, word, facts) && text.length === word.length);
}

function endsWithWord(text: string, word: string, facts: UnitFacts): boolean {
  return text.endsWith(word) || (facts.anyCase && text.toLowerCase().endsWith(word.toLowerCase()));
}

/** The scale that stands behind a number, or why there is none. */
function parseSuffix(suffix: string, facts: UnitFacts): { exponent: number; factor: number } | string {
  if (suffix === '') {
    return { exponent: 0, factor: 1 };
  }
  const other = Object.hasOwn(facts.others, suffix) ? facts.others[suffix] : undefined;
  if (other !== undefined) {
    return { exponent: 0, factor: other };
  }
  for (const word of facts.words) {
    if (endsWithWord(suffix, word, facts)) {
      const prefix = suffix.slice(0, suffix.length - word.length).trim();
      const exponent = prefixExponent(prefix, facts.prefixes + facts.wordyPrefixes);
      if (exponent !== undefined) {
        return { exponent, factor: 1 };
      }
    }
  }
  if (facts.pointLetters[suffix] === 0 && Object.hasOwn(facts.pointLetters, suffix)) {
    return { exponent: 0, factor: 1 };
  }
  const exponent = prefixExponent(suffix, facts.prefixes);
  if (exponent !== undefined) {
    return { exponent, factor: 1 };
  }
  if (suffix === 'm' || /^M./.test(suffix)) {
    return `"${suffix}" is not clear here: m is a thousandth and M is a million; write ${facts.quantity} as in ${facts.example}`;
  }
  return `"${suffix}" is not a unit of ${facts.quantity.replace(/^an? /, '')}; write it as in ${facts.example}`;
}

function prefixExponent(prefix: string, allowed: string): number | undefined {
  if (prefix === '') {
    return 0;
  }
  return prefix.length === 1 && allowed.includes(prefix) ? PREFIXES[prefix] : undefined;
}

/** A scale to print in: what one of it is worth in the unit, and its name. */
interface Scale {
  readonly size: number;
  readonly name: string;
}

function scales(unit: Unit, steps: readonly (readonly [number, string])[]): readonly Scale[] {
  return steps.map(([exponent, prefix]) => ({ size: Number(`1e${exponent}`), name: prefix + unit }));
}

const MICRO = '\u00b5';
const SMALL = [
  [-12, 'p'],
  [-9, 'n'],
  [-6, MICRO],
  [-3, 'm'],
] as const;
const LARGE = [
  [3, 'k'],
  [6, 'M'],
  [9, 'G'],
] as const;

/** Ascending. Where the trade leaves prefixes out (no millifarad, no kiloampere-hour), so does the table. */
const SCALES: Readonly<Record<Unit, readonly Scale[]>> = {
  ohm: [{ size: 1e-3, name: 'mohm' }, { size: 1, name: 'ohm' }, ...scales('ohm', LARGE)],
  V: scales('V', [...SMALL.slice(1), [0, ''], [3, 'k']]),
  A: scales('A', [...SMALL, [0, ''], [3, 'k']]),
  W: scales('W', [...SMALL.slice(1), [0, ''], [3, 'k']]),
  F: scales('F', [...SMALL.slice(0, 3), [0, '']]),
  H: scales('H', [...SMALL.slice(1), [0, '']]),
  Hz: scales('Hz', [[-3, 'm'], [0, ''], ...LARGE]),
  m: [
    ...scales('m', [
      [-6, MICRO],
      [-3, 'm'],
      [-2, 'c'],
      [0, ''],
    ]),
  ],
  s: [...scales('s', [...SMALL, [0, '']]), { size: 60, name: 'min' }, { size: 3600, name: 'h' }],
  Ah: scales('Ah', [
    [-3, 'm'],
    [0, ''],
  ]),
  Wh: scales('Wh', [[-3, 'm'], [0, ''], ...LARGE.slice(0, 2)]),
  degC: scales('degC', [[0, '']]),
};

/** Units of things one measures, where "5.0 V" says more than "5 V"; component values are written without the zero. */
const MEASURED: ReadonlySet<Unit> = new Set<Unit>(['V', 'A', 'W']);

function scaleFor(magnitude: number, unit: Unit, digits: number): Scale {
  const all = SCALES[unit];
  let chosen = all[0] ?? { size: 1, name: unit };
  for (const scale of all) {
    // A value that rounds up to the next scale is printed there: "1.0 A", never "1000 mA". Below 10 mohm nobody
    // speaks of milliohms, and minutes and hours begin where seconds and minutes get hard to picture.
    const from = scale.name === 'ohm' ? 0.01 : scale.name === 'min' || scale.name === 'h' ? 2 : 1;
    if (Number((magnitude / scale.size).toPrecision(Math.max(3, digits))) >= from) {
      chosen = scale;
    }
  }
  return chosen;
}

/**
 * Prints a figure: "7.0 mA", "330 ohm", "4.7 kohm", "12.6 V". A figure that `digits` significant digits hold exactly
 * is printed exactly; any other is the outcome of a sum and gets `digits` - 2 decimals at most (at least one), for
 * more would claim a certainty that the parts have not.
 * @param value in `unit`; NaN and infinity are printed as "unknown".
 * @param digits significant digits at most, 2 or more
 */
export function formatQuantity(value: number, unit: Unit, digits = 3): string {
  if (!Number.isFinite(value)) {
    return 'unknown';
  }
  if (value === 0) {
    return `0 ${unit}`;
  }
  const scale = scaleFor(Math.abs(value), unit, digits);
  const scaled = value / scale.size;
  const rounded = Number(scaled.toPrecision(digits));
  const exact = Math.abs(rounded - scaled) <= Math.abs(scaled) * 1e-9;
  const size = Math.abs(rounded);
  const decimals = Math.max(1, digits - 2);
  // Below one there is no smaller scale to go to, so leading zeros do not count as digits. Rounding is done once, on
  // the figure itself: 7.0451 is 7.0 and must not become 7.1 by way of 7.05.
  const asRounded = exact || size < 1 || size >= 10 ** (digits - decimals);
  const cut = asRounded ? rounded : Number(scaled.toFixed(decimals));
  const plain = plainNumber(cut);
  const shown = MEASURED.has(unit) || !exact;
  return `${shown && Math.abs(cut) < 10 && !plain.includes('.') ? `${plain}.0` : plain} ${scale.name}`;
}

/** A number without exponent, which "e-7" would be to a reader who solders. */
function plainNumber(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(20).replace(/\.?0+$/, '') : text;
}

/**
 * Prints lowest, usual and highest value in one scale: "5.1 / 6.4 / 7.9 mA"; once where all three are equal.
 */
export function formatRange(range: Range, unit: Unit): string {
  const values = [range.min, range.typ, range.max];
  if (!values.every(Number.isFinite)) {
    return 'unknown';
  }
  if (range.min === range.max) {
    return formatQuantity(range.typ, unit);
  }
  const largest = Math.max(...values.map(Math.abs));
  const scale = scaleFor(largest, unit, 3);
  const scaled = values.map((value) => value / scale.size);
  const wholes = scaled.every((value) => Math.abs(value - Math.round(value)) <= Math.abs(value) * 1e-9);
  const bare =
    largest / scale.size >= 99.95 || (wholes && (!MEASURED.has(unit) || largest / scale.size >= 10));
  const texts = scaled.map((value) => value.toFixed(bare ? 0 : 1).replace(/^-(0(?:\.0)?)$/, '$1'));
  return `${texts.join(' / ')} ${scale.name}`;
}

/** Prints a relative tolerance: 0.05 as "5 %". */
export function formatTolerance(tolerance: number): string {
  return Number.isFinite(tolerance)
    ? `${plainNumber(Number((tolerance * 100).toPrecision(3)))} %`
    : 'unknown';
}
