/** Diodes in a feed that block it: with the ring towards the supply nothing ever comes through. */
import type { Primitive } from '../../base/primitive';
import type { Placed, Subject } from '../subject';
import { poleOf } from './poles';
import { reversedParts } from './reversed-supplies';
import { groundNets, joinedNets, type PlacedOf, placedOf } from './supplies';
import { isSignal, lampsOf, partOf } from './views';
import { walk } from './walk';

export interface BlockedFeed {
  readonly diode: PlacedOf<'diode'>;
  /** The end that looks at what should be fed, as the other end looks at the supply. */
  readonly towards: string;
  /** What gets nothing: a part's terminal, or a supply pin of the board. */
  readonly starved: string;
  /** Nets that hang on its far end. */
  readonly nets: ReadonlySet<string>;
}

const store = new WeakMap<Subject, readonly BlockedFeed[]>();

export function blockedFeeds(subject: Subject): readonly BlockedFeed[] {
  let found = store.get(subject);
  if (!found) {
    found = findBlocked(subject);
    store.set(subject, found);
  }
  return found;
}

/** True for a part that gets nothing for such a diode. */
export function isStarved(subject: Subject, part: string): boolean {
  const nets = new Set(blockedFeeds(subject).flatMap(({ nets: all }) => [...all]));
  return placedOf(subject, 'load').some(
    (load) => load.part === part && load.nets.some((net) => nets.has(net)),
  );
}

function findBlocked(subject: Subject): readonly BlockedFeed[] {
  if (subject.doubtful.length > 0 || reversedParts(subject).size > 0) return [];
  return placedOf(subject, 'diode').flatMap((diode) => {
    const { lamp, breakdownVolts, ends } = diode.primitive;
    // A diode inside a part with other things in it is not anybody's to turn.
    if (lamp || breakdownVolts !== undefined || (partOf(subject, diode.part)?.inside.length ?? 0) > 1)
      return [];
    const [anode, cathode] = diode.nets;
    const supply = poleOf(subject, cathode);
    if (supply.up && !supply.down) {
      const starved = starvedAt(subject, diode, anode, 'plus', supply.nets);
      if (starved !== undefined)
        return [{ diode, towards: ends[0], starved, nets: joinedNets(subject, anode) }];
    }
    const back = poleOf(subject, anode);
    if (back.down && !back.up) {
      const starved = starvedAt(subject, diode, cathode, 'minus', back.nets);
      if (starved !== undefined)
        return [{ diode, towards: ends[1], starved, nets: joinedNets(subject, cathode) }];
    }
    return [];
  });
}

/** What hangs behind the diode and nothing else serves; undefined where it may have another way, or asks for none. */
function starvedAt(
  subject: Subject,
  diode: Placed,
  net: string,
  side: 'plus' | 'minus',
  supply: ReadonlySet<string>,
): string | undefined {
  const wide = walk(
    subject,
    [net],
    (element) => element.id !== diode.id && passive.has(element.primitive.type),
    (at) => subject.rails[at] !== undefined,
  );
  if (subject.rails[net] !== undefined || isServed(subject, wide, side)) return undefined;
  const own = joinedNets(subject, net);
  const index = side === 'plus' ? 0 : 1;
  const load = placedOf(subject, 'load').find(({ nets }) => own.has(nets[index]));
  const coil = placedOf(subject, 'coil').find(({ nets }) => nets.some((one) => own.has(one)));
  const lamp = lampsOf(subject).find(({ nets }) => wide.has(nets[index]));
  const starved = load ? `${load.part}.${load.primitive.ends[index]}` : (coil ?? lamp)?.part;
  const pin = subject.pins.find(
    ({ pin: { type, volts }, net: at, wires }) =>
      type === 'supply' && !volts && wide.has(at.id) && wires.length > 0,
  );
  if (!pin) return starved;
  // A pin that can be fed from a socket feeds what hangs on it, and beside a load a pack may be its reserve.
  const isForPin = side === 'plus' && starved === undefined && own.has(pin.net.id);
  return isForPin && !placedOf(subject, 'load').some(({ nets }) => supply.has(nets[0]))
    ? pin.pin.id
    : undefined;
}

/** What current goes through either way, or may. */
const passive: ReadonlySet<string> = new Set(['resistor', 'coil', 'potentiometer', 'switch', 'diode']);

/** True where a supply, a pin, a transistor or something nobody described may serve one of the nets. */
function isServed(subject: Subject, nets: ReadonlySet<string>, side: 'plus' | 'minus'): boolean {
  const grounds = groundNets(subject);
  const own = (net: string | undefined) => net !== undefined && nets.has(net);
  const isPole = subject.pins.some(({ pin, net }) => {
    if (!nets.has(net.id)) return false;
    return side === 'plus' ? pin.type === 'supply' && pin.volts !== undefined : grounds.has(net.id);
  });
  if (isPole || subject.pins.some((view) => isSignal(view) && nets.has(view.net.id))) return true;
  const isActive = subject.placed.some(({ primitive, nets: ends, third }) => {
    switch (primitive.type) {
      case 'source':
        return own(ends[side === 'plus' ? 0 : 1]);
      case 'transistor':
        // One that stands on ground gives no plus.
        if (side === 'plus' && primitive.channel === 'n' && grounds.has(ends[1])) return own(third);
        return ends.some(own) || own(third);
      case 'logic-output':
        // One that is itself behind the diode gives nothing, and one that only pulls low gives no plus.
        return own(ends[0]) && (side === 'minus' ? !own(ends[1]) : third !== undefined && !own(third));
      default:
        return false;
    }
  });
  return (
    isActive || subject.build.nets.some(({ id, terminals }) => nets.has(id) && !isKnown(subject, terminals))
  );
}

/** True where something is known of the inside of every part on a net, at one of its terminals there. */
function isKnown(subject: Subject, terminals: Subject['build']['nets'][number]['terminals']): boolean {
  const known = new Set(
    terminals.flatMap(({ part, terminal }) => {
      const touches = partOf(subject, part)?.inside.some((primitive) => endsOf(primitive).includes(terminal));
      return touches ? [part] : [];
    }),
  );
  return terminals.every(({ part }) => known.has(part));
}

function endsOf(primitive: Primitive): readonly (string | undefined)[] {
  switch (primitive.type) {
    case 'potentiometer':
      return [...primitive.ends, primitive.wiper];
    case 'logic-output':
      return [...primitive.ends, primitive.supply];
    case 'source':
      return [...primitive.ends, primitive.from];
    default:
      return primitive.ends;
  }
}
