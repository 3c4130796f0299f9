// Figures out of measured times.

/** The value that a share of all values does not exceed; 0.5 is the median. */
export function quantile(values, share) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
}

/** Milliseconds with a digit that still means something. */
export function millis(value) {
  return value.toFixed(value < 10 ? 2 : value < 100 ? 1 : 0);
}

/** Prints rows under their heads, numbers to the right. */
export function printTable(heads, rows) {
  const widths = heads.map((head, column) => Math.max(head.length, ...rows.map((row) => row[column].length)));
  for (const row of [heads, ...rows]) {
    console.log(row.map((cell, column) => cell.padStart(widths[column])).join('  '));
  }
}
