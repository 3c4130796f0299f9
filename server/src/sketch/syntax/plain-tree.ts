/**
 * The syntax of a file as plain data. Crossing the border to the parser is what costs, so a tree is walked once, and
 * top-level declarations whose text did not change are taken over from the walk before. Offsets in a unit count from
 * the unit's own start; therefore a unit that moved, or that stands twice in a text, is still the same object.
 */

/** A named node, or an unnamed one that fills a field (an operator). Offsets are UTF-16 units from the unit's start. */
export interface PlainNode {
  readonly type: string;
  readonly field: string | undefined;
  readonly start: number;
  readonly end: number;
  readonly children: readonly PlainNode[];
}

/** One top-level declaration. */
export interface Unit {
  readonly text: string;
  readonly node: PlainNode;
  /** No error inside and nothing mended: only such a unit is taken over by a later walk. */
  readonly clean: boolean;
  /** Names of what reads as calls in places that the grammar did not understand, and that no node stands for. */
  readonly lost: readonly string[];
  /** Some of it lay deeper than `maximumDepth` and was left out. */
  readonly cut: boolean;
}

export interface PlacedUnit {
  readonly start: number;
  readonly unit: Unit;
}

/** What is kept of one parsed file. */
export interface FileForm {
  readonly units: readonly PlacedUnit[];
  /** Set where the text was too long to be read: there are no units then. */
  readonly tooLong?: boolean;
  /** As in a unit, of what was kept from the grammar. */
  readonly lost?: readonly string[];
}

/** Nodes nested deeper are left out: recursion over the plain tree stays within the stack. */
export const maximumDepth = 320;

/** Text above this length (UTF-16 units) is not parsed: 3 million take about a second. */
export const maximumLength = 3_000_000;
