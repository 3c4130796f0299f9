/**
 * Which part of the new build is which of the old. A part keeps its name, or it was given another: then its kind and
 * its figures are the same and it hangs where the old one hung. One found rename helps to see the next, since two
 * parts that are wired to each other may both have new names.
 */
import type { Build, Part } from '../base/build';

export interface Rename {
  readonly from: string;
  readonly to: string;
}

/** Renames in the order of the old build's parts. */
export function findRenames(before: Build, after: Build): readonly Rename[] {
  const oldIds = new Set(before.parts.map(({ id }) => id));
  const newIds = new Set(after.parts.map(({ id }) => id));
  let gone = before.parts.filter(({ id }) => !newIds.has(id));
  let come = after.parts.filter(({ id }) => !oldIds.has(id));
  const names = new Map<string, string>();
  for (;;) {
    let best: { score: number; old: Part; fresh: Part } | undefined;
    for (const old of gone) {
      for (const fresh of come) {
        const score = likeness(before, after, old, fresh, names);
        if (score > (best?.score ?? 0)) best = { score, old, fresh };
      }
    }
    if (!best) break;
    const { old, fresh } = best;
    names.set(old.id, fresh.id);
    gone = gone.filter((part) => part !== old);
    come = come.filter((part) => part !== fresh);
  }
  return before.parts.flatMap(({ id }) => {
    const to = names.get(id);
    return to === undefined ? [] : [{ from: id, to }];
  });
}

/** From 0, where they are different parts, up to 2, where nothing but the name differs. */
function likeness(
  before: Build,
  after: Build,
  old: Part,
  fresh: Part,
  names: ReadonlyMap<string, string>,
): number {
  if (old.kind !== fresh.kind) return 0;
  const sameFigures = figuresOf(old) === figuresOf(fresh);
  const was = wiringOf(before, old.id, (id) => names.get(id) ?? id);
  const is = wiringOf(after, fresh.id, (id) => id);
  const common = was.filter((place) => is.includes(place)).length;
  const all = new Set([...was, ...is]).size;
  const place = all === 0 ? 0 : common / all;
  if (sameFigures) return place > 0 ? 1 + place : 0;
  // Other figures and another name are another part, unless it hangs exactly where the old one did.
  return place === 1 ? 0.5 : 0;
}

export function figuresOf({ parameters }: Part): string {
  return JSON.stringify(Object.entries(parameters).sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** Where a part's terminals go: "1 > D7". The part's own name stands in none of them. */
function wiringOf(build: Build, id: string, rename: (id: string) => string): readonly string[] {
  return build.wires.flatMap(({ ends }) =>
    ends.flatMap((end, index) => {
      const other = ends[index === 0 ? 1 : 0];
      if (end.kind !== 'terminal' || end.part !== id) return [];
      if (other.kind === 'pin') return [`${end.terminal} > ${other.pin}`];
      return other.part === id
        ? [`${end.terminal} > own ${other.terminal}`]
        : [`${end.terminal} > ${rename(other.part)}.${other.terminal}`];
    }),
  );
}
