/** A servo or a strip on the board's own rail with no capacitor beside it. */
import { defineRule } from './rule';
import type { Subject } from './subject';
import { onlyFeeder, placedOf } from './support/supplies';
import { partOf, viewOf, wiresRelated } from './support/views';

interface Detail {
  readonly part: string;
  readonly rail: string;
  readonly plus: string;
  readonly minus: string;
}

/** Terminals that tell a part whose current jumps. */
const jumpy: ReadonlySet<string> = new Set(['servo.signal', 'strip.data']);

export default defineRule<Detail>({
  id: 'reservoir-missing',
  title: 'A servo or strip hangs on the board’s rail with no capacitor beside it.',
  why: 'Each jump of its current is a dip of the rail that feeds the chip: readings flicker, and now and then it resets.',
  source: 'common practice: some hundred microfarads beside what jumps',
  severity: 'hint',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const load of placedOf(subject, 'load')) {
      const part = partOf(subject, load.part);
      if (!part?.terminals.some(({ roles = [] }) => roles.some((role) => jumpy.has(role)))) continue;
      const supply = onlyFeeder(subject, load.nets[0]);
      if (!supply?.pin || hasReservoir(subject, load.nets)) continue;
      const [plus, minus] = load.primitive.ends;
      const view = viewOf(subject, supply.pin.id);
      yield {
        identity: part.id,
        span: part.span,
        related: view ? wiresRelated(view.wires, view.pin.id) : [],
        detail: { part: part.id, rail: supply.name, plus, minus },
      };
    }
  },
  message: ({ part, rail, plus, minus }) =>
    `${part} shares ${rail} with the chip: put some hundred microfarads between ${part}.${plus} and ${part}.${minus}, ` +
    'close to it.',
  examples: [
    {
      about: 'a servo on the 5V pin',
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
    "gate": { "kind": "servo", "current": "400 mA" }
//   ^^^^ reservoir-missing: gate shares 5V with the chip
  },
  "wires": [
    { "from": "D9", "to": "gate.signal" },
    { "from": "5V", "to": "gate.+" },
    { "from": "gate.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a short strip on the 5V pin',
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
    "water": { "kind": "addressable-strip", "count": 8 }
//   ^^^^^ reservoir-missing: water shares 5V with the chip
  },
  "wires": [
    { "path": ["D6", "R1", "water.data-in"] },
    { "from": "5V", "to": "water.+" },
    { "from": "water.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a capacitor beside the strip',
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
    { "path": ["D6", "R1", "water.data-in"] },
    { "from": "5V", "to": "water.+" },
    { "from": "water.-", "to": "GND" },
    { "path": ["water.+", "C1", "water.-"] }
  ]
}
`,
    },
    {
      about: 'a servo with a supply of its own',
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
    { "from": "gate.-", "to": "pack.-" },
    { "from": "pack.-", "to": "GND" }
  ]
}
`,
    },
  ],
});

/** A capacitor that metal joins to both sides of a supply. */
function hasReservoir(subject: Subject, [plus, minus]: readonly [string, string]): boolean {
  return placedOf(subject, 'capacitor').some(({ nets }) => nets.includes(plus) && nets.includes(minus));
}
