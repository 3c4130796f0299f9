/** Outputs that meet on one net with different levels: two pins, or a pin and an output of a part. */
import type { PinUse } from '../../base/pin-use';
import { type Range, worst } from '../../base/range';
import type { PinView, StatePoint, Subject } from '../subject';
import { reach } from './conduction';
import { isSupposed } from './over-current';
import { isSignal, regionOf } from './views';

export interface Meeting {
  readonly view: PinView;
  readonly use: PinUse;
  /** The pin or the part on the other side. */
  readonly other: string;
  readonly otherUse?: PinUse;
  readonly state: StatePoint;
  readonly amps: Range;
}

/** Pins that buses and libraries drive know when to let go. */
const shared: ReadonlySet<string> = new Set(['bus', 'transfer', 'device']);

const store = new WeakMap<Subject, readonly Meeting[]>();

/** One a pair, in the state in which most flows. */
export function findMeetings(subject: Subject): readonly Meeting[] {
  const kept = store.get(subject);
  if (kept) return kept;
  const found = new Map<string, Meeting>();
  for (const view of subject.pins) {
    if (!isSignal(view) || subject.rails[view.net.id] !== undefined) continue;
    const use = outputUse(view);
    const region = regionOf(subject, view.pin.id);
    if (!use || !region || view.wires.length === 0 || view.uses.some(({ action }) => shared.has(action)))
      continue;
    for (const state of subject.points(region)) {
      const drive = state.drives[view.pin.id];
      const amps = state.point.amps[`pin:${view.pin.id}`];
      if ((drive !== 'high' && drive !== 'low') || !amps) continue;
      const other = otherOf(subject, view, state);
      if (!other) continue;
      const key = [view.pin.id, other.name].sort().join('+');
      const before = found.get(key);
      if (before && worst(before.amps) >= worst(amps)) continue;
      found.set(key, {
        view,
        use,
        other: other.name,
        ...(other.use && { otherUse: other.use }),
        state,
        amps,
      });
    }
  }
  const all = [...found.values()];
  store.set(subject, all);
  return all;
}

function outputUse(view: PinView): PinUse | undefined {
  return view.uses.find(({ modes }) => modes?.includes('output'));
}

function otherOf(
  subject: Subject,
  view: PinView,
  state: StatePoint,
): { readonly name: string; readonly use?: PinUse } | undefined {
  const drive = state.drives[view.pin.id];
  const nets = reach(subject, view.net.id, { switches: state.switches, resistances: false, sources: false });
  const against = drive === 'high' ? 'low' : 'high';
  const pin = subject.pins.find(
    (one) =>
      one !== view &&
      isSignal(one) &&
      nets.has(one.net.id) &&
      subject.rails[one.net.id] === undefined &&
      state.drives[one.pin.id] === against &&
      !one.uses.some(({ action }) => shared.has(action)),
  );
  if (pin) {
    const use = outputUse(pin);
    return isSupposed(subject, state) ? undefined : { name: pin.pin.id, ...(use && { use }) };
  }
  // A pin that listens at times may be right: only one that always drives fights for certain.
  if (view.drives.some((one) => one !== 'high' && one !== 'low')) return undefined;
  const output = subject.placed.find(
    ({ id, nets: ends, third, onBoard }) =>
      !onBoard && third !== undefined && nets.has(ends[0]) && state.settings[id] === against,
  );
  return output && { name: output.part };
}
