/** A part fed with fewer volts than it works at. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { type FedPart, fedParts, takeToOtherRail } from './support/fed-volts';
import { partOf, viewOf, wiresRelated } from './support/views';

export default defineRule<FedPart>({
  id: 'supply-too-low',
  title: 'A part gets fewer volts than it works at.',
  why: 'It does nothing, or works on the bench and fails when it is cold or the pack is half empty.',
  source: 'supply range of the part file, each with its document',
  severity: 'warning',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const fed of fedParts(subject)) {
      const part = partOf(subject, fed.part);
      if (!part || fed.supply.volts.typ >= fed.wanted.min) continue;
      const view = fed.supply.pin && viewOf(subject, fed.supply.pin.id);
      yield {
        identity: part.id,
        span: part.span,
        related: view ? wiresRelated(view.wires, view.pin.id) : [],
        detail: fed,
      };
    }
  },
  message: ({ part, terminal, supply, wanted }) =>
    `${part}.${terminal} gets ${formatQuantity(supply.volts.typ, 'V')} from ${supply.name}, and ${part} works from ` +
    `${formatQuantity(wanted.min, 'V')} on. Feed it from a supply with more volts.`,
  fixes: (detail, subject) => takeToOtherRail(subject, detail),
  examples: [
    {
      about: 'a servo on the 3.3 V pin',
      build: `
//- sketch.ino
#include <Servo.h>
Servo gate;
void setup() { gate.attach(9); }
void loop() { gate.write(90); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "10 V" },
    "gate": { "kind": "servo", "current": "40 mA" }
//   ^^^^ supply-too-low [ask]: gate.+ gets 3.3 V from 3V3, and gate works from 3.8 V on
  },
  "wires": [
    { "from": "D9", "to": "gate.signal" },
    { "from": "3V3", "to": "gate.+", "colour": "red" }, // was free
    { "from": "gate.-", "to": "GND" },
    { "path": ["gate.+", "C1", "gate.-"] }
  ]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "10 V" },
    "gate": { "kind": "servo", "current": "40 mA" }
  },
  "wires": [
    { "from": "D9", "to": "gate.signal" },
    { "from": "5V@left.12", "to": "gate.+", "colour": "red" }, // was free
    { "from": "gate.-", "to": "GND" },
    { "path": ["gate.+", "C1", "gate.-"] }
  ]
}
`,
    },
    {
      about: 'a strip for 12 V on a 5 V adapter',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "5", "maxCurrent": "3 A" },
    "quayLight": { "kind": "led-strip", "metres": 1, "volts": "12" }
//   ^^^^^^^^^ supply-too-low: quayLight.+ gets 5.0 V from block, and quayLight works from 10.8 V on
  },
  "wires": [
    { "from": "block.+", "to": "quayLight.+" },
    { "from": "block.-", "to": "quayLight.-" }
  ]
}
`,
    },
    {
      about: 'four cells, which are just enough',
      build: `
//- sketch.ino
#include <Servo.h>
Servo gate;
void setup() { gate.attach(9); }
void loop() { gate.write(90); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "gate": { "kind": "servo" },
    "pack": { "kind": "nimh-battery", "cells": 4 }
  },
  "wires": [
    { "from": "D9", "to": "gate.signal" },
    { "from": "pack.+", "to": "gate.+" },
    { "from": "pack.-", "to": "gate.-" },
    { "from": "gate.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a strip for 12 V on 12 V',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "12", "maxCurrent": "3 A" },
    "quayLight": { "kind": "led-strip", "metres": 1, "volts": "12" }
  },
  "wires": [
    { "from": "block.+", "to": "quayLight.+" },
    { "from": "block.-", "to": "quayLight.-" }
  ]
}
`,
    },
  ],
});
