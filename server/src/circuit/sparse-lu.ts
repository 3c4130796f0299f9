/**
 * Factorises large equations of which nearly all entries are zero. A network of 2,000 parts has some three entries in a
 * row; a full matrix would take minutes for what this does in milliseconds. Small networks are better served by the
 * full factorising of linear-part.ts.
 * Source: Markowitz, "The elimination form of the inverse and its application to linear programming", 1957: take the
 * pivot that fills in least among those large enough (from memory).
 */

/** A pivot must reach this share of the largest entry of its row, so that rounding stays small. */
const THRESHOLD = 1e-3;
/** Rows that are looked at for a pivot: the shortest ones. */
const CANDIDATES = 4;

/** A square matrix row by row: value by column. */
export type SparseRows = readonly Map<number, number>[];

export interface SparseLu {
  /** Solves for one right side, which is left as it is. */
  solve(right: Float64Array): Float64Array;
}

interface Step {
  readonly row: number;
  readonly column: number;
  readonly pivot: number;
  /** Rows from which a multiple of the pivot row was taken. */
  readonly rows: Int32Array;
  readonly factors: Float64Array;
  /** The rest of the pivot row. */
  readonly columns: Int32Array;
  readonly values: Float64Array;
}

export function makeSparseRows(size: number): SparseRows {
  return Array.from({ length: size }, () => new Map<number, number>());
}

export function addSparse(rows: SparseRows, row: number, column: number, value: number): void {
  const entries = row < 0 || column < 0 ? undefined : rows[row];
  entries?.set(column, (entries.get(column) ?? 0) + value);
}

/** Factorises and uses the rows up; undefined where the matrix is singular. */
export function factoriseSparse(rows: SparseRows): SparseLu | undefined {
  const columns = rows.map(() => new Set<number>());
  const byLength: Set<number>[] = [];
  const place = (row: number, length: number): void => {
    let bucket = byLength[length];
    if (bucket === undefined) {
      bucket = new Set();
      byLength[length] = bucket;
    }
    bucket.add(row);
  };
  rows.forEach((entries, row) => {
    for (const column of entries.keys()) columns[column]?.add(row);
    place(row, entries.size);
  });
  const steps: Step[] = [];
  for (let count = 0; count < rows.length; count += 1) {
    const found = findPivot(rows, columns, byLength);
    if (found === undefined) {
      return undefined;
    }
    steps.push(eliminate(rows, columns, byLength, place, found.row, found.column));
  }
  return { solve: (right) => solveSteps(steps, right) };
}

function findPivot(
  rows: SparseRows,
  columns: readonly Set<number>[],
  byLength: readonly (Set<number> | undefined)[],
): { readonly row: number; readonly column: number } | undefined {
  let best: { row: number; column: number } | undefined;
  let bestFill = Number.POSITIVE_INFINITY;
  let looked = 0;
  for (let length = 1; length < byLength.length; length += 1) {
    for (const row of byLength[length] ?? []) {
      const entries = rows[row];
      if (entries === undefined) continue;
      let largest = 0;
      for (const value of entries.values()) largest = Math.max(largest, Math.abs(value));
      if (!(largest > 0)) continue;
      for (const [column, value] of entries) {
        const fill = (length - 1) * ((columns[column]?.size ?? 0) - 1);
        if (fill < bestFill && Math.abs(value) >= THRESHOLD * largest) {
          bestFill = fill;
          best = { row, column };
        }
      }
      looked += 1;
      if (bestFill === 0 || looked >= CANDIDATES) return best;
    }
  }
  return best;
}

function eliminate(
  rows: SparseRows,
  columns: readonly Set<number>[],
  byLength: readonly (Set<number> | undefined)[],
  place: (row: number, length: number) => void,
  row: number,
  column: number,
): Step {
  const pivotRow = rows[row] ?? new Map<number, number>();
  const pivot = pivotRow.get(column) ?? 0;
  byLength[pivotRow.size]?.delete(row);
  for (const at of pivotRow.keys()) columns[at]?.delete(row);
  pivotRow.delete(column);
  const others = [...(columns[column] ?? [])];
  const factors = others.map((other) => {
    const entries = rows[other] ?? new Map<number, number>();
    const before = entries.size;
    const factor = (entries.get(column) ?? 0) / pivot;
    entries.delete(column);
    for (const [at, value] of pivotRow) {
      const old = entries.get(at);
      if (old === undefined) columns[at]?.add(other);
      entries.set(at, (old ?? 0) - factor * value);
    }
    if (entries.size !== before) {
      byLength[before]?.delete(other);
      place(other, entries.size);
    }
    return factor;
  });
  columns[column]?.clear();
  return {
    row,
    column,
    pivot,
    rows: Int32Array.from(others),
    factors: Float64Array.from(factors),
    columns: Int32Array.from(pivotRow.keys()),
    values: Float64Array.from(pivotRow.values()),
  };
}

function solveSteps(steps: readonly Step[], right: Float64Array): Float64Array {
  const rest = right.slice();
  for (const { row, rows, factors } of steps) {
    const value = rest[row] ?? 0;
    if (value === 0) continue;
    for (let at = 0; at < rows.length; at += 1) {
      const other = rows[at] ?? 0;
      rest[other] = (rest[other] ?? 0) - (factors[at] ?? 0) * value;
    }
  }
  const solution = new Float64Array(right.length);
  for (let at = steps.length - 1; at >= 0; at -= 1) {
    const step = steps[at];
    if (step === undefined) continue;
    let sum = rest[step.row] ?? 0;
    for (let entry = 0; entry < step.columns.length; entry += 1) {
      sum -= (step.values[entry] ?? 0) * (solution[step.columns[entry] ?? 0] ?? 0);
    }
    solution[step.column] = sum / step.pivot;
  }
  return solution;
}
