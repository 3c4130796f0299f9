/**
 * Which wire of the new build is which of the old, and what a hand has to do to it. A wire with the same two ends is
 * the same wire, or is replaced where its colour, gauge or length differs; one that has kept an end and its looks is
 * moved; the rest goes and comes. Holes that the manifest does not name stay where they were soldered.
 */
import type { Board, Build, End, Position, Wire } from '../base/build';
import { holesOf, positionWords } from '../hardware';
import type { Rename } from './match-parts';
import { gaugeOf, gaugeWords, stripOf } from './words';

/** A wire of the new build with the old one it was; its holes are those it has once everything is done. */
export interface WireChange {
  readonly before: Wire;
  readonly after: Wire;
}

export interface WireChanges {
  readonly gone: readonly Wire[];
  readonly come: readonly Wire[];
  /** One or both ends go elsewhere. */
  readonly moved: readonly WireChange[];
  /** Same ends, another wire: colour, gauge or length. */
  readonly replaced: readonly WireChange[];
  /** Nothing for the soldering iron: stripped length or note. */
  readonly reworded: readonly WireChange[];
  readonly kept: readonly WireChange[];
  /** The new build's wires with their holes as they come to be, in its order. */
  readonly result: readonly Wire[];
}

export function matchWires(before: Build, after: Build, renames: readonly Rename[]): WireChanges {
  const names = new Map(renames.map(({ from, to }) => [from, to]));
  const keyOf = (end: End) =>
    end.kind === 'pin' ? `pin ${end.pin}` : `${names.get(end.part) ?? end.part}.${end.terminal}`;
  const newKey = (end: End) => (end.kind === 'pin' ? `pin ${end.pin}` : `${end.part}.${end.terminal}`);
  const both = (wire: Wire, key: (end: End) => string) => wire.ends.map(key).sort().join(' | ');
  const open = new Set(before.wires);
  const partner = new Map<Wire, Wire>();
  const pair = (fits: (old: Wire, fresh: Wire) => boolean) => {
    for (const fresh of after.wires) {
      if (partner.has(fresh)) continue;
      const old = [...open].find((candidate) => fits(candidate, fresh));
      if (!old) continue;
      partner.set(fresh, old);
      open.delete(old);
    }
  };
  const sameEnds = (old: Wire, fresh: Wire) => both(old, keyOf) === both(fresh, newKey);
  const sameLook = (old: Wire, fresh: Wire) => looksOf(before, old) === looksOf(after, fresh);
  // Those that sit in the named hole already come first, so that two wires of one pin are not crossed over.
  pair((old, fresh) => sameEnds(old, fresh) && sameLook(old, fresh) && inNamedHoles(old, fresh));
  pair((old, fresh) => sameEnds(old, fresh) && sameLook(old, fresh));
  pair(sameEnds);
  pair(
    (old, fresh) =>
      sameLook(old, fresh) &&
      old.ends.some((end) => fresh.ends.some((other) => keyOf(end) === newKey(other))),
  );
  const settled = settleHoles(after, partner, (old, fresh) => keyOf(old) === newKey(fresh));
  const changes = after.wires.flatMap((wire) => {
    const old = partner.get(wire);
    return old ? [{ before: old, after: settled.get(wire) ?? wire }] : [];
  });
  const isMoved = ({ before: old, after: fresh }: WireChange) =>
    placesOf(old, keyOf) !== placesOf(fresh, newKey);
  const still = changes.filter((change) => !isMoved(change));
  const isReplaced = (change: WireChange) => !sameLook(change.before, change.after);
  const isReworded = ({ before: old, after: fresh }: WireChange) =>
    old.note !== fresh.note || stripOf(before, old) !== stripOf(after, fresh);
  return {
    gone: before.wires.filter((wire) => open.has(wire)),
    come: after.wires.filter((wire) => !partner.has(wire)).map((wire) => settled.get(wire) ?? wire),
    moved: changes.filter(isMoved),
    replaced: still.filter(isReplaced),
    reworded: still.filter((change) => !isReplaced(change) && isReworded(change)),
    kept: still.filter((change) => !isReplaced(change) && !isReworded(change)),
    result: after.wires.map((wire) => settled.get(wire) ?? wire),
  };
}

/** Colour, gauge and length: what makes it another piece of wire. */
export function looksOf(build: Build, wire: Wire): string {
  const gauge = gaugeOf(build, wire);
  return JSON.stringify([wire.colour ?? '', gauge ? gaugeWords(gauge) : '', wire.length ?? null]);
}

function holeName({ header, index }: { readonly header: string; readonly index: number }): string {
  return `${header}.${index}`;
}

/** Both ends with their holes, in an order that does not depend on which is named first. */
function placesOf(wire: Wire, keyOf: (end: End) => string): string {
  const place = (end: End) =>
    end.kind === 'pin' && end.position ? `${keyOf(end)}@${holeName(end.position)}` : keyOf(end);
  return wire.ends.map(place).sort().join(' | ');
}

function inNamedHoles(old: Wire, fresh: Wire): boolean {
  return fresh.ends.every((end) => {
    if (end.kind !== 'pin' || !end.position?.declared) return true;
    const { position } = end;
    return old.ends.some(
      (other) => other.kind === 'pin' && other.position && holeName(other.position) === holeName(position),
    );
  });
}

/**
 * Gives every end its hole: named ones first, then those that can stay where they were soldered, then the rest. A hole
 * may be shared only where the pin has a single one.
 */
function settleHoles(
  after: Build,
  partner: ReadonlyMap<Wire, Wire>,
  same: (old: End, fresh: End) => boolean,
): ReadonlyMap<Wire, Wire> {
  const { board } = after;
  const taken = new Set<string>();
  for (const { ends } of after.wires) {
    for (const end of ends) {
      if (end.kind === 'pin' && end.position?.declared) taken.add(holeName(end.position));
    }
  }
  // Two pieces of a path that meet in a pin share their hole, so holes of the new build are settled and not ends.
  const holes = new Map<string, Position>();
  const open = after.wires.flatMap((wire) =>
    wire.ends.flatMap((end) => {
      if (end.kind !== 'pin' || !end.position || end.position.declared) return [];
      return [{ wire, end, position: end.position }];
    }),
  );
  for (const { wire, end, position } of open) {
    if (holes.has(holeName(position))) continue;
    const was = partner.get(wire)?.ends.find((other) => same(other, end));
    const place = was?.kind === 'pin' ? was.position : undefined;
    if (!place || taken.has(holeName(place))) continue;
    const stays = holesOf(board, end.pin).some((hole) => holeName(hole) === holeName(place));
    const made = stays ? makePlace(board, end.pin, place) : undefined;
    if (!made) continue;
    taken.add(holeName(place));
    holes.set(holeName(position), made);
  }
  for (const { end, position } of open) {
    if (holes.has(holeName(position))) continue;
    const own = [position, ...holesOf(board, end.pin)].find((hole) => !taken.has(holeName(hole)));
    const made = own ? makePlace(board, end.pin, own) : undefined;
    if (!made) continue;
    taken.add(holeName(made));
    holes.set(holeName(position), made);
  }
  const settle = (end: End): End => {
    if (end.kind !== 'pin' || !end.position || end.position.declared) return end;
    const position = holes.get(holeName(end.position));
    return position ? { ...end, position } : end;
  };
  return new Map(
    after.wires.map((wire) => [wire, { ...wire, ends: [settle(wire.ends[0]), settle(wire.ends[1])] }]),
  );
}

function makePlace(board: Board, pin: string, hole: { header: string; index: number }): Position | undefined {
  const header = board.headers.find(({ id }) => id === hole.header);
  return (
    header && {
      header: hole.header,
      index: hole.index,
      declared: false,
      words: positionWords(pin, header, hole.index),
    }
  );
}
