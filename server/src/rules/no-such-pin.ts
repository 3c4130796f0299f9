/** A number that the board does not have: the core's tables end before it, so another pin or nothing moves. */

import { numbersOf } from '../base/build';
import { defineRule } from './rule';
import { howRelated, isMeant, pathRelated } from './support/views';

interface Detail {
  readonly number: number;
  readonly call: string;
  readonly board: string;
  readonly highest: number;
}

export default defineRule<Detail>({
  id: 'no-such-pin',
  title: 'The sketch uses a pin number that the board does not have.',
  why: 'The core looks the number up in a table that ends before it: nothing happens, or a neighbouring pin moves.',
  source: 'the pin tables of the board-support cores (variants/*/pins_arduino.h)',
  severity: 'error',
  maturity: 'settled',
  needs: 'sketch',
  *check(subject) {
    const numbers = new Set(subject.pins.flatMap((view) => numbersOf(view.pin)));
    const highest = Math.max(...numbers);
    const told = new Set<string>();
    for (const use of subject.facts.uses) {
      if (use.pins.kind !== 'known' || !isMeant(use)) continue;
      for (const number of use.pins.values) {
        if (numbers.has(number)) continue;
        const place = `${number}@${use.span.file}:${use.span.start}`;
        if (told.has(place)) continue;
        told.add(place);
        yield {
          identity: String(number),
          span: use.span,
          related: [...howRelated(use), ...pathRelated(use)],
          detail: { number, call: use.call, board: subject.build.board.id, highest },
        };
      }
    }
  },
  message: ({ number, call, board, highest }) =>
    `${call} is given pin ${number}, and ${board} has no such pin: its numbers go up to ${highest}.`,
  examples: [
    {
      about: 'a number past the end of the board',
      build: `
//- sketch.ino board:nano-v3
void setup() {
  pinMode(30, OUTPUT);
//        ^^ no-such-pin: pinMode is given pin 30, and nano-v3 has no such pin
}
void loop() {}
`,
    },
    {
      about: 'a pin that exists',
      build: `
//- sketch.ino board:nano-v3
void setup() {
  pinMode(LED_BUILTIN, OUTPUT);
  digitalWrite(LED_BUILTIN, HIGH);
}
void loop() {}
`,
    },
  ],
});
