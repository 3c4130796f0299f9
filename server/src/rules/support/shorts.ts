/**
 * Pins that drive against something with nothing in between to limit the current. The rules on currents leave these
 * alone, since the short is the one thing to be told.
 */
import { type Range, worst } from '../../base/range';
import type { PinView, StatePoint, Subject } from '../subject';
import { railsAmong, reach } from './conduction';
import { isSignal, regionOf } from './views';

export interface Short {
  readonly view: PinView;
  readonly state: StatePoint;
  /** Amperes of the pin, the worst of the states. */
  readonly amps: Range;
  /** Rail pin it is shorted to. */
  readonly rail: string;
  /** Parts whose closed switches make the short. */
  readonly by: readonly string[];
}

const store = new WeakMap<Subject, readonly Short[]>();

/** One short a pin and a rail, each in the state where most current flows. */
export function findShorts(subject: Subject): readonly Short[] {
  const kept = store.get(subject);
  if (kept) return kept;
  const shorts: Short[] = [];
  for (const view of subject.pins) {
    if (!isSignal(view) || !(view.drives.includes('high') || view.drives.includes('low'))) continue;
    const region = regionOf(subject, view.pin.id);
    if (!region) continue;
    let found: Short | undefined;
    for (const state of subject.points(region)) {
      const drive = state.drives[view.pin.id];
      if (drive !== 'high' && drive !== 'low') continue;
      const amps = state.point.amps[`pin:${view.pin.id}`];
      if (!amps) continue;
      const passing = { switches: state.switches, resistances: false };
      const rail = railsAmong(subject, reach(subject, view.net.id, passing)).find((id) =>
        fights(subject, id, drive),
      );
      if (rail === undefined) continue;
      if (found && worst(found.amps) >= worst(amps)) continue;
      const by = Object.entries(state.switches)
        .filter(([, position]) => position === 'closed')
        .map(([id]) => id.split('/')[0] ?? id);
      found = { view, state, amps, rail, by };
    }
    if (found) shorts.push(found);
  }
  store.set(subject, shorts);
  return shorts;
}

function fights(subject: Subject, rail: string, drive: 'high' | 'low'): boolean {
  const pin = subject.pins.find((view) => view.pin.id === rail)?.pin;
  return drive === 'high' ? pin?.type === 'ground' : pin?.type === 'supply';
}
