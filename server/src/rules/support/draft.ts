/**
 * Several edits of the manifest as one: each step sees the text that the step before left, so that two insertions into
 * one section cannot collide. What comes out are edits of the text the user sees.
 */
import type { Edit } from '../../base/span';
import { applyEdits } from '../../base/span';
import type { Subject } from '../subject';

/** A change of the manifest's text. */
export type Step = (text: string, file: string) => readonly Edit[];

/** Applies the steps and gives the difference, without what stays the same at both ends. */
export function draftManifest(subject: Subject, steps: readonly Step[]): readonly Edit[] {
  const { file } = subject.build;
  const before = subject.texts[file] ?? '';
  let after = before;
  for (const step of steps) after = applyEdits(after, step(after, file));
  return difference(file, before, after);
}

/** One edit from the first character that differs to the last; none where the texts are equal. */
function difference(file: string, before: string, after: string): readonly Edit[] {
  if (before === after) return [];
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && before[start] === after[start]) start += 1;
  let tail = 0;
  while (tail < shorter - start && before.at(-1 - tail) === after.at(-1 - tail)) tail += 1;
  return [{ file, start, end: before.length - tail, text: after.slice(start, after.length - tail) }];
}
