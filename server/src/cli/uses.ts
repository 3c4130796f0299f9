/** Reads sketches from disk and turns what each does to pins into rows, the same for both ways of printing. */
import { join, relative } from 'node:path';
import { type BoardChoice, chooseBoard, findBoard, openLibrary, readUses } from '../analysis';
import { type Board, numbersOf } from '../base/build';
import type { Amount, PinMode, PinUse, SketchFacts } from '../base/pin-use';
import type { Span } from '../base/span';
import {
  createTextReader,
  type FileProblem,
  findSketches,
  loadLibrary,
  loadSketch,
  type ProjectFiles,
  slashed,
} from '../files';
import { createSketchParser, type SketchParser } from '../sketch';
import { nearest } from './nearest';
import { LineIndex } from './print/lines';

/** A place in a file of the sketch. Lines and columns count from 1, columns in UTF-16 units. */
export interface RowPlace {
  readonly file: string;
  readonly line: number;
}

/** One thing that a sketch does to a pin, on one call path. */
export interface UseRow {
  readonly call: string;
  readonly action: string;
  /** Numbers as the core counts them; null where they are not known, and then `reason` says why. */
  readonly pins: readonly number[] | null;
  readonly reason?: string;
  /** Level, mode, duty or frequency; null where the call takes none, or where it is not known. */
  readonly value: readonly number[] | null;
  /** Why the value is not known; absent where the call takes none. */
  readonly valueReason?: string;
  readonly modes?: readonly PinMode[];
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly function: string;
  /** Calls from setup, loop or a handler down to the function; the places are those of the calls. */
  readonly path: readonly (RowPlace & { readonly function: string })[];
  readonly phase: PinUse['phase'];
  readonly certain: boolean;
  /** How the pin number was got, in words; absent for a plain literal. */
  readonly how?: string;
}

/** How many pin arguments of the text are known how well. */
export interface ArgumentCounts {
  /** One pin on every call path, or several that every run touches. */
  exact: number;
  /** One of several pins. */
  set: number;
  unresolved: number;
}

/** What one sketch does. */
export interface SketchUses {
  /** The folder, or the file where that is the whole sketch, relative to the current folder. */
  readonly name: string;
  /** The folder all the same. */
  readonly folder: string;
  readonly board: Pick<Board, 'id' | 'title'>;
  readonly by: Extract<BoardChoice, { ok: true }>['by'];
  /** The board's name of a pin number, where it has such a pin. */
  readonly pinNames: ReadonlyMap<number, string>;
  /** In the order of execution. */
  readonly rows: readonly UseRow[];
  readonly files: number;
  /** Calls as they stand in the text, each once. */
  readonly calls: number;
  readonly arguments: ArgumentCounts;
  /** What was not followed to its end. */
  readonly limits: readonly (RowPlace & { readonly message: string })[];
}

/** All sketches of one run. */
export interface UsesResult {
  readonly sketches: readonly SketchUses[];
  readonly problems: readonly FileProblem[];
  /** What a bound left out, in whole sentences. */
  readonly notes: readonly string[];
}

/** The result, or a sentence that says why nothing could be read. */
export type UsesRead =
  | ({ readonly ok: true } & UsesResult)
  | {
      readonly ok: false;
      readonly why: string;
    };

/**
 * Reads every sketch that `paths` lead to.
 * @param board Id or path of the board to read them for; without it each sketch's own, else the assumed one.
 * @param base The current folder.
 * @param schemas The folder of boards, parts and libraries.
 * @throws Error in words where the installation is broken; never because of what a user's file holds.
 */
export async function readAllUses(
  paths: readonly string[],
  board: string | undefined,
  base: string,
  schemas: string,
): Promise<UsesRead> {
  const reader = createTextReader();
  const library = openLibrary(loadLibrary(schemas), (path) => {
    const read = reader.read(path);
    return read.ok ? read.text : undefined;
  });
  const asked = board === undefined ? undefined : findBoard(library, board, slashed(join(base, 'x')));
  if (asked?.ok === false) {
    const near = nearest(board ?? '', library.hardware.boardIds);
    const others = `Possible: ${library.hardware.boardIds.join(', ')}, or the path of a board file.`;
    return { ok: false, why: `${asked.why} ${near === undefined ? others : `Did you mean ${near}?`}` };
  }
  const found = findSketches(paths, base, reader);
  const nameOf = (file: string) => slashed(relative(base, file)) || '.';
  const problems: FileProblem[] = [...found.problems];
  const notes = new Set(found.notes);
  const sketches: SketchUses[] = [];
  const parser = await createSketchParser({ log: () => {} });
  for (const place of found.sketches) {
    const files = loadSketch(place, reader);
    problems.push(...files.problems.map((each) => ({ ...each, path: nameOf(each.path) })));
    for (const note of files.notes) {
      notes.add(note);
    }
    const name = nameOf(place.only ?? place.folder);
    const choice = asked ?? chooseBoard(library, files.manifest);
    if (choice.ok) {
      if (choice.note !== undefined) {
        notes.add(`${name}: ${choice.note}`);
      }
      try {
        const facts = readFacts(files, parser, (sources) => readUses(library, choice.board, sources));
        sketches.push(rowsOf(name, choice, files, facts, nameOf));
      } catch (error) {
        const why = error instanceof Error ? error.message : String(error);
        problems.push({ path: name, why: `could not be read (${why}); this is a fault of ours` });
      }
    }
    reader.keepOnly(new Set());
    // Native trees are let go in a turn of the event loop of their own: without one, a folder of sketches piles up.
    await new Promise<void>((resolve) => setImmediate(resolve));
  }
  return { ok: true, sketches, problems, notes: [...notes] };
}

function readFacts(
  files: ProjectFiles,
  parser: SketchParser,
  read: (sources: ReturnType<SketchParser['parse']>[]) => SketchFacts,
): SketchFacts {
  const sources = files.sources.map((source) => parser.parse(source.file, source.text));
  try {
    return read(sources);
  } finally {
    for (const source of sources) {
      source.dispose();
    }
  }
}

function rowsOf(
  name: string,
  choice: Extract<BoardChoice, { ok: true }>,
  files: ProjectFiles,
  facts: SketchFacts,
  nameOf: (file: string) => string,
): SketchUses {
  const { board, by } = choice;
  const lines = new Map(files.sources.map(({ file, text }) => [file, new LineIndex(text)]));
  const placeOf = (span: Span) => {
    const place = lines.get(span.file)?.placeOf(span.start) ?? { line: 0, character: 0 };
    return { file: nameOf(span.file), line: place.line + 1, column: place.character + 1 };
  };
  const lineOf = (span: Span): RowPlace => {
    const { file, line } = placeOf(span);
    return { file, line };
  };
  const rows = facts.uses.map((use): UseRow => {
    const { pins, value } = use;
    return {
      call: use.call,
      action: use.action,
      pins: valuesOf(pins),
      ...(pins.kind === 'unknown' ? { reason: pins.reason } : {}),
      value: value === undefined ? null : valuesOf(value),
      ...(value?.kind === 'unknown' ? { valueReason: value.reason } : {}),
      ...(use.modes === undefined ? {} : { modes: use.modes }),
      ...placeOf(use.callSpan),
      function: use.function,
      path: use.path.map((step) => ({ function: step.function, ...lineOf(step.span) })),
      phase: use.phase,
      certain: use.certain,
      ...(use.how === undefined ? {} : { how: use.how }),
    };
  });
  return {
    name,
    folder: nameOf(files.folder),
    board: { id: board.id, title: board.title },
    by,
    pinNames: new Map(board.pins.flatMap((pin) => numbersOf(pin).map((number) => [number, pin.id] as const))),
    rows,
    files: files.sources.length,
    calls: new Set(facts.uses.map((use) => `${use.call} ${keyOf(use.callSpan)}`)).size,
    arguments: countArguments(facts.uses, new Map(files.sources.map(({ file, text }) => [file, text]))),
    limits: facts.problems.map((problem) => ({ ...lineOf(problem.span), message: problem.message })),
  };
}

function valuesOf(amount: Amount): readonly number[] | null {
  return amount.kind === 'known' ? amount.values : null;
}

function keyOf(span: Span): string {
  return `${span.start} ${span.end} ${span.file}`;
}

/** An argument is known as well as on the call path where it is known worst. */
function countArguments(uses: readonly PinUse[], texts: ReadonlyMap<string, string>): ArgumentCounts {
  const worst = new Map<string, keyof ArgumentCounts>();
  const rank = { exact: 0, set: 1, unresolved: 2 };
  for (const use of uses) {
    if (!hasArgument(use, texts.get(use.callSpan.file) ?? '')) {
      continue;
    }
    const key = `${use.call} ${keyOf(use.callSpan)} ${keyOf(use.span)}`;
    const now = howWell(use);
    const before = worst.get(key);
    if (before === undefined || rank[now] > rank[before]) {
      worst.set(key, now);
    }
  }
  const counts: ArgumentCounts = { exact: 0, set: 0, unresolved: 0 };
  for (const each of worst.values()) {
    counts[each] += 1;
  }
  return counts;
}

function howWell({ pins, certain }: PinUse): keyof ArgumentCounts {
  if (pins.kind === 'unknown') {
    return 'unresolved';
  }
  return pins.values.length === 1 || certain ? 'exact' : 'set';
}

/** False for a call that touches the chip alone, or takes pins without naming them, as a bus that is opened does. */
function hasArgument({ pins, action, span, callSpan }: PinUse, text: string): boolean {
  if (pins.kind === 'known' && pins.values.length === 0) {
    return false;
  }
  if (keyOf(span) === keyOf(callSpan)) {
    // Inside a macro everything stands where the macro is used.
    return action !== 'bus' && action !== 'transfer';
  }
  const inside = span.file === callSpan.file && callSpan.start <= span.start && span.end <= callSpan.end;
  return !inside || /[([{<]/.test(text.slice(callSpan.start, span.start));
}
