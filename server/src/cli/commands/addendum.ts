/** `addendum`: what changed since the last published revision, on a page of its own. */
import { statSync } from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import { addendumPaper } from '../../documents';
import { findProjects, slashed } from '../../files';
import { tell } from '../deliver';
import { findRevision, readRevision } from '../git';
import { type BuildFiles, gatherPapers, moveBuild, openTexts, readBuildFiles } from '../open-build';
import { type CommandSpec, formatOption, OUTPUT, optionOf, Refusal, type Surroundings } from '../spec';
import { deliverPapers, PAPER_ABOUT, PAPER_FORMATS } from '../write-paper';

export const addendum: CommandSpec = {
  name: 'addendum',
  summary:
    'Prints what changed between two revisions of one build: wires and parts to add, take away, move or change.',
  places: { words: '[path]', least: 0, most: 1, names: 'path' },
  options: [
    {
      name: 'from',
      value: { words: 'REVISION|PATH', names: 'file' },
      about: 'the build as it was: a git revision, or the path of another folder or manifest',
    },
    {
      name: 'to',
      value: { words: 'REVISION|PATH', names: 'file' },
      about: 'the build as it shall be; the files as they lie there now without it',
    },
    formatOption(PAPER_FORMATS),
    OUTPUT,
  ],
  about: [
    'The path is a folder, a source file or a hardware.jsonc that leads to one build; without it it is the current folder. The revisions are those of its git repository.',
    'What exists as a path is a path. Where a folder and a revision have the same name, write ./NAME for the folder, or refs/tags/NAME or refs/heads/NAME for the revision.',
    'Of a manifest by another name than hardware.jsonc no sketch is known; the addendum then tells the hardware alone.',
    ...PAPER_ABOUT,
  ],
  exits: [
    [0, 'it was written, also where nothing changed'],
    [
      2,
      'a revision does not exist or has no hardware.jsonc, there is no build, or the file cannot be written',
    ],
  ],
  examples: [
    ['addendum --from v1.0 -o addendum.md', 'what changed since that tag'],
    ['addendum --from HEAD~3 --to HEAD', 'between two revisions'],
    ['addendum harbour-model --from published/harbour-model', 'against a copy that was kept'],
  ],
  async run(given, here) {
    const from = optionOf(given, 'from');
    if (from === undefined) {
      throw new Refusal('Say --from: the git revision, folder or manifest that the addendum starts from.');
    }
    const path = given.places[0] ?? '.';
    const to = optionOf(given, 'to');
    const folder = folderAt(path, here);
    const after = to === undefined ? readBuildFiles(path, here) : readSide(to, folder, here);
    const before = moveBuild(readSide(from, folder, here), after.folder, basename(after.manifest.file));
    tell([...before.notes, ...after.notes], [], here);
    const library = openTexts(here);
    // Where one side has no sketch, comparing would call every line of the other new.
    const alone = before.sources.length === 0 || after.sources.length === 0;
    const [was, shallBe] = [
      await gatherPapers(alone ? { ...before, sources: [] } : before, library),
      await gatherPapers(alone ? { ...after, sources: [] } : after, library),
    ];
    deliverPapers([addendumPaper(was, shallBe)], given, here);
    return 0;
  },
};

/** The folder of the build, whose repository is asked. It may have had a manifest then and none now. */
function folderAt(path: string, here: Surroundings): string {
  const full = resolve(here.base, path);
  const stat = statSync(full, { throwIfNoEntry: false });
  if (stat === undefined) {
    throw new Refusal(`${path}: does not exist`);
  }
  const { folders } = findProjects([path], here.base);
  const [only, second] = folders;
  if (only !== undefined && second === undefined) {
    return only;
  }
  return stat.isDirectory() ? slashed(full) : slashed(dirname(full));
}

/** One side of the comparison. */
function readSide(named: string, folder: string, here: Surroundings): BuildFiles {
  const isPath = statSync(resolve(here.base, named), { throwIfNoEntry: false }) !== undefined;
  if (!isPath) {
    return readRevision(folder, named);
  }
  if (!/^\.{0,2}[/\\]|^[A-Za-z]:[/\\]/.test(named) && findRevision(folder, named) !== undefined) {
    throw new Refusal(
      `"${named}" is a path and a revision. Write ./${named} for the path, refs/tags/${named} or refs/heads/${named} for the revision.`,
    );
  }
  return readBuildFiles(named, here);
}
