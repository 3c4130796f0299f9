/**
 * Where power comes from: the board's supply pins and the sources among the parts, and which nets are one conductor
 * with them once every switch is closed. Shared by the rules on supplies.
 */
import type { BoardPin } from '../../base/build';
import type { Primitive } from '../../base/primitive';
import type { Range } from '../../base/range';
import type { Placed, Subject } from '../subject';
import { reach } from './conduction';

export type PlacedOf<Type extends Primitive['type']> = Placed & {
  readonly primitive: Extract<Primitive, { type: Type }>;
};

/** Primitives of one type among the user's parts. */
export function placedOf<Type extends Primitive['type']>(
  subject: Subject,
  type: Type,
): readonly PlacedOf<Type>[] {
  return subject.placed.filter(
    (element): element is PlacedOf<Type> => !element.onBoard && element.primitive.type === type,
  );
}

/** Something that holds a net at a voltage against its return. */
export interface Supply {
  /** The pin's or the part's name. */
  readonly name: string;
  /** Supply pin of the board. */
  readonly pin?: BoardPin;
  /** A battery, an adapter or a regulator among the parts. */
  readonly source?: PlacedOf<'source'>;
  readonly net: string;
  readonly volts: Range;
}

/** Nets with a ground pin of the board. */
export function groundNets(subject: Subject): ReadonlySet<string> {
  return new Set(subject.pins.filter(({ pin }) => pin.type === 'ground').map(({ net }) => net.id));
}

/** Supply pins with known volts that are wired, one for each net. */
export function railSupplies(subject: Subject): readonly Supply[] {
  const grounds = groundNets(subject);
  return subject.pins.flatMap(({ pin, net }) =>
    pin.type === 'supply' && pin.volts && subject.rails[net.id] === pin.id && !grounds.has(net.id)
      ? [{ name: pin.id, pin, net: net.id, volts: pin.volts }]
      : [],
  );
}

/** Sources among the parts. */
export function sourceSupplies(
  subject: Subject,
): readonly (Supply & { readonly source: PlacedOf<'source'> })[] {
  return placedOf(subject, 'source').map((source) => ({
    name: source.part,
    source,
    net: source.nets[0],
    volts: source.primitive.volts,
  }));
}

const closedStore = new WeakMap<Subject, Readonly<Record<string, 'open' | 'closed'>>>();

/** Every switch closed. */
export function allClosed(subject: Subject): Readonly<Record<string, 'open' | 'closed'>> {
  let closed = closedStore.get(subject);
  if (!closed) {
    closed = Object.fromEntries(
      subject.placed.flatMap(({ id, primitive }) =>
        primitive.type === 'switch' ? [[id, 'closed'] as const] : [],
      ),
    );
    closedStore.set(subject, closed);
  }
  return closed;
}

/** Nets that are one conductor with a net once every switch is closed; fuses conduct. */
export function joinedNets(subject: Subject, net: string): ReadonlySet<string> {
  return reach(subject, net, { switches: allClosed(subject), resistances: false, sources: false });
}

/** Nets that are one conductor with a net while every switch is open. */
export function fixedNets(subject: Subject, net: string): ReadonlySet<string> {
  const switches = Object.fromEntries(Object.keys(allClosed(subject)).map((id) => [id, 'open' as const]));
  return reach(subject, net, { switches, resistances: false, sources: false });
}

/**
 * What feeds a net by metal, switches and fuses alone. More than one where switches choose, or where two supplies are
 * tied: then nobody knows which.
 */
export function feedersOf(subject: Subject, net: string): readonly Supply[] {
  const nets = joinedNets(subject, net);
  return [...railSupplies(subject), ...sourceSupplies(subject)].filter((supply) => nets.has(supply.net));
}

/** The one supply of a net; undefined where there is none or more than one. */
export function onlyFeeder(subject: Subject, net: string): Supply | undefined {
  const [first, ...others] = feedersOf(subject, net);
  return others.length === 0 ? first : undefined;
}

/** The terminal on a net, of a part. */
export function terminalOn(subject: Subject, part: string, net: string): string | undefined {
  const found = subject.build.nets.find(({ id }) => id === net);
  return found?.terminals.find((end) => end.part === part)?.terminal;
}
