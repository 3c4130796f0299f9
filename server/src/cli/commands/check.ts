/** `check`: findings of every build that the paths lead to. */
import { availableParallelism } from 'node:os';
import { posix, relative, resolve } from 'node:path';
import {
  createTextReader,
  DEEPEST,
  DEEPEST_SOURCE_FOLDER,
  findProjects,
  LARGEST_FILE,
  loadLibrary,
  MOST_CHARACTERS,
  MOST_FOLDERS,
  MOST_SOURCE_FOLDERS,
  MOST_SOURCES,
  readProduct,
  schemasFolder,
  slashed,
} from '../../files';
import { type Baseline, compareWithBaseline, readBaseline, writeBaseline } from '../check/baseline';
import type { CheckSetting, FolderResult } from '../check/check-folder';
import { checkFolders } from '../check/check-folders';
import { createProgress } from '../check/progress';
import { exitCodeOf, makeReport, type Report, toolOf } from '../check/report';
import { readShard, type Shard, shareOf } from '../check/shard';
import { watchBuilds } from '../check/watch';
import { deliver, tell, writeResult } from '../deliver';
import { printReport, REPORT_FORMATS } from '../print/report';
import {
  type CommandSpec,
  formatOption,
  type Given,
  OUTPUT,
  optionOf,
  Refusal,
  type Surroundings,
} from '../spec';

/** More threads than this are a slip of the keyboard. */
const MOST_JOBS = 256;

export const check: CommandSpec = {
  name: 'check',
  summary: 'Checks every sketch that has a hardware.jsonc beside it.',
  places: { words: '[path ...]', least: 0, most: Number.POSITIVE_INFINITY, names: 'path' },
  options: [
    formatOption(REPORT_FORMATS),
    OUTPUT,
    {
      name: 'jobs',
      short: 'j',
      value: { words: 'N' },
      about: 'threads at most; as many as there are cores without it',
    },
    {
      name: 'baseline',
      value: { words: 'FILE', names: 'file' },
      about: 'leave out the findings that this file holds',
    },
    {
      name: 'write-baseline',
      value: { words: 'FILE', names: 'file' },
      about: 'write all findings of now into this file, and print none',
    },
    {
      name: 'shard',
      value: { words: 'K/N' },
      about:
        'check the K-th of N parts of the sketches only; wiretrue merge puts the JSON reports together again',
    },
    { name: 'watch', short: 'w', about: 'stay, and check again what changes, until Ctrl+C' },
  ],
  about: [
    'A path is a folder (searched downwards), a source file of a sketch or a hardware.jsonc; without one it is the current folder.',
    [
      'Formats',
      '  text         a place, what is wrong, the line itself, the way out; then the sums. A "fix" leaves the',
      '               built thing as it is. A "fix (ask)" changes what somebody solders or what the firmware does.',
      '               Columns count UTF-16 units from 1.',
      '  json         one object, described by hardware-schemas/check-report.schema.json. Lines and characters',
      '               count from 0, characters in UTF-16 units. What wiretrue merge reads.',
      '  sarif        SARIF 2.1.0, for tools that gather findings.',
      '  junit        JUnit XML: a suite for every sketch, a case for every finding.',
      '  annotations  ::error, ::warning and ::notice lines, which hosted builds show at the lines of a change.',
      'All of them are ordered by file, place and rule, name files relative to the current folder, and are the same',
      'to the byte for the same input, however many threads ran.',
    ].join('\n'),
    'A baseline holds keys of findings by sketch, relative to its own folder, and no places: it stays true when other lines change. What is in it and is gone is said, so that it can be written anew.',
    'Watching prints text; another format goes into the file of --output, anew after every change.',
    [
      'What is read',
      'Of a sketch: the .ino named like its folder, the other .ino by name, then .cpp and .c beside them and below src',
      `(${DEEPEST_SOURCE_FOLDER} levels, ${MOST_SOURCE_FOLDERS} folders), and the headers that any of them includes: local ones, as long as they lie`,
      `below the folder that was named. At most ${MOST_SOURCES} files and ${MOST_CHARACTERS / 1e6} million characters; where more is there, that is`,
      'said. A folder without an .ino but with main.cpp, also in src, is a sketch too where it has a hardware.jsonc.',
      'Not searched: node_modules, folders that begin with a dot, symbolic links to folders, folders more than',
      `${DEEPEST} levels down, anything after ${MOST_FOLDERS} folders (the last two are said when they happen). Files over`,
      `${LARGEST_FILE / 1024 / 1024} MB are refused. Bytes that are not UTF-8 are read as U+FFFD.`,
    ].join('\n'),
  ],
  exits: [
    [0, 'nothing was found, or only information and hints (they are printed all the same)'],
    [1, 'at least one error or warning was found'],
    [
      2,
      'something could not be checked: a path that does not exist or has no hardware.jsonc, a file or folder that cannot be read, a wrong argument, an output that cannot be written. Everything else is still checked and printed.',
    ],
  ],
  examples: [
    ['check', 'checks the current folder and all below it'],
    ['check --format sarif -o findings.sarif exhibits', 'writes a log for a host that shows findings'],
    [
      'check --write-baseline known.json',
      'starts an old project clean; from then on: wiretrue check --baseline known.json',
    ],
    [
      'check --shard 3/8 --format json -o report-3.json',
      'one of eight machines; then: wiretrue merge report-*.json',
    ],
  ],
  run,
};

/** What the options ask for. */
interface Wish {
  readonly paths: readonly string[];
  readonly format: string;
  readonly jobs: number;
  readonly shard?: Shard;
  readonly baseline?: { readonly file: string; readonly known: Baseline };
}

async function run(given: Given, here: Surroundings): Promise<number | undefined> {
  const wish = readWish(given, here);
  const setting: CheckSetting = {
    library: loadLibrary(schemasFolder(here.home)),
    base: here.base,
    paths: wish.paths,
  };
  const finish = (results: readonly FolderResult[], found: Found): Report => {
    const report = reportOf(results, found, wish, here);
    deliver(printReport(report, wish.format, given, here), given, here);
    return report;
  };
  if (given.options.watch === true) {
    const output = optionOf(given, 'output');
    const file = output === undefined ? undefined : slashed(resolve(here.base, output));
    return watchBuilds(setting, () => findBuilds(wish, here), finish, checkAll, here, file);
  }
  const found = findBuilds(wish, here);
  const results = await checkAll(found.folders);
  const target = optionOf(given, 'write-baseline');
  if (target !== undefined) {
    return storeBaseline(reportOf(results, found, wish, here), target, here);
  }
  const report = reportOf(results, found, wish, here);
  tell(report.notes, report.problems, here);
  // Where nothing could be checked there is nothing to sum up.
  if (wish.format !== 'text' || report.sketches.length > 0 || report.problems.length === 0) {
    deliver(printReport(report, wish.format, given, here), given, here);
  }
  return exitCodeOf(report);

  async function checkAll(folders: readonly string[]): Promise<readonly FolderResult[]> {
    const progress = createProgress(here.errorTerminal ? here.err : undefined, () => performance.now());
    const results = await checkFolders(setting, folders, {
      jobs: wish.jobs,
      ...(here.worker === undefined ? {} : { worker: here.worker }),
      progress: progress.show,
    });
    progress.clear();
    return results;
  }
}

function readWish(given: Given, here: Surroundings): Wish {
  const format = optionOf(given, 'format') ?? 'text';
  const shard = optionOf(given, 'shard');
  const read = shard === undefined ? undefined : readShard(shard);
  if (shard !== undefined && read === undefined) {
    throw new Refusal(`"${shard}" is no shard; write it as in --shard 3/8.`);
  }
  const jobs = optionOf(given, 'jobs');
  if (jobs !== undefined && !(/^\d{1,3}$/.test(jobs) && Number(jobs) >= 1 && Number(jobs) <= MOST_JOBS)) {
    throw new Refusal(`"${jobs}" is no number of threads from 1 to ${MOST_JOBS}.`);
  }
  const watch = given.options.watch === true;
  const output = optionOf(given, 'output');
  const target = optionOf(given, 'write-baseline');
  const file = optionOf(given, 'baseline');
  if (target !== undefined && (watch || shard !== undefined || file !== undefined || output !== undefined)) {
    throw new Refusal(
      '--write-baseline goes with no --watch, --shard, --baseline and --output: it holds all there is.',
    );
  }
  if (watch && shard !== undefined) {
    throw new Refusal('--watch goes with no --shard.');
  }
  if (watch && format !== 'text' && output === undefined) {
    throw new Refusal(`--watch prints text; say with --output which file the ${format} goes into.`);
  }
  return {
    paths: given.places.length === 0 ? ['.'] : given.places,
    format,
    jobs: jobs === undefined ? availableParallelism() : Number(jobs),
    ...(read === undefined ? {} : { shard: read }),
    ...(file === undefined ? {} : { baseline: { file, known: loadBaseline(file, here) } }),
  };
}

function loadBaseline(file: string, here: Surroundings): Baseline {
  const text = createTextReader().read(resolve(here.base, file));
  const read = text.ok ? readBaseline(text.text) : text;
  if (!read.ok) {
    throw new Refusal(`${file}: ${read.why}`);
  }
  return read.baseline;
}

type Found = ReturnType<typeof findProjects>;

function findBuilds({ paths, shard }: Wish, here: Surroundings): Found {
  const found = findProjects(paths, here.base);
  return shard === undefined ? found : { ...found, folders: shareOf(found.folders, shard) };
}

function reportOf(results: readonly FolderResult[], found: Found, wish: Wish, here: Surroundings): Report {
  const sketches = results.filter(({ checked }) => checked).map(({ sketch }) => sketch);
  const all = results.flatMap(({ findings }) => findings);
  const { shard, baseline } = wish;
  const compared =
    baseline &&
    compareWithBaseline(all, sketches, baseline.known, (sketch) => nameBeside(baseline.file, sketch, here));
  return makeReport({
    tool: toolOf(readProduct(here.home)),
    ...(shard === undefined ? {} : { shard: `${shard.index}/${shard.count}` }),
    sketches,
    findings: compared?.findings ?? all,
    problems: [...found.problems, ...results.flatMap(({ problems }) => problems)],
    notes: [...found.notes, ...results.flatMap(({ notes }) => notes)],
    ...(compared === undefined ? {} : { baseline: { known: compared.known, gone: compared.gone } }),
  });
}

/** A sketch as a baseline names it: relative to the folder of the baseline's file. */
function nameBeside(file: string, sketch: string, { base }: Surroundings): string {
  const folder = resolve(base, file, '..');
  return posix.normalize(slashed(relative(folder, resolve(base, sketch))) || '.');
}

function storeBaseline(report: Report, target: string, here: Surroundings): number {
  tell(report.notes, report.problems, here);
  if (report.problems.length > 0) {
    throw new Refusal(`${target} is not written, for not everything could be checked.`);
  }
  writeResult(
    target,
    writeBaseline(report.findings, (sketch) => nameBeside(target, sketch, here)),
    here,
  );
  const { findings, sketches } = report;
  here.out(
    `${findings.length} ${findings.length === 1 ? 'finding' : 'findings'} of ${sketches.length} ${sketches.length === 1 ? 'sketch' : 'sketches'} written into ${target}\n`,
  );
  return 0;
}
