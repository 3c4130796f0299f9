/** Short ways to the things most rules ask for. */
import type { Part, Wire } from '../../base/build';
import type { Related } from '../../base/finding';
import type { PinUse } from '../../base/pin-use';
import { type Range, worst } from '../../base/range';
import type { Span } from '../../base/span';
import type { PinView, Placed, Region, StatePoint, Subject } from '../subject';

/** Pins a sketch can drive or read. */
export function isSignal(view: PinView): boolean {
  return view.pin.number !== undefined && (view.pin.type === 'io' || view.pin.type === 'analog-input');
}

/** The view of a pin by its id. */
export function viewOf(subject: Subject, pin: string): PinView | undefined {
  return subject.pins.find((view) => view.pin.id === pin);
}

/** True where something of the board itself is on the pin that a sketch may well speak to: more than a mere pull. */
export function hasUseOnBoard(subject: Subject, view: PinView): boolean {
  return subject.build.board.onBoard.some(
    ({ id, inside }) =>
      view.onBoard.includes(id) &&
      // A divider leads to the chip and is no pull; what is on a pin by itself is a resistor to a rail.
      inside.some(
        ({ type, ends }) =>
          ends.includes(view.pin.id) && (type !== 'resistor' || ends.some((end) => end.startsWith('~'))),
      ),
  );
}

/** The region a pin is in, if anything hangs on it. */
export function regionOf(subject: Subject, pin: string): Region | undefined {
  return subject.regions.find((region) => region.pins.includes(pin));
}

export function partOf(subject: Subject, id: string): Part | undefined {
  return subject.build.parts.find((part) => part.id === id);
}

/** Where in the manifest the wires of a pin are, as related places. */
export function wiresRelated(wires: readonly Wire[], pin: string): Related[] {
  return wires.slice(0, 4).map((wire) => {
    const end = wire.ends.find((candidate) => candidate.kind === 'pin' && candidate.pin === pin);
    return { message: `${pin} is wired here`, span: end?.span ?? wire.span };
  });
}

/** Calls that lead to a use, outermost first, as related places. */
export function pathRelated(use: PinUse): Related[] {
  return use.path.slice(0, 6).map((step) => ({ message: `by way of ${step.function}()`, span: step.span }));
}

/** The wire and the calls behind a finding in the sketch. */
export function relatedOf(view: PinView, use: PinUse): Related[] {
  return [...wiresRelated(view.wires, view.pin.id), ...pathRelated(use)];
}

/** A state with the current of one of its elements. */
export interface Worst {
  readonly state: StatePoint;
  readonly amps: Range;
}

/** The state in which an element carries most, among those that `wanted` lets through. */
export function worstState(
  points: readonly StatePoint[],
  element: string,
  wanted: (state: StatePoint) => boolean = () => true,
): Worst | undefined {
  let found: Worst | undefined;
  for (const state of points) {
    const amps = state.point.amps[element];
    if (!amps || !wanted(state)) continue;
    if (!found || worst(amps) > worst(found.amps)) found = { state, amps };
  }
  return found;
}

/** Light-emitting junctions of the user's parts. */
export function lampsOf(subject: Subject): (Placed & { readonly primitive: { readonly type: 'diode' } })[] {
  return subject.placed.filter(
    (element): element is Placed & { readonly primitive: Extract<Placed['primitive'], { type: 'diode' }> } =>
      !element.onBoard && element.primitive.type === 'diode' && element.primitive.lamp,
  );
}

/** How a lamp is called: by its part, or by its own terminal where the part has several. */
export function lampName(subject: Subject, lamp: Placed): string {
  const siblings = lampsOf(subject).filter((other) => other.part === lamp.part);
  if (siblings.length < 2) return lamp.part;
  const own = lamp.primitive.ends.find((end) =>
    siblings.some((other) => !other.primitive.ends.some((one) => one === end)),
  );
  return `${lamp.part}.${own ?? lamp.primitive.id}`;
}

/** "D7" for one, "D7 and D8" for two, "D7, D8 and D9" for more. */
export function listWords(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}

/** Where a use is, and how its number came about. */
export function howRelated(use: PinUse): Related[] {
  return use.origins.slice(0, 1).map((span: Span) => ({ message: 'the number comes from here', span }));
}

/** False where an argument stands for one pin of several: what is true of one of them need not happen. */
export function isMeant(use: PinUse): boolean {
  return use.certain || (use.pins.kind === 'known' && use.pins.values.length === 1);
}
