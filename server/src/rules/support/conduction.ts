/**
 * Which nets hang together in one state of the switches: the questions about wiring that need no volts. Used by the
 * rules on floating inputs, on lamps without a resistor and on shorts.
 */
import type { Placed, Subject } from '../subject';

/** What a walk may pass. */
export interface Passing {
  readonly switches: Readonly<Record<string, 'open' | 'closed'>>;
  /** True: also through everything that limits a current (resistors, windings, tracks). */
  readonly resistances: boolean;
  /**
   * Through junctions: `up` from cathode to anode only, to where a current can come from; `down` from anode to cathode
   * only, to where it can go.
   */
  readonly diodes?: 'up' | 'down';
  /** False: not through supplies (batteries). */
  readonly sources?: boolean;
  /** False: not through the board's own parts. */
  readonly onBoard?: boolean;
  /** A placed primitive that the walk must not pass. */
  readonly without?: string;
  /** True: a walk that starts at a rail also goes through what limits a current. */
  readonly behindRail?: boolean;
}

function passes(element: Placed, passing: Passing, from: string): boolean {
  if (element.id === passing.without || (element.onBoard && passing.onBoard === false)) return false;
  switch (element.primitive.type) {
    case 'switch':
      return (passing.switches[element.id] ?? element.primitive.rest) === 'closed';
    case 'source':
      return passing.sources !== false;
    case 'diode': {
      const enters = passing.diodes === 'up' ? element.nets[1] : element.nets[0];
      return passing.diodes !== undefined && enters === from;
    }
    case 'resistor':
      // A fuse limits nothing until it opens.
      return passing.resistances || element.primitive.maxAmps !== undefined;
    case 'coil':
    case 'potentiometer':
    case 'logic-output':
      return passing.resistances;
    default:
      return false;
  }
}

/**
 * Every net that can be reached from one, itself included. A walk ends at a rail: it does not go on behind it. One that
 * starts at a rail finds what is one conductor with it; where it asks for more it stays, since nothing moves a rail.
 */
export function reach(subject: Subject, from: string, passing: Passing): ReadonlySet<string> {
  if (passing.resistances && passing.behindRail !== true && subject.rails[from] !== undefined)
    return new Set([from]);
  const seen = new Set<string>([from]);
  const front = [from];
  const neighbours = neighboursOf(subject);
  for (let net = front.pop(); net !== undefined; net = front.pop()) {
    if (net !== from && subject.rails[net] !== undefined) continue;
    for (const element of neighbours.get(net) ?? []) {
      if (!passes(element, passing, net)) continue;
      const nets = element.third === undefined ? element.nets : [...element.nets, element.third];
      for (const other of nets) {
        if (seen.has(other)) continue;
        seen.add(other);
        front.push(other);
      }
    }
  }
  return seen;
}

const neighbourStore = new WeakMap<readonly Placed[], Map<string, Placed[]>>();

function neighboursOf(subject: Subject): ReadonlyMap<string, readonly Placed[]> {
  const kept = neighbourStore.get(subject.placed);
  if (kept) return kept;
  const byNet = new Map<string, Placed[]>();
  for (const element of subject.placed) {
    const nets = element.third === undefined ? element.nets : [...element.nets, element.third];
    for (const net of new Set(nets)) byNet.set(net, [...(byNet.get(net) ?? []), element]);
  }
  neighbourStore.set(subject.placed, byNet);
  return byNet;
}

/** Rail pin ids among nets. */
export function railsAmong(subject: Subject, nets: Iterable<string>): string[] {
  const rails: string[] = [];
  for (const net of nets) {
    const rail = subject.rails[net];
    if (rail !== undefined) rails.push(rail);
  }
  return rails;
}
