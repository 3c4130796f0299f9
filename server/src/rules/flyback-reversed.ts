/** A diode across a winding that conducts while the winding is on. */
import { defineRule } from './rule';
import { swapLamp } from './support/lamp-fixes';
import { isReversedRegion } from './support/reversed-supplies';
import { partOf } from './support/views';
import { findWindings } from './support/windings';

interface Detail {
  readonly part: string;
  readonly element: string;
  readonly winding: string;
  readonly plus: string;
  readonly by: string;
}

export default defineRule<Detail>({
  id: 'flyback-reversed',
  title: 'The diode across a winding is the wrong way round.',
  why: 'It shorts the supply as soon as the winding is switched on: the transistor or the diode burns.',
  source: 'common practice',
  severity: 'error',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const { coil, plus, by, reversed } of findWindings(subject)) {
      // With its supply exchanged the winding's current flows the other way, and the diode may be right.
      if (
        isReversedRegion(
          subject,
          subject.regions.find(({ elements }) => elements.includes(coil)),
        )
      )
        continue;
      for (const diode of reversed) {
        const part = partOf(subject, diode.part);
        // A diode inside a part with other things in it is not anybody's to turn.
        if (!part || part.inside.length > 1) continue;
        const other = partOf(subject, coil.part);
        yield {
          identity: part.id,
          span: part.span,
          related: other ? [{ message: `${other.id} is declared here`, span: other.span }] : [],
          detail: { part: part.id, element: diode.id, winding: coil.part, plus, by },
        };
      }
    }
  },
  message: ({ part, winding, plus, by }) =>
    `${part} is the wrong way round across ${winding}: its anode is at ${winding}.${plus}, so it takes all the current ` +
    `when ${by} switches on. Its cathode belongs there.`,
  fixes: ({ part, element }, subject) => swapLamp(subject, part, element),
  examples: [
    {
      about: 'a diode put in with the ring at the transistor',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "pack": { "kind": "battery", "volts": "6" },
    "crane": { "kind": "dc-motor", "resistance": "20 ohm" },
    "Q1": { "kind": "npn-transistor" },
    "R1": { "kind": "resistor", "value": "330" },
    "catch": { "kind": "diode" } // from the drawer
//   ^^^^^ flyback-reversed [ask]: catch is the wrong way round across crane: its anode is at crane.1
  },
  "wires": [
    { "path": ["D9", "R1", "Q1.base"] },
    { "path": ["pack.-", "Q1.emitter", "GND"] },
    { "path": ["pack.+", "crane", "Q1.collector"] },
    { "path": ["crane.1", "catch", "crane.2"] }
  ]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "pack": { "kind": "battery", "volts": "6" },
    "crane": { "kind": "dc-motor", "resistance": "20 ohm" },
    "Q1": { "kind": "npn-transistor" },
    "R1": { "kind": "resistor", "value": "330" },
    "catch": { "kind": "diode" } // from the drawer
  },
  "wires": [
    { "path": ["D9", "R1", "Q1.base"] },
    { "path": ["pack.-", "Q1.emitter", "GND"] },
    { "path": ["pack.+", "crane", "Q1.collector"] },
    { "path": ["crane.2", "catch", "crane.1"] }
  ]
}
`,
    },
    {
      about: 'the same on a lock with a supply of its own',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "pack": { "kind": "battery", "volts": "12" },
    "lock": { "kind": "solenoid", "volts": "12" },
    "Q1": { "kind": "n-mosfet", "type": "irlb8721" },
    "R1": { "kind": "resistor", "value": "10k" },
    "catch": { "kind": "diode" }
//   ^^^^^ flyback-reversed [ask]: catch is the wrong way round across lock
  },
  "wires": [
    { "from": "D9", "to": "Q1.gate" },
    { "path": ["Q1.gate", "R1", "GND"] },
    { "from": "Q1.source", "to": "GND" },
    { "path": ["pack.+", "lock", "Q1.drain"] },
    { "from": "lock.1", "to": "catch.anode" },
    { "from": "catch.cathode", "to": "lock.2" },
    { "from": "pack.-", "to": "Q1.source" }
  ]
}
`,
    },
    {
      about: 'a diode with its ring at the supply',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "pack": { "kind": "battery", "volts": "12" },
    "lock": { "kind": "solenoid", "volts": "12" },
    "Q1": { "kind": "n-mosfet", "type": "irlb8721" },
    "R1": { "kind": "resistor", "value": "10k" },
    "catch": { "kind": "diode" }
  },
  "wires": [
    { "from": "D9", "to": "Q1.gate" },
    { "path": ["Q1.gate", "R1", "GND"] },
    { "from": "Q1.source", "to": "GND" },
    { "path": ["pack.+", "lock", "Q1.drain"] },
    { "path": ["lock.2", "catch", "lock.1"] },
    { "from": "pack.-", "to": "Q1.source" }
  ]
}
`,
    },
  ],
});
