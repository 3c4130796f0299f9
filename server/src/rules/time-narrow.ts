/** A clock's number is kept in fewer bits than it has. */

import type { NarrowTimeHabit } from '../base/habit';
import { defineRule } from './rule';
import { habitsOf } from './support/habits';
import { seconds } from './support/time-words';

interface Detail {
  readonly habit: NarrowTimeHabit;
}

export default defineRule<Detail>({
  id: 'time-narrow',
  title: 'A time is kept in a variable that is too small for it.',
  why: 'The variable wraps while the clock goes on: the difference is wrong from then on, and the sketch stops or runs wild.',
  source: 'wiring.c of the boards’ cores: millis and micros have 32 bits; ISO C++, conversions of integers',
  severity: 'warning',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    for (const habit of habitsOf(subject, 'time-narrow')) {
      yield {
        identity: habit.name,
        span: habit.span,
        related: [
          { message: `${habit.clock} is put into it here`, span: habit.set },
          { message: 'it is taken for a time here', span: habit.used },
        ],
        detail: { habit },
      };
    }
  },
  message: ({ habit: { name, type, bits, clock } }) =>
    `${name} is ${article(type)} ${type} and holds ${clock} for ${seconds(2 ** bits / (clock === 'millis' ? 1e3 : 1e6))}; the time that has passed is ` +
    'wrong after that. Make it an unsigned long.',
  fixes({ habit: { span, type } }, subject) {
    const text = subject.texts[span.file] ?? '';
    const before = /(\w[\w ]*?)[ \t]+$/.exec(text.slice(Math.max(0, span.start - 60), span.start));
    const after = /^\s*[;=]/.test(text.slice(span.end));
    // The type stands alone in front of an only name: nothing else is widened.
    if (!before || !after || !before[1]?.endsWith(type) || /[,(]/.test(lineOf(text, span.start))) return [];
    const start = span.start - before[0].length + before[1].length - type.length;
    return [
      {
        title: `Make ${text.slice(span.start, span.end)} an unsigned long`,
        trust: 'ask',
        edits: [{ file: span.file, start, end: start + type.length, text: 'unsigned long' }],
      },
    ];
  },
  examples: [
    blink('a time in an int of 16 bits', 'uno-r3', 'int', 'for 32.8 s'),
    blink('a time in a word', 'mega-2560', 'word', 'for 65.5 s'),
    blink('a time in a short on a chip of 32 bits', 'pico', 'short', 'for 32.8 s'),
    blink('a time in all its bits', 'uno-r3', 'unsigned long'),
    blink('an int of 32 bits', 'pico', 'int'),
  ],
});

function article(type: string): string {
  return /^[aeio]/.test(type) ? 'an' : 'a';
}

function lineOf(text: string, offset: number): string {
  return text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset);
}

function blink(about: string, board: string, type: string, wrong?: string) {
  const text = (own: string, mark = '') => `
//- sketch.ino board:${board}
${own} lastTurn = 0;${mark}
void setup() { Serial.begin(9600); }
void loop() {
  if (millis() - lastTurn >= 500) {
    lastTurn = millis();
    Serial.println(1);
  }
}
`;
  if (wrong === undefined) return { about, build: text(type) };
  const mark = `\n//${' '.repeat(type.length - 1)}^^^^^^^^ time-narrow [ask]: ${wrong}`;
  return { about, build: text(type, mark), fixed: text('unsigned long') };
}
