/** The ways of calls from setup, loop and handlers down to a function. */
import type { CallStep } from '../../base/pin-use';
import type { Span } from '../../base/span';

/** A way from an entry to a function; one object for each, so that it can be compared. */
export interface Path {
  readonly id: number;
  readonly steps: readonly CallStep[];
  /** By the place of the call. */
  readonly next: Map<number, Path[]>;
}

/** One step on from a path: the one that is there, or a new one with the given number. */
export function stepTo(from: Path, span: Span, name: string, id: number): Path {
  let list = from.next.get(span.start);
  if (list === undefined) {
    list = [];
    from.next.set(span.start, list);
  }
  for (const path of list) {
    const last = path.steps[path.steps.length - 1];
    if (last?.function === name && last.span.file === span.file) return path;
  }
  const path = { id, steps: [...from.steps, { function: name, span }], next: new Map() };
  list.push(path);
  return path;
}
