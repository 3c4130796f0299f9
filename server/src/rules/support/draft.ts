/** Edits of the manifest out of steps that each see the text the step before left. */
import type { Edit } from '../../base/span';
import { composeEdits } from '../../hardware';
import type { Subject } from '../subject';

/** A change of the manifest's text. */
export type Step = (text: string, file: string) => readonly Edit[];

/** The steps as edits of the text the user sees. */
export function draftManifest(subject: Subject, steps: readonly Step[]): readonly Edit[] {
  const { file } = subject.build;
  const bound = steps.map((step) => (text: string) => step(text, file));
  return composeEdits(subject.texts[file] ?? '', file, ...bound);
}
