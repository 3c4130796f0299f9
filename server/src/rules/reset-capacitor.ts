/** A capacitor on the reset line that swallows the pulse which starts an upload. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { groundNets, placedOf } from './support/supplies';
import { partOf, viewOf, wiresRelated } from './support/views';

interface Detail {
  readonly part: string;
  readonly pin: string;
  readonly farads: number;
  readonly coupling: number;
  /** Volts that the line falls to. */
  readonly volts: number;
  readonly assertVolts: number;
}

export default defineRule<Detail>({
  id: 'reset-capacitor',
  title: 'A capacitor from the reset line to ground keeps uploads from starting.',
  why: 'The bridge to USB pulls the line through a small capacitor. Both share the step, and the line no longer falls far enough.',
  source:
    'coupling capacitor and reset threshold of the board file; the share is that of two capacitors in a row',
  severity: 'warning',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const { reset, logicRail } = subject.build.board;
    const line = reset && viewOf(subject, reset.pin);
    const supply = viewOf(subject, logicRail)?.pin.volts;
    if (!reset?.couplingFarads || !line || !supply || line.wires.length === 0) return;
    const grounds = groundNets(subject);
    for (const { part: id, nets, primitive } of placedOf(subject, 'capacitor')) {
      const [first, second] = nets;
      const far = first === line.net.id ? second : second === line.net.id ? first : undefined;
      const part = partOf(subject, id);
      if (!part || far === undefined || !grounds.has(far) || subject.doubtful.includes(id)) continue;
      const farads = primitive.farads.typ;
      const coupling = reset.couplingFarads.typ;
      const volts = (supply.typ * farads) / (farads + coupling);
      if (volts <= reset.assertVolts.max) continue;
      yield {
        identity: id,
        span: part.span,
        related: wiresRelated(line.wires, line.pin.id),
        detail: { part: id, pin: line.pin.id, farads, coupling, volts, assertVolts: reset.assertVolts.max },
      };
    }
  },
  message: ({ part, pin, farads, coupling, volts, assertVolts }) =>
    `With ${part} (${formatQuantity(farads, 'F')}) ${pin} stays at ${formatQuantity(volts, 'V')} when an upload pulls ` +
    `it through ${formatQuantity(coupling, 'F')}, and below ${formatQuantity(assertVolts, 'V')} is needed. ` +
    'Leave it out, or press reset by hand at each upload.',
  examples: [
    {
      about: 'ten microfarads on the reset line',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "C1": { "kind": "electrolytic-capacitor", "value": "10 uF", "volts": "16 V" }
//   ^^ reset-capacitor: With C1 (10 µF) RST stays at 5.0 V when an upload pulls it through 100 nF
  },
  "wires": [{ "path": ["RST", "C1", "GND"] }]
}
`,
    },
    {
      about: 'a hundred nanofarads, as much as the coupling capacitor',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "restart": { "kind": "push-button" },
    "C1": { "kind": "capacitor", "value": "100 nF" }
//   ^^ reset-capacitor: With C1 (100 nF) RST stays at 2.5 V when an upload pulls it through 100 nF
  },
  "wires": [
    { "path": ["RST", "restart", "GND"] },
    { "path": ["restart.1", "C1", "restart.2"] }
  ]
}
`,
    },
    {
      about: 'a few nanofarads against sparks do no harm',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "restart": { "kind": "push-button" },
    "C1": { "kind": "capacitor", "value": "10 nF" }
  },
  "wires": [
    { "path": ["RST", "restart", "GND"] },
    { "path": ["restart.1", "C1", "restart.2"] }
  ]
}
`,
    },
    {
      about: 'a board whose enable pin wants a capacitor',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": { "C1": { "kind": "electrolytic-capacitor", "value": "10 uF", "volts": "16 V" } },
  "wires": [{ "path": ["EN", "C1", "GND"] }]
}
`,
    },
  ],
});
