/** The sketch changes the timer that the core's clock counts with. */

import type { RegisterHabit } from '../base/habit';
import type { Span } from '../base/span';
import { defineRule } from './rule';
import { coreOf, habitsOf } from './support/habits';

interface Detail {
  readonly register: string;
  readonly call: string;
  /** Division of the clock, where the write sets another; 0: the timer stops. */
  readonly divides?: number;
}

/** What the core sets: fast PWM, clock divided by 64 (wiring.c of the core for AVR). */
const usual: Readonly<Record<string, { readonly mask: number; readonly value: number }>> = {
  TCCR0A: { mask: 0b11, value: 0b11 },
  TCCR0B: { mask: 0b1111, value: 0b0011 },
};

/** Division by the clock select bits (datasheet of the ATmega328P, table of CS02 to CS00). */
const divisions = [0, 1, 8, 64, 256, 1024];
const usualDivision = 64;

export default defineRule<Detail>({
  id: 'timer-zero-changed',
  title: 'The sketch changes the timer that millis and delay count with.',
  why: 'The clock runs fast or slow by the same factor: a delay of a second becomes 16 ms, or a minute.',
  source: 'wiring.c of the Arduino core for AVR; datasheet of the ATmega328P, registers TCCR0A and TCCR0B',
  severity: 'warning',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    if (coreOf(subject.build.board) !== 'avr') return;
    const timed = subject.facts.uses.find(({ call }) => /^(delay|millis|micros)$/.test(call));
    if (!timed) return;
    for (const [register, { mask, value }] of Object.entries(usual)) {
      const writes = habitsOf(subject, 'register').filter((habit) => habit.name === register);
      const end = outcome(writes, mask, value);
      if (!end || (end.value & mask) === value) continue;
      const divides = register === 'TCCR0B' && (end.value & 8) === 0 ? divisions[end.value & 7] : undefined;
      yield {
        identity: register,
        span: end.span,
        related: [{ message: `${timed.call} counts with it`, span: timed.callSpan }],
        detail: { register, call: timed.call, ...(divides !== undefined && { divides }) },
      };
    }
  },
  message: ({ register, call, divides }) => {
    const effect =
      divides === undefined
        ? `runs at another rate`
        : divides === 0
          ? 'stands still'
          : divides < usualDivision
            ? `runs ${usualDivision / divides} times too fast`
            : `runs ${divides / usualDivision} times too slow`;
    return `This write to ${register} changes timer 0, and ${call} ${effect}. Take a pin of another timer for the other rate.`;
  },
  examples: [
    timer(
      'a faster PWM on the pins of timer 0',
      'uno-r3',
      'TCCR0B = (TCCR0B & 0b11111000) | 0x01',
      '64 times too fast',
    ),
    timer('a slower one', 'mega-2560', 'TCCR0B = _BV(CS02) | _BV(CS00)', '16 times too slow'),
    timer('the division that the core sets', 'uno-r3', 'TCCR0B = (TCCR0B & 0b11111000) | 0x03'),
    timer('another timer', 'nano-v3', 'TCCR2B = (TCCR2B & 0b11111000) | 0x01'),
  ],
});

/** What the bits are after all writes; undefined where one is not known. */
function outcome(
  writes: readonly RegisterHabit[],
  mask: number,
  start: number,
): { readonly value: number; readonly span: Span } | undefined {
  let value = start;
  let span: Span | undefined;
  for (const { change, span: at } of writes) {
    if (!change) return undefined;
    const next = (value & change.keep) | change.set;
    if ((next & mask) !== (value & mask)) span = at;
    value = next;
  }
  return span && { value, span };
}

function timer(about: string, board: string, write: string, wrong?: string) {
  const mark =
    wrong === undefined ? '' : `\n//             ${'^'.repeat(write.length)} timer-zero-changed: ${wrong}`;
  return {
    about,
    build: `
//- sketch.ino board:${board}
void setup() { ${write}; }${mark}
void loop() { delay(1000); }
`,
  };
}
