/** Habits of the sketch by kind, and what runs in an interrupt. */
import type { Board } from '../../base/build';
import type { Habit, HandlerHabit } from '../../base/habit';
import type { PinUse } from '../../base/pin-use';
import type { LibraryFacts } from '../../base/platform';
import type { Subject } from '../subject';

/** The habits of one kind, in the order of the text. */
export function habitsOf<Kind extends Habit['kind']>(
  subject: Subject,
  kind: Kind,
): readonly Extract<Habit, { kind: Kind }>[] {
  const isKind = (habit: Habit): habit is Extract<Habit, { kind: Kind }> => habit.kind === kind;
  return (subject.facts.habits ?? []).filter(isKind);
}

/** The handler that a use runs in; undefined for one that a library calls at a time of its own. */
export function handlerOf(subject: Subject, use: PinUse): HandlerHabit | undefined {
  if (use.phase !== 'interrupt') return undefined;
  const at = use.path[0]?.span ?? use.callSpan;
  return habitsOf(subject, 'handler').find(
    ({ body }) => body.file === at.file && body.start <= at.start && at.end <= body.end,
  );
}

/** How a board's core is called in its macros. */
export function coreOf(board: Board): 'avr' | 'esp8266' | 'esp32' | 'rp2040' | 'teensy' | 'other' {
  const { macros } = board.platform;
  if (macros.TEENSYDUINO !== undefined) return 'teensy';
  const cores = ['avr', 'esp8266', 'esp32', 'rp2040'] as const;
  return cores.find((core) => macros[`ARDUINO_ARCH_${core.toUpperCase()}`] !== undefined) ?? 'other';
}

/** What the library data says of a call of an object: `Wire.beginTransmission`. */
export function callFacts(libraries: readonly LibraryFacts[], name: string, object?: string) {
  for (const { functions, classes } of libraries) {
    if (object === undefined) {
      const fact = functions.find((one) => one.name === name);
      if (fact) return fact;
      continue;
    }
    const fact = classes
      .filter(
        (one) =>
          one.objects?.includes(object) ||
          classes.some((kin) => kin.objects?.includes(object) && kin.bases?.includes(one.name)),
      )
      .flatMap(({ methods }) => methods)
      .find((one) => one.name === name);
    if (fact) return fact;
  }
  return undefined;
}
