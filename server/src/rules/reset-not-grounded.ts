/** A button on the reset line that does not bring it under its threshold. */
import { formatQuantity } from '../base/quantity';
import type { Range } from '../base/range';
import { defineRule } from './rule';
import { groundTerminal } from './support/manifest-edits';
import { findResetLine } from './support/reset-line';
import { partOf, wiresRelated } from './support/views';

interface Detail {
  readonly part: string;
  readonly pin: string;
  readonly terminal: string;
  readonly volts: Range;
  readonly assertVolts: number;
}

export default defineRule<Detail>({
  id: 'reset-not-grounded',
  title: 'A button on the reset line does not pull it to ground.',
  why: 'Pressing it does nothing: the line has to fall below its threshold against all its pull-ups.',
  source: 'input low voltage of the reset pin in the chip’s DC characteristics; the voltage is computed',
  severity: 'error',
  maturity: 'settled',
  needs: 'circuit',
  *check(subject) {
    const line = findResetLine(subject);
    if (!line || line.held || line.resets) return;
    for (const { element, volts } of line.switches) {
      const part = partOf(subject, element.part);
      if (!part) continue;
      const far = element.nets[0] === line.view.net.id ? 1 : 0;
      yield {
        identity: part.id,
        span: part.span,
        related: wiresRelated(line.view.wires, line.view.pin.id),
        detail: {
          part: part.id,
          pin: line.view.pin.id,
          terminal: element.primitive.ends[far],
          volts,
          assertVolts: line.assertVolts,
        },
      };
    }
  },
  message: ({ part, pin, volts, assertVolts }) =>
    `${part} does not reset the board: with it closed ${pin} stays at ` +
    `${volts.typ > assertVolts ? '' : 'up to '}${formatQuantity(volts.typ > assertVolts ? volts.typ : volts.max, 'V')}, ` +
    `and below ${formatQuantity(assertVolts, 'V')} is needed.`,
  fixes: ({ part, terminal }, subject) => groundTerminal(subject, part, terminal),
  examples: [
    {
      about: 'the other side of the button has no wire',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "restart": { "kind": "push-button", "purpose": "starts the model again" }
//   ^^^^^^^ reset-not-grounded [ask]: restart does not reset the board: with it closed RST stays at 5.0 V
  },
  "wires": [
    { "from": "RST", "to": "restart.1", "colour": "white" }
  ]
}
`,
    },
    {
      about: 'a button to the supply instead of ground',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "restart": { "kind": "push-button", "purpose": "starts the model again" }
//   ^^^^^^^ reset-not-grounded [ask]: restart does not reset the board
  },
  "wires": [
    { "from": "RST", "to": "restart.1" },
    { "from": "restart.2", "to": "5V" } // the wrong rail
  ]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "restart": { "kind": "push-button", "purpose": "starts the model again" }
  },
  "wires": [
    { "from": "RST", "to": "restart.1" },
    { "from": "restart.2", "to": "GND@left.14" } // the wrong rail
  ]
}
`,
    },
    {
      about: 'a button straight to ground',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "restart": { "kind": "push-button" } },
  "wires": [{ "path": ["RST", "restart", "GND"] }]
}
`,
    },
  ],
});
