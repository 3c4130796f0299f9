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
    const { policy, board } = subject.build;
    for (const { view, use, amps, state } of pinsOver(
      subject,
      policy.pinAmps,
      board.limits.pinAbsolute.typ,
    )) {
      yield {
        identity: view.pin.id,
        span: use.span,
        related: relatedOf(view, use),
        severity: overSeverity(subject, state, 'warning'),
        detail: {
          pin: view.pin.id,
          amps,
          limit: policy.pinAmps,
          limitText: policy.text,
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
  ],
});
