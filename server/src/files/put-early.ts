/**
 * The order of headers that the reading order alone would bring too late. A header is read where the first `#include` of
 * it stands, as long as the sketch layer finds it there by the end of its path. One that it would not find so
 * (`../shared/pins.h`, or two headers of one name) goes in front of the file that needs it, so that its macros count
 * before the text that uses them.
 */

/** An include line and the file it means. */
export interface FoundInclude {
  /** As written. */
  readonly path: string;
  readonly file: string;
}

type Reached = ReadonlyMap<string, readonly FoundInclude[]>;

/** Puts each header that would not have been read where it is included in front of the file that needs it. */
export function putEarly(files: readonly string[], reached: Reached): readonly string[] {
  const early = new Set<string>();
  let order: readonly string[] = files;
  for (let before = -1; before !== early.size; ) {
    before = early.size;
    for (const file of missedIn(order, reached)) {
      early.add(file);
    }
    order = inOrder(files, early, reached);
  }
  return order;
}

/** Headers that are not read yet where they are included, when files are read in this order. */
function missedIn(order: readonly string[], reached: Reached): ReadonlySet<string> {
  const byName = groupByName(order);
  const begun = new Set<string>();
  const missed = new Set<string>();
  const enter = (file: string) => {
    begun.add(file);
    for (const { path, file: meant } of reached.get(file) ?? []) {
      const first = byName.get(nameOf(path))?.find((one) => one.endsWith(`/${path}`));
      if (first !== undefined && !begun.has(first)) {
        enter(first);
      }
      if (!begun.has(meant) && reached.has(meant)) {
        missed.add(meant);
      }
    }
  };
  for (const file of order) {
    if (!begun.has(file)) {
      enter(file);
    }
  }
  return missed;
}

function inOrder(files: readonly string[], early: ReadonlySet<string>, reached: Reached): string[] {
  if (early.size === 0) {
    return [...files];
  }
  const order = new Set<string>();
  const entered = new Set<string>();
  const enter = (file: string) => {
    entered.add(file);
    for (const { file: next } of reached.get(file) ?? []) {
      if (!entered.has(next)) {
        enter(next);
      }
    }
    if (early.has(file)) {
      order.add(file);
    }
  };
  for (const file of files) {
    if (!entered.has(file)) {
      enter(file);
    }
    order.add(file);
  }
  return [...order];
}

function groupByName(files: readonly string[]): ReadonlyMap<string, readonly string[]> {
  const groups = new Map<string, string[]>();
  for (const file of files) {
    const group = groups.get(nameOf(file));
    if (group === undefined) {
      groups.set(nameOf(file), [file]);
    } else {
      group.push(file);
    }
  }
  return groups;
}

function nameOf(file: string): string {
  return file.slice(file.lastIndexOf('/') + 1);
}
