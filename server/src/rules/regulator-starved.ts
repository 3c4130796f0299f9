/** A regulator whose input lies too close to its output to hold it. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { type Regulator, regulatorsOf } from './support/regulators';
import { partOf } from './support/views';

interface Detail {
  readonly regulator: Regulator;
  /** Volts it needs above its output. */
  readonly dropout: number;
}

export default defineRule<Detail>({
  id: 'regulator-starved',
  title: 'A regulator gets too few volts to hold its output.',
  why: 'Its output is the input less its own drop: too low, and with all the ripple of the input.',
  source: 'dropout voltage of the part file, with its document',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const regulator of regulatorsOf(subject)) {
      const part = partOf(subject, regulator.part);
      const { dropout, input, output } = regulator;
      if (!part || !dropout || input.typ >= output.typ + dropout.typ) continue;
      yield { identity: part.id, span: part.span, detail: { regulator, dropout: dropout.typ } };
    }
  },
  message: ({ regulator: { name, input, output }, dropout }) =>
    `${name} gets ${formatQuantity(input.typ, 'V')}, and for ${formatQuantity(output.typ, 'V')} it needs ` +
    `${formatQuantity(output.typ + dropout, 'V')}. Feed it with more, or take a low-dropout one.`,
  examples: [
    {
      about: 'a regulator for 5 V on 6 V',
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
    "block": { "kind": "power-adapter", "volts": "6" },
    "U1": { "kind": "voltage-regulator", "volts": "5", "maxCurrent": "1.5 A" },
//   ^^ regulator-starved: U1 gets 6.0 V, and for 5.0 V it needs 7.0 V
    "gate": { "kind": "servo" }
  },
  "wires": [
    { "from": "block.+", "to": "U1.in" },
    { "from": "block.-", "to": "GND" },
    { "from": "U1.-", "to": "block.-" },
    { "from": "U1.out", "to": "gate.+" },
    { "from": "gate.-", "to": "U1.-" },
    { "from": "D9", "to": "gate.signal" }
  ]
}
`,
    },
    {
      about: 'a regulator for 5 V on one lithium cell',
      build: `
//- sketch.ino
void setup() {}
void loop() { int level = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pro-mini-5v",
  "parts": {
    "cell": { "kind": "lithium-battery", "cells": 1 },
    "U1": { "kind": "voltage-regulator", "volts": "5", "type": "low-dropout" },
//   ^^ regulator-starved: U1 gets 3.7 V, and for 5.0 V it needs 6.0 V
    "light": { "kind": "analog-sensor" }
  },
  "wires": [
    { "from": "cell.+", "to": "U1.in" },
    { "from": "cell.-", "to": "GND" },
    { "from": "U1.-", "to": "cell.-" },
    { "from": "U1.out", "to": "light.+" },
    { "from": "light.-", "to": "U1.-" },
    { "from": "A0", "to": "light.out" }
  ]
}
`,
    },
    {
      about: 'a low-dropout one on 6 V',
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
    "block": { "kind": "power-adapter", "volts": "6" },
    "U1": { "kind": "voltage-regulator", "volts": "5", "type": "low-dropout", "maxCurrent": "1.5 A" },
    "gate": { "kind": "servo" }
  },
  "wires": [
    { "from": "block.+", "to": "U1.in" },
    { "from": "block.-", "to": "GND" },
    { "from": "U1.-", "to": "block.-" },
    { "from": "U1.out", "to": "gate.+" },
    { "from": "gate.-", "to": "U1.-" },
    { "from": "D9", "to": "gate.signal" }
  ]
}
`,
    },
    {
      about: 'a regulator whose input comes from elsewhere',
      build: `
//- sketch.ino
#include <Servo.h>
Servo gate;
void setup() { gate.attach(9); }
void loop() { gate.write(90); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "U1": { "kind": "voltage-regulator", "volts": "5", "maxCurrent": "1.5 A" },
    "gate": { "kind": "servo" }
  },
  "wires": [
    { "from": "VIN", "to": "U1.in" },
    { "from": "U1.-", "to": "GND" },
    { "from": "U1.out", "to": "gate.+" },
    { "from": "gate.-", "to": "U1.-" },
    { "from": "D9", "to": "gate.signal" }
  ]
}
`,
    },
  ],
});
