/** What differs between two revisions of a build, as data: the addendum prints it, and old plus this gives new. */
import type { Build, Part } from '../base/build';
import { findRenames, type Rename } from './match-parts';
import { matchWires, type WireChanges } from './match-wires';

/** One figure or word of a part; empty where there is none. */
export interface Difference {
  readonly key: string;
  readonly was: string;
  readonly is: string;
}

export interface PartChange {
  readonly before: Part;
  readonly after: Part;
  /** What makes it another piece: kind and figures. */
  readonly figures: readonly Difference[];
  /** Words only: purpose, note, unit, mounting. */
  readonly words: readonly Difference[];
}

export interface BuildChanges {
  readonly renames: readonly Rename[];
  readonly gone: readonly Part[];
  readonly come: readonly Part[];
  readonly changed: readonly PartChange[];
  readonly wires: WireChanges;
  /** Board, title, stock and the like. */
  readonly general: readonly Difference[];
}

export function compareBuilds(before: Build, after: Build): BuildChanges {
  const renames = findRenames(before, after);
  const newName = new Map(renames.map(({ from, to }) => [from, to]));
  const partners = new Map(before.parts.map((part) => [newName.get(part.id) ?? part.id, part]));
  const present = new Set(after.parts.map(({ id }) => id));
  const changed = after.parts.flatMap((part): PartChange[] => {
    const old = partners.get(part.id);
    if (!old) return [];
    const figures = differences(figuresOf(old), figuresOf(part));
    const words = differences(wordsOf(old), wordsOf(part));
    return figures.length + words.length === 0 ? [] : [{ before: old, after: part, figures, words }];
  });
  return {
    renames,
    gone: before.parts.filter(({ id }) => !present.has(newName.get(id) ?? id)),
    come: after.parts.filter(({ id }) => !partners.has(id)),
    changed,
    wires: matchWires(before, after, renames),
    general: differences(generalOf(before), generalOf(after)),
  };
}

/** True where neither iron nor pen is needed. */
export function isEmpty({ renames, gone, come, changed, wires, general }: BuildChanges): boolean {
  const { gone: out, come: into, moved, replaced, reworded } = wires;
  return [renames, gone, come, changed, out, into, moved, replaced, reworded, general].every(
    ({ length }) => length === 0,
  );
}

type Words = Readonly<Record<string, string | undefined>>;

export function figuresOf({ kind, parameters }: Part): Words {
  return { kind, ...parameters };
}

export function wordsOf({ purpose, note, subassembly, mount }: Part): Words {
  return { purpose, note, subassembly, mount };
}

function generalOf({ title, board, stock, policy }: Build): Words {
  return { title, board: board.title, resistors: stock.text, policy: policy.text };
}

function differences(before: Words, after: Words): readonly Difference[] {
  return [...new Set([...Object.keys(before), ...Object.keys(after)])].flatMap((key) => {
    const [was, is] = [before[key] ?? '', after[key] ?? ''];
    return was === is ? [] : [{ key, was, is }];
  });
}
