/** analogRead on a pin without a converter channel reads another channel. */

import { defineRule } from './rule';
import { usedWrongly, type WrongUse } from './support/capability';
import { relatedOf } from './support/views';

export default defineRule<WrongUse>({
  id: 'no-adc',
  title: 'analogRead is called on a pin that has no analog input.',
  why: 'The core takes the number for a channel number or drops it, so the reading comes from another pin.',
  source: 'wiring_analog.c of the board-support core for AVR (analogRead); the boards’ pin tables',
  severity: 'error',
  maturity: 'settled',
  needs: 'sketch',
  *check(subject) {
    for (const { view, use } of usedWrongly(subject, ['analog-read'], ({ pin }) => pin.adc !== undefined)) {
      // A small number is a channel to the core: analogRead(0) is A0.
      const can = subject.pins.filter((other) => other.pin.adc !== undefined).map((other) => other.pin.id);
      yield {
        identity: view.pin.id,
        span: use.span,
        related: relatedOf(view, use),
        detail: { pin: view.pin.id, can },
      };
    }
  },
  message: ({ pin, can }) =>
    `${pin} has no analog input, so analogRead gives the reading of another pin. ` +
    (can.length > 0 ? `Analog inputs of this board: ${can.join(', ')}.` : 'No pin of this board has one.'),
  examples: [
    {
      about: 'reading the tide from D12',
      build: `
//- sketch.ino
void setup() {}
void loop() {
  int level = analogRead(12);
//                       ^^ no-adc: D12 has no analog input
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "tide": { "kind": "potentiometer", "value": "10k" } },
  "wires": [
    { "from": "5V", "to": "tide.1" },
    { "from": "D12", "to": "tide.wiper" },
    { "from": "GND", "to": "tide.2" }
  ]
}
`,
    },
    {
      about: 'reading it from A0',
      build: `
//- sketch.ino
void setup() {}
void loop() { int level = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "tide": { "kind": "potentiometer", "value": "10k" } },
  "wires": [
    { "from": "5V", "to": "tide.1" },
    { "from": "A0", "to": "tide.wiper" },
    { "from": "GND", "to": "tide.2" }
  ]
}
`,
    },
  ],
});
