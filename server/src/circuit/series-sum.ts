/**
 * The sum that everybody does on paper: a supply, a resistor and a lamp in series. It is the quick answer beside the
 * engine's exact one, and the one a message can show in full.
 */
import { formatQuantity } from '../base/quantity';
import { SLOPE_VOLTS } from './diode';
import { figure, minus, over, plus, type Sum, sumOf } from './sum';

/** Amperes through a resistance alone, the lamp's drop neglected: `quickAmps(3.3, 470)` is 7.0 mA. */
export function quickAmps(volts: number, ohms: number): number {
  return volts / ohms;
}

/** Ohms for a current with the lamp's drop neglected: `quickOhms(3.3, 0.01)` is 330 ohm. */
export function quickOhms(volts: number, amps: number): number {
  return volts / amps;
}

/** One series run. */
export interface SeriesRun {
  /** Volts of the supply or of the pin without load. */
  readonly supply: number;
  /** Forward volts of the lamp; 0 where it is neglected. */
  readonly forward: number;
  /** Ohms of the resistor. */
  readonly ohms: number;
  /** Ohms inside the pin or the supply; 0 where neglected. */
  readonly sourceOhms: number;
}

/** Amperes with a constant forward drop; 0 where the supply does not reach it, infinite without any resistance. */
export function seriesAmps(run: SeriesRun): number {
  const left = run.supply - run.forward;
  return left <= 0 ? 0 : left / (run.ohms + run.sourceOhms);
}

/**
 * Amperes where the forward drop is the one at `atAmps` and follows the junction's curve from there. Agrees with the
 * engine to within its saturation current. Infinite without any resistance.
 */
export function seriesAmpsOnCurve(run: SeriesRun, atAmps: number): number {
  const ohms = run.ohms + run.sourceOhms;
  if (run.forward <= 0) {
    return seriesAmps(run);
  }
  if (run.supply <= 0) {
    return 0;
  }
  if (ohms <= 0) {
    return Number.POSITIVE_INFINITY;
  }
  // In the logarithm of the current the sum is convex and rising, so Newton comes down to the answer from above.
  const error = (log: number): number =>
    Math.exp(log) * ohms + run.forward + SLOPE_VOLTS * (log - Math.log(atAmps)) - run.supply;
  let log = Math.min(
    Math.log(run.supply / ohms),
    Math.log(atAmps) + (run.supply - run.forward) / SLOPE_VOLTS,
  );
  for (let step = 0; step < 100; step += 1) {
    const change = error(log) / (Math.exp(log) * ohms + SLOPE_VOLTS);
    log -= change;
    if (Math.abs(change) <= 1e-13) {
      break;
    }
  }
  return Math.exp(log);
}

/** The sum with its figures: "(5.0 V − 2.1 V) / (470 ohm + 25 ohm) = 5.9 mA"; what is zero is left out. */
export function seriesSum(run: SeriesRun): Sum {
  const supply = figure(run.supply, 'V');
  const volts = run.forward === 0 ? supply : minus(supply, figure(run.forward, 'V'));
  const ohms =
    run.sourceOhms === 0 || run.ohms === 0
      ? figure(run.ohms + run.sourceOhms, 'ohm')
      : plus(figure(run.ohms, 'ohm'), figure(run.sourceOhms, 'ohm'));
  // A supply below the lamp's drop drives nothing through it, and not a current the other way.
  return sumOf({ ...over(volts, ohms), value: seriesAmps(run) }, 'A');
}

/**
 * Shows the sum as text.
 * @param amps the result to show; by default the sum with a constant drop
 */
export function explainSeries(run: SeriesRun, amps?: number): string {
  const sum = seriesSum(run);
  if (amps === undefined) {
    return sum.text;
  }
  const [terms = ''] = sum.text.split(' = ');
  return `${terms} = ${Number.isFinite(amps) ? formatQuantity(amps, 'A') : 'unlimited'}`;
}
