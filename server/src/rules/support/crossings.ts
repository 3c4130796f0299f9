/** Pins that a call means for one terminal of a part and that are wired to another terminal of it. */
import type { Part } from '../../base/build';
import type { PinUse } from '../../base/pin-use';
import type { PinView, Subject } from '../subject';
import { isSignal, partOf } from './views';

/** One part with the pins that are crossed. */
export interface Crossing {
  readonly part: Part;
  readonly pins: readonly {
    readonly pin: string;
    readonly view: PinView;
    readonly use: PinUse;
    /** Terminal that the call means the pin for. */
    readonly meant: string;
    /** Terminal that it is wired to. */
    readonly wired: string;
    /** Pin that is wired to the meant terminal. */
    readonly right?: string;
  }[];
}

type CrossedPin = Crossing['pins'][number];

export function crossings(subject: Subject): readonly Crossing[] {
  const found = new Map<Part, CrossedPin[]>();
  for (const view of subject.pins) {
    if (!isSignal(view) || view.wires.length === 0) continue;
    const use = view.uses.find(
      ({ terminal, pins }) => terminal !== undefined && pins.kind === 'known' && pins.values.length === 1,
    );
    const meant = use?.terminal;
    if (!use || meant === undefined) continue;
    for (const { part: id, terminal: wired } of view.net.terminals) {
      const part = partOf(subject, id);
      if (wired === meant || !part?.terminals.some((one) => one.id === meant)) continue;
      // A supply leg that is tied to the signal says nothing of the order.
      if (part.terminals.some((one) => one.id === wired && one.polarity !== undefined)) continue;
      if (view.net.terminals.some((one) => one.part === id && one.terminal === meant)) continue;
      const right = pinAt(subject, id, meant);
      const pins = found.get(part) ?? [];
      pins.push({ pin: view.pin.id, view, use, meant, wired, ...(right && { right: right.pin.id }) });
      found.set(part, pins);
    }
  }
  return [...found].map(([part, pins]) => ({ part, pins: inOrder(subject, pins) }));
}

/** The one pin on a terminal's net. */
function pinAt(subject: Subject, part: string, terminal: string): PinView | undefined {
  const views = subject.pins.filter(
    (view) =>
      isSignal(view) && view.net.terminals.some((one) => one.part === part && one.terminal === terminal),
  );
  return views.length === 1 ? views[0] : undefined;
}

/** As the sketch names them; where a call names only one of two that are exchanged, the other is added. */
function inOrder(subject: Subject, pins: readonly CrossedPin[]): readonly CrossedPin[] {
  const sorted = [...pins].sort((a, b) => a.use.order - b.use.order);
  const [only, ...others] = sorted;
  const right = only?.right;
  if (!only || right === undefined || others.length > 0) return sorted;
  const view = subject.pins.find((one) => one.pin.id === right);
  const use = view?.uses[0];
  if (!view || !use) return sorted;
  const other = { pin: right, view, use, meant: only.wired, wired: only.meant, right: only.pin };
  return [only, other];
}
