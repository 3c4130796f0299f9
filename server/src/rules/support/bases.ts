/** Bases of bipolar transistors that a pin drives with nothing in between: only the pin limits the current. */
import type { Range } from '../../base/range';
import type { PinView, Placed, StatePoint, Subject } from '../subject';
import { railsAmong, reach } from './conduction';
import { isSignal, regionOf, worstState } from './views';

export interface BareBase {
  readonly transistor: Placed & { readonly primitive: { readonly type: 'transistor' } };
  readonly view: PinView;
  /** The state in which the pin carries most, and its amperes there; absent where it never drives the base. */
  readonly state?: StatePoint;
  readonly amps?: Range;
}

const store = new WeakMap<Subject, readonly BareBase[]>();

/** Transistors whose base has no resistor, and whose emitter lies on a rail, so that nothing else limits either. */
export function findBareBases(subject: Subject): readonly BareBase[] {
  const kept = store.get(subject);
  if (kept) return kept;
  const found = subject.placed.flatMap((element) => bareBaseOf(subject, element) ?? []);
  store.set(subject, found);
  return found;
}

function bareBaseOf(subject: Subject, element: Placed): BareBase | undefined {
  const { primitive, third, nets, onBoard } = element;
  if (primitive.type !== 'transistor' || primitive.gain === undefined || third === undefined || onBoard)
    return undefined;
  // A part whose base resistor is inside has its junction behind it.
  const junction = subject.placed.find(
    (other) =>
      other.part === element.part &&
      other.primitive.type === 'diode' &&
      other.nets.includes(third) &&
      other.nets.includes(nets[1]),
  );
  if (!junction) return undefined;
  const passing = { switches: {}, resistances: false, sources: false };
  if (railsAmong(subject, reach(subject, nets[1], passing)).length === 0) return undefined;
  const control = reach(subject, third, passing);
  const view = subject.pins.find(
    (one) =>
      isSignal(one) &&
      control.has(one.net.id) &&
      subject.rails[one.net.id] === undefined &&
      one.drives.includes(primitive.channel === 'n' ? 'high' : 'low'),
  );
  if (!view) return undefined;
  const region = regionOf(subject, view.pin.id);
  const worst = region && worstState(subject.points(region), `pin:${view.pin.id}`, drives(view));
  return {
    transistor: { ...element, primitive },
    view,
    ...(worst && { state: worst.state, amps: worst.amps }),
  };
}

function drives(view: PinView): (state: StatePoint) => boolean {
  return ({ drives: all }) => all[view.pin.id] === 'high' || all[view.pin.id] === 'low';
}
