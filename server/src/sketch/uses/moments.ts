/** What pins can be in at the same time, out of the combinations that the analysis met. */
import type { PinMoment, PinState } from '../../base/pin-use';
import { bits, mostTogether, type PinStates, statesAt } from '../values/pin-states';

const names: readonly (readonly [number, PinState])[] = [
  [bits.high, 'high'],
  [bits.low, 'low'],
  [bits.input | bits.inputHigh, 'input'],
  [bits.pullUp, 'pull-up'],
  [bits.pullDown, 'pull-down'],
];

/** Undefined where anything may go together. */
export function momentsOf(states: PinStates): readonly PinMoment[] | undefined {
  if (states.lost || states.together === undefined) return undefined;
  const pins = [...states.pins].sort(([a], [b]) => a - b);
  const found = new Map<string, PinMoment>();
  for (const combination of states.seen) {
    const moment: Record<number, PinState[]> = {};
    let key = '';
    for (const [pin, place] of pins) {
      const all = statesAt(combination, place) | (states.fromHandlers.get(pin) ?? 0);
      moment[pin] = names.filter(([bit]) => (all & bit) !== 0).map(([, name]) => name);
      key += `${moment[pin].join()} `;
    }
    if (!found.has(key)) found.set(key, { pins: moment });
  }
  return found.size > mostTogether ? undefined : [...found.values()];
}
