/**
 * A regulator's budget: whether it has volts enough to work with, what it takes from its input, and how hot it gets. A
 * linear one turns the difference of the voltages into heat; a switching one only its losses.
 */
import { formatQuantity } from '../base/quantity';
import type { Range } from '../base/range';
import {
  degreesOf,
  faultIn,
  figure,
  minus,
  named,
  over,
  type Piece,
  plus,
  refused,
  type Sized,
  type Sum,
  share,
  sumOf,
  times,
} from './sum';

export interface RegulatorWish {
  /** Volts at its input and at its output. */
  readonly input: Range;
  readonly output: Range;
  /** Amperes drawn from its output. */
  readonly amps: Range;
  /** Volts by which the input must lie above the output; 0 where absent. */
  readonly dropout?: number;
  /** Amperes it takes for itself; 0 where absent. */
  readonly ownAmps?: number;
  /** Power out over power in of a switching one; absent: a linear one. */
  readonly efficiency?: number;
  /** Amperes it gives at the most by its data sheet. */
  readonly maxAmps?: number;
  /** Kelvins per watt from junction to surroundings. */
  readonly kelvinPerWatt: number;
  /** degC around it, and what its junction stands. */
  readonly ambient: number;
  readonly maxJunction: number;
}

export interface RegulatorBudget {
  /** Watts of heat at the worst corner. */
  readonly heat: Sum;
  /** degC of the junction at the worst corner. */
  readonly junction: Sum;
  /** Amperes that heat alone allows at the highest input. */
  readonly heatAmps: Sum;
  /** Amperes that it takes from its input at the worst corner. */
  readonly inputAmps: Sum;
  /** What is wrong, whole sentences; none where all is well. */
  readonly faults: readonly string[];
}

/** The budget, or why there is none. */
export function regulatorBudget(wish: RegulatorWish): Sized<RegulatorBudget> {
  const {
    input,
    output,
    amps,
    dropout = 0,
    ownAmps = 0,
    efficiency,
    kelvinPerWatt,
    ambient,
    maxJunction,
  } = wish;
  const fault =
    faultIn({ input: input.max, output: output.min, 'thermal resistance': kelvinPerWatt }) ??
    (Number.isFinite(ambient) && Number.isFinite(maxJunction)
      ? undefined
      : 'a temperature is not a number') ??
    (Number.isFinite(amps.max) && amps.max >= 0
      ? undefined
      : 'the current must be a number of zero or more') ??
    (ownAmps >= 0 && dropout >= 0 ? undefined : 'a figure of the sum is out of its range') ??
    (efficiency === undefined || (efficiency > 0 && efficiency <= 1)
      ? undefined
      : 'the efficiency must lie between 0 and 100 %');
  if (fault !== undefined) {
    return refused(fault);
  }
  const faults: string[] = [];
  if (efficiency === undefined && input.min < output.max + dropout) {
    const needed = sumOf(plus(figure(output.max, 'V'), figure(dropout, 'V')), 'V');
    const given = formatQuantity(input.min, 'V');
    faults.push(`The input may fall to ${given}, and the regulator needs ${needed.text}.`);
  }
  if (efficiency === undefined && input.max < output.min) {
    return refused('a linear regulator makes no more volts than it gets');
  }
  const heat = sumOf(heatOf(wish, amps.max), 'W');
  const junction = degreesOf(
    plus(named(ambient, 'degC'), times(figure(heat.value, 'W'), named(kelvinPerWatt, 'K/W'))),
  );
  const heatAmps = sumOf(ampsByHeat(wish), 'A');
  if (junction.value > maxJunction) {
    const most = `heat allows ${formatQuantity(Math.max(0, heatAmps.value), 'A')}`;
    faults.push(`The junction gets ${junction.text} and stands ${maxJunction} degC; ${most}.`);
  }
  if (wish.maxAmps !== undefined && amps.max > wish.maxAmps) {
    const given = formatQuantity(wish.maxAmps, 'A');
    faults.push(`${formatQuantity(amps.max, 'A')} are drawn, and the regulator gives ${given}.`);
  }
  const inputAmps = sumOf(inputAmpsOf(wish), 'A');
  const sums = [heat, junction, heatAmps, inputAmps];
  return { ok: true, heat, junction, heatAmps, inputAmps, faults, sums };
}

function heatOf({ input, output, ownAmps = 0, efficiency }: RegulatorWish, amps: number): Piece {
  if (efficiency !== undefined) {
    const out = times(figure(output.max, 'V'), figure(amps, 'A'));
    return minus(over(out, share(efficiency)), out);
  }
  const passed = times(minus(figure(input.max, 'V'), figure(output.min, 'V')), figure(amps, 'A'));
  return ownAmps === 0 ? passed : plus(passed, times(figure(input.max, 'V'), figure(ownAmps, 'A')));
}

function ampsByHeat({ input, output, ownAmps = 0, efficiency, ...wish }: RegulatorWish): Piece {
  const allowed = over(
    minus(named(wish.maxJunction, 'degC'), named(wish.ambient, 'degC')),
    named(wish.kelvinPerWatt, 'K/W'),
  );
  if (efficiency !== undefined) {
    const watts = figure(Math.max(0, allowed.value), 'W');
    return over(watts, times(figure(output.max, 'V'), minus(over(share(1), share(efficiency)), share(1))));
  }
  const own = input.max * ownAmps;
  const watts = figure(Math.max(0, allowed.value - own), 'W');
  return over(watts, minus(figure(input.max, 'V'), figure(output.min, 'V')));
}

function inputAmpsOf({ input, output, amps, ownAmps = 0, efficiency }: RegulatorWish): Piece {
  const drawn = figure(amps.max, 'A');
  const passed =
    efficiency === undefined
      ? drawn
      : over(
          times(figure(output.max, 'V'), drawn),
          times(share(efficiency), figure(Math.max(input.min, 1e-9), 'V')),
        );
  return ownAmps === 0 ? passed : plus(passed, figure(ownAmps, 'A'));
}
