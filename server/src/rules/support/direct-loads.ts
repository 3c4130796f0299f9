/**
 * Windings and other loads that a pin feeds by itself, and takes more current for than it may. Their cure is a
 * transistor and no other resistor, so the rules on pin current leave those pins alone.
 */
import type { PinUse } from '../../base/pin-use';
import type { Range } from '../../base/range';
import type { PinView, Placed, StatePoint, Subject } from '../subject';
import { reach } from './conduction';
import { limitsOf, type PinLimits } from './pin-limits';
import { isSignal, regionOf } from './views';

export interface DirectLoad {
  readonly load: Placed;
  readonly view: PinView;
  readonly use: PinUse;
  readonly state: StatePoint;
  /** Amperes of the pin in that state. */
  readonly amps: Range;
  readonly limits: PinLimits;
}

const store = new WeakMap<Subject, readonly DirectLoad[]>();

/** Uses that can make a pin drive. */
const driving: ReadonlySet<string> = new Set(['write', 'pwm', 'tone', 'servo']);

/** One a pin: the load that takes most in the state in which the pin carries most. */
export function findDirectLoads(subject: Subject): readonly DirectLoad[] {
  const kept = store.get(subject);
  if (kept) return kept;
  const found = subject.pins.flatMap((view) => directLoadOf(subject, view) ?? []);
  store.set(subject, found);
  return found;
}

function directLoadOf(subject: Subject, view: PinView): DirectLoad | undefined {
  const region = isSignal(view) ? regionOf(subject, view.pin.id) : undefined;
  const use = view.uses.find(({ action }) => driving.has(action));
  if (!region || !use) return undefined;
  const loads = region.elements.filter(
    ({ onBoard, primitive: { type } }) => !onBoard && (type === 'coil' || type === 'load'),
  );
  if (loads.length === 0) return undefined;
  const limits = limitsOf(subject.build, view);
  let most: DirectLoad | undefined;
  for (const state of subject.points(region)) {
    const drive = state.drives[view.pin.id];
    const amps = state.point.amps[`pin:${view.pin.id}`];
    if (!amps || (drive !== 'high' && drive !== 'low')) continue;
    const size = Math.abs(amps.typ);
    if (size <= limits.working.amps || (most && size <= Math.abs(most.amps.typ))) continue;
    const nets = reach(subject, view.net.id, { switches: state.switches, resistances: true });
    // Most of the pin's current goes through the load: then the load is the cause.
    const load = loads.find(
      ({ id, nets: ends }) =>
        ends.some((net) => nets.has(net) && subject.rails[net] === undefined) &&
        Math.abs(state.point.amps[id]?.typ ?? 0) > size / 2,
    );
    if (load) most = { load, view, use, state, amps, limits };
  }
  return most;
}
