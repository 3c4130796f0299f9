/**
 * Which power rating a resistor needs. A film resistor stands its rating up to 70 degC around it and nothing at its
 * film's limit, so the rating is chosen with room, and with less of it in a warm box.
 * Sources: ratings as sold, 70 degC and 155 degC as in common film resistors' data sheets (both from memory); twice the
 * power as room is common practice.
 */
import {
  faultIn,
  figure,
  named,
  over,
  plain,
  refused,
  type Sized,
  type Sum,
  squared,
  sumOf,
  times,
} from './sum';

/** Ratings as sold, watts. */
export const POWER_RATINGS: readonly number[] = [0.125, 0.25, 0.5, 1, 2, 3, 5, 10];

const FULL_TO_DEGREES = 70;
const NOTHING_AT_DEGREES = 155;

/** The share of its rating that a film resistor stands at a temperature around it. */
export function derating(degrees: number): number {
  const share = (NOTHING_AT_DEGREES - degrees) / (NOTHING_AT_DEGREES - FULL_TO_DEGREES);
  return Math.min(1, Math.max(0, share));
}

export interface PowerWish {
  /** Amperes at the worst corner. */
  readonly amps: number;
  readonly ohms: number;
  /** Rating over power; 2 where absent. */
  readonly room?: number;
  /** degC around the resistor; 25 where absent. */
  readonly degrees?: number;
  /** Watts to choose from; those sold where absent. */
  readonly ratings?: readonly number[];
}

/** The smallest rating that stands the power with room. */
export function sizePowerRating(
  wish: PowerWish,
): Sized<{ readonly watts: number; readonly rating: number; readonly sum: Sum }> {
  const { amps, ohms, room = 2, degrees = 25, ratings = POWER_RATINGS } = wish;
  const fault = faultIn({ current: amps, resistance: ohms, room });
  if (fault !== undefined) {
    return refused(fault);
  }
  const power = times(squared(figure(amps, 'A')), figure(ohms, 'ohm'));
  const left = derating(degrees);
  if (!(left > 0)) {
    return refused(`at ${named(degrees, 'degC').text} a film resistor stands nothing`);
  }
  const needed = sumOf(over(times(figure(power.value, 'W'), plain(room)), plain(left)), 'W');
  const rating = [...ratings].sort((a, b) => a - b).find((watts) => watts >= needed.value * (1 - 1e-9));
  const sum = sumOf(power, 'W');
  return rating === undefined
    ? refused(`no rating stands it: ${needed.text}`)
    : { ok: true, watts: power.value, rating, sum, sums: [sum, needed] };
}
