/** Figures of the circuit engine for people: what a meter cannot show is nothing, and a wide range keeps its digits. */
import { formatQuantity, formatRange } from '../base/quantity';
import type { Range } from '../base/range';

/** Below this a voltmeter shows zero, volts. */
const leastVolts = 1e-3;

/** "4.4 / 5.0 / 5.3 V", "0 V". */
export function voltWords(range: Range): string {
  const clean = (value: number) => (Math.abs(value) < leastVolts ? 0 : value);
  return formatRange({ min: clean(range.min), typ: clean(range.typ), max: clean(range.max) }, 'V');
}

/** "3.5 / 6.0 / 7.6 mA" without its sign; over more than a decade and a half each in its own scale. */
export function ampWords(range: Range): string {
  const { min, typ, max } = magnitude(range);
  if (min > 0 && max / min > 30) return [min, typ, max].map((amps) => formatQuantity(amps, 'A')).join(' / ');
  return formatRange({ min, typ, max }, 'A');
}

const ohmScales: readonly (readonly [number, string])[] = [
  [1e6, 'Mohm'],
  [1e3, 'kohm'],
  [1, 'ohm'],
];

/** "0.95 / 1 / 1.05 kohm": three digits each, since a tolerance is told apart by the third. */
export function ohmWords({ min, typ, max }: Range): string {
  const [size, name] = ohmScales.find(([from]) => max >= from) ?? [1, 'ohm'];
  // To nine digits first, for 346.5 is a trifle less after the sum and must not go down.
  const digits = (ohms: number) => String(Number(Number((ohms / size).toPrecision(9)).toPrecision(3)));
  const texts = [min, typ, max].map(digits);
  return new Set(texts).size === 1 ? `${texts[1]} ${name}` : `${texts.join(' / ')} ${name}`;
}

/** A range without its sign, the lowest first. */
export function magnitude(range: Range): Range {
  const typ = Math.abs(range.typ);
  const [a, b] = [Math.abs(range.min), Math.abs(range.max)];
  if (range.min < 0 && range.max > 0) return { min: 0, typ, max: Math.max(a, b) };
  return { min: Math.min(a, b), typ, max: Math.max(a, b) };
}
