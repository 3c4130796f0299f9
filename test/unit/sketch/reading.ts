/** Helpers of the sketch tests: one line of words for each use, so that a test reads as a table. */
import type { Amount, PinUse, SketchFacts } from '../../../server/src/base/pin-use';
import type { LibraryFacts } from '../../../server/src/base/platform';
import { createSketchParser, readSketch, type SketchParser } from '../../../server/src/sketch';
import { libraries, platform } from './platform';

let engine: Promise<SketchParser> | undefined;

/** The engine a user of this machine gets: the native one where it loads. */
export function parser(): Promise<SketchParser> {
  engine ??= createSketchParser();
  return engine;
}

/** Facts of a sketch of one file, or of several by name. */
export async function read(
  sketch: string | Readonly<Record<string, string>>,
  known: readonly LibraryFacts[] = libraries,
): Promise<SketchFacts> {
  const files = typeof sketch === 'string' ? { 'sketch.ino': sketch } : sketch;
  const own = await parser();
  const parsed = Object.entries(files).map(([file, text]) => own.parse(file, text));
  const facts = readSketch(parsed, platform, known);
  for (const one of parsed) one.dispose();
  return facts;
}

export function amount(value: Amount): string {
  return value.kind === 'known' ? value.values.join(',') : `? ${value.reason}`;
}

/** `setup pinMode 7 = 1 output`, with ` perhaps` where not every run gets there. */
export function words(use: PinUse): string {
  const path = use.path.map((step) => `${step.function} `).join('');
  const value = use.value === undefined ? '' : ` = ${amount(use.value)}`;
  const modes = use.modes === undefined ? '' : ` ${use.modes.join('/')}`;
  return `${use.phase} ${path}${use.call} ${amount(use.pins)}${value}${modes}${use.certain ? '' : ' perhaps'}`;
}

export async function table(
  sketch: string | Readonly<Record<string, string>>,
  known: readonly LibraryFacts[] = libraries,
): Promise<string[]> {
  return (await read(sketch, known)).uses.map(words);
}
