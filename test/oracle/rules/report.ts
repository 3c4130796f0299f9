/** The measurement as a table for people. */
import type { Measured, RuleRow } from './measure';

const HEAD = ['rule', 'seeded', 'found', 'in place', 'inside', 'spoke', 'extra', 'fixes', 'broken'] as const;

export function drawReport(
  { builds, variants, falseAlarms, remarks, rows, faults }: Measured,
  listFaults: boolean,
): string {
  const cells = (row: RuleRow): string[] =>
    [
      row.rule,
      row.seeded,
      row.found,
      row.placed,
      row.inside,
      row.spoke,
      row.extra,
      row.fixes,
      row.brokenFixes,
    ].map(String);
  const total = sumRows(rows);
  const table = [[...HEAD], ...rows.map(cells), cells(total)];
  const widths = HEAD.map((_, column) => Math.max(...table.map((line) => line[column]?.length ?? 0)));
  const lines = table.map((line) =>
    line
      .map((cell, column) =>
        column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0),
      )
      .join('  '),
  );
  return [
    ...lines,
    '',
    `${builds} clean builds, ${variants} variants of them: ${falseAlarms.length} errors and warnings, ${remarks.length} remarks`,
    ...falseAlarms.map((line) => `  ${line}`),
    ...(listFaults ? ['', ...faults.map((line) => `- ${line}`)] : []),
    '',
  ].join('\n');
}

export function sumRows(rows: readonly RuleRow[]): RuleRow {
  const sum = (key: Exclude<keyof RuleRow, 'rule'>): number => rows.reduce((all, row) => all + row[key], 0);
  return {
    rule: `all ${rows.length}`,
    seeded: sum('seeded'),
    found: sum('found'),
    placed: sum('placed'),
    inside: sum('inside'),
    spoke: sum('spoke'),
    extra: sum('extra'),
    fixes: sum('fixes'),
    brokenFixes: sum('brokenFixes'),
  };
}
