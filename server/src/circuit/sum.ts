/**
 * Sums that can show themselves. A figure that somebody is to trust comes with the sum it is the result of, the values
 * put in: "(5.0 V − 2.1 V) / 470 ohm = 6.2 mA". Value and text grow together out of the same pieces, so they cannot
 * disagree.
 */
import { formatQuantity, type Unit } from '../base/quantity';

/** A result and the line that shows how it came about. */
export interface Sum {
  /** In `unit`. Infinite where nothing limits it. */
  readonly value: number;
  readonly unit: Unit | 'number';
  /** "(5.0 V − 2.1 V) / 470 ohm = 6.2 mA". */
  readonly text: string;
}

/** What a sizing gives: its figures and their sums, or why there is nothing: a clause without capital and full stop. */
export type Sized<Figures> =
  | (Figures & { readonly ok: true; readonly sums: readonly Sum[] })
  | { readonly ok: false; readonly why: string };

export function refused(why: string): { readonly ok: false; readonly why: string } {
  return { ok: false, why };
}

/** A piece of a sum. The order decides where brackets are needed. */
export interface Piece {
  readonly value: number;
  readonly text: string;
  readonly binds: 'sum' | 'product' | 'figure';
}

/** Digits of a figure inside a sum: one more than of a result, so that whoever does the sum again gets the result. */
const DIGITS = 4;

/** A figure with its unit. */
export function figure(value: number, unit: Unit): Piece {
  return { value, text: formatQuantity(value, unit, DIGITS), binds: 'figure' };
}

/** A number without unit: a count, a gain, a factor. */
export function plain(value: number): Piece {
  return { value, text: String(Number(value.toPrecision(4))), binds: 'figure' };
}

/** A percentage. */
export function share(value: number): Piece {
  return { value, text: `${Number((value * 100).toPrecision(4))} %`, binds: 'figure' };
}

/** Degrees and kelvins per watt have no row in the table of units; their text is given. */
export function named(value: number, unit: string): Piece {
  return { value, text: `${Number(value.toPrecision(4))} ${unit}`, binds: 'figure' };
}

export function plus(...pieces: readonly Piece[]): Piece {
  return {
    value: pieces.reduce((total, { value }) => total + value, 0),
    text: pieces.map(({ text }) => text).join(' + '),
    binds: pieces.length === 1 ? (pieces[0]?.binds ?? 'figure') : 'sum',
  };
}

export function minus(a: Piece, b: Piece): Piece {
  return { value: a.value - b.value, text: `${a.text} \u2212 ${bracketed(b, 'sum')}`, binds: 'sum' };
}

export function times(...pieces: readonly Piece[]): Piece {
  return {
    value: pieces.reduce((product, { value }) => product * value, 1),
    text: pieces.map((piece) => (piece.binds === 'sum' ? `(${piece.text})` : piece.text)).join(' \u00d7 '),
    binds: 'product',
  };
}

/** A quotient; by nothing it is infinite, and nothing by nothing is nothing. */
export function over(a: Piece, b: Piece): Piece {
  const value = b.value === 0 ? (a.value === 0 ? 0 : Number.POSITIVE_INFINITY) : a.value / b.value;
  const above = a.binds === 'sum' ? `(${a.text})` : a.text;
  return { value, text: `${above} / ${bracketed(b, 'product')}`, binds: 'product' };
}

/** Always in brackets: the unit is squared too. */
export function squared(a: Piece): Piece {
  return { value: a.value * a.value, text: `(${a.text})\u00b2`, binds: 'figure' };
}

/** The natural logarithm. */
export function logarithm(a: Piece): Piece {
  return { value: Math.log(a.value), text: `ln(${a.text})`, binds: 'figure' };
}

/** Two resistances side by side. */
export function besideEachOther(a: Piece, b: Piece): Piece {
  return over(times(a, b), plus(a, b));
}

function bracketed({ text, binds }: Piece, from: 'sum' | 'product'): string {
  return binds === 'sum' || (from === 'product' && binds === 'product') ? `(${text})` : text;
}

/** The finished sum of a piece. */
export function sumOf({ value, text }: Piece, unit: Unit): Sum {
  const result = value === Number.POSITIVE_INFINITY ? 'unlimited' : formatQuantity(value, unit);
  return { value, unit, text: text === result ? text : `${text} = ${result}` };
}

/** The finished sum of a piece whose result has no unit: a ratio, a count. */
export function ratioOf({ value, text }: Piece): Sum {
  return { value, unit: 'number', text: `${text} = ${plain(value).text}` };
}

/** The finished sum of a temperature. */
export function degreesOf({ value, text }: Piece): Sum {
  return { value, unit: 'degC', text: `${text} = ${Number(value.toFixed(1))} degC` };
}

/** Figures beyond these are slips of the keyboard, and would leave what numbers can hold. */
const LARGEST = 1e15;
const SMALLEST = 1e-18;

/** The first of the named figures that is no usable number above zero, as a clause; undefined where all are. */
export function faultIn(figures: Readonly<Record<string, number>>): string | undefined {
  for (const [name, value] of Object.entries(figures)) {
    if (!Number.isFinite(value)) return `the ${name} is not a number`;
    if (value <= 0) return `the ${name} must be above zero`;
    if (value > LARGEST || value < SMALLEST) return `the ${name} is beyond anything in a build`;
  }
  return undefined;
}
