/**
 * The values that resistors and capacitors are sold in. A sum that ends at 293 ohm is of no use to somebody with a
 * drawer of E12; this finds the drawer.
 * Source: IEC 60063 (2015), preferred number series. E3 to E24 are historical and follow no formula; E48 to E192
 * are 10^(n/N) rounded to three digits, with the one exception 9.20 in E192.
 */
import { decadeHundredths, type PreferredSeries, preferredSeries } from '../base/preferred-series';

/** Names of the series; the number counts the values in a decade. */
export const SERIES_NAMES = preferredSeries;
export type SeriesName = PreferredSeries;

const HUNDREDTHS = new Map(SERIES_NAMES.map((name) => [name, decadeHundredths(name)]));

function hundredthsOf(name: SeriesName): readonly number[] {
  return HUNDREDTHS.get(name) ?? [];
}

/** The series of that name, in any case ("e12"), or undefined. */
export function seriesName(text: string): SeriesName | undefined {
  const wanted = text.trim().toUpperCase();
  return SERIES_NAMES.find((name) => name === wanted);
}

/** The values of one decade, 1 up to but not including 10, ascending. */
export function series(name: SeriesName): readonly number[] {
  return hundredthsOf(name).map((value) => value / 100);
}

/** All values of a series from `low` to `high` inclusive, ascending; none where a bound is not above zero. */
export function valuesBetween(name: SeriesName, low: number, high: number): readonly number[] {
  if (!(low > 0) || !Number.isFinite(high)) {
    return [];
  }
  const found: number[] = [];
  for (let decade = decadeOf(low); decade <= decadeOf(high); decade += 1) {
    for (const hundredths of hundredthsOf(name)) {
      const value = valueIn(hundredths, decade);
      if (value >= low * (1 - 1e-12) && value <= high * (1 + 1e-12)) {
        found.push(value);
      }
    }
  }
  return found;
}

/** The smallest value of the series that is not below `value`. @throws RangeError unless `value` is above zero. */
export function next(value: number, name: SeriesName): number {
  const [first] = valuesBetween(name, checked(value), value * 10);
  return first ?? value;
}

/** The greatest value of the series that is not above `value`. @throws RangeError unless `value` is above zero. */
export function previous(value: number, name: SeriesName): number {
  return valuesBetween(name, checked(value) / 10, value).at(-1) ?? value;
}

/** The value of the series nearest by ratio, the higher of two. @throws RangeError unless `value` is above zero. */
export function nearest(value: number, name: SeriesName): number {
  const above = next(value, name);
  const below = previous(value, name);
  return above / value <= value / below ? above : below;
}

/** True where the series holds the value. */
export function isPreferred(value: number, name: SeriesName): boolean {
  return value > 0 && Number.isFinite(value) && valuesBetween(name, value, value).length > 0;
}

function checked(value: number): number {
  if (!(value > 1e-300 && value < 1e300)) {
    throw new RangeError(`no preferred number is near ${value}`);
  }
  return value;
}

function decadeOf(value: number): number {
  return Math.floor(Math.log10(value) + 1e-12);
}

/** Goes through text so that 4.7 kohm is 4700 and not 4700.000000000001. */
function valueIn(hundredths: number, decade: number): number {
  return Number(`${hundredths}e${decade - 2}`);
}
