/** A source on a supply pin of the board with fewer volts than the board needs there. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { boardFeeds } from './support/board-feeds';
import { partOf, wiresRelated } from './support/views';

interface Detail {
  readonly part: string;
  readonly pin: string;
  readonly volts: number;
  readonly least: number;
  readonly how?: string;
}

export default defineRule<Detail>({
  id: 'board-fed-too-low',
  title: 'A source gives fewer volts than the board needs at that pin.',
  why: 'A regulator passes on what it gets less its own drop: the board runs below its voltage and resets under load.',
  source: 'the supply inputs of the board file, each with its document',
  severity: 'warning',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const { source, volts, view, wanted, input } of boardFeeds(subject)) {
      const part = partOf(subject, source.part);
      // A pack that falls below only when it is nearly empty has done its work.
      if (!part || volts.typ >= wanted.min) continue;
      yield {
        identity: part.id,
        span: part.span,
        related: wiresRelated(view.wires, view.pin.id),
        detail: {
          part: part.id,
          pin: view.pin.id,
          volts: volts.typ,
          least: wanted.min,
          ...(input?.how !== undefined && { how: input.how }),
        },
      };
    }
  },
  message: ({ part, pin, volts, least, how }) =>
    `${part} gives ${formatQuantity(volts, 'V')}, and ${pin} needs ${formatQuantity(least, 'V')}` +
    `${how === undefined ? '' : ` (behind it: ${how})`}. Take a source with more volts, or another pin.`,
  examples: [
    {
      about: 'a 5 V adapter on VIN',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "5" }
//   ^^^^^ board-fed-too-low: block gives 5.0 V, and VIN needs 7.0 V (behind it: linear regulator)
  },
  "wires": [
    { "from": "block.+", "to": "VIN" },
    { "from": "block.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'two alkaline cells on the 5 V pin of a board for 3.3 V',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": {
    "cells": { "kind": "alkaline-battery", "cells": 2 }
//   ^^^^^ board-fed-too-low: cells gives 2.6 V, and 5V needs 4.4 V
  },
  "wires": [
    { "from": "cells.+", "to": "5V" },
    { "from": "cells.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a 9 V block that falls below 7 V when it is empty',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "block": { "kind": "nine-volt-battery" } },
  "wires": [
    { "from": "block.+", "to": "VIN" },
    { "from": "block.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'two cells on VSYS, behind which a converter lifts the voltage',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": { "cells": { "kind": "alkaline-battery", "cells": 2 } },
  "wires": [
    { "from": "cells.+", "to": "VSYS" },
    { "from": "cells.-", "to": "GND" }
  ]
}
`,
    },
  ],
});
