/**
 * Which of the known faults between sketches and wiring the rule book tells. The list of faults is a yardstick made
 * beside the rules: a row names the rules that tell it, or the reason why none can.
 */
import { readFileSync } from 'node:fs';

export interface CoverageRow {
  readonly row: number;
  readonly group: string;
  readonly fault: string;
  readonly boards: string;
  readonly rules: readonly string[];
  /** What is left untold, or why nothing is told. */
  readonly note?: string;
}

/** @param folder The folder of this file. */
export function readCoverage(folder: string): readonly CoverageRow[] {
  return JSON.parse(readFileSync(`${folder}/coverage.json`, 'utf8')) as CoverageRow[];
}

/** The page `server/docs/coverage.md`. */
export function drawCoverage(faults: readonly CoverageRow[], ids: readonly string[]): string {
  const told = faults.filter(({ rules }) => rules.length > 0);
  const groups = [...new Set(faults.map(({ group }) => group))];
  const cell = (text: string): string => text.replaceAll('|', '\\|');
  const link = (id: string): string => `[${id}](rules/${id}.md)`;
  const lines = ({ row, fault, boards, rules, note = '' }: CoverageRow): string =>
    `| ${row} | ${cell(fault)} | ${cell(boards)} | ${[rules.map(link).join(', '), cell(note)].filter((part) => part !== '').join('. ')} |`;
  const beyond = ids.filter((id) => !faults.some(({ rules }) => rules.includes(id)));
  return [
    '<!-- Made from test/oracle/rules/coverage.json by its test. -->',
    '# What the rules find',
    '',
    `Of ${faults.length} faults between sketches and wiring, collected from documents and the source of the cores, ` +
      `${told.length} are told by a rule. The others have the reason beside them.`,
    '',
    ...groups.flatMap((group) => [
      `## ${group}`,
      '',
      '| no. | fault | boards | rule, or why not |',
      '| --- | --- | --- | --- |',
      ...faults.filter((fault) => fault.group === group).map(lines),
      '',
    ]),
    '## Rules beyond the list',
    '',
    `${beyond.map(link).join(', ')}.`,
    '',
  ].join('\n');
}
