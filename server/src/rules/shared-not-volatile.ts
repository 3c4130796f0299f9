/** A variable that a handler changes is declared as if nobody but the program did. */

import type { SharedHabit } from '../base/habit';
import { defineRule } from './rule';
import { habitsOf } from './support/habits';

interface Detail {
  readonly habit: SharedHabit;
}

export default defineRule<Detail>({
  id: 'shared-not-volatile',
  title: 'A variable that an interrupt handler changes is not volatile.',
  why: 'The compiler may read it once and never again: the loop waits for a change that it cannot see.',
  source: 'ISO C++, volatile; documentation of avr-libc, questions on volatile variables',
  severity: 'warning',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    for (const habit of habitsOf(subject, 'shared-variable')) {
      if (habit.isVolatile) continue;
      const seen = habit.waitedFor ?? habit.reads[0]?.span;
      yield {
        identity: habit.name,
        span: habit.span,
        ...(habit.waitedFor && { severity: 'error' as const }),
        related: [
          { message: 'the handler changes it here', span: habit.written },
          ...(seen
            ? [{ message: habit.waitedFor ? 'it is waited for here' : 'it is read here', span: seen }]
            : []),
        ],
        detail: { habit },
      };
    }
  },
  message: ({ habit: { name, handler, waitedFor } }) =>
    `${name} is changed by the handler ${handler} and is not volatile, so ` +
    (waitedFor
      ? 'the loop that waits for it may never see the change. '
      : 'the compiler may keep an old copy of it. ') +
    'Declare it volatile.',
  fixes: ({ habit: { span, volatileAt: at } }) =>
    at === undefined
      ? []
      : [
          {
            title: 'Declare it volatile',
            trust: 'ask',
            edits: [{ file: span.file, start: at, end: at, text: 'volatile ' }],
          },
        ],
  examples: [
    tick('a counter that loop reads', 'uno-r3', 'byte', 'if (ticks > 9) ticks = 0;', true),
    tick('a flag that a loop waits for', 'mega-2560', 'bool', 'while (!ticks) {}', true),
    tick('the same counter, volatile', 'uno-r3', 'volatile byte', 'if (ticks > 9) ticks = 0;', false),
    tick('a counter that only the handler reads', 'nano-v3', 'byte', '', false),
  ],
});

function tick(about: string, board: string, type: string, loop: string, wrong: boolean) {
  const text = (own: string, mark = '') => `
//- sketch.ino board:${board}
${own} ticks = 0;${mark}
ISR(TIMER1_COMPA_vect) { ticks++; }
void setup() {}
void loop() { ${loop} }
`;
  if (!wrong) return { about, build: text(type) };
  const mark = `\n//${' '.repeat(type.length - 1)}^^^^^ shared-not-volatile [ask]: is not volatile`;
  return { about, build: text(type, mark), fixed: text(`volatile ${type}`) };
}
