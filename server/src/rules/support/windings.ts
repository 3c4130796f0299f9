/** Windings that something switches, and the diodes across them. */
import type { Placed, Subject } from '../subject';
import { reach } from './conduction';
import { findDirectLoads } from './direct-loads';
import { isSignal } from './views';

export interface Winding {
  readonly coil: Placed;
  /** Terminals by the way the current flows: in at `plus`, out at `minus`. */
  readonly plus: string;
  readonly minus: string;
  /** Part or pin that switches it. */
  readonly by: string;
  /** Diodes that catch its current, and diodes that stand the wrong way. */
  readonly caught: boolean;
  readonly reversed: readonly Placed[];
}

/** Amperes below which a winding is taken to be off in every state. */
const off = 1e-4;

const store = new WeakMap<Subject, readonly Winding[]>();

/** Windings whose current flows one way only and is cut by a transistor or a pin. */
export function findWindings(subject: Subject): readonly Winding[] {
  const kept = store.get(subject);
  if (kept) return kept;
  const told = new Set(findDirectLoads(subject).map(({ load }) => load.id));
  const found = subject.placed.flatMap((element) => {
    if (element.onBoard || element.primitive.type !== 'coil' || told.has(element.id)) return [];
    return windingOf(subject, element) ?? [];
  });
  store.set(subject, found);
  return found;
}

function windingOf(subject: Subject, coil: Placed): Winding | undefined {
  const region = subject.regions.find(({ elements }) => elements.includes(coil));
  if (!region) return undefined;
  let forward = 0;
  let backward = 0;
  for (const { point } of subject.points(region)) {
    const amps = point.amps[coil.id]?.typ ?? 0;
    forward = Math.max(forward, amps);
    backward = Math.max(backward, -amps);
  }
  // Alternating current needs another catch, and a winding that never gets any has none to cut.
  if (Math.max(forward, backward) < off || Math.min(forward, backward) > off) return undefined;
  const [plus, minus] = forward > backward ? ([0, 1] as const) : ([1, 0] as const);
  const closed = Object.fromEntries(
    region.elements.flatMap(({ id, primitive }) =>
      primitive.type === 'switch' ? [[id, 'closed'] as const] : [],
    ),
  );
  const strict = { switches: closed, sources: false, without: coil.id, behindRail: true };
  const side = (index: 0 | 1, resistances: boolean) =>
    reach(subject, coil.nets[index], { ...strict, resistances });
  const by = switchedBy(subject, coil, [...side(0, false), ...side(1, false)]);
  if (by === undefined) return undefined;
  const diodes = region.elements.filter(({ primitive }) => primitive.type === 'diode' && !primitive.lamp);
  const between = (placed: Placed, from: ReadonlySet<string>, to: ReadonlySet<string>) =>
    from.has(placed.nets[0]) && to.has(placed.nets[1]);
  const [wideMinus, widePlus] = [side(minus, true), side(plus, true)];
  const caught = diodes.some(
    (diode) =>
      between(diode, wideMinus, widePlus) ||
      (diode.primitive.type === 'diode' &&
        diode.primitive.breakdownVolts !== undefined &&
        diode.nets.some((net) => wideMinus.has(net) || widePlus.has(net))),
  );
  const [ownMinus, ownPlus] = [side(minus, false), side(plus, false)];
  const reversed = diodes.filter(
    (diode) =>
      diode.primitive.type === 'diode' &&
      diode.primitive.breakdownVolts === undefined &&
      between(diode, ownPlus, ownMinus),
  );
  const { ends } = coil.primitive;
  return { coil, plus: ends[plus], minus: ends[minus], by, caught, reversed };
}

/** What cuts the current; undefined where it is a hand's contact, a driver chip that has diodes, or a sounder's pin. */
function switchedBy(subject: Subject, coil: Placed, nets: readonly string[]): string | undefined {
  const own = new Set(nets.filter((net) => subject.rails[net] === undefined));
  const at = (type: string) =>
    subject.placed.find(
      (element) => element.primitive.type === type && element.nets.some((net) => own.has(net)),
    );
  if (at('logic-output')) return undefined;
  const transistor = at('transistor');
  const controls = transistor?.third === undefined ? own : reach(subject, transistor.third, allThrough);
  const pins = subject.pins.filter(
    (view) => isSignal(view) && (controls.has(view.net.id) || own.has(view.net.id)),
  );
  // Tones and voices are alternating by nature: a sounder keeps its own.
  if (pins.some(({ uses }) => uses.some(({ action }) => action === 'tone' || action === 'dac')))
    return undefined;
  if (transistor) return transistor.part === coil.part ? undefined : transistor.part;
  return pins.find(({ drives }) => drives.includes('high') || drives.includes('low'))?.pin.id;
}

const allThrough = { switches: {}, resistances: true, sources: false };
