/** How long a battery lasts, from the charge it holds and what is drawn from it in turns. */
import { faultIn, figure, over, plus, refused, type Sized, type Sum, share, sumOf, times } from './sum';

export interface Phase {
  /** Amperes drawn in it. */
  readonly amps: number;
  /** Seconds of it in each round. */
  readonly seconds: number;
}

export interface RunTimeWish {
  readonly ampHours: number;
  /** Share of the charge that can be used before the voltage is too low; 1 where absent. */
  readonly usable?: number;
  /** What is drawn, in turns. */
  readonly phases: readonly Phase[];
  /** Share of its charge that it loses by itself in a month of 730 hours; 0 where absent. */
  readonly lossPerMonth?: number;
}

const HOURS_PER_MONTH = 730;
const SECONDS_PER_HOUR = 3600;

/** Run time in seconds, with the mean current it comes from. */
export function runTime(
  wish: RunTimeWish,
): Sized<{ readonly seconds: number; readonly hours: number; readonly meanAmps: Sum; readonly sum: Sum }> {
  const { ampHours, usable = 1, phases, lossPerMonth = 0 } = wish;
  const bad = phases.some(({ amps, seconds }) => !(amps >= 0 && seconds >= 0 && amps * seconds < Infinity));
  const whole = phases.reduce((sum, { seconds }) => sum + seconds, 0);
  const fault =
    faultIn({ capacity: ampHours, 'usable share': usable }) ??
    (usable <= 1 ? undefined : 'the usable share is more than all') ??
    (bad ? 'a current or a time is no number of zero or more' : undefined) ??
    (whole > 0 ? undefined : 'no time is given for what is drawn') ??
    (lossPerMonth >= 0 && lossPerMonth < 1 ? undefined : 'the loss must lie between 0 and 100 % a month');
  if (fault !== undefined) {
    return refused(fault);
  }
  const [only] = phases;
  const mean =
    phases.length === 1 && only
      ? figure(only.amps, 'A')
      : over(
          plus(...phases.map(({ amps, seconds }) => times(figure(amps, 'A'), figure(seconds, 's')))),
          figure(whole, 's'),
        );
  const lost = (ampHours * usable * lossPerMonth) / HOURS_PER_MONTH;
  const meanAmps = sumOf(lost === 0 ? mean : plus(mean, figure(lost, 'A')), 'A');
  if (meanAmps.value === 0) {
    return refused('nothing is drawn: the battery lasts as long as it keeps');
  }
  const charge = usable === 1 ? figure(ampHours, 'Ah') : times(figure(ampHours, 'Ah'), share(usable));
  const quotient = over(charge, figure(meanAmps.value, 'A'));
  // Ampere-hours over amperes are hours; the table of units counts in seconds.
  const sum = sumOf({ ...quotient, value: quotient.value * SECONDS_PER_HOUR }, 's');
  return { ok: true, seconds: sum.value, hours: quotient.value, meanAmps, sum, sums: [meanAmps, sum] };
}
