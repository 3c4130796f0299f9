/** The number printed beside a pin is not the number the core counts it by. */

import { defineRule } from './rule';
import type { Subject } from './subject';
import { printedNumbers } from './support/mistaken';
import { renumber } from './support/rewire';
import { relatedOf, viewOf, wiresRelated } from './support/views';

interface Detail {
  readonly number: number;
  /** Pin that the number means. */
  readonly named: string;
  /** Pin that was wired, its name in the sketch and its number. */
  readonly meant: string;
  readonly write: string;
  readonly itsNumber: number;
}

export default defineRule<Detail>({
  id: 'pin-number-printed',
  title: 'A pin is named by the number printed beside it, which is another pin to the core.',
  why:
    'On some boards the printed D numbers are names of their own: the sketch moves or reads another pin of the chip, ' +
    'perhaps the one of the serial port or of the flash memory.',
  source:
    'pins_arduino.h of the board’s core: D0 to D10 are constants there, and pins count by the chip’s own numbers',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const { use, named, meant, number } of printedNumbers(subject)) {
      if (!named || meant.pin.number === undefined) continue;
      yield {
        identity: named.pin.id,
        span: use.span,
        related: [...wiresRelated(meant.wires, meant.pin.id), ...relatedOf(named, use)],
        detail: {
          number,
          named: named.pin.id,
          meant: meant.pin.id,
          write: nameOf(subject, number, meant.pin.number),
          itsNumber: meant.pin.number,
        },
      };
    }
  },
  message: ({ number, named, meant, write, itsNumber }) =>
    `${number} is the pin ${named} to this core, and nothing is wired to it. What is printed D${number} is number ` +
    `${itsNumber}${meant === `D${number}` ? '' : ` (${meant})`}, and that one is wired: write ${write}.`,
  fixes({ named, write, number }, subject) {
    const view = viewOf(subject, named);
    const edits = view && renumber(subject, view, write);
    return edits ? [{ title: `Write ${write} instead of ${number}`, trust: 'ask', edits }] : [];
  },
  examples: [
    {
      about: 'a lamp on the pin printed D5, and the sketch says 5',
      build: `
//- sketch.ino
const int beacon = 5;
void setup() { pinMode(beacon, OUTPUT); }
//                     ^^^^^^ pin-number-printed [ask]: What is printed D5 is number 14, and that one is wired: write D5
void loop() { digitalWrite(beacon, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nodemcu-esp8266",
  "parts": { "beacon": { "kind": "led", "colour": "red" }, "R1": { "kind": "resistor", "value": "220" } },
  "wires": [{ "path": ["D5", "R1", "beacon", "GND"] }]
}
`,
      fixed: `
//- sketch.ino
const int beacon = D5;
void setup() { pinMode(beacon, OUTPUT); }
void loop() { digitalWrite(beacon, HIGH); }
`,
    },
    {
      about: 'a button on the pin printed D6, read as 6, which leads to the flash memory',
      build: `
//- sketch.ino
#define CALL 6
void setup() { pinMode(CALL, INPUT_PULLUP); }
//                     ^^^^ pin-number-printed [ask]: 6 is the pin CLK to this core
void loop() { if (digitalRead(CALL) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nodemcu-esp8266",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["D6", "call", "GND"] }]
}
`,
      fixed: `
//- sketch.ino
#define CALL D6
void setup() { pinMode(CALL, INPUT_PULLUP); }
void loop() { if (digitalRead(CALL) == LOW) delay(1); }
`,
    },
    {
      about: 'the pin printed D1, named by its number 5',
      build: `
//- sketch.ino
void setup() { pinMode(5, OUTPUT); digitalWrite(5, HIGH); }
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nodemcu-esp8266",
  "parts": { "beacon": { "kind": "led", "colour": "red" }, "R1": { "kind": "resistor", "value": "220" } },
  "wires": [{ "path": ["D1", "R1", "beacon", "GND"] }]
}
`,
    },
    {
      about: 'a board whose printed numbers are the core’s',
      build: `
//- sketch.ino
void setup() { pinMode(5, OUTPUT); digitalWrite(5, HIGH); }
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "beacon": { "kind": "led", "colour": "red" }, "R1": { "kind": "resistor", "value": "470" } },
  "wires": [{ "path": ["D5", "R1", "beacon", "GND"] }]
}
`,
    },
  ],
});

/** The printed name where the core has it, else the right number. */
function nameOf(subject: Subject, printed: number, number: number): string {
  return subject.build.board.platform.names[`D${printed}`] === number ? `D${printed}` : `${number}`;
}
