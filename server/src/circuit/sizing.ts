/**
 * Chooses the series resistor of a lamp out of the values somebody can buy: safe at the worst corner of all
 * tolerances, and as near to the wanted current as the drawer allows.
 */
import { formatQuantity } from '../base/quantity';
import { type Range, within } from '../base/range';
import { quickAmps, seriesAmps, seriesAmpsOnCurve, seriesSum } from './series-sum';
import type { Sum } from './sum';

export interface SeriesWish {
  /** Volts of the supply or of the pin without load. */
  readonly supply: Range;
  /** Forward volts of the lamp; all zero where it is neglected. */
  readonly forward: Range;
  /** Current the forward volts were measured at, amperes. Without it the drop counts as constant. */
  readonly atAmps?: number;
  /** Ohms inside the pin or the supply. */
  readonly sourceOhms: Range;
  /** Wanted current, amperes. Without it the brightest safe value is taken. */
  readonly wantedAmps?: number;
  /** What may flow at the worst corner, amperes: the least of the pin's and the lamp's limits. */
  readonly limitAmps: number;
  /** Values that can be bought, ohms. */
  readonly stock: readonly number[];
  /** Relative tolerance of the stock. */
  readonly tolerance: number;
  /** Watts one resistor of the stock stands. Without it the power is reported and not held against a value. */
  readonly watts?: number;
}

export interface SizedResistor {
  readonly ok: true;
  readonly ohms: number;
  /** Amperes at the corners. */
  readonly amps: Range;
  /** Watts in the resistor at its worst corner. */
  readonly watts: number;
  /** The quick sums, amperes: with the lamp's drop neglected, and with it constant at its typical figure. */
  readonly quick: { readonly neglected: number; readonly constantDrop: number };
  /** The sum with the constant drop in words, and the same with its value. */
  readonly sum: string;
  readonly sums: readonly Sum[];
}

/** The choice, or why nothing fits: a clause without capital and full stop. */
export type Sizing = SizedResistor | { readonly ok: false; readonly why: string };

export function sizeSeriesResistor(wish: SeriesWish): Sizing {
  const fault = faultOf(wish);
  if (fault !== undefined) {
    return { ok: false, why: fault };
  }
  const values = [...new Set(wish.stock)]
    .filter((ohms) => ohms > 0 && Number.isFinite(ohms))
    .sort((a, b) => a - b);
  const largest = values.at(-1);
  if (largest === undefined) {
    return { ok: false, why: 'the stock has no resistor' };
  }
  const sized = values.map((ohms) => sizeWith(wish, ohms));
  const safe = sized.filter(({ amps }) => amps.max <= wish.limitAmps);
  if (safe.length === 0) {
    return { ok: false, why: tooSmall(wish, largest) };
  }
  const cool = safe.filter(({ watts }) => wish.watts === undefined || watts <= wish.watts);
  const [first] = cool;
  if (first === undefined) {
    const watts = Math.min(...safe.map((candidate) => candidate.watts));
    const allowed = formatQuantity(wish.watts ?? 0, 'W');
    return { ok: false, why: `the resistor would take ${formatQuantity(watts, 'W')} and stands ${allowed}` };
  }
  const wanted = wish.wantedAmps;
  if (wanted === undefined) {
    return first;
  }
  // Ascending values: of two that are equally near the later one wins, which is the gentler.
  const distance = (candidate: SizedResistor): number => Math.abs(candidate.amps.typ - wanted);
  return cool.reduce((best, candidate) => (distance(candidate) <= distance(best) ? candidate : best), first);
}

/** Currents and power with one certain resistor, whatever the limits say. */
export function sizeWith(wish: Omit<SeriesWish, 'limitAmps' | 'stock'>, ohms: number): SizedResistor {
  const resistor = within(ohms, wish.tolerance);
  const amps = {
    min: ampsAt(wish, wish.supply.min, wish.forward.max, resistor.max, wish.sourceOhms.max),
    typ: ampsAt(wish, wish.supply.typ, wish.forward.typ, ohms, wish.sourceOhms.typ),
    max: ampsAt(wish, wish.supply.max, wish.forward.min, resistor.min, wish.sourceOhms.min),
  };
  // The power has its maximum where resistor and source are equal, so either end of the tolerance can be the worse.
  const powers = [resistor.min, resistor.max].map(
    (value) => ampsAt(wish, wish.supply.max, wish.forward.min, value, wish.sourceOhms.min) ** 2 * value,
  );
  const run = { supply: wish.supply.typ, forward: wish.forward.typ, ohms, sourceOhms: wish.sourceOhms.typ };
  const sum = seriesSum(run);
  return {
    ok: true,
    ohms,
    amps,
    watts: Math.max(...powers),
    quick: { neglected: quickAmps(wish.supply.typ, ohms), constantDrop: seriesAmps(run) },
    sum: sum.text,
    sums: [sum],
  };
}

function ampsAt(
  wish: Pick<SeriesWish, 'atAmps'>,
  supply: number,
  forward: number,
  ohms: number,
  sourceOhms: number,
): number {
  const run = { supply, forward, ohms, sourceOhms };
  return wish.atAmps === undefined ? seriesAmps(run) : seriesAmpsOnCurve(run, wish.atAmps);
}

function faultOf(wish: SeriesWish): string | undefined {
  const ranges = [wish.supply, wish.forward, wish.sourceOhms];
  const figures = [...ranges.flatMap(({ min, typ, max }) => [min, typ, max]), wish.limitAmps, wish.tolerance];
  if (![...figures, wish.wantedAmps ?? 1, wish.atAmps ?? 1, wish.watts ?? 1].every(Number.isFinite)) {
    return 'a figure of the sum is missing';
  }
  if (wish.sourceOhms.min < 0 || wish.forward.min < 0 || wish.tolerance < 0 || wish.tolerance >= 1) {
    return 'a figure of the sum is out of its range';
  }
  if (wish.limitAmps <= 0 || (wish.wantedAmps ?? 1) <= 0 || (wish.atAmps ?? 1) <= 0) {
    return 'a current must be above zero';
  }
  if (wish.supply.max <= 0) {
    return `${formatQuantity(wish.supply.max, 'V')} drives nothing`;
  }
  if (wish.supply.typ <= wish.forward.typ) {
    const supply = formatQuantity(wish.supply.typ, 'V');
    return `the supply gives ${supply} and the lamp needs ${formatQuantity(wish.forward.typ, 'V')}`;
  }
  return undefined;
}

function tooSmall(wish: SeriesWish, largest: number): string {
  const { amps } = sizeWith(wish, largest);
  const volts = wish.supply.max - wish.forward.min;
  const needed = Math.max(0, volts / wish.limitAmps - wish.sourceOhms.min) / (1 - wish.tolerance);
  return (
    `the largest in stock, ${formatQuantity(largest, 'ohm')}, lets ${formatQuantity(amps.max, 'A')} through at the ` +
    `worst corner; ${formatQuantity(wish.limitAmps, 'A')} are allowed, which takes about ` +
    formatQuantity(Math.ceil(needed), 'ohm')
  );
}
