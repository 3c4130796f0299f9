/** A digital call on a pin that can only read voltages. */

import { defineRule } from './rule';
import { relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly call: string;
}

export default defineRule<Detail>({
  id: 'analog-only-pin',
  title: 'A digital call is made on a pin that can only read a voltage.',
  why:
    'The pin has no output stage, no pull-up and no digital input, and the core’s table ends before it: the call does ' +
    'nothing, a read gives junk, or another pin is hit.',
  source:
    'ATmega328P datasheet, pin descriptions of ADC7:6; pins_arduino.h of the board-support core (NUM_DIGITAL_PINS)',
  severity: 'error',
  maturity: 'settled',
  needs: 'sketch',
  *check(subject) {
    for (const view of subject.pins) {
      if (view.pin.type !== 'analog-input') continue;
      const use = view.uses.find((candidate) => candidate.action !== 'analog-read');
      if (!use) continue;
      const pin = view.pin.id;
      yield { identity: pin, span: use.span, related: relatedOf(view, use), detail: { pin, call: use.call } };
    }
  },
  message: ({ pin, call }) => `${call} can do nothing with ${pin}: it only reads voltages, by analogRead.`,
  examples: [
    {
      about: 'a lamp on A6 of a board whose A6 is an input of the converter alone',
      build: `
//- sketch.ino
void setup() { pinMode(A6, OUTPUT); }
//                     ^^ analog-only-pin: pinMode can do nothing with A6
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "beacon": { "kind": "led" }, "R1": { "kind": "resistor", "value": "470" } },
  "wires": [{ "path": ["A6", "R1", "beacon", "GND"] }]
}
`,
    },
    {
      about: 'a potentiometer on A6',
      build: `
//- sketch.ino
void setup() {}
void loop() { int level = analogRead(A6); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "tide": { "kind": "potentiometer", "value": "10k" } },
  "wires": [{ "from": "5V", "to": "tide.1" }, { "from": "A6", "to": "tide.wiper" }, { "from": "tide.2", "to": "GND" }]
}
`,
    },
  ],
});
