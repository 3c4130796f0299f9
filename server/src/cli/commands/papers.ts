/** `hookup`, `parts`, `guide` and `tests`: the papers of one build. */
import {
  checkGuide,
  guidePaper,
  hookupPaper,
  type Paper,
  type PaperInput,
  partsPaper,
  testsPaper,
} from '../../documents';
import { tell } from '../deliver';
import { drawBuild, gatherPapers, openTexts, readBuildFiles } from '../open-build';
import { type CommandSpec, formatOption, type Given, OUTPUT, Refusal, type Surroundings } from '../spec';
import { deliverPapers, PAPER_ABOUT, PAPER_FORMATS } from '../write-paper';

/** What tells one paper from the others. */
interface PaperSpec {
  readonly name: string;
  readonly summary: string;
  readonly about: readonly string[];
  readonly formats: readonly string[];
  readonly example: string;
  make(input: PaperInput): Paper;
}

const PLACES = { words: '[path]', least: 0, most: 1, names: 'path' } as const;
const EXITS = [
  [0, 'it was written'],
  [2, 'there is no build or more than one, its manifest gives none, or the file cannot be written'],
] as const;

function paperCommand({ name, summary, about, formats, example, make }: PaperSpec): CommandSpec {
  return {
    name,
    summary,
    places: PLACES,
    options: [formatOption(formats), OUTPUT],
    about: [
      ...about,
      'The path is a folder, a source file or a hardware.jsonc that leads to one build; without it it is the current folder.',
      ...PAPER_ABOUT,
    ],
    exits: EXITS,
    examples: [
      [name, 'prints it as Markdown'],
      [`${name} harbour-model ${example}`, 'writes it into a file'],
    ],
    async run(given, here) {
      deliverPapers([make(await read(given, here))], given, here);
      return 0;
    },
  };
}

async function read({ places }: Given, here: Surroundings, drawn = false): Promise<PaperInput> {
  const files = readBuildFiles(places[0] ?? '.', here);
  tell(files.notes, [], here);
  const library = openTexts(here);
  return gatherPapers(files, library, drawn ? await drawBuild(files, library) : undefined);
}

export const hookup = paperCommand({
  name: 'hookup',
  summary: 'Prints the hookup list of one build: a row for every wire, with header positions to count along.',
  about: ['The CSV has a row a wire, for programs.'],
  formats: PAPER_FORMATS,
  example: '--format csv -o hookup.csv',
  make: ({ build }) => hookupPaper(build),
});

export const parts = paperCommand({
  name: 'parts',
  summary:
    'Prints the parts list of one build: values, bands, ratings, what the stock offers, tools and wire.',
  about: ['The CSV has a row a line of the list, for programs.'],
  formats: PAPER_FORMATS,
  example: '--format html -o parts.html',
  make: partsPaper,
});

export const tests = paperCommand({
  name: 'tests',
  summary: 'Prints the test sheet of one build: what to measure with power off and on, and what to expect.',
  about: ['The CSV has a row a measurement, for programs.'],
  formats: PAPER_FORMATS,
  example: '-o tests.md',
  make: testsPaper,
});

export const guide: CommandSpec = {
  name: 'guide',
  summary:
    'Prints the build guide: the order of the work, the reasons for the values, the cautions, the first power-up.',
  places: PLACES,
  options: [
    formatOption(['markdown', 'html']),
    OUTPUT,
    { name: 'all', about: 'hookup list, parts list and test sheet on the same page; HTML only' },
  ],
  about: [
    'The path is a folder, a source file or a hardware.jsonc that leads to one build; without it it is the current folder.',
    'What has no words yet, as a part without a purpose, is listed at its end.',
    ...PAPER_ABOUT,
  ],
  exits: EXITS,
  examples: [
    ['guide -o guide.md', 'writes it, and keeps what you wrote into it'],
    ['guide --all --format html -o build.html', 'all papers on one page to print'],
  ],
  async run(given, here) {
    const all = given.options.all === true;
    if (all && given.options.format !== 'html') {
      throw new Refusal('--all puts the papers on one page of HTML: say --format html.');
    }
    // Markdown has no place for a drawing that is not a file of its own: `picture` makes one.
    const input = await read(given, here, given.options.format === 'html');
    const paper = guidePaper(input);
    const { missing, wordless } = checkGuide(input);
    deliverPapers(
      all ? [paper, partsPaper(input), hookupPaper(input.build), testsPaper(input)] : [paper],
      given,
      here,
    );
    if (wordless.length > 0) {
      tell(
        [
          `${wordless.length === 1 ? 'One line' : `${wordless.length} lines`} at the end of the guide say what has no words yet.`,
        ],
        [],
        here,
      );
    }
    if (missing.length > 0) {
      throw new Refusal(
        `The guide does not tell everything (${missing.join('; ')}); this is a fault of ours.`,
      );
    }
    return 0;
  },
};
