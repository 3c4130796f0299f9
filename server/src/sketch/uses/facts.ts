/** The whole way from parsed files to what the sketch does. */
import type { SketchFacts } from '../../base/pin-use';
import type { LibraryFacts, Platform } from '../../base/platform';
import type { Problem } from '../../base/read';
import { habitsOf } from '../habits/habits';
import { type FileForm, maximumDepth, maximumLength } from '../syntax/plain-tree';
import { collectProgram } from '../values/collect';
import { Machine } from '../values/machine';
import { runProgram } from '../values/run';
import { foreignHeaders } from './foreign-headers';
import { momentsOf } from './moments';
import { pinNamesOf } from './pin-names';
import { Recorder } from './recorder';
import { setupPlaceOf } from './setup-place';
import { Texts } from './texts';

/** A file of the sketch, as the parser gives it. */
export interface SketchFile {
  readonly file: string;
  readonly text: string;
  readonly form: FileForm;
}

/**
 * What the sketch does to pins. Files share one scope: the main file first, then the others in the order that the
 * core joins them. Never throws on user text; work is bounded, and where a bound was met `problems` says so.
 */
export function readSketch(
  files: readonly SketchFile[],
  platform: Platform,
  libraries: readonly LibraryFacts[],
): SketchFacts {
  const recorder = new Recorder(platform, new Texts(files));
  const program = collectProgram(files, platform);
  const characters = files.reduce((sum, { text }) => sum + text.length, 0);
  const machine = new Machine(program, platform, libraries, recorder, characters);
  runProgram(machine);
  const setup = program.functions.get('setup')?.find(({ item }) => item.body !== undefined);
  const foreign = foreignHeaders(program.headers, libraries);
  const place = setupPlaceOf(files, setup);
  const habits = habitsOf(files, program, platform);
  const moments = machine.stopped ? undefined : momentsOf(machine.pinStates);
  return {
    uses: recorder.uses(),
    pinNames: pinNamesOf(files, recorder.originUses()),
    ...(foreign.length === 0 ? {} : { foreignHeaders: foreign }),
    ...(place === undefined ? {} : { setup: place }),
    ...(habits.length === 0 ? {} : { habits }),
    ...(moments === undefined ? {} : { moments: moments.moments }),
    ...(moments === undefined || moments.loosePins.length === 0 ? {} : { loosePins: moments.loosePins }),
    problems: [...limitsOf(files), ...machine.problems],
    ...(machine.damaged || isDamaged(files, machine) ? { damaged: true as const } : {}),
  };
}

/** Whether a name that was lost with its text is one that could reach a pin. */
function isDamaged(files: readonly SketchFile[], machine: Machine): boolean {
  const { functionFacts, classFacts, program } = machine;
  const reaches = (name: string) =>
    functionFacts.has(name) ||
    [...classFacts.values()].some((methods) => methods.has(name)) ||
    program.functions.get(name)?.some(({ item }) => item.body !== undefined) === true ||
    [...program.classes.values()].some(({ methods }) => methods.has(name)) ||
    program.macros.has(name);
  return files.some(({ form }) => {
    if (form.lost?.some(reaches) === true) return true;
    return form.units.some(({ unit }) => unit.lost.some(reaches));
  });
}

/** False for a file of another kind under a sketch's name; a stray byte in an old encoding is still text. */
function isText(text: string): boolean {
  const head = text.slice(0, 8192);
  const strange = head.match(/[\0\uFFFD]/g)?.length ?? 0;
  return !head.includes('\0') && strange <= head.length / 10;
}

function limitsOf(files: readonly SketchFile[]): Problem[] {
  const problems: Problem[] = [];
  for (const { file, text, form } of files) {
    if (!isText(text)) {
      problems.push({
        code: 'not-text',
        message: 'This file is not text: it holds bytes that no sketch has.',
        span: { file, start: 0, end: 0 },
        hint: 'Give it another ending, or restore the sketch.',
      });
    }
    if (form.tooLong === true) {
      problems.push({
        code: 'file-too-long',
        message: `The file is longer than ${maximumLength} characters and is not read.`,
        span: { file, start: 0, end: 0 },
        hint: 'Split the file; big tables go into a file of their own.',
      });
    }
    for (const { start, unit } of form.units) {
      if (!unit.cut) continue;
      problems.push({
        code: 'nested-too-deep',
        message: `Something here is nested more than ${maximumDepth} levels deep and is read only down to there.`,
        span: { file, start, end: start },
        hint: 'Take the inner part out into a function or a variable.',
      });
    }
  }
  return problems;
}
