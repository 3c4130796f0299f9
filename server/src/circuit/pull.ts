/**
 * The resistor that holds a line at its rest level: pull-up or pull-down. Too small, and whoever moves the line carries
 * too much; too large, and leakage or the line's capacitance wins.
 * Source: UM10204, I2C-bus specification, section 7.1 (rise from 0.3 to 0.7 of the supply takes 0.8473 RC), and
 * SLVA689 for the same with an example.
 */
import { formatQuantity } from '../base/quantity';
import { usableValues } from './resistor-pair';
import {
  faultIn,
  figure,
  logarithm,
  minus,
  over,
  plain,
  refused,
  type Sized,
  type Sum,
  sumOf,
  times,
} from './sum';

export interface PullWish {
  /** Volts between the line's rest level and its other rail, the highest. */
  readonly supply: number;
  /** Amperes that whoever moves the line away may carry. */
  readonly moverAmps: number;
  /** Volts that the mover leaves on the line at those amperes (VOL for a pull-up); 0 where absent. */
  readonly moverVolts?: number;
  /** Amperes of leakage of all that hangs on the line. */
  readonly leakageAmps?: number;
  /** Volts that the line may lose to the leakage: the supply less the level that still reads as rest. */
  readonly lossVolts?: number;
  /** The line's capacitance, farads, and how long its edge may take from 0.3 to 0.7 of the supply, seconds. */
  readonly edge?: { readonly farads: number; readonly seconds: number };
  /** Values that can be bought, ohms. */
  readonly stock: readonly number[];
  /** Relative tolerance of the stock. */
  readonly tolerance: number;
}

export interface SizedPull {
  readonly ohms: number;
  /** Limits of the value itself, ohms; the upper one is infinite where nothing asks for one. */
  readonly least: Sum;
  readonly most: Sum;
}

/** A value out of the stock between the two limits, nearest to their geometric mean; 10 kohm where none is above. */
export function sizePull(wish: PullWish): Sized<SizedPull> {
  const { supply, moverAmps, moverVolts = 0, leakageAmps = 0, lossVolts = 0, edge, tolerance } = wish;
  const fault =
    faultIn({ supply, "mover's current": moverAmps }) ??
    (edge && faultIn({ capacitance: edge.farads, 'edge time': edge.seconds })) ??
    (tolerance >= 0 && tolerance < 1 ? undefined : 'the tolerance must lie between 0 and 100 %') ??
    (moverVolts >= 0 && moverVolts < supply ? undefined : 'the mover leaves nothing of the supply') ??
    (leakageAmps > 0 && !(lossVolts > 0) ? 'the line may not lose anything, but it leaks' : undefined);
  if (fault !== undefined) {
    return refused(fault);
  }
  const left = minus(figure(supply, 'V'), figure(moverVolts, 'V'));
  const least = sumOf(over(moverVolts === 0 ? figure(supply, 'V') : left, figure(moverAmps, 'A')), 'ohm');
  const limits: Sum[] = [];
  if (leakageAmps > 0) {
    limits.push(sumOf(over(figure(lossVolts, 'V'), figure(leakageAmps, 'A')), 'ohm'));
  }
  if (edge) {
    const constants = logarithm(over(plain(0.7), plain(0.3)));
    limits.push(sumOf(over(figure(edge.seconds, 's'), times(constants, figure(edge.farads, 'F'))), 'ohm'));
  }
  const most = limits.reduce((a, b) => (b.value < a.value ? b : a), {
    value: Number.POSITIVE_INFINITY,
    unit: 'ohm',
    text: 'nothing asks for an upper limit',
  } as Sum);
  if (least.value > most.value) {
    return refused(`the limits contradict each other: at least ${least.text}, at most ${most.text}`);
  }
  const fitting = usableValues(wish.stock).filter(
    (ohms) => ohms * (1 - tolerance) >= least.value && ohms * (1 + tolerance) <= most.value,
  );
  const middle = Number.isFinite(most.value)
    ? Math.sqrt(least.value * most.value)
    : Math.max(10_000, least.value);
  const distance = (ohms: number): number => Math.abs(Math.log(ohms / middle));
  const [first] = fitting;
  if (first === undefined) {
    const to = Number.isFinite(most.value) ? ` to ${formatQuantity(most.value, 'ohm')}` : ' upwards';
    return refused(`the stock has nothing from ${formatQuantity(least.value, 'ohm')}${to}`);
  }
  const ohms = fitting.reduce((best, value) => (distance(value) < distance(best) ? value : best), first);
  const carried = sumOf(over(moverVolts === 0 ? figure(supply, 'V') : left, figure(ohms, 'ohm')), 'A');
  return { ok: true, ohms, least, most, sums: [least, most, carried] };
}
