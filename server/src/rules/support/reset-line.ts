/** What hangs on the reset line: the three rules on it share one look. */
import type { Range } from '../../base/range';
import type { PinView, Placed, StatePoint, Subject } from '../subject';
import { viewOf } from './views';
import { voltsOf } from './volts';

export interface ResetLine {
  readonly view: PinView;
  /** Volts below which the chip is in reset for certain. */
  readonly assertVolts: number;
  /** True where the line is in reset with every switch at rest. */
  readonly held: boolean;
  /** True where some position of the switches resets, all of them together included. */
  readonly resets: boolean;
  /** Switches on the line, each with the lowest volts it brings the line to, and whether that resets. */
  readonly switches: readonly { readonly element: Placed; readonly volts: Range; readonly resets: boolean }[];
}

const store = new WeakMap<Subject, ResetLine | null>();

/** The reset line, where the board has one and something is wired to it. */
export function findResetLine(subject: Subject): ResetLine | undefined {
  const kept = store.get(subject);
  if (kept !== undefined) return kept ?? undefined;
  const line = lookAtReset(subject);
  store.set(subject, line ?? null);
  return line;
}

function lookAtReset(subject: Subject): ResetLine | undefined {
  const { reset } = subject.build.board;
  const view = reset && viewOf(subject, reset.pin);
  if (!reset || !view || view.wires.length === 0) return undefined;
  const assertVolts = reset.assertVolts.max;
  const rail = subject.rails[view.net.id];
  if (rail !== undefined) {
    const held = viewOf(subject, rail)?.pin.type === 'ground';
    return { view, assertVolts, held, resets: held, switches: [] };
  }
  const region = subject.regions.find((candidate) => candidate.nets.includes(view.net.id));
  if (!region) return undefined;
  const points = subject.points(region);
  const low = (state: StatePoint) => {
    const volts = voltsOf(subject, state, view.net.id);
    return volts !== undefined && volts.max <= assertVolts;
  };
  const elements = region.elements.filter((element) => element.primitive.type === 'switch');
  const restOf = new Map(
    elements.map((element) => [
      element.id,
      element.primitive.type === 'switch' ? element.primitive.rest : 'open',
    ]),
  );
  const atRest = points.filter((state) =>
    Object.entries(state.switches).every(([id, position]) => restOf.get(id) === position),
  );
  const switches = elements.flatMap((element) => {
    let lowest: Range | undefined;
    for (const state of points) {
      const others = Object.entries(state.switches).every(
        ([id, position]) => id === element.id || restOf.get(id) === position,
      );
      if (!others || state.switches[element.id] === restOf.get(element.id)) continue;
      const volts = voltsOf(subject, state, view.net.id);
      if (volts && (!lowest || volts.max < lowest.max)) lowest = volts;
    }
    return lowest ? [{ element, volts: lowest, resets: lowest.max <= assertVolts }] : [];
  });
  return {
    view,
    assertVolts,
    held: atRest.length > 0 && atRest.every(low),
    resets: points.some(low),
    switches,
  };
}
