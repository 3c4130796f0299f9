/**
 * The summary that `boards-verify.mjs` prints: for every board of the library what its core's headers contradict (those
 * on this machine, or the facts that were taken down from them), how many of its figures somebody looked up, and what it
 * leaves out.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { countStates, missingOf, statementsOf } from '../../fixture/board-figures';
import { type LibraryBoard, openBoardLibrary } from '../../fixture/board-library';
import { type BoardFacts, mismatches as factMismatches } from '../../unit/hardware/board-facts';
import { askCore, avrCorePresent } from './avr-core';
import { compareWithChip } from './avr-libc';
import { AVR_BOARDS } from './avr-targets';
import { compareWithCore } from './compare-core';

export interface BoardReport {
  readonly id: string;
  /** Problems of the reader itself. */
  readonly problems: readonly string[];
  /** What it was compared with, in words; undefined where there is nothing to compare with. */
  readonly against: string | undefined;
  readonly mismatches: readonly string[];
  readonly figures: ReturnType<typeof countStates>;
  /** Paths of what nobody looked up. */
  readonly fromMemory: readonly string[];
  readonly missing: readonly string[];
}

export interface VerifyOptions {
  readonly json?: boolean;
  readonly only?: string;
  /** Also lists what is from memory. */
  readonly figures?: boolean;
}

/** @param root Folder of the repository. */
export function verifyBoards(root: string, only = ''): readonly BoardReport[] {
  const present = avrCorePresent();
  return [...openBoardLibrary(root).values()]
    .filter(({ id }) => id.includes(only))
    .map((entry) => ({
      id: entry.id,
      problems: entry.problems.map(({ message }) => message),
      ...compare(root, entry, present),
      figures: countStates(entry.merged),
      fromMemory: statementsOf(entry.merged)
        .filter(({ state }) => state === 'from memory')
        .map(({ path }) => path),
      missing: missingOf(entry.merged),
    }));
}

type Compared = Pick<BoardReport, 'against' | 'mismatches'>;

function compare(root: string, { id, merged, board }: LibraryBoard, present: boolean): Compared {
  const known = AVR_BOARDS.find((one) => one.id === id);
  if (known !== undefined && present) {
    const target = known.target();
    const core = askCore(target, Object.keys(merged.platform?.names ?? {}));
    const found = [
      ...Object.values(compareWithCore(merged, core)).flat(),
      ...compareWithChip(merged, target.mcu),
    ];
    return { against: "the core's and the chip's headers", mismatches: found };
  }
  const file = join(root, 'test/fixture/boards', `${id}.json`);
  if (board === undefined || !existsSync(file)) return { against: undefined, mismatches: [] };
  const facts = JSON.parse(readFileSync(file, 'utf8')) as BoardFacts;
  const repos = [...new Set(facts.sources.map(({ repo, commit }) => `${repo} ${commit.slice(0, 7)}`))];
  return {
    against: `facts taken down from ${repos.join(', ')}`,
    mismatches: factMismatches(board, facts),
  };
}

/** @returns Exit code: 1 where a board contradicts a header or cannot be read without a problem. */
export function runVerify(root: string, options: VerifyOptions, write: (text: string) => void): number {
  const reports = verifyBoards(root, options.only);
  const wrong = reports.some(({ problems, mismatches }) => problems.length + mismatches.length > 0);
  if (options.json === true) {
    write(`${JSON.stringify(reports, null, 2)}\n`);
    return wrong ? 1 : 0;
  }
  for (const report of reports) write(describe(report, options.figures === true));
  const checked = reports.filter(({ against }) => against !== undefined).length;
  const found = reports.reduce((sum, { mismatches }) => sum + mismatches.length, 0);
  write(`${reports.length} boards, ${checked} compared: ${found} ${plural(found, 'mismatch')}\n`);
  if (!avrCorePresent()) write('The open AVR core and its compiler are not on this machine.\n');
  return wrong ? 1 : 0;
}

function describe(report: BoardReport, listFigures: boolean): string {
  const { id, problems, against, mismatches, figures, fromMemory, missing } = report;
  const count = `${mismatches.length} ${plural(mismatches.length, 'mismatch')}`;
  const core = against === undefined ? 'no header to check against' : `${count} with ${against}`;
  const lines = [
    id,
    `  ${core}`,
    ...mismatches.map((one) => `    ${one}`),
    ...problems.map((one) => `  problem: ${one}`),
    `  figures: ${figures.sourced} sourced, ${figures['partly from memory']} partly from memory, ${figures['from memory']} from memory`,
    ...(listFigures ? fromMemory.map((path) => `    from memory: ${path}`) : []),
    `  missing: ${missing.length === 0 ? 'nothing that is asked for' : missing.join('; ')}`,
  ];
  return `${lines.join('\n')}\n`;
}

function plural(count: number, word: string): string {
  return count === 1 ? word : `${word}es`;
}
