/**
 * From a bare sketch to a manifest: a part for every pin that the sketch uses and nothing is wired to, guessed and marked
 * as guessed. It only ever adds: what the manifest says already stays byte for byte, and a second run adds nothing.
 */
import type { Build } from '../../base/build';
import type { SketchFacts } from '../../base/pin-use';
import type { Problem } from '../../base/read';
import { applyEdits, type Edit } from '../../base/span';
import { solveNetwork } from '../../circuit';
import { composeEdits, readManifest } from '../../hardware';
import { rules } from '../../rules/generated/registry';
import type { Subject } from '../../rules/subject';
import { usesBus } from '../../rules/support/buses';
import type { Step } from '../../rules/support/draft';
import { type Evidence, gatherEvidence } from '../../rules/support/guess/evidence';
import { partName } from '../../rules/support/guess/names';
import { type Candidate, rankKinds } from '../../rules/support/guess/rank';
import { makeRecipe, type Recipe } from '../../rules/support/guess/recipes';
import { isMeant } from '../../rules/support/views';
import type { ProjectInput } from '../analyser';
import type { OpenLibrary } from '../library';
import { runRules } from '../run-rules';
import { joinSubject } from '../subject';
import { readUses } from '../uses';
import { decideBoard, guessBoards } from './board-guess';
import { addMark } from './marks';

export interface DraftInput {
  /** Path of the manifest, existing or not. */
  readonly file: string;
  /** Its present text; absent: there is none. */
  readonly text?: string;
  /** In the order the build joins them. */
  readonly sources: ProjectInput['sources'];
  /** An id of the board library. Absent: the manifest's board, else a guess. */
  readonly board?: string;
}

export interface Drafted {
  readonly part: string;
  readonly kind: string;
  readonly pins: readonly string[];
  readonly why: string;
}

export type Draft =
  | {
      readonly ok: true;
      readonly file: string;
      /** The whole new text. */
      readonly text: string;
      /** The same as edits of the old text; empty where nothing is to be added. */
      readonly edits: readonly Edit[];
      readonly board: string;
      readonly boardBy: 'asked' | 'manifest' | 'guessed';
      readonly added: readonly Drafted[];
      /** Pins for which nothing was written, each with a whole sentence that says why. */
      readonly left: readonly { readonly pins: readonly string[]; readonly why: string }[];
    }
  | {
      readonly ok: false;
      /** A whole sentence. */
      readonly why: string;
      /** The likeliest first, where the board has to be asked for. */
      readonly boards: readonly { readonly id: string; readonly title: string }[];
    };

/** Values of resistors that most people have or can buy singly. */
const usualStock = 'E12';

export function draftManifest(library: OpenLibrary, input: DraftInput): Draft {
  const started = startText(library, input);
  if (!started.ok) return started;
  const { file } = input;
  // The board stays the same, and with it all that the sketch does.
  let facts: SketchFacts | undefined;
  const read = (text: string) => {
    const { value: build, problems } = readManifest(file, text, library.hardware);
    if (build === undefined) return undefined;
    facts ??= readUses(library, build.board, input.sources);
    return subjectOf(library, input, { build, problems, facts, text });
  };
  const first = read(started.text);
  if (first === undefined) {
    return { ok: false, why: 'The manifest cannot be read; mend it first.', boards: [] };
  }
  const known = errorsOf(first);
  // Most drafts have no error at all, and checking once is enough; else every piece is checked by itself.
  let run = addAll(library, started.text, first, read, () => true);
  if (![...errorsOf(run.subject)].every((key) => known.has(key))) {
    run = addAll(library, started.text, first, read, (subject) =>
      [...errorsOf(subject)].every((key) => known.has(key)),
    );
  }
  const { text, subject, added, left } = run;
  const before = input.text ?? '';
  return {
    ok: true,
    file,
    text,
    edits: text === before ? [] : wholeEdit(file, before, text),
    board: subject.build.board.id,
    boardBy: started.boardBy,
    added,
    left,
  };
}

interface Additions {
  readonly text: string;
  readonly subject: Subject;
  readonly added: readonly Drafted[];
  readonly left: readonly { readonly pins: readonly string[]; readonly why: string }[];
}

function addAll(
  library: OpenLibrary,
  start: string,
  before: Subject,
  read: (text: string) => Subject | undefined,
  works: (subject: Subject) => boolean,
): Additions {
  let text = start;
  let subject = before;
  const added: Drafted[] = [];
  const left: { readonly pins: readonly string[]; readonly why: string }[] = [];
  const tried = new Set<string>();
  for (;;) {
    const evidence = piecesOf(subject).find((piece) => !tried.has(keyOf(piece)));
    if (evidence === undefined) return { text, subject, added, left };
    tried.add(keyOf(evidence));
    const pins = evidence.pins.map(({ pin }) => pin);
    const found = firstThatWorks(library, text, subject, evidence, read, works);
    if (found === undefined) {
      left.push({ pins, why: whyLeft(evidence) });
      continue;
    }
    const { candidate, name } = found;
    ({ text, subject } = found);
    added.push({ part: name, kind: candidate.drives ?? candidate.kind, pins, why: candidate.why });
  }
}

function keyOf({ name, pins }: Evidence): string {
  return [name, ...pins.map(({ pin }) => pin)].join(' ');
}

/** The likeliest candidate that works, from one of the board's supplies. */
function firstThatWorks(
  library: OpenLibrary,
  text: string,
  subject: Subject,
  evidence: Evidence,
  read: (text: string) => Subject | undefined,
  works: (subject: Subject) => boolean,
) {
  const { file } = subject.build;
  for (const candidate of rankKinds(evidence)) {
    const name = partName(subject, evidence, candidate);
    for (let supply = 0; supply < 3; supply += 1) {
      const wish = { name, kinds: library.hardware.partKinds, supply };
      const recipe = makeRecipe(subject, evidence, candidate, wish);
      if (recipe === undefined) break;
      const steps = [...recipe.steps, ...marksOf(recipe, candidate)];
      const bound = steps.map((step) => (now: string) => step(now, file));
      const next = applyEdits(text, composeEdits(text, file, ...bound));
      const after = read(next);
      if (after && works(after)) return { candidate, name, text: next, subject: after };
      // Only a module has a choice of supplies.
      if (!recipe.parts.some(({ id }) => id === name && recipe.fed)) break;
    }
  }
  return undefined;
}

export function marksOf(recipe: Recipe, { why }: Candidate): Step[] {
  const [main] = recipe.parts;
  return recipe.parts.map(
    ({ id }): Step =>
      (text, file) =>
        addMark(text, id, id === main?.id ? why : `for ${main?.id ?? ''}`, file),
  );
}

/** What is still to be drafted: pins that the sketch surely means and that nothing hangs on. */
export function piecesOf(subject: Subject): readonly Evidence[] {
  return gatherEvidence(subject, (view) => {
    if (view.wires.length > 0 || view.onBoard.length > 0) return false;
    if (view.pin.takenBy !== undefined && !view.pin.takenBy.free) return false;
    if (view.uses.every((use) => use.action === 'bus' || use.action === 'transfer')) return false;
    return (
      view.uses.some((use) => isMeant(use)) && !(view.modes.length === 0 && usesBus(subject, view.pin.roles))
    );
  });
}

function whyLeft({ unknownClass, pins }: Evidence): string {
  const where = pins.map(({ pin }) => pin).join(', ');
  return unknownClass === undefined
    ? `No part of the library could be put on ${where} without an error.`
    : `No kind of the library is known for an object of ${unknownClass} on ${where}.`;
}

function errorsOf(subject: Subject): ReadonlySet<string> {
  const { findings } = runRules(rules, subject);
  return new Set(findings.filter(({ severity }) => severity === 'error').map(({ key }) => key));
}

function subjectOf(
  library: OpenLibrary,
  { file, sources }: DraftInput,
  read: {
    readonly build: Build;
    readonly problems: readonly Problem[];
    readonly facts: SketchFacts;
    readonly text: string;
  },
): Subject {
  const { text, ...known } = read;
  return joinSubject({
    ...known,
    texts: { ...Object.fromEntries(sources.map((source) => [source.file, source.text])), [file]: text },
    libraries: library.calls,
    partKinds: library.hardware.partKinds,
    solve: solveNetwork,
  });
}

type Started =
  | { readonly ok: true; readonly text: string; readonly boardBy: 'asked' | 'manifest' | 'guessed' }
  | Extract<Draft, { ok: false }>;

/** The manifest's own text, or one that says the board and the stock. */
function startText(library: OpenLibrary, { file, text, sources, board }: DraftInput): Started {
  if (text !== undefined && text.trim().replace(/^\uFEFF/, '') !== '') {
    const { value, problems } = readManifest(file, text, library.hardware);
    if (value !== undefined && !problems.some(({ code }) => code.startsWith('syntax'))) {
      return { ok: true, text, boardBy: 'manifest' };
    }
    const [first] = problems;
    const why = first === undefined ? 'The manifest cannot be read.' : first.message;
    return { ok: false, why: `${why} Mend the manifest first.`, boards: [] };
  }
  const guesses = guessBoards(library, sources);
  const boards = guesses.map(({ id, title }) => ({ id, title }));
  const chosen = board ?? decideBoard(guesses)?.id;
  if (chosen === undefined)
    return { ok: false, why: 'The sketch does not say which board it is for.', boards };
  if (!library.hardware.boardIds.includes(chosen)) {
    return { ok: false, why: `There is no board "${chosen}".`, boards };
  }
  const newline = sources[0]?.text.includes('\r\n') ? '\r\n' : '\n';
  const mark = board === undefined ? ' // guessed: by what the sketch uses' : '';
  const lines = [
    '{',
    '  "format": 1,',
    `  "board": ${JSON.stringify(chosen)},${mark}`,
    `  "stock": { "resistors": "${usualStock}" }`,
    '}',
    '',
  ];
  const lead = text?.startsWith('\uFEFF') ? '\uFEFF' : '';
  return { ok: true, text: lead + lines.join(newline), boardBy: board === undefined ? 'guessed' : 'asked' };
}

/** The difference as one edit: what both texts begin and end with stays. */
function wholeEdit(file: string, before: string, after: string): Edit[] {
  let start = 0;
  while (start < before.length && start < after.length && before[start] === after[start]) start += 1;
  let end = 0;
  const most = Math.min(before.length, after.length) - start;
  while (end < most && before[before.length - 1 - end] === after[after.length - 1 - end]) end += 1;
  return [{ file, start, end: before.length - end, text: after.slice(start, after.length - end) }];
}
