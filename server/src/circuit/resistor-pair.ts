/**
 * Two resistors where one value does not do: in series they add, in parallel their conductances do. What can be built
 * out of a drawer is listed once and searched by ratio.
 */
import { besideEachOther, figure, plus, refused, type Sized, type Sum, sumOf } from './sum';

export interface Built {
  readonly ohms: number;
  readonly join: 'single' | 'series' | 'parallel';
  /** One or two values, ohms, the smaller first. */
  readonly values: readonly number[];
}

/** Values of a drawer that are looked at; a longer drawer has its neighbours closer than any tolerance. */
const MOST_VALUES = 1200;

/** The values of a stock that can be soldered in: above zero, each once, ascending. */
export function usableValues(stock: readonly number[]): readonly number[] {
  return [...new Set(stock.filter((ohms) => ohms > 0 && Number.isFinite(ohms)))].sort((a, b) => a - b);
}

/** The value nearest to `ohms` by ratio in an ascending list that is not empty. */
function nearestOf(values: readonly number[], ohms: number): number {
  let [low, high] = [0, values.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((values[middle] ?? 0) < ohms) low = middle + 1;
    else high = middle;
  }
  const [above, below] = [values[low] ?? ohms, values[low - 1]];
  return below !== undefined && Math.abs(Math.log(below / ohms)) < Math.abs(Math.log(above / ohms))
    ? below
    : above;
}

/**
 * What comes nearest to a resistance with one or two resistors of the stock. One resistor is preferred while it lies
 * within `near` of the wish (relative), since every further one is two more joints to solder.
 */
export function buildResistance(
  ohms: number,
  stock: readonly number[],
  near = 0.02,
): Sized<Built & { readonly error: number; readonly sum: Sum }> {
  if (!(ohms > 0 && Number.isFinite(ohms))) {
    return refused('the wanted resistance must be a number above zero');
  }
  const values = usableValues(stock).slice(0, MOST_VALUES);
  if (values.length === 0) {
    return refused('the stock has no resistor');
  }
  const single = nearestOf(values, ohms);
  let best: Built = { ohms: single, join: 'single', values: [single] };
  const error = ({ ohms: value }: Built): number => Math.abs(Math.log(value / ohms));
  if (error(best) > Math.log1p(near)) {
    for (const pair of pairsNear(values, ohms)) {
      if (error(pair) < error(best)) best = pair;
    }
  }
  const sum = explainBuilt(best);
  return { ok: true, ...best, error: best.ohms / ohms - 1, sum, sums: [sum] };
}

/** For each value its best partner in series and in parallel. */
function* pairsNear(values: readonly number[], ohms: number): Generator<Built> {
  for (const value of values) {
    if (value < ohms) {
      const partner = nearestOf(values, ohms - value);
      yield makePair(value, partner, 'series');
    } else if (value > ohms) {
      const partner = nearestOf(values, (value * ohms) / (value - ohms));
      yield makePair(value, partner, 'parallel');
    }
  }
}

export function makePair(a: number, b: number, join: 'series' | 'parallel'): Built {
  const values = a <= b ? [a, b] : [b, a];
  return { ohms: join === 'series' ? a + b : (a * b) / (a + b), join, values };
}

export function explainBuilt({ values, join, ohms }: Built): Sum {
  const [a, b] = values.map((value) => figure(value, 'ohm'));
  if (a === undefined || b === undefined) {
    return sumOf(figure(ohms, 'ohm'), 'ohm');
  }
  return sumOf(join === 'series' ? plus(a, b) : besideEachOther(a, b), 'ohm');
}

/** The share of the whole power that each resistor of a pair takes, in the order of its values. */
export function powerShares({ values, join }: Built): readonly number[] {
  const [a = 1, b] = values;
  if (b === undefined) {
    return [1];
  }
  return join === 'series' ? [a / (a + b), b / (a + b)] : [b / (a + b), a / (a + b)];
}
