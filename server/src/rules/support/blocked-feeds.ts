/** Diodes in a feed that block it: with the ring towards the supply nothing ever comes through. */
import type { Placed, Subject } from '../subject';
import { reach } from './conduction';
import { poleOf } from './poles';
import { reversedParts } from './reversed-supplies';
import { allClosed, groundNets, type PlacedOf, placedOf } from './supplies';
import { isSignal, lampsOf, partOf } from './views';

export interface BlockedFeed {
  readonly diode: PlacedOf<'diode'>;
  /** The end that looks at what should be fed, as the other end looks at the supply. */
  readonly towards: string;
  /** What gets nothing: a part's terminal, or a supply pin of the board. */
  readonly starved: string;
}

export function blockedFeeds(subject: Subject): readonly BlockedFeed[] {
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
      if (starved !== undefined) return [{ diode, towards: ends[0], starved }];
    }
    const back = poleOf(subject, anode);
    if (back.down && !back.up) {
      const starved = starvedAt(subject, diode, cathode, 'minus', back.nets);
      if (starved !== undefined) return [{ diode, towards: ends[1], starved }];
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
  const walk = (resistances: boolean) =>
    reach(subject, net, {
      switches: allClosed(subject),
      resistances,
      sources: false,
      without: diode.id,
      ...(resistances && { diodes: side === 'plus' ? 'up' : 'down' }),
    });
  const wide = walk(true);
  if (isServed(subject, wide, side)) return undefined;
  const own = walk(false);
  const index = side === 'plus' ? 0 : 1;
  const load = placedOf(subject, 'load').find(({ nets }) => own.has(nets[index]));
  if (load) return `${load.part}.${load.primitive.ends[index]}`;
  const coil = placedOf(subject, 'coil').find(({ nets }) => nets.some((one) => own.has(one)));
  const lamp = lampsOf(subject).find(({ nets }) => wide.has(nets[index]));
  if (coil ?? lamp) return (coil ?? lamp)?.part;
  // Beside a load the pin itself may be what feeds, with a pack as the reserve.
  const isPackAlone = !placedOf(subject, 'load').some(({ nets }) => supply.has(nets[0]));
  const pin = subject.pins.find(
    (view) => view.pin.type === 'supply' && !view.pin.volts && own.has(view.net.id) && view.wires.length > 0,
  );
  return side === 'plus' && isPackAlone ? pin?.pin.id : undefined;
}

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
      case 'logic-output':
        return ends.some(own) || own(third);
      default:
        return false;
    }
  });
  return (
    isActive || subject.build.nets.some(({ id, terminals }) => nets.has(id) && !isKnown(subject, terminals))
  );
}

/** True where something is known of the inside of every terminal. */
function isKnown(subject: Subject, terminals: Subject['build']['nets'][number]['terminals']): boolean {
  return terminals.every(({ part, terminal }) =>
    partOf(subject, part)?.inside.some(
      (primitive) =>
        primitive.ends.includes(terminal) ||
        (primitive.type === 'potentiometer' && primitive.wiper === terminal) ||
        (primitive.type === 'source' && primitive.from === terminal),
    ),
  );
}
