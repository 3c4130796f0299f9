/** `picture`: the wiring of one build as an SVG file. */
import { deliver, tell } from '../deliver';
import { drawBuild, openTexts, readBuildFiles } from '../open-build';
import { type CommandSpec, OUTPUT } from '../spec';

export const picture: CommandSpec = {
  name: 'picture',
  summary:
    'Draws the wiring of one build: the board with its headers, every part as a symbol, every wire in its colour.',
  places: { words: '[path]', least: 0, most: 1, names: 'path' },
  options: [OUTPUT],
  about: [
    'The path is a folder, a source file or a hardware.jsonc that leads to one build; without it it is the current folder.',
    'The result is one SVG file that follows light and dark themes; findings are marked where they are.',
  ],
  exits: [
    [0, 'it was drawn'],
    [2, 'there is no build or more than one, its manifest gives none, or the file cannot be written'],
  ],
  examples: [
    ['picture -o wiring.svg', 'draws the build of this folder'],
    ['picture harbour-model > wiring.svg', 'draws another one'],
  ],
  async run(given, here) {
    const files = readBuildFiles(given.places[0] ?? '.', here);
    tell(files.notes, [], here);
    deliver(await drawBuild(files, openTexts(here)), given, here);
    return 0;
  },
};
