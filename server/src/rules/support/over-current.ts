/** Pins that carry more than a limit at the worst corner of the worst state. Shared by the two rules on pin current. */

import type { PinUse } from '../../base/pin-use';
import { worst } from '../../base/range';
import type { PinView, Subject } from '../subject';
import { findUnlimited } from './limiting';
import { findShorts } from './shorts';
import { isSignal, lampsOf, regionOf, type Worst, worstState } from './views';

export interface OverCurrent extends Worst {
  readonly view: PinView;
  readonly use: PinUse;
}

export interface OverCurrentDetail {
  readonly pin: string;
  readonly amps: Worst['amps'];
  readonly limit: number;
  readonly limitText: string;
  readonly state: string;
}

const store = new WeakMap<Subject, readonly OverCurrent[]>();

/** Driving pins with their worst state. Shorts and lamps without a resistor are left to their own rules. */
function loadedPins(subject: Subject): readonly OverCurrent[] {
  const kept = store.get(subject);
  if (kept) return kept;
  const told = new Set(findShorts(subject).map((short) => short.view.pin.id));
  for (const { pins } of findUnlimited(subject, lampsOf(subject))) for (const pin of pins) told.add(pin);
  const loaded: OverCurrent[] = [];
  for (const view of subject.pins) {
    if (!isSignal(view) || told.has(view.pin.id)) continue;
    const region = regionOf(subject, view.pin.id);
    const use = view.uses.find((candidate) => ['write', 'pwm', 'tone', 'servo'].includes(candidate.action));
    if (!region || !use) continue;
    const found = worstState(subject.points(region), `pin:${view.pin.id}`, (state) => {
      const drive = state.drives[view.pin.id];
      return drive === 'high' || drive === 'low';
    });
    if (found) loaded.push({ ...found, view, use });
  }
  store.set(subject, loaded);
  return loaded;
}

/** Pins whose worst current lies above `over` and not above `upTo`, amperes. */
export function* pinsOver(
  subject: Subject,
  over: number,
  upTo = Number.POSITIVE_INFINITY,
): Generator<OverCurrent> {
  for (const loaded of loadedPins(subject)) {
    const amps = worst(loaded.amps);
    if (amps > over && amps <= upTo) yield loaded;
  }
}
