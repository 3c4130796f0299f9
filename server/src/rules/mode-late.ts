/** An input is read before the sketch has switched on the pull-up that holds it. */

import { defineRule } from './rule';
import { findOpen } from './support/floating';
import { modeCalls } from './support/sketch-edits';
import { relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly call: string;
}

export default defineRule<Detail>({
  id: 'mode-late',
  title: 'An input is read before its pull-up is switched on.',
  why: 'Until pinMode runs, nothing holds the pin: the first reading is chance, and what depends on it starts at random.',
  source: 'ATmega328P datasheet, I/O ports: after reset every pin is an input without pull-up',
  severity: 'warning',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    if (subject.facts.damaged || subject.unresolved.some((use) => use.action === 'mode')) return;
    for (const view of subject.pins) {
      const modes = modeCalls(view);
      const [first] = modes;
      if (!first || view.wires.length === 0 || view.uses.some((use) => use.action === 'write')) continue;
      if (!modes.every((use) => use.modes?.every((mode) => mode.startsWith('input-pull')))) continue;
      const at = Math.min(...modes.map((use) => use.order));
      const read = view.uses.find(
        (use) => use.action === 'read' && use.phase === 'setup' && use.certain && use.order < at,
      );
      if (!read || !findOpen(subject, view)) continue;
      const { id: pin } = view.pin;
      yield {
        identity: pin,
        span: read.span,
        related: [{ message: 'its mode is set here', span: first.callSpan }, ...relatedOf(view, read)],
        detail: { pin, call: read.call },
      };
    }
  },
  message: ({ pin, call }) =>
    `${call} reads ${pin} before pinMode has switched its pull-up on: the level is chance. Set the mode first.`,
  examples: [
    early('a jumper that is read first and given its mode afterwards', 'uno-r3', 'D4', 4, true),
    early('the same on another chip', 'pico', 'GP6', 6, true),
    early('the mode set first', 'uno-r3', 'D4', 4, false),
    {
      about: 'a resistor holds the pin from the start',
      build: `
//- sketch.ino
bool night;
void setup() { night = digitalRead(4) == LOW; pinMode(4, INPUT_PULLUP); }
void loop() { if (night) delay(digitalRead(4)); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "jumper": { "kind": "slide-switch" }, "R1": { "kind": "resistor", "value": "10k" } },
  "wires": [{ "from": "D4", "to": "jumper.common" }, { "from": "jumper.1", "to": "GND" }, { "path": ["5V", "R1", "jumper.common"] }]
}
`,
    },
  ],
});

function early(about: string, board: string, pin: string, number: number, wrong: boolean) {
  const mode = `  pinMode(${number}, INPUT_PULLUP);\n`;
  const mark = `//                    ^ mode-late: digitalRead reads ${pin} before pinMode has switched its pull-up on\n`;
  return {
    about,
    build: `
//- sketch.ino
bool night;
void setup() {
${wrong ? '' : mode}  night = digitalRead(${number}) == LOW;
${wrong ? mark + mode : ''}}
void loop() { if (night) delay(digitalRead(${number})); }
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "jumper": { "kind": "reed-switch" } },
  "wires": [{ "path": ["${pin}", "jumper", "GND"] }]
}
`,
  };
}
