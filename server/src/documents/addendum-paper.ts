/**
 * The addendum: only what changed between two revisions, in the order of the hand. First names and what goes, then what
 * comes, then what has to be tested again and the lines of the sketch that changed with it.
 */
import type { Build, Part } from '../base/build';
import {
  type AddendumRows,
  addendumRows,
  changeWords,
  type MoveRow,
  type WireRow,
  wireRow,
} from './addendum-rows';
import { sketchBlocks } from './addendum-sketch';
import { changedTests } from './addendum-tests';
import { type BuildChanges, compareBuilds, type Difference, isEmpty } from './compare-builds';
import {
  type Block,
  buildName,
  type Column,
  type Paper,
  type PaperInput,
  type Section,
  type Text,
  tableOf,
  textOf,
} from './paper';
import { partWords, resistorOf, resistorWords } from './part-words';
import { reasonsFor } from './reasons';
import { countWords, endWords, listWords } from './words';

export function addendumPaper(before: PaperInput, after: PaperInput): Paper {
  const changes = compareBuilds(before.build, after.build);
  const rows = addendumRows(before.build, after.build, changes);
  const sketch = sketchBlocks(before.sources, after.sources);
  const sections: Section[] = [
    {
      id: 'nothing',
      title: 'Nothing changed',
      blocks:
        isEmpty(changes) && sketch.length === 0
          ? [textOf('The two revisions hold the same hardware and the same sketch.')]
          : [],
    },
    { id: 'begin', title: 'Before you begin', blocks: isEmpty(changes) ? [] : beginBlocks(changes) },
    {
      id: 'renames',
      title: 'New names',
      blocks: tableOf(
        ['called', 'is now called'],
        changes.renames.map(({ from, to }) => [from, to]),
        true,
      ),
    },
    { id: 'take-away', title: 'Take these wires away', blocks: wireTable(rows.takeAway) },
    {
      id: 'take-out',
      title: 'Take these parts out',
      blocks: partTable(
        before,
        changes.gone.map(({ id }) => id),
      ),
    },
    { id: 'exchange', title: 'Exchange these parts', blocks: exchangeBlocks(after, changes) },
    { id: 'put-in', title: 'Put these parts in', blocks: putInBlocks(after, changes) },
    { id: 'move', title: 'Move these wires', blocks: moveTable(before.build, rows.move) },
    {
      id: 'replace',
      title: 'Replace these wires',
      blocks: withIntro(
        'The ends stay where they are; the wire is another.',
        moveTable(before.build, rows.replace),
      ),
    },
    { id: 'add', title: 'Add these wires', blocks: wireTable(rows.add) },
    { id: 'tests', title: 'Test again', blocks: changedTests(before, after, changes) },
    { id: 'sketch', title: 'Lines of the sketch', blocks: sketch },
    { id: 'words', title: 'Words only', blocks: wordBlocks(before.build, changes, rows) },
  ];
  const title = before.build.title === after.build.title ? '' : `${before.build.title}, `;
  const from =
    before.build.revision === undefined
      ? `${title}the earlier revision`
      : `${title}revision ${before.build.revision}`;
  return {
    id: 'addendum',
    title: 'Addendum',
    build: after.build.title,
    ...(after.build.revision !== undefined && { revision: after.build.revision }),
    facts: [
      ['Leads from', from],
      [
        'To',
        buildName({
          build: after.build.title,
          ...(after.build.revision !== undefined && { revision: after.build.revision }),
        }),
      ],
      ['Changes', summary(changes)],
    ],
    sections: sections.filter(({ blocks }) => blocks.length > 0),
    list: {
      columns: ['do', 'what', 'from', 'to', 'colour', 'gauge', 'length', 'strip', 'note'],
      rows: listRows(changes, rows),
    },
  };
}

function summary({ gone, come, changed, renames, wires }: BuildChanges): string {
  const exchanged = changed.filter(({ figures }) => figures.length > 0).length;
  const counted: readonly (readonly [number, string])[] = [
    [renames.length, 'new name'],
    [gone.length, 'part out'],
    [exchanged, 'part exchanged'],
    [come.length, 'part in'],
    [wires.gone.length, 'wire away'],
    [wires.moved.length, 'wire moved'],
    [wires.replaced.length, 'wire replaced'],
    [wires.come.length, 'wire new'],
  ];
  const told = counted
    .filter(([count]) => count > 0)
    .map(([count, words]) => {
      const [noun = '', ...rest] = words.split(' ');
      return noun === 'new' ? countWords(count, words) : [countWords(count, noun), ...rest].join(' ');
    });
  return told.length === 0 ? 'none for the soldering iron' : told.join(', ');
}

function beginBlocks({ general }: BuildChanges): readonly Block[] {
  return [
    {
      kind: 'caution',
      text: 'Switch every supply off, take batteries out and pull the USB plug before touching a wire. The iron is above 300 degC (common practice).',
    },
    ...general.map((difference) => textOf(`${capital(difference.key)}: ${changeWords(difference)}.`)),
    textOf(
      'Holes that the manifest does not name stay where they were soldered; a new hookup list may count another hole of the same pin.',
    ),
  ];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

const ends: readonly Column[] = [
  { title: 'from', width: 22 },
  { title: 'to', width: 17 },
];
const looks: readonly Column[] = [
  { title: 'colour' },
  { title: 'gauge' },
  { title: 'length', align: 'right' },
  { title: 'strip', align: 'right' },
  { title: 'note' },
];

function withIntro(words: string, blocks: readonly Block[]): readonly Block[] {
  return blocks.length === 0 ? [] : [textOf(words), ...blocks];
}

function wireTable(rows: readonly WireRow[]): readonly Block[] {
  return tableOf([...ends, ...looks], rows.map(cellsOf), true);
}

function cellsOf({ from, to, colour, gauge, length, strip, note }: WireRow) {
  return [from, to, colour === '' ? '' : [{ wire: colour }], gauge, length, strip, note];
}

/**
 * The wire as it is found, and what is done to it; the whole of the new wire follows from both. What any wire of the
 * old build has is told of each, so that two between the same ends are not mistaken for each other.
 */
function moveTable(old: Build, rows: readonly MoveRow[]): readonly Block[] {
  const all = old.wires.map((wire) => wireRow(old, wire));
  const told = (['gauge', 'length', 'note'] as const).filter((key) => all.some((row) => row[key] !== ''));
  return tableOf(
    [
      ...ends,
      { title: 'colour' },
      ...told.map((title): Column => (title === 'length' ? { title, align: 'right' } : { title })),
      { title: 'what to do' },
    ],
    rows.map(({ was, how }): Text[] => [
      was.from,
      was.to,
      was.colour === '' ? '' : [{ wire: was.colour }],
      ...told.map((key) => was[key]),
      how,
    ]),
    true,
  );
}

function partTable({ build }: PaperInput, ids: readonly string[]): readonly Block[] {
  const parts = build.parts.filter(({ id }) => ids.includes(id));
  return tableOf(
    ['name', 'what'],
    parts.map((part) => [part.id, partWords(part)]),
    true,
  );
}

function exchangeBlocks(after: PaperInput, { changed }: BuildChanges): readonly Block[] {
  const exchanged = changed.filter(({ figures }) => figures.length > 0);
  const rows = exchanged.map(({ before, after: part, figures }): Text[] => [
    part.id,
    partWords(before),
    partWords(part),
    tellOf(after, part),
    figures.map((figure) => `${figure.key} ${changeWords(figure)}`).join('; '),
  ]);
  const table = tableOf(['name', 'take out', 'put in', 'how to tell', 'differs by'], rows, true);
  const again = exchanged.map(({ after: part }) => {
    const ends = new Set(part.terminals.map(({ id }) => `${part.id}.${id}`));
    const wired = after.build.wires.flatMap((wire) => wire.ends.map(endWords)).filter((end) => ends.has(end));
    const places = [...new Set(wired)];
    return textOf(`Unsolder the wires at ${listWords(places)}, and solder them to the new ${part.id} again.`);
  });
  return [
    ...table,
    ...(table.length > 0 ? again : []),
    ...reasonBlocks(
      after,
      exchanged.map(({ after: part }) => part),
    ),
  ];
}

/** Bands of a resistor, else how the terminals are told apart. */
function tellOf({ build }: PaperInput, part: Part): Text {
  const resistor = resistorOf(part);
  const bands = resistor ? resistorWords(build, resistor).bands : [];
  if (bands.length > 0) return [{ bands }];
  return part.terminals.flatMap(({ id, tell }) => (tell === undefined ? [] : [`${id}: ${tell}`])).join('; ');
}

function reasonBlocks(input: PaperInput, parts: readonly Part[]): readonly Block[] {
  return parts.flatMap((part) => {
    const lines = reasonsFor(input, part);
    return lines.length === 0 ? [] : [textOf(lines.join(' '))];
  });
}

function putInBlocks(after: PaperInput, { come }: BuildChanges): readonly Block[] {
  const rows = come.map((part): Text[] => [
    part.id,
    partWords(part),
    tellOf(after, part),
    [part.purpose, part.note].filter((words) => words !== undefined).join('; '),
    part.mount ?? '',
  ]);
  const cautions = come.flatMap(({ id, caution }): Block[] =>
    caution === undefined ? [] : [{ kind: 'caution', text: `${id}: ${caution}` }],
  );
  const table = tableOf(['name', 'what', 'how to tell', 'for', 'mounting'], rows, true);
  return [...cautions, ...table, ...reasonBlocks(after, come)];
}

function wordBlocks(old: Build, { changed }: BuildChanges, { reword }: AddendumRows): readonly Block[] {
  const rows = changed.flatMap(({ after, words }) =>
    words.map((difference: Difference) => [after.id, `${difference.key}: ${changeWords(difference)}`]),
  );
  return [...tableOf(['part', 'now'], rows), ...moveTable(old, reword)];
}

function listRows(
  { renames, gone, come, changed }: BuildChanges,
  rows: AddendumRows,
): readonly (readonly string[])[] {
  const part = (act: string, id: string, words: string) => [act, id, words, '', '', '', '', '', ''];
  const wire = (act: string, { from, to, colour, gauge, length, strip, note }: WireRow, what = '') => [
    act,
    what,
    from,
    to,
    colour,
    gauge,
    length,
    strip,
    note,
  ];
  return [
    ...renames.map(({ from, to }) => part('rename', from, to)),
    ...rows.takeAway.map((row) => wire('take wire away', row)),
    ...gone.map((each) => part('take part out', each.id, partWords(each))),
    ...changed
      .filter(({ figures }) => figures.length > 0)
      .map(({ after }) => part('exchange part', after.id, partWords(after))),
    ...come.map((each) => part('put part in', each.id, partWords(each))),
    ...rows.move.map(({ was, how }) => wire('move wire', was, how)),
    ...rows.replace.map(({ was, how }) => wire('replace wire', was, how)),
    ...rows.add.map((row) => wire('add wire', row)),
  ];
}
