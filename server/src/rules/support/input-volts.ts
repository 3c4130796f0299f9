/** The volts that inputs get: at pins of the board that do not drive, and at the inputs of parts. */
import type { Range } from '../../base/range';
import type { PinView, Placed, Region, StatePoint, Subject } from '../subject';
import { isSupposed } from './over-current';
import { regionOf } from './views';
import { voltsOf } from './volts';

export interface VoltsAt {
  readonly state?: StatePoint;
  readonly volts: Range;
}

/** Volts at a pin in every state in which it does not drive by itself. */
export function voltsAtPin(subject: Subject, view: PinView): readonly VoltsAt[] {
  const rail = subject.rails[view.net.id];
  if (rail !== undefined) {
    const held = subject.pins.find(({ pin }) => pin.id === rail)?.pin;
    return held?.type === 'supply' && held.volts ? [{ volts: held.volts }] : [];
  }
  const region = regionOf(subject, view.pin.id);
  if (!region) return [];
  return subject.points(region).flatMap((state) => {
    const drive = state.drives[view.pin.id] ?? 'input';
    const volts = state.point.nodes[view.net.id];
    return volts && drive !== 'high' && drive !== 'low' ? [{ state, volts }] : [];
  });
}

export type PlacedInput = Placed & {
  readonly primitive: Extract<Placed['primitive'], { type: 'logic-input' }>;
};

/** Inputs of the user's parts that something is wired to. */
export function partInputs(subject: Subject): readonly PlacedInput[] {
  return subject.placed.filter(
    (element): element is PlacedInput =>
      !element.onBoard &&
      element.primitive.type === 'logic-input' &&
      subject.build.nets.some(({ id }) => id === element.nets[0]),
  );
}

/** Volts between an input and its return, in every state that is no supposition. */
export function voltsAtInput(subject: Subject, input: PlacedInput): readonly VoltsAt[] {
  const [net, back] = input.nets;
  const region = regionOfInput(subject, input);
  if (!region) return [];
  return subject.points(region).flatMap((state) => {
    const [a, b] = [voltsOf(subject, state, net), voltsOf(subject, state, back)];
    if (!a || !b || isSupposed(subject, state)) return [];
    return [{ state, volts: { min: a.min - b.max, typ: a.typ - b.typ, max: a.max - b.min } }];
  });
}

/** The region an input of a part is in. */
export function regionOfInput(subject: Subject, input: PlacedInput): Region | undefined {
  return subject.regions.find(({ elements }) => elements.includes(input));
}

/** The highest of them, by the usual figure. */
export function highest(all: readonly VoltsAt[]): VoltsAt | undefined {
  return all.reduce<VoltsAt | undefined>(
    (best, one) => (best === undefined || one.volts.typ > best.volts.typ ? one : best),
    undefined,
  );
}
