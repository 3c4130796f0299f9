/** Pins that carry more than a limit at the worst corner of the worst state. Shared by the two rules on pin current. */

import { numbersOf } from '../../base/build';
import type { Severity } from '../../base/finding';
import type { PinUse } from '../../base/pin-use';
import { formatQuantity } from '../../base/quantity';
import { worst } from '../../base/range';
import type { Drive, PinView, StatePoint, Subject } from '../subject';
import { findBareBases } from './bases';
import { findDirectLoads } from './direct-loads';
import { findUnlimited } from './limiting';
import { findMeetings } from './meetings';
import { limitsOf, type PinLimits } from './pin-limits';
import { findShorts } from './shorts';
import { isSignal, lampsOf, regionOf, viewOf, type Worst, worstState } from './views';

export interface OverCurrent extends Worst {
  readonly view: PinView;
  readonly use: PinUse;
  readonly limits: PinLimits;
}

export interface OverCurrentDetail {
  readonly pin: string;
  readonly amps: Worst['amps'];
  readonly limit: number;
  readonly limitText: string;
  /** Amperes that a repair has to come under. */
  readonly working: number;
  readonly state: string;
  /** True where the state needs several pins at once, of which nobody knows whether the sketch ever has it. */
  readonly together: boolean;
}

/** What flows, told with as many digits as it takes to tell it from the limit. */
export function overWords({ amps, limit }: OverCurrentDetail): {
  readonly amps: string;
  readonly limit: string;
} {
  const most = worst(amps);
  const words = (digits: number) => ({
    amps: formatQuantity(most, 'A', digits),
    limit: formatQuantity(limit, 'A'),
  });
  return words(3).amps === words(3).limit ? words(5) : words(3);
}

/** The rule's severity, or the next lower one for a state of several pins that may never be. */
export function overSeverity(subject: Subject, state: StatePoint, own: Severity): Severity {
  return isSupposed(subject, state) ? (own === 'error' ? 'warning' : 'information') : own;
}

/**
 * True where the state needs three pins at once that can each be otherwise, or two such pins on one wire: how they go
 * together is the sketch's affair, and it may never do that.
 */
export function isSupposed(subject: Subject, { drives }: StatePoint): boolean {
  const { moments, loosePins = [] } = subject.facts;
  // The states the program was seen to have are no supposition, but for pins that were not told apart.
  if (moments && loosePins.length === 0) return false;
  const free = Object.entries(drives).flatMap(([pin, drive]) => {
    const view = drive === 'high' || drive === 'low' ? viewOf(subject, pin) : undefined;
    if (!view || view.drives.length < 2) return [];
    return !moments || numbersOf(view.pin).some((number) => loosePins.includes(number)) ? [view] : [];
  });
  return free.length > 2 || new Set(free.map((view) => view.net.id)).size < free.length;
}

const store = new WeakMap<Subject, readonly OverCurrent[]>();

/** Driving pins with their worst state. What has a rule of its own is left to that. */
function loadedPins(subject: Subject): readonly OverCurrent[] {
  const kept = store.get(subject);
  if (kept) return kept;
  const told = new Set(findShorts(subject).map((short) => short.view.pin.id));
  for (const { pins } of findUnlimited(subject, lampsOf(subject))) for (const pin of pins) told.add(pin);
  for (const { view } of [...findDirectLoads(subject), ...findBareBases(subject)]) told.add(view.pin.id);
  for (const { view, other } of findMeetings(subject)) told.add(view.pin.id).add(other);
  const loaded: OverCurrent[] = [];
  for (const view of subject.pins) {
    if (!isSignal(view) || told.has(view.pin.id)) continue;
    const region = regionOf(subject, view.pin.id);
    if (!region) continue;
    const found = worstState(subject.points(region), `pin:${view.pin.id}`, (state) => {
      const drive = state.drives[view.pin.id];
      return drive === 'high' || drive === 'low';
    });
    const use = found && usesDriving(view, found.state.drives[view.pin.id])[0];
    if (found && use) loaded.push({ ...found, view, use, limits: limitsOf(subject.build, view) });
  }
  store.set(subject, loaded);
  return loaded;
}

/** Uses that drive a pin, those first that may give it the level. */
export function usesDriving({ uses }: PinView, drive: Drive | undefined): readonly PinUse[] {
  const all = uses.filter(({ action }) => driving.has(action));
  // Whatever a pulse width is set to, the pin is low for a part of the time.
  const gives = ({ action, value }: PinUse) =>
    value?.kind !== 'known' ||
    (drive === 'high'
      ? value.values.some((level) => level !== 0)
      : action !== 'write' || value.values.includes(0));
  return [...all.filter(gives), ...all.filter((use) => !gives(use))];
}

const driving: ReadonlySet<PinUse['action']> = new Set(['write', 'pwm', 'tone', 'servo']);

/** Pins whose worst current lies above a limit: above the working one means not above the absolute one. */
export function* pinsOver(subject: Subject, which: 'working' | 'absolute'): Generator<OverCurrent> {
  for (const loaded of loadedPins(subject)) {
    const amps = worst(loaded.amps);
    const { working, absolute } = loaded.limits;
    const over = amps > absolute.amps ? 'absolute' : amps > working.amps ? 'working' : undefined;
    if (over === which) yield loaded;
  }
}
