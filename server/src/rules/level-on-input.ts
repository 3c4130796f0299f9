/** A pull-up is meant to be switched on by writing HIGH to an input, and this core does not do that. */

import { defineRule } from './rule';
import { levelOnInput } from './support/cores';
import { findOpen } from './support/floating';
import { setMode } from './support/sketch-edits';
import { relatedOf, viewOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly open: readonly string[];
}

export default defineRule<Detail>({
  id: 'level-on-input',
  title: 'HIGH is written to an input for its pull-up, which this core does not switch that way.',
  why: 'It works on the boards of the first hour and nowhere else: the input floats, and presses come from nowhere.',
  source:
    'wiring_digital.c of the board-support core for AVR (where it works); the same file of the other boards’ cores',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    if (levelOnInput(subject.build.board) !== 'nothing' && levelOnInput(subject.build.board) !== 'drives-low')
      return;
    if (subject.facts.damaged || subject.unresolved.some((use) => use.action === 'mode')) return;
    for (const view of subject.pins) {
      const modes = view.uses.filter((use) => use.action === 'mode');
      if (modes.length === 0 || view.wires.length === 0) continue;
      if (!modes.every((use) => use.modes?.length === 1 && use.modes[0] === 'input')) continue;
      if (view.modes.some((mode) => mode !== 'input')) continue;
      const write = view.uses.find(
        ({ action, value, pins }) =>
          action === 'write' &&
          value?.kind === 'known' &&
          value.values.every((one) => one !== 0) &&
          pins.kind === 'known' &&
          pins.values.length === 1,
      );
      if (!write || !view.uses.some((use) => use.action === 'read' || use.action === 'interrupt')) continue;
      const open = findOpen(subject, view);
      if (!open || open.open.length === 0) continue;
      const { id: pin } = view.pin;
      yield {
        identity: pin,
        span: write.span,
        related: relatedOf(view, write),
        detail: { pin, open: open.open },
      };
    }
  },
  message: ({ pin, open }) =>
    `HIGH written to ${pin}, an input, switches no pull-up on with this core: the pin floats while ${open.join(' and ')} ` +
    'is open. Ask for INPUT_PULLUP.',
  fixes({ pin }, subject) {
    const view = viewOf(subject, pin);
    const edits = view && setMode(subject, view, 'INPUT_PULLUP');
    return edits ? [{ title: `Switch on the pull-up of ${pin} with INPUT_PULLUP`, trust: 'ask', edits }] : [];
  },
  examples: [
    pulled('the old way on a chip with output latches', 'esp32-devkitc', 'IO4', '4', true),
    pulled('the same on a small board', 'nodemcu-esp8266', 'D5', 'D5', true),
    pulled('the old way where it works', 'uno-r3', 'D4', '4', false),
    {
      about: 'a resistor holds the pin',
      build: `
//- sketch.ino
void setup() { pinMode(4, INPUT); digitalWrite(4, HIGH); }
void loop() { if (digitalRead(4) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": { "call": { "kind": "push-button" }, "R1": { "kind": "resistor", "value": "10k" } },
  "wires": [{ "path": ["IO4", "call", "GND"] }, { "path": ["3V3", "R1", "call.1"] }]
}
`,
    },
  ],
});

function pulled(about: string, board: string, pin: string, written: string, wrong: boolean) {
  const text = (mode: string, mark = '') => `
//- sketch.ino
void setup() {
  pinMode(${written}, ${mode});
  digitalWrite(${written}, HIGH);${mark}
}
void loop() { if (digitalRead(${written}) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["${pin}", "call", "GND"] }]
}
`;
  if (!wrong) return { about, build: text('INPUT') };
  const mark = `\n//             ${'^'.repeat(written.length)} level-on-input [ask]: the pin floats while call is open`;
  return { about, build: text('INPUT', mark), fixed: text('INPUT_PULLUP') };
}
