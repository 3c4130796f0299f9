/**
 * Figures of part kinds and boards as ranges of SI numbers. A figure in a part kind may depend on what the manifest
 * says about the one part; this is the only place that knows how.
 */
import { parseQuantity, parseTolerance, type Quantity, type Unit } from '../base/quantity';
import { exactly, type Range, within } from '../base/range';
import type { Figure, ParameterFigure, RangeFigure } from './generated/part';

/** `ratio` is typed in per cent, `number` is a bare count or gain. */
export type FigureUnit = Unit | 'ratio' | 'number';

export type ParameterValue = string | number | boolean;
/** What is known of one part: parameters with the manifest's value or their default. */
export type ParameterValues = ReadonlyMap<string, ParameterValue>;

/** The unit of each figure of a primitive, by its key. */
export const figureUnits: Readonly<Record<string, FigureUnit>> = {
  ohms: 'ohm',
  farads: 'F',
  volts: 'V',
  maxVolts: 'V',
  maxReverseVolts: 'V',
  visibleAmps: 'A',
  amps: 'A',
  atAmps: 'A',
  maxAmps: 'A',
  maxWatts: 'W',
  ampHours: 'Ah',
  gain: 'number',
  dropout: 'V',
  efficiency: 'ratio',
  breakdownVolts: 'V',
  breakdownAmps: 'A',
  lowVolts: 'V',
  highVolts: 'V',
  lowShare: 'ratio',
  highShare: 'ratio',
  fullVolts: 'V',
  maxControlVolts: 'V',
};

export type RangeResult =
  | { readonly ok: true; readonly value: Range }
  | { readonly ok: false; readonly why: string };

/** Reads a figure as typed, of a file that may not follow its schema. @returns The value, or why it is none. */
export function parseFigure(text: unknown, unit: FigureUnit): Quantity {
  if (typeof text !== 'string' && typeof text !== 'number') {
    return { ok: false, why: 'it must be text in quotes or a number' };
  }
  if (unit === 'ratio') return parseTolerance(text);
  if (unit !== 'number') return parseQuantity(text, unit);
  const value =
    typeof text === 'number' ? text : /^\s*\d+(\.\d+)?\s*$/.test(text) ? Number(text) : Number.NaN;
  return Number.isFinite(value) && value >= 0
    ? { ok: true, value }
    : { ok: false, why: 'it must be a plain number' };
}

/** Missing ends of a range are taken from those given; the usual value of a bare span lies in its middle. */
export function fillRange(min?: number, typ?: number, max?: number): Range | undefined {
  const low = min ?? typ ?? max;
  const high = max ?? typ ?? min;
  if (low === undefined || high === undefined) return undefined;
  return { min: low, typ: typ ?? (low + high) / 2, max: high };
}

/** The range of a figure that is written out: a quantity, or an object of min, typ and max. */
export function literalRange(figure: string | number | RangeFigure, unit: FigureUnit): RangeResult {
  if (typeof figure !== 'object') {
    const read = parseFigure(figure, unit);
    return read.ok ? { ok: true, value: exactly(read.value) } : read;
  }
  const values: { min?: number; typ?: number; max?: number } = {};
  for (const key of ['min', 'typ', 'max'] as const) {
    const text = figure[key];
    if (text === undefined) continue;
    const read = parseFigure(text, unit);
    if (!read.ok) return read;
    values[key] = read.value;
  }
  const value = fillRange(values.min, values.typ, values.max);
  if (value === undefined) return { ok: false, why: 'it has none of min, typ and max' };
  if (!(value.min <= value.typ && value.typ <= value.max)) {
    return { ok: false, why: 'min, typ and max must not fall' };
  }
  return { ok: true, value };
}

/**
 * The range a figure has for one part.
 * @returns undefined where it hangs on a parameter without a value.
 */
export function resolveFigure(
  figure: Figure,
  unit: FigureUnit,
  values: ParameterValues,
): RangeResult | undefined {
  if (typeof figure !== 'object') return literalRange(figure, unit);
  if ('parameter' in figure) return resolveParameter(figure, unit, values);
  if (!('table' in figure)) return literalRange(figure, unit);
  const word = values.get(figure.by);
  const row = word === undefined ? undefined : ownValue(figure.table, String(word));
  if (row !== undefined) return literalRange(row, unit);
  return figure.otherwise === undefined ? undefined : resolveFigure(figure.otherwise, unit, values);
}

function resolveParameter(
  figure: ParameterFigure,
  unit: FigureUnit,
  values: ParameterValues,
): RangeResult | undefined {
  const given = values.get(figure.parameter);
  if (given === undefined || typeof given === 'boolean') {
    return figure.otherwise === undefined ? undefined : resolveFigure(figure.otherwise, unit, values);
  }
  const times = figure.times === undefined ? undefined : literalRange(figure.times, unit);
  if (times?.ok === false) return times;
  const read = parseFigure(given, times === undefined ? unit : 'number');
  if (!read.ok) return read;
  const tolerance = resolveTolerance(figure.tolerance, values);
  if (!tolerance.ok) return tolerance;
  const range = within(read.value, tolerance.value);
  if (times === undefined) return { ok: true, value: range };
  const { min, typ, max } = times.value;
  return { ok: true, value: { min: range.min * min, typ: range.typ * typ, max: range.max * max } };
}

function resolveTolerance(tolerance: ParameterFigure['tolerance'], values: ParameterValues): Quantity {
  if (tolerance === undefined) return { ok: true, value: 0 };
  const text = typeof tolerance === 'object' ? values.get(tolerance.parameter) : tolerance;
  if (text === undefined || typeof text === 'boolean') return { ok: true, value: 0 };
  return parseTolerance(text);
}

/** The value of an own key: tables are keyed by what people type, and `constructor` is no row. */
export function ownValue<T>(table: Readonly<Record<string, T>>, key: string): T | undefined {
  return Object.hasOwn(table, key) ? table[key] : undefined;
}
