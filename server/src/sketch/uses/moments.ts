/** What pins can be in at the same time, out of the combinations that the analysis met. */
import type { PinMoment, PinState } from '../../base/pin-use';
import { mostTogether, type PinStates, statesAt } from '../values/pin-states';
import { bits } from '../values/pin-turns';

const names: readonly (readonly [number, PinState])[] = [
  [bits.high, 'high'],
  [bits.low, 'low'],
  [bits.input | bits.inputHigh, 'input'],
  [bits.pullUp, 'pull-up'],
  [bits.pullDown, 'pull-down'],
];

const named = new Map<number, readonly PinState[]>();

function namesOf(states: number): readonly PinState[] {
  let list = named.get(states);
  if (list === undefined) {
    list = names.filter(([bit]) => (states & bit) !== 0).map(([, name]) => name);
    named.set(states, list);
  }
  return list;
}

export interface Moments {
  readonly moments: readonly PinMoment[];
  /** Pins that are not told apart in them. */
  readonly loosePins: readonly number[];
}

/** Undefined where anything may go together. */
export function momentsOf(states: PinStates): Moments | undefined {
  if (states.lost || states.together === undefined) return undefined;
  const pins = [...states.pins].sort(([a], [b]) => a - b);
  const seen = states.held([...states.seen], mostTogether);
  const found = new Map<string, PinMoment>();
  for (const combination of seen) {
    const moment: Record<number, readonly PinState[]> = {};
    let key = '';
    for (const [pin, place] of pins) {
      const own = states.loose.get(pin) ?? statesAt(combination, place);
      const all = own | (states.fromHandlers.get(pin) ?? 0);
      moment[pin] = namesOf(all);
      key += String.fromCharCode(all + 1);
    }
    if (!found.has(key)) found.set(key, { pins: moment });
  }
  return { moments: [...found.values()], loosePins: [...states.loose.keys()].sort((a, b) => a - b) };
}
