/** Buttons whose wires are all on legs that metal inside the part makes one conductor. */
import type { Part, Wire } from '../../base/build';
import type { Subject } from '../subject';

export interface JoinedLegs {
  readonly part: Part;
  /** The two legs with wires. */
  readonly legs: readonly [string, string];
  /** A leg of the other side. */
  readonly free: string;
  /** The wire that is on the wrong leg. */
  readonly wire: Wire;
  readonly end: 0 | 1;
}

const store = new WeakMap<Subject, readonly JoinedLegs[]>();

export function findJoinedLegs(subject: Subject): readonly JoinedLegs[] {
  const kept = store.get(subject);
  if (kept) return kept;
  const found = subject.build.parts.flatMap((part) => legsOf(subject, part) ?? []);
  store.set(subject, found);
  return found;
}

function legsOf(subject: Subject, part: Part): JoinedLegs | undefined {
  const contact = part.inside.find((primitive) => primitive.type === 'switch');
  if (!contact || !part.joined) return undefined;
  const ends = subject.build.wires.flatMap((wire) =>
    ([0, 1] as const).flatMap((index) => {
      const end = wire.ends[index];
      return end.kind === 'terminal' && end.part === part.id
        ? [{ wire, end: index, terminal: end.terminal }]
        : [];
    }),
  );
  const [first, ...others] = ends;
  const group = part.joined.find((one) => first !== undefined && one.includes(first.terminal));
  const last = others.find((other) => other.terminal !== first?.terminal);
  if (!first || !last || !group || !ends.every(({ terminal }) => group.includes(terminal))) return undefined;
  const free = contact.ends.find((id) => !group.includes(id));
  if (free === undefined) return undefined;
  return { part, legs: [first.terminal, last.terminal], free, wire: last.wire, end: last.end };
}
