/** `draft`: a manifest made from a bare sketch, or what an existing one still lacks. */
import { join } from 'node:path';
import { draftManifest, openLibrary } from '../../analysis';
import { createTextReader, findSketches, loadSketch, MANIFEST_NAME, slashed } from '../../files';
import { createSketchParser } from '../../sketch';
import { deliver, tell, writeResult } from '../deliver';
import { openTexts } from '../open-build';
import { type CommandSpec, type Given, OUTPUT, optionOf, Refusal, type Surroundings } from '../spec';

export const draft: CommandSpec = {
  name: 'draft',
  summary:
    'Makes a hardware.jsonc from a bare sketch: a part guessed for every pin, each guess marked as one.',
  places: { words: '[path]', least: 0, most: 1, names: 'path' },
  options: [
    {
      name: 'board',
      value: { words: 'BOARD', names: 'board' },
      about: 'the board, where the sketch does not tell it: an id of the library',
    },
    OUTPUT,
    { name: 'write', about: `writes ${MANIFEST_NAME} beside the sketch instead of printing it` },
  ],
  about: [
    'The path is a folder or a source file that leads to one sketch; without it it is the current folder.',
    'A hardware.jsonc that is there is kept byte for byte, and only what it lacks is added; a second run adds nothing.',
    'What was guessed and why, and the pins that nothing could be said of, are told on standard error.',
  ],
  exits: [
    [0, 'it was made'],
    [2, 'there is no sketch or more than one, the board is not told, or the file cannot be written'],
  ],
  examples: [
    ['draft lamp --board uno-r3', 'shows the manifest of a sketch'],
    ['draft --write', 'makes the manifest of this folder, or adds to it'],
  ],
  async run(given, here) {
    const { place, files, readText } = readOne(given.places[0] ?? '.', here);
    const parser = await createSketchParser({ log: () => {} });
    const sources = files.sources.map(({ file, text }) => parser.parse(file, text));
    const file = files.manifest?.file ?? slashed(join(place.folder, MANIFEST_NAME));
    const board = optionOf(given, 'board');
    const made = draftManifest(openLibrary(openTexts(here), readText), {
      file,
      ...(files.manifest === undefined ? {} : { text: files.manifest.text }),
      sources,
      ...(board === undefined ? {} : { board }),
    });
    for (const source of sources) {
      source.dispose();
    }
    if (!made.ok) {
      const ids = made.boards.slice(0, 8).map(({ id }) => id);
      throw new Refusal(
        ids.length === 0 ? made.why : `${made.why} Say --board, likeliest first: ${ids.join(', ')}.`,
      );
    }
    tell(
      [
        ...files.notes,
        `board ${made.board} (${made.boardBy})`,
        ...made.added.map(({ part, kind, pins, why }) => `${pins.join(', ')}: ${part}, ${kind} (${why})`),
        ...made.left.map(({ pins, why }) => `${pins.join(', ')}: ${why}`),
      ],
      files.problems,
      here,
    );
    put(made.text, file, given, here);
    return 0;
  },
};

function readOne(path: string, here: Surroundings) {
  const reader = createTextReader();
  const { sketches, problems } = findSketches([path], here.base, reader);
  const [place, second] = sketches;
  if (place === undefined) {
    throw new Refusal(problems.map((each) => `${each.path}: ${each.why}`).join('; ') || `${path}: no sketch`);
  }
  if (second !== undefined) {
    throw new Refusal(`${path} holds ${sketches.length} sketches; name one of them`);
  }
  const readText = (file: string) => {
    const read = reader.read(file);
    return read.ok ? read.text : undefined;
  };
  return { place, files: loadSketch(place, reader), readText };
}

function put(text: string, file: string, given: Given, here: Surroundings): void {
  if (given.options.write === true) {
    writeResult(file, text, here);
  } else {
    deliver(text, given, here);
  }
}
