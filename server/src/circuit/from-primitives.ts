/**
 * A part's primitives as elements of a network. It lies here and not with whoever joins parts to nets, because what a
 * primitive means electrically is this folder's affair: above all, that the diode beside a bipolar transistor is the
 * transistor's own base.
 */
import type { Element } from '../base/circuit';
import type { Primitive } from '../base/primitive';
import type { Range } from '../base/range';

/** Contact resistance of a closed switch, ohms (common practice: well under 1). */
const CONTACT_OHMS: Range = { min: 0.01, typ: 0.05, max: 0.1 };

/** Where a part lies and how it stands. Everything by the ids of its primitives. */
export interface PartPlace {
  /** Put before every id, so that two parts of one kind do not meet. */
  readonly prefix: string;
  /** The node of a terminal or inner node of the part. */
  readonly nodeOf: (terminal: string) => string;
  /** Switches that a hand has put against their rest. */
  readonly moved?: ReadonlySet<string>;
  /** Share of the track between the first end and the wiper; a half where absent. */
  readonly wipers?: Readonly<Record<string, number>>;
  /** Outputs that are high; the others are low. */
  readonly high?: ReadonlySet<string>;
}

type Transistor = Extract<Primitive, { readonly type: 'transistor' }>;
type Diode = Extract<Primitive, { readonly type: 'diode' }>;

/**
 * The elements of a part. Capacitors are none: for direct current they are open. A source that another terminal feeds
 * is counted as a source of its own; what it takes from there is regulatorBudget's affair.
 */
export function elementsOfPart(primitives: readonly Primitive[], place: PartPlace): readonly Element[] {
  const bases = new Map<string, Diode>();
  for (const primitive of primitives) {
    if (primitive.type === 'transistor' && primitive.gain !== undefined) {
      const base = baseOf(primitive, primitives, bases);
      if (base !== undefined) bases.set(primitive.id, base);
    }
  }
  const merged = new Set([...bases.values()].map(({ id }) => id));
  return primitives
    .filter(({ id }) => !merged.has(id))
    .flatMap((primitive) => elementsOf(primitive, place, primitives, bases));
}

/**
 * The diode that is a bipolar transistor's base: it lies between the control and the emitter, or between the emitter and
 * an inner node that one resistor leads to from the control.
 */
function baseOf(
  transistor: Transistor,
  primitives: readonly Primitive[],
  taken: ReadonlyMap<string, Diode>,
): Diode | undefined {
  const emitter = transistor.ends[1];
  const used = new Set([...taken.values()].map(({ id }) => id));
  const behind = new Set([transistor.control]);
  for (const { type, ends } of primitives) {
    if (type !== 'resistor') continue;
    if (ends[0] === transistor.control) behind.add(ends[1]);
    if (ends[1] === transistor.control) behind.add(ends[0]);
  }
  return primitives.find((primitive): primitive is Diode => {
    if (primitive.type !== 'diode' || used.has(primitive.id)) return false;
    const [inner, outer] =
      transistor.channel === 'n' ? primitive.ends : [primitive.ends[1], primitive.ends[0]];
    return outer === emitter && behind.has(inner);
  });
}

function elementsOf(
  primitive: Primitive,
  { prefix, nodeOf, moved, wipers, high }: PartPlace,
  primitives: readonly Primitive[],
  bases: ReadonlyMap<string, Diode>,
): readonly Element[] {
  const id = prefix + primitive.id;
  const [a, b] = [nodeOf(primitive.ends[0]), nodeOf(primitive.ends[1])];
  switch (primitive.type) {
    case 'resistor':
    case 'logic-input':
      return [{ type: 'resistor', id, a, b, ohms: primitive.ohms }];
    case 'coil': {
      const { ohms, volts } = primitive;
      // What operates it for certain is told; below half of that it is taken to stay at rest (relays let go at a tenth
      // and operate at half to three quarters of their nominal voltage, from memory).
      const operates = volts && { min: volts.min / 2, typ: volts.min * 0.8, max: volts.min };
      return [{ type: 'coil', id, a, b, ohms, ...(operates ? { operateVolts: operates } : {}) }];
    }
    case 'diode': {
      const { volts, atAmps, breakdownVolts, breakdownAmps } = primitive;
      const breakdown = breakdownVolts === undefined ? {} : { breakdownVolts };
      const test = breakdownAmps === undefined ? {} : { breakdownAmps };
      return [{ type: 'diode', id, anode: a, cathode: b, volts, atAmps, ...breakdown, ...test }];
    }
    case 'switch': {
      // Contacts on one lever leave their rest together.
      const lever = primitive.movesWith ?? primitive.id;
      const turned = moved?.has(primitive.id) === true || moved?.has(lever) === true;
      const closed = (primitive.rest === 'closed') !== turned;
      const coil = primitives.find(
        ({ type, id: other }) => type === 'coil' && other === primitive.operatedBy,
      );
      const operated = coil === undefined ? {} : { operatedBy: prefix + coil.id };
      return [{ type: 'switch', id, a, b, ohms: CONTACT_OHMS, closed, ...operated }];
    }
    case 'potentiometer': {
      const share = Math.min(0.999, Math.max(0.001, wipers?.[primitive.id] ?? 0.5));
      const wiper = nodeOf(primitive.wiper);
      return [
        { type: 'resistor', id: `${id}:first`, a, b: wiper, ohms: scaled(primitive.ohms, share) },
        { type: 'resistor', id: `${id}:second`, a: wiper, b, ohms: scaled(primitive.ohms, 1 - share) },
      ];
    }
    case 'source':
      return [{ type: 'source', id, plus: a, minus: b, volts: primitive.volts, ohms: primitive.ohms }];
    case 'load':
      return [{ type: 'current', id, from: a, to: b, amps: primitive.amps }];
    case 'logic-output': {
      const to = high?.has(primitive.id) === true ? primitive.supply : primitive.ends[1];
      // High without a supply is an open collector that lets go.
      return to === undefined ? [] : [{ type: 'resistor', id, a: nodeOf(to), b: a, ohms: primitive.ohms }];
    }
    case 'transistor':
      return [transistorOf(primitive, id, nodeOf, bases.get(primitive.id))];
    case 'capacitor':
      return [];
  }
}

function transistorOf(
  primitive: Transistor,
  id: string,
  nodeOf: PartPlace['nodeOf'],
  base: Diode | undefined,
): Element {
  const { channel, ohms, gain, fullVolts } = primitive;
  const common = {
    type: 'transistor',
    id,
    collector: nodeOf(primitive.ends[0]),
    emitter: nodeOf(primitive.ends[1]),
    channel,
    ohms,
  } as const;
  if (gain === undefined) {
    const full = fullVolts === undefined ? {} : { fullVolts };
    return { ...common, control: nodeOf(primitive.control), volts: primitive.volts, ...full };
  }
  if (base === undefined) {
    return { ...common, control: nodeOf(primitive.control), volts: primitive.volts, gain };
  }
  // The diode tells its own current; the collector's is that times the gain.
  const control = nodeOf(base.ends[channel === 'n' ? 0 : 1]);
  return { ...common, control, volts: base.volts, atAmps: base.atAmps * gain.typ, gain };
}

function scaled({ min, typ, max }: Range, by: number): Range {
  return { min: min * by, typ: typ * by, max: max * by };
}
