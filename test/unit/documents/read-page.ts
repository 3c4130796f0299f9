/** A reader who has nothing but the printed page: Markdown tables and CSV text as rows by their column's title. */

export type Row = Readonly<Record<string, string>>;

/** The words of a cell as they were meant. */
function readCell(cell: string): string {
  return cell
    .trim()
    .replace(/\\(.)/g, '$1')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&amp;/g, '&');
}

function cellsOf(line: string): string[] {
  return line.split(/(?<!\\)\|/).slice(1, -1);
}

/** Rows of all tables by the title of the section they stand in. */
export function readTables(page: string): ReadonlyMap<string, Row[]> {
  const sections = new Map<string, Row[]>();
  let section = '';
  let heads: string[] | undefined;
  for (const line of page.split('\n')) {
    if (line.startsWith('## ')) section = readCell(line.slice(3));
    if (!line.startsWith('| ')) {
      heads = undefined;
      continue;
    }
    const cells = cellsOf(line);
    if (!heads) heads = cells.map(readCell);
    else if (!cells.every((cell) => /^ :?-+:? $/.test(cell))) {
      const known = heads;
      const row = Object.fromEntries(cells.map((cell, index) => [known[index] ?? '', readCell(cell)]));
      sections.set(section, [...(sections.get(section) ?? []), row]);
    }
  }
  return sections;
}

/** A reader of RFC 4180, written from its grammar: fields between quotes, doubled quotes, lines ended by CR LF. */
export function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < text.length) {
    if (text[at] !== '"') throw new Error(`no quote at ${at}`);
    let field = '';
    for (at += 1; ; at += 1) {
      if (at >= text.length) throw new Error('an open quote at the end');
      if (text[at] !== '"') field += text[at];
      else if (text[at + 1] === '"') {
        field += '"';
        at += 1;
      } else break;
    }
    row.push(field);
    at += 1;
    if (text[at] === ',') at += 1;
    else if (text.startsWith('\r\n', at)) {
      rows.push(row);
      row = [];
      at += 2;
    } else throw new Error(`neither comma nor line end at ${at}`);
  }
  if (row.length > 0) throw new Error('the last line has no end');
  return rows;
}

/** Ends that wires join, as sorted groups. Board ends count by their pin's name, the word before the comma. */
export function netsOfRows(rows: readonly { readonly from: string; readonly to: string }[]): string[][] {
  const groups = new Map<string, string>();
  const find = (name: string): string => {
    const up = groups.get(name) ?? name;
    return up === name ? name : find(up);
  };
  for (const row of rows) {
    const [from, to] = [row.from, row.to].map((end) => end.split(',')[0] ?? '');
    for (const end of [from ?? '', to ?? '']) if (!groups.has(end)) groups.set(end, end);
    groups.set(find(from ?? ''), find(to ?? ''));
  }
  const nets = new Map<string, string[]>();
  for (const name of groups.keys()) nets.set(find(name), [...(nets.get(find(name)) ?? []), name]);
  return sorted([...nets.values()].map((net) => net.sort()));
}

export function sorted(nets: readonly string[][]): string[][] {
  return [...nets].sort((a, b) => ((a[0] ?? '') < (b[0] ?? '') ? -1 : 1));
}
