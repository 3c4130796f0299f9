/** A source on a supply pin of the board with more volts than the pin takes. */
import { formatQuantity } from '../base/quantity';
import type { Range } from '../base/range';
import { defineRule } from './rule';
import { boardFeeds } from './support/board-feeds';
import { partOf, wiresRelated } from './support/views';

interface Detail {
  readonly part: string;
  readonly pin: string;
  readonly volts: Range;
  readonly most: number;
  /** A pin with this voltage among its own, which the board has as well. */
  readonly better?: string;
}

export default defineRule<Detail>({
  id: 'board-fed-too-high',
  title: 'A source gives more volts than the board’s pin takes.',
  why: 'Behind 5V and 3V3 there is no regulator: the chip gets what the source gives, and dies of it.',
  source: 'the supply inputs of the board file, each with its document',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const inputs = subject.build.board.supplyInputs ?? [];
    for (const { source, volts, view, wanted, most } of boardFeeds(subject)) {
      // Above what is recommended a tolerance does no harm; above what destroys it does.
      if (volts.typ <= wanted.max && volts.max <= most) continue;
      const part = partOf(subject, source.part);
      if (!part) continue;
      const better = inputs.find(
        (input) =>
          input.pin !== undefined &&
          input.pin !== view.pin.id &&
          volts.typ >= input.volts.min &&
          volts.max <= input.volts.max,
      );
      yield {
        identity: part.id,
        span: part.span,
        related: wiresRelated(view.wires, view.pin.id),
        // Between what is recommended and what destroys lies only heat.
        severity: volts.typ > most ? 'error' : volts.max > most ? 'warning' : 'information',
        detail: {
          part: part.id,
          pin: view.pin.id,
          volts,
          most: volts.max > most ? most : wanted.max,
          ...(better?.pin !== undefined && { better: better.pin }),
        },
      };
    }
  },
  message: ({ part, pin, volts, most, better }) =>
    `${part} gives ${formatQuantity(volts.typ, 'V')}${volts.max > volts.typ ? `, ${formatQuantity(volts.max, 'V')} at the most` : ''}, ` +
    `and ${pin} takes ${formatQuantity(most, 'V')}: ` +
    (better === undefined ? 'put a regulator in between.' : `feed the board at ${better}.`),
  examples: [
    {
      about: 'a 9 V block on 5V',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "9" }
//   ^^^^^ board-fed-too-high: block gives 9.0 V, 9.45 V at the most, and 5V takes 5.25 V: feed the board at VIN
  },
  "wires": [
    { "from": "block.+", "to": "5V" },
    { "from": "block.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'four fresh alkaline cells on a pin for 5.5 V',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": {
    "cells": { "kind": "alkaline-battery", "cells": 4 }
//   ^^^^^ board-fed-too-high: cells gives 5.2 V, 6.4 V at the most, and 5V takes 5.5 V
  },
  "wires": [
    { "from": "cells.+", "to": "5V" },
    { "from": "cells.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a 9 V adapter on VIN',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "block": { "kind": "power-adapter", "volts": "9" } },
  "wires": [
    { "from": "block.+", "to": "VIN" },
    { "from": "block.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a 5 V adapter on a pin for 5.5 V',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": { "block": { "kind": "power-adapter", "volts": "5" } },
  "wires": [
    { "from": "block.+", "to": "5V" },
    { "from": "block.-", "to": "GND" }
  ]
}
`,
    },
  ],
});
