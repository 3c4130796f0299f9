/**
 * On which side of the board each part goes, how far from it, and to which side each of its terminals looks. Decided
 * from the wiring alone, so that a part nobody touched stays where it was.
 */
import { type BoardFigure, holeKey } from './board-figure';
import type { PictureEnd, PictureModel, PictureWire } from './model';
import type { Facing } from './part-figure';

export interface Arrangement {
  readonly sides: ReadonlyMap<string, 'left' | 'right'>;
  /** Steps from the board, by part. */
  readonly depths: ReadonlyMap<string, number>;
  /** Height that a part would like to have on the board's scale. */
  readonly ranks: ReadonlyMap<string, number>;
  /** By `part.terminal`. */
  readonly facings: ReadonlyMap<string, Facing>;
  /** Height that an end looks for at the other end of its wire. */
  readonly rankOf: (end: PictureEnd) => number;
  /** Grows with the distance from the board; of two at one depth the simpler part is the nearer one. */
  readonly farOf: (part: string) => number;
}

export const terminalKey = (part: string, terminal: string): string => JSON.stringify([part, terminal]);

export function arrange(model: PictureModel, board: BoardFigure): Arrangement {
  const holes = new Map(
    board.holes.map(
      (figure) => [holeKey(figure.header.id, figure.hole.index, figure.hole.pin), figure] as const,
    ),
  );
  const holeOf = (end: PictureEnd) =>
    end.kind === 'hole' ? holes.get(holeKey(end.header, end.index, end.pin)) : undefined;
  const order = new Map(model.parts.map(({ id }, index) => [id, index] as const));
  const wiresOf = new Map<string, { wire: PictureWire; own: PictureEnd; other: PictureEnd }[]>();
  for (const { id } of model.parts) wiresOf.set(id, []);
  for (const wire of model.wires) {
    const [a, b] = wire.ends;
    if (a.kind === 'terminal') wiresOf.get(a.part)?.push({ wire, own: a, other: b });
    if (b.kind === 'terminal') wiresOf.get(b.part)?.push({ wire, own: b, other: a });
  }
  const depths = depthsOf(wiresOf);
  const sizes = new Map(model.parts.map(({ id, terminals }) => [id, terminals.length] as const));
  const farOf = (part: string): number =>
    (depths.get(part) ?? 1000) * 1e8 + Math.min(99, sizes.get(part) ?? 0) * 1e6 + (order.get(part) ?? 0);
  const ranks = new Map<string, number>();
  const rankOf = (end: PictureEnd): number =>
    holeOf(end)?.y ?? (end.kind === 'terminal' ? ranks.get(end.part) : 0) ?? 0;
  rankParts();
  const sides = sidesOf();
  return { sides, depths, ranks, facings: facingsOf(), rankOf, farOf };

  /** Signals say where a part belongs; rails only where there is no signal. */
  function rankParts(): void {
    const nearest = [...order.keys()].sort((a, b) => (depths.get(a) ?? 0) - (depths.get(b) ?? 0));
    for (const part of nearest) {
      const ends = (wiresOf.get(part) ?? []).filter(
        ({ other }) => other.kind === 'hole' || (other.part !== part && ranks.has(other.part)),
      );
      const signals = ends.filter(({ wire }) => !wire.rail);
      const told = (signals.length > 0 ? signals : ends).map(({ other }) => rankOf(other));
      ranks.set(
        part,
        told.length === 0 ? board.height : told.reduce((sum, each) => sum + each, 0) / told.length,
      );
    }
  }

  function sidesOf(): Map<string, 'left' | 'right'> {
    const found = new Map<string, 'left' | 'right'>();
    const groups = groupsOf([...order.keys()], wiresOf);
    // A group that its signals do not place follows its neighbours along the rails, then the rails' own holes.
    for (const railsToo of [false, true]) {
      for (const group of groups) {
        if (group.some((part) => found.has(part))) continue;
        let vote = 0;
        for (const { wire, other } of group.flatMap((part) => wiresOf.get(part) ?? [])) {
          const side =
            holeOf(other)?.side ??
            (other.kind === 'terminal' && railsToo ? found.get(other.part) : undefined);
          const weight = wire.rail ? (railsToo ? 1 : 0) : 8;
          if (side) vote += side === 'left' ? -weight : weight;
        }
        if (vote === 0 && !railsToo) continue;
        for (const part of group) found.set(part, vote < 0 ? 'left' : 'right');
      }
    }
    return found;
  }

  function facingsOf(): Map<string, Facing> {
    const facings = new Map<string, Facing>();
    for (const [part, ends] of wiresOf) {
      const votes = new Map<string, number>();
      for (const { wire, own, other } of ends) {
        if (own.kind !== 'terminal') continue;
        const outward =
          other.kind === 'terminal' &&
          other.part !== part &&
          sides.get(other.part) === sides.get(part) &&
          farOf(other.part) > farOf(part);
        const weight = (wire.rail ? 1 : 4) * (other.kind === 'hole' ? 2 : 1);
        const key = terminalKey(part, own.terminal);
        votes.set(key, (votes.get(key) ?? 0) + (outward ? weight : -weight));
      }
      for (const [key, vote] of votes) facings.set(key, vote > 0 ? 'out' : 'in');
    }
    return facings;
  }
}

type WiresOf = ReadonlyMap<string, readonly { readonly wire: PictureWire; readonly other: PictureEnd }[]>;

/** Steps from the board along signals; along rails where no signal leads; last what hangs on nothing. */
function depthsOf(wiresOf: WiresOf): Map<string, number> {
  const depths = new Map<string, number>();
  for (const rails of [false, true]) {
    let front = [...wiresOf.keys()].filter(
      (part) =>
        !depths.has(part) &&
        wiresOf.get(part)?.some(({ wire, other }) => wire.rail === rails && other.kind === 'hole'),
    );
    for (const part of front) depths.set(part, 1);
    if (rails) front = [...depths.keys()];
    while (front.length > 0) {
      const next: string[] = [];
      for (const part of front) {
        for (const { wire, other } of wiresOf.get(part) ?? []) {
          if (other.kind !== 'terminal' || depths.has(other.part) || (wire.rail && !rails)) continue;
          depths.set(other.part, (depths.get(part) ?? 0) + 1);
          next.push(other.part);
        }
      }
      front = next;
    }
  }
  return depths;
}

/** Parts that hang together by anything but rails. */
function groupsOf(parts: readonly string[], wiresOf: WiresOf): string[][] {
  const seen = new Set<string>();
  return parts.flatMap((first) => {
    if (seen.has(first)) return [];
    const group = [first];
    seen.add(first);
    for (const part of group) {
      for (const { wire, other } of wiresOf.get(part) ?? []) {
        if (wire.rail || other.kind !== 'terminal' || seen.has(other.part)) continue;
        seen.add(other.part);
        group.push(other.part);
      }
    }
    return [group];
  });
}
