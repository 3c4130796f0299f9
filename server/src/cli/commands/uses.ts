/** `uses`: what sketches do to pins. */
import { ASSUMED_BOARD } from '../../analysis';
import { schemasFolder } from '../../files';
import { deliver, tell } from '../deliver';
import { printUsesJson, printUsesText } from '../print/uses';
import { type CommandSpec, formatOption, OUTPUT, optionOf, Refusal } from '../spec';
import { readAllUses } from '../uses';

export const uses: CommandSpec = {
  name: 'uses',
  summary: 'Prints what every sketch does to which pin; no sketch needs a hardware.jsonc for it.',
  places: { words: '[path ...]', least: 0, most: Number.POSITIVE_INFINITY, names: 'path' },
  options: [
    {
      name: 'board',
      value: { words: 'BOARD', names: 'board' },
      about: 'read the sketches for this board: an id of the library or the path of a board file',
    },
    formatOption(['text', 'json']),
    OUTPUT,
  ],
  about: [
    'A path is a folder (searched downwards), a source file or a hardware.jsonc; without one it is the current folder. Several .ino in one folder that each have a setup(), none of them named like the folder, are a sketch each.',
    `The board is the named one, else that of the manifest, else ${ASSUMED_BOARD}, and the output says which.`,
    'The text has one line a use, grouped by pin.',
    'The JSON is one object: uses and stats. A use has sketch, call, action, pins (numbers as the core counts them, or null with reason), value (numbers, or null: the call takes none or, with valueReason, it is not known), modes, file, line, column, function, path (the calls that lead there), phase, certain (every run does it, with all of these pins) and how (where the number came from). stats has sketches, files, calls, arguments (exact: one pin, or several of which every run touches each; set: one of several; unresolved), limits (what was not followed to its end) and boards. Lines and columns count from 1. In the order of execution, sketch by sketch.',
  ],
  exits: [
    [0, 'every sketch was read'],
    [
      2,
      'something could not be read: a path that does not exist or leads to no sketch, a file that cannot be read, a board that does not exist. Everything else is still printed.',
    ],
  ],
  examples: [
    ['uses blink', 'the pins of one sketch'],
    ['uses --board mega-2560 --format json', 'everything below the current folder, read for that board'],
  ],
  async run(given, here) {
    const paths = given.places.length === 0 ? ['.'] : given.places;
    const read = await readAllUses(paths, optionOf(given, 'board'), here.base, schemasFolder(here.home));
    if (!read.ok) {
      throw new Refusal(read.why);
    }
    tell(read.notes, read.problems, here);
    const json = optionOf(given, 'format') === 'json';
    deliver(json ? printUsesJson(read) : printUsesText(read), given, here);
    return read.problems.length > 0 ? 2 : 0;
  },
};
