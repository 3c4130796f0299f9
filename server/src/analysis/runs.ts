/**
 * Follows the wires from a pin through the parts to a rail, as somebody does with a finger along the real thing.
 */
import type { Build, End, Part, Wire } from '../base/build';
import { isRail, thirdTerminal } from './join';

/** One piece of wire and what it leads to. */
export interface Hop {
  readonly wire: Wire;
  /** The end the wire leads to. */
  readonly to: End;
  /** The part entered there, and the terminal the run leaves it by; absent at a pin or where the part ends the run. */
  readonly part?: Part;
  readonly leave?: string;
}

export interface Run {
  readonly hops: readonly Hop[];
  /** True where the run reaches a supply or ground pin. */
  readonly reachesRail: boolean;
}

/** Terminals of a part that its inside joins with this one. */
export function partnersOf(part: Part, terminal: string): string[] {
  const partners = new Set<string>();
  for (const primitive of part.inside) {
    const third = thirdTerminal(primitive);
    const terminals = third === undefined ? primitive.ends : [...primitive.ends, third];
    if (terminals.includes(terminal)) for (const other of terminals) partners.add(other);
  }
  partners.delete(terminal);
  return [...partners].filter((id) => part.terminals.some((known) => known.id === id));
}

/** Runs that start at a pin, one for each wire on it. The shortest way to a rail where there is one. */
export function traceRuns(build: Build, pinId: string): Run[] {
  const parts = new Map(build.parts.map((part) => [part.id, part]));
  const railIds = new Set(build.board.pins.filter(isRail).map((pin) => pin.id));
  const wiresByTerminal = new Map<string, Wire[]>();
  for (const wire of build.wires) {
    for (const end of wire.ends) {
      if (end.kind !== 'terminal') continue;
      const name = `${end.part}.${end.terminal}`;
      wiresByTerminal.set(name, [...(wiresByTerminal.get(name) ?? []), wire]);
    }
  }
  const runs: Run[] = [];
  for (const wire of build.wires) {
    wire.ends.forEach((end, index) => {
      if (end.kind !== 'pin' || end.pin !== pinId) return;
      const other = wire.ends[index === 0 ? 1 : 0];
      runs.push(shortestRun(wire, other));
    });
  }
  return runs;

  /** The way to a rail that passes the fewest parts, then the fewest wires; without one, the longest found. */
  function shortestRun(first: Wire, to: End): Run {
    const seen = new Set<string>([first.id]);
    let longest: Hop[] = [];
    const front: { hops: Hop[]; wire: Wire; to: End; cost: number }[] = [
      { hops: [], wire: first, to, cost: 0 },
    ];
    for (;;) {
      front.sort((a, b) => a.cost - b.cost);
      const here = front.shift();
      if (!here) return { hops: longest, reachesRail: false };
      const { hops, wire, to: end, cost } = here;
      const part = end.kind === 'terminal' ? parts.get(end.part) : undefined;
      const whole = [...hops, { wire, to: end, ...(part && { part }) }];
      if (whole.length > longest.length) longest = whole;
      if (end.kind === 'pin') {
        if (railIds.has(end.pin)) return { hops: whole, reachesRail: true };
        continue;
      }
      if (!part) continue;
      for (const leave of [end.terminal, ...partnersOf(part, end.terminal)]) {
        for (const onward of wiresByTerminal.get(`${part.id}.${leave}`) ?? []) {
          if (seen.has(onward.id)) continue;
          seen.add(onward.id);
          const [a, b] = onward.ends;
          const far = a.kind === 'terminal' && a.part === part.id && a.terminal === leave ? b : a;
          const step = leave === end.terminal ? 1 : passingCost;
          front.push({
            hops: [...hops, { wire, to: end, part, leave }],
            wire: onward,
            to: far,
            cost: cost + step,
          });
        }
      }
    }
  }
}

/** One part passed weighs more than any number of wires soldered end to end. */
const passingCost = 1000;
