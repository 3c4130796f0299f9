/** Names of a function body, innermost block first. */
import type { Cell } from './value';

export class Scope {
  private names: Map<string, readonly Cell[]> | undefined;

  constructor(readonly outer: Scope | undefined) {}

  /** A name stands for one cell, or for several where a reference may be to any of them. */
  define(name: string, cells: readonly Cell[]): void {
    this.names ??= new Map();
    this.names.set(name, cells);
  }

  find(name: string): readonly Cell[] | undefined {
    let at: Scope | undefined = this;
    while (at !== undefined) {
      const found = at.names?.get(name);
      if (found !== undefined) return found;
      at = at.outer;
    }
    return undefined;
  }
}
