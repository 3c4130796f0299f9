/** The habits of a program: notes of each body, kept from run to run, and their join. */
import type { Habit } from '../../base/habit';
import type { Platform } from '../../base/platform';
import type { Program } from '../values/model';
import { Bodies } from './bodies';
import { clocksOf } from './clocks';
import { edgesOf, transmissionsOf } from './counts';
import { handlersOf } from './handlers';
import { jumpsOf } from './jumps';
import { waitsOf } from './loops';
import { registersOf } from './registers';
import { sharedOf } from './shared';

/** Never throws on user text; the work grows with what is noted, not with the text. */
export function habitsOf(
  files: readonly { readonly file: string; readonly text: string }[],
  program: Program,
  platform: Platform,
): readonly Habit[] {
  const texts = new Map(files.map(({ file, text }) => [file, text]));
  const bodies = new Bodies(program, platform, texts);
  const handlers = handlersOf(bodies);
  return [
    ...handlers.map(({ habit }) => habit),
    ...sharedOf(bodies, handlers),
    ...waitsOf(bodies),
    ...jumpsOf(bodies),
    ...clocksOf(bodies),
    ...registersOf(bodies),
    ...edgesOf(bodies),
    ...transmissionsOf(bodies),
  ];
}
