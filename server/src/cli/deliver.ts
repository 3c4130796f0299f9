/** Results go to standard output or, whole or not at all, into a file. Notes and problems go to standard error. */
import { resolve } from 'node:path';
import { type FileProblem, writeWhole } from '../files';
import { harmless } from './print/excerpt';
import { PLAIN, type TextStyle } from './print/paint';
import { type Given, optionOf, Refusal, type Surroundings } from './spec';

/** Prints the result, or writes it where `--output` says. @throws Refusal where the file cannot be written. */
export function deliver(text: string, given: Given, here: Surroundings): void {
  const output = optionOf(given, 'output');
  if (output === undefined) {
    here.out(text);
  } else {
    writeResult(output, text, here);
  }
}

/** Writes a file beside the current folder's. @throws Refusal where it cannot be written. */
export function writeResult(path: string, text: string, here: Surroundings): void {
  const written = writeWhole(resolve(here.base, path), text);
  if (!written.ok) {
    throw new Refusal(`${path}: ${written.why}`);
  }
}

/** The style of what is delivered: a file gets no colours. */
export function styleOf(given: Given, here: Surroundings): TextStyle {
  return optionOf(given, 'output') === undefined ? here.style : PLAIN;
}

/** Says what was left out or could not be read, a line each. */
export function tell(
  notes: readonly string[],
  problems: readonly FileProblem[],
  here: Pick<Surroundings, 'err'>,
): void {
  for (const note of [...notes, ...problems.map((problem) => `${problem.path}: ${problem.why}`)]) {
    here.err(`wiretrue: ${harmless(note)}\n`);
  }
}
