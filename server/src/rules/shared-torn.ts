/** A number of several bytes is read while a handler may change it between the bytes. */

import { defineRule } from './rule';
import { habitsOf } from './support/habits';

interface Detail {
  readonly name: string;
  readonly handler: string;
  readonly bytes: number;
}

export default defineRule<Detail>({
  id: 'shared-torn',
  title: 'A number of several bytes is read while an interrupt handler may change it.',
  why: 'The chip reads one byte after the other: now and then one is old and one new, and the value is far off.',
  source: 'documentation of avr-libc, util/atomic.h',
  severity: 'warning',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    // An `int` of 16 bits is the mark of the cores for 8-bit chips.
    if (subject.build.board.platform.intBits !== 16) return;
    for (const { name, bits, handler, reads, written } of habitsOf(subject, 'shared-variable')) {
      const [read, ...others] = reads.filter(({ guarded }) => !guarded);
      if (bits <= 8 || !read) continue;
      yield {
        identity: name,
        span: read.span,
        related: [
          { message: 'the handler changes it here', span: written },
          ...others.slice(0, 4).map(({ span }) => ({ message: 'it is read here too', span })),
        ],
        detail: { name, handler, bytes: bits / 8 },
      };
    }
  },
  message: ({ name, handler, bytes }) =>
    `${name} has ${bytes} bytes, which this chip reads one by one, and the handler ${handler} may change it in between. Copy it ` +
    'between noInterrupts() and interrupts(), and work with the copy.',
  examples: [
    tick('two bytes read as they are', 'uno-r3', 'unsigned int', 'if (ticks > 999) delay(1);', true),
    tick('four bytes', 'mega-2560', 'unsigned long', 'if (ticks > 999) delay(1);', true),
    tick('one byte', 'uno-r3', 'byte', 'if (ticks > 99) delay(1);', false),
    tick(
      'a copy made while interrupts are off',
      'nano-v3',
      'int',
      'noInterrupts(); int copy = ticks; interrupts(); if (copy > 9) delay(1);',
      false,
    ),
  ],
});

function tick(about: string, board: string, type: string, loop: string, wrong: boolean) {
  const mark = '\n//                ^^^^^ shared-torn: bytes, which this chip reads one by one';
  return {
    about,
    build: `
//- sketch.ino board:${board}
volatile ${type} ticks = 0;
ISR(TIMER1_COMPA_vect) { ticks++; }
void setup() {}
void loop() { ${loop} }${wrong ? mark : ''}
`,
  };
}
