/**
 * Solves a small full set of equations in place. Newton's method asks for thousands of them, all of one size and each
 * used once; a matrix object with its copies for every one took four fifths of the time. The linear part of a network,
 * whose factors are used again and again, stays with the linear-algebra library.
 */

/**
 * Gauss's elimination with the largest pivot of each column. Uses `matrix` (row by row) up and leaves the solution in
 * `right`; false where the equations have none.
 */
export function solveFull(matrix: Float64Array, right: Float64Array): boolean {
  const count = right.length;
  for (let column = 0; column < count; column += 1) {
    let pivotRow = column;
    let largest = Math.abs(matrix[column * count + column] ?? 0);
    for (let row = column + 1; row < count; row += 1) {
      const size = Math.abs(matrix[row * count + column] ?? 0);
      if (size > largest) {
        largest = size;
        pivotRow = row;
      }
    }
    if (!(largest > 0)) {
      return false;
    }
    if (pivotRow !== column) {
      swapRows(matrix, right, count, pivotRow, column);
    }
    const pivot = matrix[column * count + column] ?? 1;
    for (let row = column + 1; row < count; row += 1) {
      const factor = (matrix[row * count + column] ?? 0) / pivot;
      if (factor === 0) continue;
      for (let at = column + 1; at < count; at += 1) {
        matrix[row * count + at] =
          (matrix[row * count + at] ?? 0) - factor * (matrix[column * count + at] ?? 0);
      }
      right[row] = (right[row] ?? 0) - factor * (right[column] ?? 0);
    }
  }
  for (let row = count - 1; row >= 0; row -= 1) {
    let sum = right[row] ?? 0;
    for (let at = row + 1; at < count; at += 1) {
      sum -= (matrix[row * count + at] ?? 0) * (right[at] ?? 0);
    }
    right[row] = sum / (matrix[row * count + row] ?? 1);
  }
  return true;
}

function swapRows(matrix: Float64Array, right: Float64Array, count: number, a: number, b: number): void {
  for (let at = 0; at < count; at += 1) {
    const kept = matrix[a * count + at] ?? 0;
    matrix[a * count + at] = matrix[b * count + at] ?? 0;
    matrix[b * count + at] = kept;
  }
  const kept = right[a] ?? 0;
  right[a] = right[b] ?? 0;
  right[b] = kept;
}
