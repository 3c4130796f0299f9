/** How trees become plain nodes: two readers do it, and both give the same. */
import type { SyntaxTree } from './engine';
import type { PlainNode } from './plain-tree';

/** Where the offsets of the parsed text lie in the user's text. */
export interface Placing {
  /** Every offset is the same in both. */
  readonly isWhole: boolean;
  toSource(offset: number): number;
}

/** A child of the root, or the root itself where nothing of the text could be put together. Good during its visit only. */
export interface TopNode {
  readonly type: string;
  /** UTF-16 offsets in the parsed text. */
  readonly start: number;
  readonly end: number;
  /** The grammar did not understand all of it. */
  readonly faulty: boolean;
  /**
   * Its plain form, with offsets in the user's text that count from `base`; no node where it is without use.
   * `cut` where some of it lay too deep and was left out.
   */
  plain(placing: Placing, base: number): { readonly node: PlainNode | undefined; readonly cut: boolean };
}

export interface TreeReader {
  visit(tree: SyntaxTree, visit: (top: TopNode) => void): void;
}
