/** Supplies, and parts that one feeds, with plus and minus exchanged: what their volts do elsewhere is not told. */
import type { Placed, Region, Subject } from '../subject';
import { poleOf } from './poles';
import { groundNets, joinedNets, placedOf } from './supplies';
import { partOf } from './views';

export interface Reversed {
  readonly element: Placed;
  /** Where its ends are, as the second half of a sentence. */
  readonly words: string;
}

const store = new WeakMap<Subject, readonly Reversed[]>();

export function reversedSupplies(subject: Subject): readonly Reversed[] {
  let found = store.get(subject);
  if (!found) {
    found = [...reversedSources(subject), ...reversedLoads(subject)].filter(
      ({ element }) => !subject.doubtful.includes(element.part),
    );
    store.set(subject, found);
  }
  return found;
}

/** Their parts. */
export function reversedParts(subject: Subject): ReadonlySet<string> {
  return new Set(reversedSupplies(subject).map(({ element }) => element.part));
}

/** True where such a part is in the region: its volts are not what the build is meant to have. */
export function isReversedRegion(subject: Subject, region: Region | undefined): boolean {
  const parts = reversedParts(subject);
  return parts.size > 0 && region !== undefined && region.elements.some(({ part }) => parts.has(part));
}

function reversedSources(subject: Subject): readonly Reversed[] {
  const sources = placedOf(subject, 'source').filter(({ primitive }) => primitive.from === undefined);
  const grounds = groundNets(subject);
  // With the minus of another on ground it may be the lower half of a split supply.
  const isSplit = sources.some(({ nets }) =>
    [...joinedNets(subject, nets[1])].some((net) => grounds.has(net)),
  );
  return sources.flatMap((element) => {
    const plus = poleOf(subject, element.nets[0]);
    const minus = poleOf(subject, element.nets[1]);
    if (!plus.ground || minus.ground || plus.pins.length > 0) return [];
    const fed = subject.build.nets
      .filter(({ id }) => minus.nets.has(id))
      .flatMap(({ terminals }) => terminals.filter(({ part }) => part !== element.part));
    const isPlus = (end: (typeof fed)[number]) =>
      partOf(subject, end.part)?.terminals.some(
        ({ id, polarity }) => id === end.terminal && polarity === '+',
      );
    const far = fed.find(isPlus) ?? (isSplit ? undefined : fed[0]);
    const end = minus.pins[0] ?? (far && `${far.part}.${far.terminal}`);
    return end === undefined ? [] : [{ element, words: `its plus is on ground and its minus on ${end}` }];
  });
}

function reversedLoads(subject: Subject): readonly Reversed[] {
  const told = new Set<string>();
  return placedOf(subject, 'load').flatMap((element) => {
    const terminals = partOf(subject, element.part)?.terminals ?? [];
    const [first, second] = element.primitive.ends;
    const polarity = (id: string) => terminals.find((terminal) => terminal.id === id)?.polarity;
    if (polarity(first) !== '+' || polarity(second) !== '-' || told.has(element.part)) return [];
    const plus = poleOf(subject, element.nets[0], element.part);
    const minus = poleOf(subject, element.nets[1], element.part);
    if (!plus.down || plus.up || !minus.up || minus.down) return [];
    told.add(element.part);
    const up = minus.pins[0] ?? 'plus';
    return [
      { element, words: `its ${first} is on ${plus.ground ? 'ground' : 'minus'} and its ${second} on ${up}` },
    ];
  });
}
