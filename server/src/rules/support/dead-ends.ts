/** Wired terminals behind which a part goes on to no other wire: what hangs on them can carry nothing. */
import type { Part, Primitive } from '../../base/build';
import type { PinView, Subject } from '../subject';

/** A terminal with a wire, and those of which at least one would need a wire too. */
export interface DeadEnd {
  readonly part: Part;
  readonly terminal: string;
  readonly ways: readonly string[];
}

/** What only carries from one end to the other and has no life of its own. */
const carrying: ReadonlySet<Primitive['type']> = new Set(['switch', 'resistor', 'diode', 'coil']);

const store = new WeakMap<Subject, readonly DeadEnd[]>();

/** Dead ends that only terminals marked as optional leave open: any other bare terminal is a fault by itself. */
export function deadEnds(subject: Subject): readonly DeadEnd[] {
  let found = store.get(subject);
  if (!found) {
    found = find(subject);
    store.set(subject, found);
  }
  return found;
}

function find(subject: Subject): readonly DeadEnd[] {
  const wired = wiredTerminals(subject);
  // In a part with a life of its own a diode or a resistor may be there for the sake of something else.
  const passive = subject.build.parts.filter(({ inside }) => inside.every(({ type }) => carrying.has(type)));
  return passive.flatMap((part) =>
    part.terminals.flatMap(({ id: terminal }): DeadEnd[] => {
      if (!isWired(part, terminal, wired)) return [];
      const touching = part.inside.filter(({ ends }) => ends.includes(terminal));
      if (touching.length === 0) return [];
      const ways = new Set(touching.flatMap(({ ends }) => ends.filter((end) => end !== terminal)));
      const dead = [...ways].every((way) => {
        const other = part.terminals.find(({ id }) => id === way);
        return other?.optional === true && !isWired(part, way, wired);
      });
      return dead ? [{ part, terminal, ways: [...ways] }] : [];
    }),
  );
}

/** `part.terminal` of every wire's ends. */
export function wiredTerminals(subject: Subject): ReadonlySet<string> {
  const wired = new Set<string>();
  for (const wire of subject.build.wires) {
    for (const end of wire.ends) if (end.kind === 'terminal') wired.add(`${end.part}.${end.terminal}`);
  }
  return wired;
}

/** True where a wire reaches the terminal, or one that the part itself joins to it. */
export function isWired(part: Part, terminal: string, wired: ReadonlySet<string>): boolean {
  const joined = part.joined?.find((group) => group.includes(terminal)) ?? [terminal];
  return joined.some((id) => wired.has(`${part.id}.${id}`));
}

/** True where a pin's wire ends in such a place: the rule on bare terminals tells that. */
export function endsDead(subject: Subject, view: PinView): boolean {
  return deadEnds(subject).some(({ part, terminal }) =>
    view.net.terminals.some((end) => end.part === part.id && end.terminal === terminal),
  );
}
