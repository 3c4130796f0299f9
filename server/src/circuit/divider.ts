/**
 * Two resistors that make a smaller voltage out of a larger one: for an analogue input, or to shift a 5 V output down
 * to a 3.3 V input. The choice holds at every corner of the tolerances.
 */
import { formatQuantity } from '../base/quantity';
import type { Range } from '../base/range';
import { usableValues } from './resistor-pair';
import {
  besideEachOther,
  faultIn,
  figure,
  over,
  plus,
  refused,
  type Sized,
  type Sum,
  sumOf,
  times,
} from './sum';

export interface DividerWish {
  /** Volts that are divided. */
  readonly input: Range;
  /** Volts wanted at the highest input. */
  readonly wanted: number;
  /** Volts that must not be passed; the wanted ones where absent. */
  readonly atMost?: number;
  /** Volts that must be reached at the lowest input, as for a high level; nothing where absent. */
  readonly atLeast?: number;
  /** Ohms of what hangs on the output; nothing where absent. */
  readonly loadOhms?: number;
  /** Amperes that the divider may take; 1 mA where absent. */
  readonly maxAmps?: number;
  /** Ohms that the output may look like from the input behind it; 10 kohm where absent. */
  readonly maxSourceOhms?: number;
  readonly stock: readonly number[];
  readonly tolerance: number;
}

export interface SizedDivider {
  /** Ohms from the input to the output, and from the output to the return. */
  readonly top: number;
  readonly bottom: number;
  /** Volts at the output, over all tolerances. */
  readonly output: Range;
  readonly sum: Sum;
}

/** 10 kohm: up to this most analogue inputs settle in time (ATmega328P data sheet, ADC chapter, from memory). */
const SOURCE_OHMS = 10_000;
const DIVIDER_AMPS = 0.001;

/** Volts at the output of a divider. */
export function dividedVolts(input: number, top: number, bottom: number, loadOhms = Infinity): number {
  const lower = Number.isFinite(loadOhms) ? (bottom * loadOhms) / (bottom + loadOhms) : bottom;
  return (input * lower) / (top + lower);
}

/** The pair that comes nearest below the limit; of equally near ones the one that takes least current. */
export function sizeDivider(wish: DividerWish): Sized<SizedDivider> {
  const { input, wanted, atMost = wanted, atLeast = 0, loadOhms, tolerance } = wish;
  const { maxAmps = DIVIDER_AMPS, maxSourceOhms = SOURCE_OHMS } = wish;
  const fault =
    faultIn({ input: input.max, 'wanted voltage': wanted, current: maxAmps, load: loadOhms ?? 1 }) ??
    (tolerance >= 0 && tolerance < 1 ? undefined : 'the tolerance must lie between 0 and 100 %') ??
    (wanted < input.max ? undefined : 'a divider only makes less of a voltage') ??
    (atLeast <= atMost ? undefined : 'the least wanted voltage lies above the highest allowed one');
  if (fault !== undefined) {
    return refused(fault);
  }
  const values = usableValues(wish.stock);
  let best: SizedDivider | undefined;
  let bestError = Number.POSITIVE_INFINITY;
  for (const bottom of values) {
    for (const top of values) {
      const source = (top * bottom) / (top + bottom);
      const amps = input.max / ((top + bottom) * (1 - tolerance));
      if (source > maxSourceOhms || amps > maxAmps) continue;
      const output = outputOf(wish, top, bottom);
      if (output.max > atMost * (1 + 1e-12) || output.min < atLeast) continue;
      const error = Math.abs(dividedVolts(input.max, top, bottom, loadOhms) - wanted);
      const nearer = error < bestError * (1 - 1e-9);
      const gentler = error <= bestError * (1 + 1e-9) && best && top + bottom > best.top + best.bottom;
      if (nearer || gentler) {
        best = { top, bottom, output, sum: explainDivider(input.max, top, bottom, loadOhms) };
        bestError = error;
      }
    }
  }
  if (best === undefined) {
    const limits = `${formatQuantity(atLeast, 'V')} to ${formatQuantity(atMost, 'V')}`;
    return refused(`no two values of the stock keep the output within ${limits} at all tolerances`);
  }
  const amps = sumOf(
    over(figure(input.max, 'V'), plus(figure(best.top, 'ohm'), figure(best.bottom, 'ohm'))),
    'A',
  );
  const source = sumOf(besideEachOther(figure(best.top, 'ohm'), figure(best.bottom, 'ohm')), 'ohm');
  return { ok: true, ...best, sums: [best.sum, amps, source] };
}

function outputOf({ input, tolerance, loadOhms }: DividerWish, top: number, bottom: number): Range {
  const [less, more] = [1 - tolerance, 1 + tolerance];
  return {
    min: dividedVolts(input.min, top * more, bottom * less, loadOhms),
    typ: dividedVolts(input.typ, top, bottom, loadOhms),
    max: dividedVolts(input.max, top * less, bottom * more, loadOhms),
  };
}

/** "5.0 V × 2 kohm / (1 kohm + 2 kohm) = 3.3 V"; a load counts beside the lower one. */
export function explainDivider(input: number, top: number, bottom: number, loadOhms?: number): Sum {
  const beside = loadOhms === undefined ? bottom : (bottom * loadOhms) / (bottom + loadOhms);
  const lower = figure(beside, 'ohm');
  return sumOf(over(times(figure(input, 'V'), lower), plus(figure(top, 'ohm'), lower)), 'V');
}
