/** Supplies whose minus is not joined to the board's ground: no volts between one side and the other mean anything. */
import type { Part } from '../../base/build';
import type { PinView, Placed, Subject } from '../subject';
import { reversedParts } from './reversed-supplies';
import { groundNets, placedOf } from './supplies';
import { isSignal, partOf } from './views';
import { walk } from './walk';

export interface PartedGround {
  readonly part: Part;
  /** The supply's minus. */
  readonly terminal: string;
  /** Pins that lead to what it feeds, at least one. */
  readonly views: readonly PinView[];
  /** Nets that hang together with it, the pins' own among them. */
  readonly nets: ReadonlySet<string>;
}

const store = new WeakMap<Subject, readonly PartedGround[]>();

export function partedGrounds(subject: Subject): readonly PartedGround[] {
  let found = store.get(subject);
  if (!found) {
    found = findParted(subject);
    store.set(subject, found);
  }
  return found;
}

/** True for a net whose volts count from a ground that is not joined to the board's. */
export function isAdrift(subject: Subject, net: string): boolean {
  return partedGrounds(subject).some(({ nets }) => nets.has(net));
}

function findParted(subject: Subject): readonly PartedGround[] {
  const grounds = groundNets(subject);
  if (grounds.size === 0 || subject.doubtful.length > 0) return [];
  const told = new Set<string>();
  const modules = new Set(placedOf(subject, 'load').map((load) => load.part));
  const reversed = reversedParts(subject);
  const isPin = (net: string) => subject.pins.some((view) => view.net.id === net);
  return placedOf(subject, 'source').flatMap((source) => {
    const [, minus] = source.nets;
    const part = partOf(subject, source.part);
    // A regulator, or a module with one, has the ground of what feeds it.
    if (source.primitive.from !== undefined || modules.has(source.part)) return [];
    // A minus without any wire is an open terminal, and one on the wrong side is told as that.
    const isWired = subject.build.nets.some(({ id }) => id === minus);
    if (!part || !isWired || told.has(minus) || reversed.has(part.id) || isPlusOfAnother(subject, source))
      return [];
    const held = walk(subject, [minus], mayJoin, isPin);
    if ([...held].some((net) => grounds.has(net))) return [];
    const nets = walk(subject, [...held], (element) => element.primitive.type !== 'capacitor', isPin);
    const views = subject.pins.filter((view) => isSignal(view) && nets.has(view.net.id));
    if (views.length === 0) return [];
    for (const net of held) told.add(net);
    return [{ part, terminal: source.primitive.ends[1], views, nets }];
  });
}

/** Whatever may join two grounds, be it badly: of such a build nothing is said here. */
function mayJoin({ primitive }: Placed): boolean {
  return ['switch', 'resistor', 'coil', 'diode', 'transistor', 'potentiometer'].includes(primitive.type);
}

/** The upper one of two packs in a row: its minus is the other's plus. */
function isPlusOfAnother(subject: Subject, source: Placed): boolean {
  return placedOf(subject, 'source').some((other) => other !== source && other.nets[0] === source.nets[1]);
}
