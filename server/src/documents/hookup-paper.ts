/** The hookup list as a paper: one row a wire, with a box to tick. */
import type { Build } from '../base/build';
import { formatQuantity } from '../base/quantity';
import { HOOKUP_GROUPS, type HookupRow, listHookup } from './hookup-list';
import { type Block, type Paper, type Section, type Text, tableOf, textOf } from './paper';
import { countWords } from './words';
import { writeMarkdown } from './write-markdown';

interface HookupColumn {
  readonly title: string;
  readonly align?: 'right';
  /** Percent of the table. */
  readonly width: number;
  readonly cell: (row: HookupRow) => Text;
  /** Printed even where no row says anything. */
  readonly always: boolean;
}

const columns: readonly HookupColumn[] = [
  { title: 'no.', width: 4, align: 'right', cell: ({ number }) => String(number), always: true },
  { title: 'from', width: 19, cell: ({ from }) => from, always: true },
  { title: 'to', width: 14, cell: ({ to }) => to, always: true },
  {
    title: 'colour',
    width: 10,
    cell: ({ colour }) => (colour === '' ? '' : [{ wire: colour }]),
    always: false,
  },
  { title: 'gauge', width: 8, cell: ({ gauge }) => gauge, always: false },
  { title: 'length', width: 8, align: 'right', cell: ({ length }) => length, always: false },
  { title: 'ends', width: 17, cell: ({ ends }) => ends, always: true },
  { title: 'mind', width: 24, cell: ({ watch }) => watch, always: false },
];

export function hookupPaper(build: Build): Paper {
  const rows = listHookup(build);
  const sections = HOOKUP_GROUPS.flatMap(([group, title]): Section[] => {
    const own = rows.filter((row) => row.group === group);
    if (own.length === 0) return [];
    return [{ id: group, title, blocks: [...intro(group), ...hookupTable(own, rows)] }];
  });
  return {
    id: 'hookup',
    title: 'Hookup list',
    build: build.title,
    ...(build.revision !== undefined && { revision: build.revision }),
    facts: [
      ['Board', build.board.title],
      ['Counting', countingWords(build)],
      ['Wires', `${rows.length}${lengthWords(build)}`],
      ['Before soldering', 'switch every supply off and take batteries out'],
    ],
    sections,
    list: {
      columns: ['number', 'from', 'to', 'colour', 'gauge', 'length', 'ends', 'mind'],
      rows: rows.map((row) => [
        String(row.number),
        row.from,
        row.to,
        row.colour,
        row.gauge,
        row.length,
        row.ends,
        row.watch,
      ]),
    },
  };
}

/** Rows as a table with boxes; a column that says nothing in `all` rows of the paper is left out. */
export function hookupTable(rows: readonly HookupRow[], all: readonly HookupRow[] = rows): readonly Block[] {
  const shown = columns.filter(({ always, cell }) => always || all.some((row) => cell(row) !== ''));
  const heads = shown.map(({ title, align, width }) => ({ title, width, ...(align && { align }) }));
  return tableOf(
    heads,
    rows.map((row) => shown.map(({ cell }) => cell(row))),
    true,
  );
}

function intro(group: string): readonly Block[] {
  if (group !== 'ground') return [];
  return [
    textOf('All of these are one conductor. Where several meet, twist them together before soldering.'),
  ];
}

function countingWords({ board }: Build): string {
  const marks = [...new Set(board.headers.map(({ landmark }) => landmark))];
  return marks.length === 1 && marks[0] !== undefined
    ? `the first position of each header is the one at ${marks[0]}`
    : board.headers.map(({ title, landmark }) => `${title} from ${landmark}`).join('; ');
}

/** ", 3.1 m where lengths are said (8 without)". */
function lengthWords({ wires }: Build): string {
  const said = wires.filter(({ length }) => length !== undefined);
  const sum = said.reduce((total, { length = 0 }) => total + length, 0);
  if (said.length === 0) return '';
  const without = wires.length - said.length;
  const rest = without > 0 ? `, ${countWords(without, 'wire')} without a length` : '';
  return `; together ${formatQuantity(sum, 'm')}${rest}`;
}

/** The list as Markdown. Ends with a line feed; the same build gives the same bytes. */
export function writeHookup(build: Build): string {
  return writeMarkdown(hookupPaper(build));
}
