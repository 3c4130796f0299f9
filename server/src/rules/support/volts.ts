/** Volts of nets in a state, rails included. */
import type { Range } from '../../base/range';
import { exactly } from '../../base/range';
import type { StatePoint, Subject } from '../subject';

/** Volts of a net against ground; undefined where the network does not hold it. */
export function voltsOf(subject: Subject, state: StatePoint, net: string): Range | undefined {
  const rail = subject.rails[net];
  if (rail !== undefined) {
    const pin = subject.pins.find((view) => view.pin.id === rail)?.pin;
    return pin?.type === 'ground' ? exactly(0) : pin?.volts;
  }
  return state.point.nodes[net];
}
