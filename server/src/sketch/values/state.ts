/**
 * The values of all cells at the point of the program that is being followed. Writes leave a trail, so that both sides
 * of an undecided branch can be followed from the same values and joined, at the cost of what they wrote.
 */
import { type Cell, join, newestCell, same, type Value } from './value';

/** Values of cells at a point, for those that differ from an earlier one. */
export type Delta = ReadonlyMap<Cell, Value>;

const nothing: Delta = new Map();

export class State {
  private readonly cells: Cell[] = [];
  private readonly before: Value[] = [];
  /** Every cell that was written behind its definition, in order. */
  readonly written: Cell[] = [];

  /** A point to come back to. */
  get mark(): number {
    return this.cells.length;
  }

  /** Tells cells that are there by now from later ones. */
  get clock(): number {
    return newestCell();
  }

  write(cell: Cell, value: Value): void {
    if (!cell.written) {
      cell.written = true;
      this.written.push(cell);
    }
    this.set(cell, value);
  }

  /** A write that does not make the cell a variable: of its first value. */
  set(cell: Cell, value: Value): void {
    if (same(cell.value, value)) return;
    this.cells.push(cell);
    this.before.push(cell.value);
    cell.value = value;
  }

  /** What changed since a mark. */
  since(mark: number): Delta {
    if (mark === this.cells.length) return nothing;
    const delta = new Map<Cell, Value>();
    for (let at = mark; at < this.cells.length; at += 1) {
      const cell = this.cells[at];
      if (cell !== undefined) delta.set(cell, cell.value);
    }
    return delta;
  }

  /** The values at a mark, of the cells written since. */
  entry(mark: number): Delta {
    const entry = new Map<Cell, Value>();
    for (let at = mark; at < this.cells.length; at += 1) {
      const cell = this.cells[at];
      const value = this.before[at];
      if (cell !== undefined && value !== undefined && !entry.has(cell)) entry.set(cell, value);
    }
    return entry;
  }

  undo(mark: number): void {
    while (this.cells.length > mark) {
      const cell = this.cells.pop();
      const value = this.before.pop();
      if (cell !== undefined && value !== undefined) cell.value = value;
    }
  }

  /**
   * Joins states that left the same mark.
   * @param current whether the present state is one of them; otherwise it is a dead end, and is undone.
   */
  merge(mark: number, deltas: readonly Delta[], current: boolean): void {
    if (deltas.length === 0) return;
    if (!current) this.undo(mark);
    if (mark === this.cells.length && deltas.every(({ size }) => size === 0)) return;
    const entry = current ? this.entry(mark) : undefined;
    const cells = new Set<Cell>();
    for (const delta of deltas) for (const cell of delta.keys()) cells.add(cell);
    if (entry !== undefined) for (const cell of entry.keys()) cells.add(cell);
    for (const cell of cells) {
      const base = entry?.get(cell) ?? cell.value;
      let value: Value | undefined = current ? cell.value : undefined;
      for (const delta of deltas) {
        const other = delta.get(cell) ?? base;
        value = value === undefined ? other : join(value, other);
      }
      if (value !== undefined) this.set(cell, value);
    }
  }

  /**
   * Cells whose value differs from the one at the mark, with both.
   * @param clock the clock at the mark: cells made since (locals of what was run) do not count.
   */
  changed(mark: number, clock: number): { readonly cell: Cell; readonly from: Value; readonly to: Value }[] {
    const found: { readonly cell: Cell; readonly from: Value; readonly to: Value }[] = [];
    for (const [cell, from] of this.entry(mark)) {
      if (cell.serial <= clock && !same(from, cell.value)) found.push({ cell, from, to: cell.value });
    }
    return found;
  }
}
