/** The test sheet: what to measure before and after switching on, and what must come out. */

import { type Block, type Paper, type PaperInput, type Section, tableOf, textOf } from './paper';
import { continuityRows, partRows, shortRows, type TestRow } from './power-off-tests';
import { type FigureRow, groundName, listFigures } from './power-on-tests';
import { switchRows } from './switch-tests';

export function testsPaper(input: PaperInput): Paper {
  const { build } = input;
  const continuity = continuityRows(build);
  const shorts = shortRows(input);
  const parts = partRows(input);
  const figures = listFigures(input);
  const switches = switchRows(input);
  const sections: Section[] = [
    section('continuity', 'Power off: conductors', [
      textOf(
        'Every supply off, batteries out, continuity range. One tip stays on the first point of the row.',
      ),
      ...offTable(continuity, 'from'),
    ]),
    section('shorts', 'Power off: no shorts', [
      textOf(`Resistance range. ${alone}`),
      ...offTable(shorts, 'between'),
    ]),
    section('parts', 'Power off: parts', [
      textOf('Resistances are least / usual / most over the tolerances, with what lies beside the part.'),
      ...offTable(parts, 'between'),
    ]),
    section('voltages', 'Power on: voltages and currents', [
      textOf(
        `Black tip on ${groundName(input)}. Figures are least / usual / most; a single one is the usual. ${meter}`,
      ),
      textOf('A pin "as input" that the sketch drives is so during reset and until setup() sets it.'),
      ...figures.flatMap(({ title, rows, notes }): Block[] => [
        { kind: 'heading', text: title },
        ...onTable(rows),
        ...notes.map(textOf),
      ]),
    ]),
    ...(switches.length > 0
      ? [
          section('switches', 'Power on: buttons and switches', [
            ...tableOf(
              ['part', 'do', 'what must happen'],
              switches.map(({ part, act, expect }) => [part, act, expect]),
              true,
            ),
          ]),
        ]
      : []),
  ];
  return {
    id: 'tests',
    title: 'Test sheet',
    build: build.title,
    ...(build.revision !== undefined && { revision: build.revision }),
    facts: [
      ['Board', build.board.title],
      ['Tested by, on', ''],
    ],
    sections,
    list: {
      columns: ['power', 'state', 'measure', 'expect'],
      rows: [
        ...continuity.map(({ between, expect }) => ['off', '', between, expect]),
        ...[...shorts, ...parts].map(({ between, expect }) => ['off', '', between, expect]),
        ...figures.flatMap(({ rows }) =>
          rows.map(({ state, measure, expect }) => ['on', state, measure, expect]),
        ),
        ...switches.map(({ part, act, expect }) => ['on', `${part}: ${act}`, '', expect]),
      ],
    },
  };
}

const alone =
  'The figures are those of wires and parts alone, before the board is soldered or plugged in; with it, its chip and regulator lie beside them and the reading is lower.';
const meter = 'Currents are measured with the meter in the wire, so most people measure only the voltages.';

function section(id: string, title: string, blocks: readonly Block[]): Section {
  const empty = !blocks.some(({ kind }) => kind === 'table');
  return {
    id,
    title,
    blocks: empty
      ? [...blocks.filter(({ kind }) => kind !== 'text'), textOf('Nothing to measure here.')]
      : blocks,
  };
}

export function offTable(rows: readonly TestRow[], first: string): readonly Block[] {
  const measured = { title: 'measured', width: 14 };
  return tableOf(
    [first, 'expect', measured],
    rows.map(({ between, expect }) => [between, expect, '']),
    true,
  );
}

/** A state is printed once, on its first row. */
export function onTable(rows: readonly FigureRow[]): readonly Block[] {
  const cells = rows.map(({ state, measure, expect }, index) => [
    rows[index - 1]?.state === state ? '' : state,
    measure,
    expect,
    '',
  ]);
  const columns = [
    { title: 'state', width: 25 },
    { title: 'measure', width: 25 },
    { title: 'expect', width: 31 },
    { title: 'measured', width: 14 },
  ];
  return tableOf(columns, cells, true);
}
