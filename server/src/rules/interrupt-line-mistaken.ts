/** attachInterrupt gets a pin's number where it counts interrupt lines. */

import { defineRule } from './rule';
import { mistakenLines } from './support/mistaken';
import { pathRelated, wiresRelated } from './support/views';

interface Detail {
  readonly line: number;
  /** Pin that the line belongs to; absent where there is no such line. */
  readonly named?: string;
  readonly meant: string;
  /** The argument's place; absent where the meant pin has no interrupt. */
  readonly span?: { readonly file: string; readonly start: number; readonly end: number };
}

export default defineRule<Detail>({
  id: 'interrupt-line-mistaken',
  title: 'attachInterrupt is given the number of a pin where it counts interrupt lines.',
  why: 'Another pin’s interrupt is armed, or none: the handler never runs, and nothing says so.',
  source: 'WInterrupts.c and pins_arduino.h of the board-support core for AVR (digitalPinToInterrupt)',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const { use, named, meant, number } of mistakenLines(subject)) {
      yield {
        identity: meant.pin.id,
        span: use.span,
        related: [...wiresRelated(meant.wires, meant.pin.id), ...pathRelated(use)],
        detail: {
          line: number,
          meant: meant.pin.id,
          ...(named && { named: named.pin.id }),
          ...(meant.pin.interrupt !== undefined && { span: use.span }),
        },
      };
    }
  },
  message: ({ line, named, meant, span }) => {
    const armed =
      named === undefined
        ? `this board has no line ${line}`
        : `line ${line} belongs to ${named}, where nothing is wired`;
    const way =
      span === undefined
        ? `${meant} has no interrupt line at all.`
        : `For ${meant} write digitalPinToInterrupt(${line}).`;
    return `attachInterrupt counts interrupt lines, and ${armed}. ${way}`;
  },
  fixes({ meant, span }, subject) {
    const text = span && subject.texts[span.file]?.slice(span.start, span.end);
    if (!span || text === undefined) return [];
    const edits = [{ ...span, text: `digitalPinToInterrupt(${text})` }];
    return [{ title: `Ask for the line of ${meant} by digitalPinToInterrupt`, trust: 'ask', edits }];
  },
  examples: [
    example(
      'a pulse wheel on D2 of a board whose lines are 0 and 1',
      'uno-r3',
      '2',
      'this board has no line 2',
    ),
    example('the same on a board whose line 2 is another pin’s', 'mega-2560', '2', 'line 2 belongs to D21'),
    example('the line of D2, counted right', 'mega-2560', '0'),
    example('the line of D2, asked for by its pin', 'leonardo', 'digitalPinToInterrupt(2)'),
    example('a board whose lines are counted as its pins are', 'zero', '2'),
  ],
});

/** A contact on D2 whose interrupt is asked for in some way. */
function example(about: string, board: string, argument: string, fault?: string) {
  const sketch = (written: string, mark = '') => `
//- sketch.ino
volatile unsigned int turns = 0;
void count() { turns = turns + 1; delayMicroseconds(1); }
void setup() {
  pinMode(2, INPUT_PULLUP);
  attachInterrupt(${written}, count, FALLING);${mark}
}
void loop() {}
`;
  const mark = `\n//                ^ interrupt-line-mistaken [ask]: ${fault}`;
  return {
    about,
    build: `${sketch(argument, fault === undefined ? '' : mark)}//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "wheel": { "kind": "reed-switch" } },
  "wires": [{ "path": ["D2", "wheel", "GND"] }]
}
`,
    ...(fault !== undefined && { fixed: sketch(`digitalPinToInterrupt(${argument})`) }),
  };
}
