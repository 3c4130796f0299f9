/** The parts list: what to take out of the drawer or buy, and what may be taken instead. */
import type { Build } from '../base/build';
import { formatQuantity } from '../base/quantity';
import { lengthToBuy, listConsumables, slackWords, sumWires } from './consumables';
import { ampWords } from './figure-words';
import {
  type Block,
  type Paper,
  type PaperInput,
  plainText,
  type Section,
  type Text,
  tableOf,
  textOf,
} from './paper';
import { chosenWords, groupParts, type PartGroup, resistorOf, resistorWords } from './part-words';
import { insteadWords, mostLoaded, offerInstead } from './stock-choice';
import { countWords, listWords } from './words';

export function partsPaper(input: PaperInput): Paper {
  const { build } = input;
  const groups = groupParts(build.parts);
  const resistors = groups.filter(({ first }) => resistorOf(first));
  const others = groups.filter(({ first }) => !resistorOf(first));
  const sections: Section[] = [
    { id: 'board-and-parts', title: 'Board and parts', blocks: partsTable(build, others) },
    ...(resistors.length > 0
      ? [{ id: 'resistors', title: 'Resistors', blocks: resistorBlocks(input, resistors) }]
      : []),
    { id: 'wire', title: 'Hookup wire', blocks: wireBlocks(build) },
    {
      id: 'tools',
      title: 'Solder, sleeving and tools',
      blocks: tableOf(
        ['item', { title: 'amount', align: 'right' }, 'reason'],
        listConsumables(build).map(({ item, amount, why }) => [item, amount, why]),
        true,
      ),
    },
  ];
  return {
    id: 'parts',
    title: 'Parts list',
    build: build.title,
    ...(build.revision !== undefined && { revision: build.revision }),
    facts: [
      [
        'Parts',
        `${countWords(build.parts.length, 'part')} of ${countWords(groups.length, 'sort')}, and the board`,
      ],
      ['Resistors in stock', `${build.stock.text}; ${formatQuantity(build.stock.watts, 'W')}`],
    ],
    sections: sections.filter(({ blocks }) => blocks.length > 0),
    list: {
      columns: ['group', 'quantity', 'names', 'item', 'details', 'code', 'bands', 'note'],
      rows: rowsOf(input),
    },
  };
}

function namesOf({ parts }: PartGroup): string {
  return parts.map(({ id }) => id).join(', ');
}

/** Purposes and notes, each once, with the part's name where several parts differ. */
function remarksOf({ parts }: PartGroup): string {
  const said = parts.flatMap(({ id, purpose, note }) =>
    [purpose, note].flatMap((words) => (words === undefined ? [] : [{ id, words }])),
  );
  if (parts.length === 1) return said.map(({ words }) => words).join('; ');
  return said.map(({ id, words }) => `${id}: ${words}`).join('; ');
}

function partsTable(build: Build, groups: readonly PartGroup[]): readonly Block[] {
  const board: Text[] = ['1', 'board', build.board.title, build.board.chip, ''];
  const rows = groups.map((group): Text[] => [
    String(group.parts.length),
    namesOf(group),
    group.first.title,
    chosenWords(group.first),
    remarksOf(group),
  ]);
  return tableOf(
    [{ title: 'qty', align: 'right' }, 'names', 'what', 'details', 'for'],
    [board, ...rows],
    true,
  );
}

function resistorBlocks(input: PaperInput, groups: readonly PartGroup[]): readonly Block[] {
  const rows = groups.map((group): Text[] => {
    const resistor = resistorOf(group.first);
    if (!resistor) return [];
    const { value, code, bands, tolerance, power } = resistorWords(input.build, resistor);
    const shown: Text = bands.length > 0 ? [{ bands }] : 'no bands for this value';
    return [String(group.parts.length), namesOf(group), value, code, shown, tolerance, power];
  });
  const columns = [
    { title: 'qty', align: 'right' } as const,
    'names',
    'value',
    'code',
    'bands',
    'tolerance',
    'power',
  ];
  return [...tableOf(columns, rows, true), ...insteadBlocks(input, groups)];
}

/** Every resistor that carries a current, with its neighbours in the stock. */
function insteadBlocks(input: PaperInput, groups: readonly PartGroup[]): readonly Block[] {
  const rows = groups.flatMap(({ parts }) =>
    parts.flatMap((part): Text[][] => {
      const resistor = resistorOf(part);
      const element = `${part.id}/${resistor?.id}`;
      const loaded = mostLoaded(input.workings, element);
      if (!resistor || !loaded) return [];
      const own = `${formatQuantity(resistor.ohms.typ, 'ohm')}: ${ampWords(loaded.amps)}`;
      const others = offerInstead(input, element, resistor.ohms.typ).map(insteadWords);
      const when = loaded.state.words === '' ? '' : loaded.state.words;
      return [[part.id, own, others.length > 0 ? others.join('. ') : 'nothing near in the stock', when]];
    }),
  );
  if (rows.length === 0) return [];
  return [
    { kind: 'heading', text: 'What the stock offers instead, and the current it gives' },
    ...tableOf(['part', 'as built', 'instead', 'in the state'], rows),
    textOf('Currents are least / usual / most over all tolerances.'),
  ];
}

function wireBlocks(build: Build): readonly Block[] {
  const sums = sumWires(build);
  const gauged = sums.some(({ gauge }) => gauge !== '');
  const rows = sums.map(({ colour, gauge, pieces, metres, unknown }): Text[] => [
    colour === '' ? 'any colour' : [{ wire: colour }],
    ...(gauged ? [gauge] : []),
    String(pieces),
    metres === 0 ? '' : formatQuantity(metres, 'm'),
    metres === 0 ? '' : lengthToBuy(build, metres),
    unknown === 0 ? '' : `${countWords(unknown, 'piece')} without a length: measure and add`,
  ]);
  const right = (title: string) => ({ title, align: 'right' }) as const;
  const gauges = gauged ? ['gauge'] : [];
  const columns = ['colour', ...gauges, right('pieces'), right('sum'), right('to buy'), 'mind'];
  const open = sums.some(({ gauge }) => gauge === '')
    ? ' Where no gauge is said, stranded wire of AWG 22 to 26 suits (common practice).'
    : '';
  return [...tableOf(columns, rows, true), textOf(`To buy is the sum ${slackWords(build)}.${open}`)];
}

function rowsOf(input: PaperInput): readonly (readonly string[])[] {
  const { build } = input;
  const parts = groupParts(build.parts).map((group) => {
    const resistor = resistorOf(group.first);
    const words = resistor && resistorWords(build, resistor);
    const details = words ? listWords([words.value, words.tolerance, words.power]) : chosenWords(group.first);
    const bands = words ? plainText([{ bands: words.bands }]) : '';
    const { title } = group.first;
    const quantity = String(group.parts.length);
    return ['part', quantity, namesOf(group), title, details, words?.code ?? '', bands, remarksOf(group)];
  });
  const wires = sumWires(build).map(({ colour, gauge, pieces, metres, unknown }) => {
    const length = metres === 0 ? '' : `${lengthToBuy(build, metres)} ${slackWords(build)}`;
    const mind = unknown === 0 ? '' : `${countWords(unknown, 'piece')} without a length`;
    const item = ['hookup wire', colour, gauge].filter((word) => word !== '').join(', ');
    return ['wire', String(pieces), '', item, length, '', '', mind];
  });
  const tools = listConsumables(build).map(({ item, amount, why }) => [
    'tool',
    '',
    '',
    item,
    amount,
    '',
    '',
    why,
  ]);
  return [['board', '1', '', build.board.title, build.board.chip, '', '', ''], ...parts, ...wires, ...tools];
}
