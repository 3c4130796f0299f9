/** A source that feeds the board and cannot give what the board needs in its peaks. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { boardFeeds } from './support/board-feeds';
import { partOf, wiresRelated } from './support/views';

interface Detail {
  readonly part: string;
  readonly pin: string;
  readonly gives: number;
  readonly needs: number;
}

export default defineRule<Detail>({
  id: 'supply-weak',
  title: 'What feeds the board gives less current than the board needs in its peaks.',
  why: 'It starts, and resets by itself each time the radio sends.',
  source: 'supply current asked for in the data sheet of the module, as the board file says',
  severity: 'warning',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const { source, view, input } of boardFeeds(subject)) {
      const part = partOf(subject, source.part);
      const gives = source.primitive.maxAmps;
      const needs = input?.needsAmps?.min;
      if (!part || gives === undefined || needs === undefined || gives >= needs) continue;
      yield {
        identity: part.id,
        span: part.span,
        related: wiresRelated(view.wires, view.pin.id),
        detail: { part: part.id, pin: view.pin.id, gives, needs },
      };
    }
  },
  message: ({ part, pin, gives, needs }) =>
    `${part} gives ${formatQuantity(gives, 'A')}, and a board fed at ${pin} needs ${formatQuantity(needs, 'A')} when ` +
    'its radio sends. Take a stronger source, or put a large capacitor beside the board.',
  examples: [
    {
      about: 'a coin cell on a board with a radio',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": {
    "cell": { "kind": "coin-cell" }
//   ^^^^ supply-weak: cell gives 3.0 mA, and a board fed at 3V3 needs 500 mA
  },
  "wires": [
    { "from": "cell.+", "to": "3V3" },
    { "from": "cell.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'an adapter of 300 mA',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-s3-devkitc",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "5", "maxCurrent": "300 mA" }
//   ^^^^^ supply-weak: block gives 300 mA, and a board fed at 5V needs 500 mA
  },
  "wires": [
    { "from": "block.+", "to": "5V" },
    { "from": "block.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'an adapter of 500 mA is just enough',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-s3-devkitc",
  "parts": { "block": { "kind": "power-adapter", "volts": "5", "maxCurrent": "500 mA" } },
  "wires": [
    { "from": "block.+", "to": "5V" },
    { "from": "block.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a board without a radio asks for no more than it draws',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "block": { "kind": "power-adapter", "volts": "9", "maxCurrent": "300 mA" } },
  "wires": [
    { "from": "block.+", "to": "VIN" },
    { "from": "block.-", "to": "GND" }
  ]
}
`,
    },
  ],
});
