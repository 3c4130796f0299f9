/** analogWrite on a pin without a timer switches where it should dim. */

import { defineRule } from './rule';
import type { PinView } from './subject';
import { usedWrongly, type WrongUse } from './support/capability';
import { relatedOf } from './support/views';

export default defineRule<WrongUse>({
  id: 'no-pwm',
  title: 'analogWrite is called on a pin that has no PWM.',
  why: 'Without a timer behind the pin the core only switches: off below 128, full on from 128. A dimmer is a switch.',
  source:
    'wiring_analog.c of the board-support core for AVR (falls back to digitalWrite); the boards’ pin tables',
  severity: 'error',
  maturity: 'settled',
  needs: 'sketch',
  *check(subject) {
    for (const { view, use } of usedWrongly(subject, ['pwm'], able)) {
      const can = subject.pins.filter((other) => other.pin.pwm !== undefined).map((other) => other.pin.id);
      yield {
        identity: view.pin.id,
        span: use.span,
        related: relatedOf(view, use),
        detail: { pin: view.pin.id, can },
      };
    }
  },
  message: ({ pin, can }) =>
    `${pin} has no PWM, so analogWrite can only switch it. ` +
    (can.length > 0 ? `Pins with PWM on this board: ${can.join(', ')}.` : 'No pin of this board has PWM.'),
  examples: [
    {
      about: 'dimming a lamp on D7',
      build: `
//- sketch.ino
const int beacon = 7;
void setup() { pinMode(beacon, OUTPUT); }
void loop() {
  analogWrite(beacon, 80);
//            ^^^^^^ no-pwm: D7 has no PWM, so analogWrite can only switch it
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`,
    },
    {
      about: 'dimming a lamp on D9, which has a timer',
      build: `
//- sketch.ino
const int beacon = 9;
void setup() { pinMode(beacon, OUTPUT); }
void loop() { analogWrite(beacon, 80); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [{ "path": ["D9", "R1", "beacon", "GND"] }]
}
`,
    },
  ],
});

/** A pin that drives nothing at all is told by the rule on that. */
function able({ pin }: PinView): boolean {
  return pin.pwm !== undefined || pin.inputOnly === true;
}
