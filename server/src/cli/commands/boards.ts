/** `boards`: the boards of the library, and one board's pins and limits with their sources. */
import { join } from 'node:path';
import { findBoard, openLibrary } from '../../analysis';
import type { Board } from '../../base/build';
import { createTextReader, loadLibrary, schemasFolder, slashed } from '../../files';
import { suggest } from '../arguments';
import { deliver } from '../deliver';
import { printBoard } from '../print/board';
import { type CommandSpec, formatOption, OUTPUT, optionOf, Refusal, type Surroundings } from '../spec';

export const boards: CommandSpec = {
  name: 'boards',
  summary: 'Lists the boards of the library, or tells the pins, headers and limits of one.',
  places: { words: '[board]', least: 0, most: 1, names: 'board' },
  options: [formatOption(['text', 'json']), OUTPUT],
  about: [
    'A board is an id of the library or the path of a board file. Every figure is told with its source; "from memory" means that nobody looked it up.',
    'The JSON of one board holds SI figures, as min, typ and max; that of the list holds id, title and chip.',
  ],
  exits: [
    [0, 'it was printed'],
    [2, 'there is no such board, or its file cannot be used'],
  ],
  examples: [
    ['boards', 'the list'],
    ['boards nano-v3', 'one board'],
    ['boards own-board.json', 'a board file of your own'],
  ],
  async run(given, here) {
    const [name] = given.places;
    const json = optionOf(given, 'format') === 'json';
    const text = name === undefined ? listBoards(here, json) : tellBoard(chooseBoard(name, here), json);
    deliver(text, given, here);
    return 0;
  },
};

function library(here: Surroundings) {
  const reader = createTextReader();
  return openLibrary(loadLibrary(schemasFolder(here.home)), (path) => {
    const read = reader.read(path);
    return read.ok ? read.text : undefined;
  });
}

/** A board by its id or the path of its file. @throws Refusal where there is none. */
export function chooseBoard(name: string, here: Surroundings): Board {
  const open = library(here);
  const found = findBoard(open, name, slashed(join(here.base, 'x')));
  if (!found.ok) {
    const way = found.why.startsWith('There is no board') ? ` ${suggest(name, open.hardware.boardIds)}` : '';
    throw new Refusal(`${found.why}${way}`);
  }
  return found.board;
}

function listBoards(here: Surroundings, json: boolean): string {
  const open = library(here);
  const all = open.hardware.boardIds.flatMap((id) => {
    const found = findBoard(open, id, '');
    return found.ok ? [{ id, title: found.board.title, chip: found.board.chip }] : [];
  });
  if (json) {
    return `${JSON.stringify({ format: 1, boards: all }, undefined, 2)}\n`;
  }
  const width = (of: (each: (typeof all)[number]) => string) =>
    Math.max(0, ...all.map((each) => of(each).length));
  const [ids, titles] = [width(({ id }) => id), width(({ title }) => title)];
  return all.map(({ id, title, chip }) => `${id.padEnd(ids)}  ${title.padEnd(titles)}  ${chip}\n`).join('');
}

function tellBoard(board: Board, json: boolean): string {
  if (!json) {
    return printBoard(board);
  }
  // The compiler's side of a board is long and says nothing of its wires.
  const { platform: _, ...said } = board;
  return `${JSON.stringify({ format: 1, ...said }, undefined, 2)}\n`;
}
