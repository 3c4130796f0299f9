/** More current than the pin's working figure, less than what destroys it. */

import { defineRule } from './rule';
import { raiseResistor } from './support/lamp-fixes';
import {
  isSupposed,
  type OverCurrentDetail,
  overSeverity,
  overWords,
  pinsOver,
} from './support/over-current';
import { relatedOf } from './support/views';

export default defineRule<OverCurrentDetail>({
  id: 'pin-over-recommended',
  title: 'A pin carries more current than its working figure.',
  why: 'The levels of the pin are no longer promised, the chip warms up, and other pins are dragged along.',
  source:
    'DC characteristics of the chip’s datasheet (test current of the output levels), or the manifest’s policy',
  severity: 'warning',
  maturity: 'settled',
  needs: 'circuit',
  *check(subject) {
    for (const { view, use, amps, state, limits } of pinsOver(subject, 'working')) {
      yield {
        identity: view.pin.id,
        span: use.span,
        related: relatedOf(view, use),
        severity: overSeverity(subject, state, 'warning'),
        detail: {
          pin: view.pin.id,
          amps,
          limit: limits.working.amps,
          limitText: limits.working.text,
          working: limits.working.amps,
          state: state.words,
          together: isSupposed(subject, state),
        },
      };
    }
  },
  message(detail) {
    const { pin, limitText, state, together } = detail;
    const words = overWords(detail);
    const ever = together ? ', if these are ever so at once' : '';
    return `${pin} carries up to ${words.amps} (${state}${ever}), and ${words.limit} is its limit (${limitText}).`;
  },
  fixes: ({ pin, limit }, subject) => raiseResistor(subject, pin, limit),
  examples: [
    {
      about: 'a resistor that is too small for the pin',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() {
  digitalWrite(7, HIGH);
//             ^ pin-over-recommended [ask]: D7 carries up to
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "stock": { "resistors": ["100", "220", "330", "470", "1k"] },
  "parts": {
    "beacon": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "100" } // what was at hand
  },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "stock": { "resistors": ["100", "220", "330", "470", "1k"] },
  "parts": {
    "beacon": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "220" } // what was at hand
  },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`,
    },
    {
      about: 'a resistor that keeps the pin under its working figure',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "330" }
  },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`,
    },
    {
      about: 'a pin that plain OUTPUT makes a weak one',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() {
  digitalWrite(7, HIGH);
//             ^ pin-over-recommended [ask]: 4.0 mA, the board's working figure
}
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "beacon": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "180" }
  },
  "wires": [{ "path": ["GP7", "R1", "beacon", "GND"] }]
}
`,
    },
    {
      about: 'the same pin at a strength that carries it',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT_12MA); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "beacon": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "180" }
  },
  "wires": [{ "path": ["GP7", "R1", "beacon", "GND"] }]
}
`,
    },
  ],
});
