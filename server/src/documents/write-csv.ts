/** Lists for spreadsheets and programs: RFC 4180, UTF-8, every field between quotes, lines ended by CR LF. */
import { escapeCsv } from './escape';
import type { Paper } from './paper';

/** @returns undefined where the paper is no list. */
export function writeCsv(paper: Paper): string | undefined {
  if (!paper.list) return undefined;
  const { columns, rows } = paper.list;
  return [columns, ...rows].map((row) => `${row.map(escapeCsv).join(',')}\r\n`).join('');
}
