/**
 * A resistor and a capacitor as a clock: the delay that holds a chip in reset until its supply stands, and the time
 * that swallows the bounce of a contact.
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

/** Seconds until a capacitor that charges from nothing towards `supply` reaches `threshold`. */
export function chargeTime(ohms: number, farads: number, supply: number, threshold: number): Sum {
  const rest = minus(plain(1), over(figure(threshold, 'V'), figure(supply, 'V')));
  const turned = over(plain(1), rest);
  return sumOf(times(figure(ohms, 'ohm'), figure(farads, 'F'), logarithm(turned)), 's');
}

/** Seconds until a capacitor that discharges from `supply` towards nothing falls to `threshold`. */
export function dischargeTime(ohms: number, farads: number, supply: number, threshold: number): Sum {
  const ratio = over(figure(supply, 'V'), figure(threshold, 'V'));
  return sumOf(times(figure(ohms, 'ohm'), figure(farads, 'F'), logarithm(ratio)), 's');
}

export interface DelayWish {
  /** Volts of the supply. */
  readonly supply: number;
  /** Volts at which the input changes its mind: the lowest where the line rises, the highest where it falls. */
  readonly threshold: number;
  /** Whether the capacitor charges through the resistor (reset, released key) or discharges (pressed key). */
  readonly edge: 'rise' | 'fall';
  /** Seconds to reach at the least. */
  readonly seconds: number;
  readonly farads: number;
  /** Relative tolerance of the capacitor; 0.2 where absent. */
  readonly faradTolerance?: number;
  /** Ohms that the resistor must not exceed, as for an input's leakage; 100 kohm where absent. */
  readonly mostOhms?: number;
  readonly stock: readonly number[];
  readonly tolerance: number;
}

const FARAD_TOLERANCE = 0.2;
const MOST_OHMS = 100_000;

/** The smallest resistor of the stock that makes the delay at the short end of all tolerances. */
export function sizeDelay(
  wish: DelayWish,
): Sized<{ readonly ohms: number; readonly seconds: number; readonly sum: Sum }> {
  const { supply, threshold, edge, seconds, farads, tolerance } = wish;
  const { faradTolerance = FARAD_TOLERANCE, mostOhms = MOST_OHMS } = wish;
  const fault =
    faultIn({ supply, threshold, time: seconds, capacitance: farads, 'largest resistance': mostOhms }) ??
    (threshold < supply ? undefined : 'the threshold is never reached: it lies at the supply or above') ??
    ([tolerance, faradTolerance].every((value) => value >= 0 && value < 1)
      ? undefined
      : 'a tolerance must lie between 0 and 100 %');
  if (fault !== undefined) {
    return refused(fault);
  }
  const time = edge === 'rise' ? chargeTime : dischargeTime;
  const shortest = (ohms: number): Sum =>
    time(ohms * (1 - tolerance), farads * (1 - faradTolerance), supply, threshold);
  const ohms = usableValues(wish.stock).find(
    (value) => value <= mostOhms && shortest(value).value >= seconds * (1 - 1e-9),
  );
  if (ohms === undefined) {
    const needed = formatQuantity(seconds / shortest(1).value, 'ohm');
    return refused(
      `${formatQuantity(farads, 'F')} would take ${needed}, and the stock has none up to ` +
        `${formatQuantity(mostOhms, 'ohm')}: take a larger capacitor`,
    );
  }
  const usual = time(ohms, farads, supply, threshold);
  return { ok: true, ohms, seconds: usual.value, sum: usual, sums: [usual, shortest(ohms)] };
}
