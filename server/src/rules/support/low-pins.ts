/** Levels at the board's own digital inputs that lie between low and high. */
import type { PinView, Placed, Region, StatePoint, Subject } from '../subject';
import { reach } from './conduction';
import { voltsAtPin } from './input-volts';
import { isSupposed } from './over-current';
import { regionOf } from './views';

const reading: ReadonlySet<string> = new Set(['read', 'interrupt']);

/** True for a pin whose level the sketch reads. */
export function isRead(view: PinView): boolean {
  return view.uses.some(({ action }) => reading.has(action));
}

/** The highest level that an output of a part gives a pin, where it is neither low nor high. */
export function isTooLow(
  subject: Subject,
  view: PinView,
): { readonly part: string; readonly volts: number } | undefined {
  if (!isRead(view)) return undefined;
  const { inputLowVolts, inputHighVolts } = subject.build.board.limits;
  let most: { readonly volts: number; readonly state: StatePoint } | undefined;
  for (const { state, volts } of voltsAtPin(subject, view)) {
    if (state && (!most || volts.typ > most.volts)) most = { volts: volts.typ, state };
  }
  if (!most || most.volts >= inputHighVolts.max || most.volts <= inputLowVolts.min) return undefined;
  const { state, volts } = most;
  const nets = reach(subject, view.net.id, { switches: state.switches, resistances: true });
  const output = subject.placed.find(
    ({ id, nets: ends, onBoard }) => !onBoard && state.settings[id] === 'high' && nets.has(ends[0]),
  );
  return output && { part: output.part, volts };
}

export interface Between {
  readonly state: StatePoint;
  readonly volts: number;
}

/** A state in which resistors hold a pin that is read between low and high. */
export function heldBetween(subject: Subject, view: PinView): Between | undefined {
  const region = regionOf(subject, view.pin.id);
  if (!region || !isRead(view) || region.limit !== undefined || region.elements.some(varies))
    return undefined;
  const { inputLowVolts, inputHighVolts } = subject.build.board.limits;
  for (const { state, volts } of voltsAtPin(subject, view)) {
    if (!state || isSupposed(subject, state) || pressed(region, state) > 1) continue;
    if (volts.typ > inputLowVolts.max && volts.typ < inputHighVolts.min) return { state, volts: volts.typ };
  }
  return undefined;
}

/** Knobs, light and heat go through every level, and somebody may read them as a switch on purpose. */
function varies({ primitive }: Placed): boolean {
  if (primitive.type === 'potentiometer' || primitive.type === 'logic-output') return true;
  return primitive.type === 'resistor' && primitive.ohms.max > 3 * primitive.ohms.min;
}

/** How many switches a hand has moved. */
function pressed({ elements }: Region, { switches }: StatePoint): number {
  return elements.filter(
    ({ id, primitive }) => primitive.type === 'switch' && (switches[id] ?? primitive.rest) !== primitive.rest,
  ).length;
}
