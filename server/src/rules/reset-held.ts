/** The reset line lies at ground with nobody touching anything. */

import { defineRule } from './rule';
import { findJoinedLegs } from './support/joined-legs';
import { findResetLine } from './support/reset-line';

interface Detail {
  readonly pin: string;
}

export default defineRule<Detail>({
  id: 'reset-held',
  title: 'The reset line is held at ground for good.',
  why: 'The chip never leaves reset: the board looks dead, and uploads fail.',
  source: 'the chip’s datasheet, system control and reset: external reset; the voltage is computed',
  severity: 'error',
  maturity: 'settled',
  needs: 'circuit',
  *check(subject) {
    const line = findResetLine(subject);
    const wire = line?.view.wires[0];
    if (!line?.held || !wire) return;
    // A button wired across joined legs holds it, and that is told where the button is.
    if (
      findJoinedLegs(subject).some(({ part }) => line.view.net.terminals.some((end) => end.part === part.id))
    )
      return;
    const end = wire.ends.find((candidate) => candidate.kind === 'pin' && candidate.pin === line.view.pin.id);
    yield { identity: line.view.pin.id, span: end?.span ?? wire.span, detail: { pin: line.view.pin.id } };
  },
  message: ({ pin }) =>
    `${pin} is held at ground while nobody presses anything: the chip never leaves reset.`,
  examples: [
    {
      about: 'the reset pin wired to ground',
      build: `
//- sketch.ino board:nano-v3
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "wires": [
    { "from": "RST", "to": "GND", "colour": "white" }
//             ^^^ reset-held: RST is held at ground while nobody presses anything
  ]
}
`,
    },
    {
      about: 'a button to ground, open at rest',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "restart": { "kind": "push-button", "purpose": "starts the model again" } },
  "wires": [{ "path": ["RST", "restart", "GND"] }]
}
`,
    },
  ],
});
