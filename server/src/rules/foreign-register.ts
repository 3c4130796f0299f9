/** The sketch writes registers that another family of chips has. */

import { defineRule } from './rule';
import { coreOf, habitsOf } from './support/habits';
import { listWords } from './support/views';

interface Detail {
  readonly registers: readonly string[];
  readonly chip: string;
}

export default defineRule<Detail>({
  id: 'foreign-register',
  title: 'The sketch writes a register that this chip does not have.',
  why: 'The sketch does not compile for this board, or writes to a variable that nothing listens to.',
  source: 'datasheets of the ATmega chips: names of the registers; headers of the boards’ cores',
  severity: 'error',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    const { board } = subject.build;
    const core = coreOf(board);
    // The core of the Teensy imitates many of them; other headers may too.
    if (core === 'avr' || core === 'teensy' || subject.facts.foreignHeaders?.length) return;
    const [first, ...others] = habitsOf(subject, 'register');
    if (!first) return;
    const registers = [...new Set([first, ...others].map(({ name }) => name))];
    yield {
      identity: 'registers',
      span: first.span,
      related: others.slice(0, 4).map(({ name, span }) => ({ message: `${name} here`, span })),
      detail: { registers, chip: board.chip },
    };
  },
  message: ({ registers, chip }) =>
    `${listWords(registers.slice(0, 4))} ${registers.length === 1 ? 'is a register' : 'are registers'} of ATmega chips; the ${chip} of ` +
    'this board has none of that name. Use the core’s own calls, or put it under #ifdef __AVR__.',
  examples: [
    write('a timer of the ATmega', 'pico', 'TCCR1B = 1;', 'TCCR1B = 1'),
    write('a converter’s register', 'uno-r4-minima', 'ADMUX |= 0x40;', 'ADMUX |= 0x40'),
    write('the same under a condition', 'pico', '\n#ifdef __AVR__\n  TCCR1B = 1;\n#endif\n'),
    write('on the chip that has it', 'uno-r3', 'TCCR1B = 1;'),
  ],
});

function write(about: string, board: string, line: string, wrong?: string) {
  const mark =
    wrong === undefined
      ? ''
      : `\n//             ${'^'.repeat(wrong.length)} foreign-register: of ATmega chips`;
  return {
    about,
    build: `
//- sketch.ino board:${board}
void setup() { ${line} }${mark}
void loop() {}
`,
  };
}
