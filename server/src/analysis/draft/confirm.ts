/** The two answers to a guess in the manifest: it is right, or it is another kind. */
import { applyEdits, type Edit } from '../../base/span';
import { solveNetwork } from '../../circuit';
import { composeEdits, readManifest, removePart, removeWire } from '../../hardware';
import type { Subject } from '../../rules/subject';
import { gatherEvidence } from '../../rules/support/guess/evidence';
import { rankKinds } from '../../rules/support/guess/rank';
import { makeRecipe } from '../../rules/support/guess/recipes';
import type { OpenLibrary } from '../library';
import { joinSubject } from '../subject';
import { findBoardMark, findMarks, type Mark, servedBy } from './marks';

export interface GuessAction {
  readonly title: string;
  readonly edits: readonly Edit[];
}

/** How many other kinds are offered. */
const mostKinds = 5;

/** Actions on the guesses between two offsets of the manifest. */
export function guessActions(
  subject: Subject,
  library: OpenLibrary,
  start: number,
  end: number,
): readonly GuessAction[] {
  const { file } = subject.build;
  const text = subject.texts[file] ?? '';
  const marks = findMarks(text);
  const here = marks.filter((mark) => mark.entry <= end && start <= mark.end);
  const actions = here.flatMap((mark): GuessAction[] => {
    const main = servedBy(mark) ?? mark.part;
    const own = marks.filter((each) => each.part === main || servedBy(each) === main);
    const confirm: GuessAction = {
      title: `Confirm the guess: ${main} is a ${kindWords(subject, main)}`,
      edits: own.map((each) => ({ file, start: each.start, end: each.end, text: '' })),
    };
    return [confirm, ...otherKinds(subject, library, main, own)];
  });
  const board = findBoardMark(text);
  const onBoard = board !== undefined && board.entry <= end && start <= board.end;
  const remove = (mark: Mark): Edit => ({ file, start: mark.start, end: mark.end, text: '' });
  if (onBoard) {
    const title = `Confirm the guess: the board is ${subject.build.board.title}`;
    actions.push({ title, edits: [remove(board)] });
  }
  const all = board === undefined ? marks : [board, ...marks];
  if (all.length < 2 || (here.length === 0 && !onBoard)) return actions;
  return [...actions, { title: `Confirm all ${all.length} guesses`, edits: all.map(remove) }];
}

function kindWords(subject: Subject, id: string): string {
  return subject.build.parts.find((part) => part.id === id)?.title ?? 'part';
}

function otherKinds(
  subject: Subject,
  library: OpenLibrary,
  main: string,
  own: readonly Mark[],
): GuessAction[] {
  const { build } = subject;
  const goes = new Set(own.map(({ part }) => part));
  goes.add(main);
  const touching = build.wires.filter(({ ends }) =>
    ends.some((end) => end.kind === 'terminal' && goes.has(end.part)),
  );
  // A wire that joins another part to this one's supply is soldered elsewhere then: that is the user's to say.
  const foreign = touching.some(({ ends }) =>
    ends.some((end) => end.kind === 'terminal' && !goes.has(end.part)),
  );
  if (foreign) return [];
  const pins = new Set(
    touching.flatMap(({ ends }) => ends.flatMap((end) => (end.kind === 'pin' ? [end.pin] : []))),
  );
  const entries = [...new Set(touching.map(({ entry }) => entry))].sort((a, b) => b - a);
  const text = subject.texts[build.file] ?? '';
  const removing = [
    ...entries.map((entry) => (now: string) => removeWire(now, entry, build.file)),
    ...[...goes].map((id) => (now: string) => removePart(now, id, build.file)),
  ];
  const without = applyEdits(text, composeEdits(text, build.file, ...removing));
  const bare = readManifest(build.file, without, library.hardware).value;
  if (bare === undefined) return [];
  const before = joinSubject({
    ...subject,
    build: bare,
    texts: { ...subject.texts, [build.file]: without },
    solve: solveNetwork,
  });
  const evidence = gatherEvidence(before, (view) => pins.has(view.pin.id) && view.wires.length === 0).find(
    (piece) => piece.pins.some(({ pin }) => pins.has(pin)),
  );
  const now = build.parts.find(({ id }) => id === main);
  if (evidence === undefined) return [];
  return rankKinds(evidence)
    .filter(
      ({ kind, parameters }) =>
        kind !== now?.kind || parameters.drive !== (now.parameters.drive ?? parameters.drive),
    )
    .slice(0, mostKinds)
    .flatMap((candidate): GuessAction[] => {
      const recipe = makeRecipe(before, evidence, candidate, {
        name: main,
        kinds: library.hardware.partKinds,
      });
      if (recipe === undefined) return [];
      const adding = recipe.steps.map((step) => (each: string) => step(each, build.file));
      return [
        {
          title: `Change ${main} to ${recipe.title}`,
          edits: composeEdits(text, build.file, ...removing, ...adding),
        },
      ];
    });
}
