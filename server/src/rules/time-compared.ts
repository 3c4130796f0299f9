/** A clock is compared with a moment ahead of it, which fails when the clock starts again at zero. */

import type { DeadlineHabit } from '../base/habit';
import { defineRule } from './rule';
import { habitsOf } from './support/habits';
import { seconds } from './support/time-words';

interface Detail {
  readonly habit: DeadlineHabit;
}

const bits = 32;

export default defineRule<Detail>({
  id: 'time-compared',
  title: 'A clock is compared with a later moment instead of by a difference.',
  why: 'When the clock starts again at zero, the moment seems far off or long gone: a step is late by weeks, or comes at once.',
  source: 'wiring.c of the boards’ cores: millis and micros have 32 bits; common practice',
  severity: 'hint',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    for (const habit of habitsOf(subject, 'time-compared')) {
      yield {
        identity: habit.name,
        span: habit.span,
        ...(habit.clock === 'micros' && { severity: 'warning' as const }),
        related: [{ message: `${habit.name} is set ahead of the clock here`, span: habit.set }],
        detail: { habit },
      };
    }
  },
  message: ({ habit: { name, clock } }) =>
    `${clock} starts again at zero after ${seconds(2 ** bits / (clock === 'millis' ? 1e3 : 1e6))}, and this comparison with ${name} goes wrong ` +
    `then. Keep the moment of the last time, and compare ${clock}() minus that with the interval.`,
  examples: [
    blink('a deadline in milliseconds', 'uno-r3', 'millis() >= due', 'due = millis() + 500', '49.7 days'),
    blink('one in microseconds', 'pico', 'micros() > due', 'due = micros() + 500', '71.6 minutes'),
    blink('a difference', 'uno-r3', 'millis() - due >= 500', 'due = millis()'),
    blink('a difference with a sign', 'pico', '(long)(millis() - due) >= 0', 'due = millis() + 500'),
    blink('a moment after the start', 'nano-v3', 'millis() > 5000', 'due = 1'),
  ],
});

function blink(about: string, board: string, test: string, set: string, wrong?: string) {
  const mark = wrong === undefined ? '' : `\n//    ${'^'.repeat(test.length)} time-compared: ${wrong}`;
  return {
    about,
    build: `
//- sketch.ino board:${board}
unsigned long due = 0;
void setup() { Serial.begin(9600); }
void loop() {
  if (${test}) {${mark}
    ${set};
    Serial.println(1);
  }
}
`,
  };
}
