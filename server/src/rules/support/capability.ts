/** Uses that ask of a pin what its hardware cannot do, one for each pin and action. */
import type { PinAction, PinUse } from '../../base/pin-use';
import type { PinView, Subject } from '../subject';

export interface WrongUse {
  readonly pin: string;
  /** Pins that could. */
  readonly can: readonly string[];
}

/** The first use of each pin by one of the actions, where the pin does not satisfy `able`. */
export function* usedWrongly(
  subject: Subject,
  actions: readonly PinAction[],
  able: (view: PinView) => boolean,
): Generator<{ readonly view: PinView; readonly use: PinUse }> {
  for (const view of subject.pins) {
    if (view.uses.length === 0 || able(view)) continue;
    const use = view.uses.find((candidate) => actions.includes(candidate.action));
    if (use) yield { view, use };
  }
}
