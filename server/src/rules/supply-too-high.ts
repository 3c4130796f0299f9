/** A part fed with more volts than it stands. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { type FedPart, fedParts, takeToOtherRail } from './support/fed-volts';
import { partOf, viewOf, wiresRelated } from './support/views';

export default defineRule<FedPart>({
  id: 'supply-too-high',
  title: 'A part gets more volts than it works at.',
  why: 'Its first power-up is its last, or it ages in days.',
  source: 'supply range of the part file, each with its document',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const fed of fedParts(subject)) {
      const part = partOf(subject, fed.part);
      // A winding may have a resistor or a transistor on its other side that takes the rest.
      if (!part || !fed.whole || fed.supply.volts.max <= fed.wanted.max) continue;
      const view = fed.supply.pin && viewOf(subject, fed.supply.pin.id);
      yield {
        identity: part.id,
        span: part.span,
        related: view ? wiresRelated(view.wires, view.pin.id) : [],
        severity: fed.supply.volts.typ > fed.wanted.max ? 'error' : 'warning',
        detail: fed,
      };
    }
  },
  message: ({ part, terminal, supply, wanted }) =>
    `${part}.${terminal} gets ${formatQuantity(supply.volts.typ, 'V')} from ${supply.name}` +
    `${supply.volts.max > supply.volts.typ ? `, ${formatQuantity(supply.volts.max, 'V')} at the most` : ''}, and ` +
    `${part} takes ${formatQuantity(wanted.max, 'V')}. Feed it from a supply with fewer volts, or put a regulator in between.`,
  fixes: (detail, subject) => takeToOtherRail(subject, detail),
  examples: [
    {
      about: 'an addressable strip on a 12 V adapter',
      build: `
//- sketch.ino
void setup() { pinMode(6, OUTPUT); }
void loop() { digitalWrite(6, HIGH); digitalWrite(6, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
    "R1": { "kind": "resistor", "value": "330" },
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "25 V" },
    "water": { "kind": "addressable-strip", "count": 8 }
//   ^^^^^ supply-too-high: water.+ gets 12 V from block, 12.6 V at the most, and water takes 5.3 V
  },
  "wires": [
    { "from": "block.+", "to": "water.+" },
    { "from": "block.-", "to": "GND" },
    { "from": "water.-", "to": "block.-" },
    { "path": ["water.+", "C1", "water.-"] },
    { "path": ["D6", "R1", "water.data-in"] }
  ]
}
`,
    },
    {
      about: 'four fresh alkaline cells on a strip for 5 V',
      build: `
//- sketch.ino
void setup() { pinMode(6, OUTPUT); }
void loop() { digitalWrite(6, HIGH); digitalWrite(6, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "cells": { "kind": "alkaline-battery", "cells": 4 },
    "R1": { "kind": "resistor", "value": "330" },
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "10 V" },
    "water": { "kind": "addressable-strip", "count": 8 }
//   ^^^^^ supply-too-high: water.+ gets 5.2 V from cells, 6.4 V at the most, and water takes 5.3 V
  },
  "wires": [
    { "from": "cells.+", "to": "water.+" },
    { "from": "cells.-", "to": "GND" },
    { "from": "water.-", "to": "cells.-" },
    { "path": ["water.+", "C1", "water.-"] },
    { "path": ["D6", "R1", "water.data-in"] }
  ]
}
`,
    },
    {
      about: 'the same strip on the 5V pin',
      build: `
//- sketch.ino
void setup() { pinMode(6, OUTPUT); }
void loop() { digitalWrite(6, HIGH); digitalWrite(6, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "R1": { "kind": "resistor", "value": "330" },
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "10 V" },
    "water": { "kind": "addressable-strip", "count": 8 }
  },
  "wires": [
    { "from": "5V", "to": "water.+" },
    { "from": "water.-", "to": "GND" },
    { "path": ["water.+", "C1", "water.-"] },
    { "path": ["D6", "R1", "water.data-in"] }
  ]
}
`,
    },
    {
      about: 'a converter between 12 V and the strip',
      build: `
//- sketch.ino
void setup() { pinMode(6, OUTPUT); }
void loop() { digitalWrite(6, HIGH); digitalWrite(6, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
    "down": { "kind": "step-down-module", "volts": "5" },
    "R1": { "kind": "resistor", "value": "330" },
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "10 V" },
    "water": { "kind": "addressable-strip", "count": 8 }
  },
  "wires": [
    { "from": "block.+", "to": "down.in+" },
    { "from": "block.-", "to": "down.in-" },
    { "from": "down.in-", "to": "GND" },
    { "from": "down.out+", "to": "water.+" },
    { "from": "down.out-", "to": "water.-" },
    { "path": ["water.+", "C1", "water.-"] },
    { "path": ["D6", "R1", "water.data-in"] }
  ]
}
`,
    },
  ],
});
