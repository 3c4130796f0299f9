/**
 * The questions of an editor in one place. Over a half-typed manifest the names come from the last good build; what would
 * point into the manifest is left out then, for its places have moved.
 */
import type { Edit, Span } from '../../base/span';
import type { Subject } from '../../rules/subject';
import { type GuessAction, guessActions } from '../draft/confirm';
import type { OpenLibrary } from '../library';
import {
  coloursOf,
  hintsOf,
  lensesOf,
  type Outline,
  outlineOf,
  type PinRow,
  pinRows,
  type Remark,
  referencesOf,
  renamable,
  renameAt,
} from './answers';
import { type Completion, completeManifest } from './complete';
import { completeSketch } from './complete-sketch';

export interface Asker {
  complete(file: string, offset: number): readonly Completion[];
  /** Of the manifest; so are folds, colours, lenses and guesses. */
  outline(): readonly Outline[];
  colours(): readonly { readonly span: Span; readonly colour: string }[];
  lenses(): readonly Remark[];
  guesses(start: number, end: number): readonly GuessAction[];
  references(file: string, offset: number): readonly Span[];
  renamable(file: string, offset: number): Span | undefined;
  /** A sentence where it cannot be. */
  rename(file: string, offset: number, name: string): readonly Edit[] | string;
  hints(file: string, start: number, end: number): readonly Remark[];
  pins(): readonly PinRow[];
}

/** @param subject Absent where there is no build at all; `stale` where its manifest is not the present text. */
export function makeAsker(
  library: OpenLibrary,
  manifest: { readonly file: string; readonly text: string },
  subject: Subject | undefined,
  stale: boolean,
): Asker {
  const whole = stale ? undefined : subject;
  const inSketch = (span: Span) => !stale || span.file !== manifest.file;
  return {
    complete: (file, offset) =>
      file === manifest.file
        ? completeManifest(library, manifest.text, offset, subject?.build, subject)
        : subject
          ? completeSketch(subject, file, offset)
          : [],
    outline: () => (whole ? outlineOf(whole.build) : []),
    colours: () => (whole ? coloursOf(whole.build, manifest.text) : []),
    lenses: () => (whole ? lensesOf(whole) : []),
    guesses: (start, end) => (whole ? guessActions(whole, library, start, end) : []),
    references: (file, offset) =>
      subject && (file !== manifest.file || !stale)
        ? referencesOf(subject, file, offset).filter(inSketch)
        : [],
    renamable: (file, offset) => (whole ? renamable(whole, file, offset) : undefined),
    rename: (file, offset, name) =>
      whole ? renameAt(whole, file, offset, name) : 'The manifest is half typed; mend it first.',
    hints: (file, start, end) =>
      subject && file !== manifest.file ? hintsOf(subject, file, start, end) : [],
    pins: () =>
      subject
        ? pinRows(subject).map(({ place, ...row }) => ({
            ...row,
            ...(place && inSketch(place) && { place }),
          }))
        : [],
  };
}
