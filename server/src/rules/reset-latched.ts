/** A switch that stays closed on the reset line. */

import { defineRule } from './rule';
import { findResetLine } from './support/reset-line';
import { partOf, wiresRelated } from './support/views';

interface Detail {
  readonly part: string;
  readonly title: string;
  readonly pin: string;
}

export default defineRule<Detail>({
  id: 'reset-latched',
  title: 'A latching switch sits on the reset line.',
  why: 'Once it is over, the board stays in reset until somebody switches it back, and looks dead.',
  source: 'common practice',
  severity: 'warning',
  maturity: 'settled',
  needs: 'circuit',
  *check(subject) {
    const line = findResetLine(subject);
    if (!line) return;
    for (const { element, resets } of line.switches) {
      const part = partOf(subject, element.part);
      if (!resets || !part || element.primitive.type !== 'switch' || element.primitive.action !== 'latching')
        continue;
      yield {
        identity: part.id,
        span: part.span,
        related: wiresRelated(line.view.wires, line.view.pin.id),
        detail: { part: part.id, title: part.title, pin: line.view.pin.id },
      };
    }
  },
  message: ({ part, title, pin }) =>
    `${part} is a latching ${title} on ${pin}: left closed, it keeps the board in reset. Take a momentary one.`,
  examples: [
    {
      about: 'a toggle switch from reset to ground',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "restart": { "kind": "toggle-switch" }
//   ^^^^^^^ reset-latched: restart is a latching toggle switch on RST
  },
  "wires": [{ "path": ["RST", "restart", "GND"] }]
}
`,
    },
    {
      about: 'a momentary button',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "restart": { "kind": "push-button", "action": "momentary" } },
  "wires": [{ "path": ["RST", "restart", "GND"] }]
}
`,
    },
  ],
});
