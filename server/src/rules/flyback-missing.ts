/** A winding that is switched off with nowhere for its current to go. */
import { insertPart, insertWire } from '../hardware';
import { defineRule } from './rule';
import { draftManifest } from './support/draft';
import { nextName } from './support/manifest-edits';
import { partOf } from './support/views';
import { findWindings } from './support/windings';

interface Detail {
  readonly part: string;
  readonly plus: string;
  readonly minus: string;
  readonly by: string;
}

export default defineRule<Detail>({
  id: 'flyback-missing',
  title: 'A switched winding has no diode across it.',
  why: 'Cut off, the winding throws some hundred volts back: the board resets, and the transistor or the pin dies.',
  source: 'common practice',
  severity: 'error',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const { coil, plus, minus, by, caught, reversed } of findWindings(subject)) {
      const part = partOf(subject, coil.part);
      if (!part || caught || reversed.length > 0) continue;
      yield {
        identity: coil.id,
        span: part.span,
        related: subject.build.parts
          .filter(({ id }) => id === by)
          .map(({ span }) => ({ message: `${by} switches it`, span })),
        detail: { part: part.id, plus, minus, by },
      };
    }
  },
  message: ({ part, plus, minus, by }) =>
    `${part} has no diode across its winding, and ${by} cuts its current: put one from ${part}.${minus} (anode) to ` +
    `${part}.${plus} (cathode).`,
  fixes: ({ part, plus, minus }, subject) => {
    const id = nextName(subject, 'diode');
    return [
      {
        title: `Put a diode across ${part}`,
        trust: 'ask',
        edits: draftManifest(subject, [
          (text, file) => insertPart(text, id, { kind: 'diode', type: '1n4007' }, file),
          (text, file) => insertWire(text, { path: [`${part}.${minus}`, id, `${part}.${plus}`] }, file),
        ]),
      },
    ];
  },
  examples: [
    {
      about: 'a lock’s solenoid behind a field-effect transistor',
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
    // of the cell door
    "lock": { "kind": "solenoid", "volts": "12" },
//   ^^^^ flyback-missing [ask]: put one from lock.2 (anode) to lock.1 (cathode)
    "Q1": { "kind": "n-mosfet", "type": "irlb8721" },
    "R1": { "kind": "resistor", "value": "10k" }
  },
  "wires": [
    { "from": "D9", "to": "Q1.gate" },
    { "path": ["Q1.gate", "R1", "GND"] },
    { "from": "Q1.source", "to": "GND" },
    { "path": ["pack.+", "lock", "Q1.drain"] },
    { "from": "pack.-", "to": "Q1.source" }
  ]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "pack": { "kind": "battery", "volts": "12" },
    // of the cell door
    "lock": { "kind": "solenoid", "volts": "12" },
    "Q1": { "kind": "n-mosfet", "type": "irlb8721" },
    "R1": { "kind": "resistor", "value": "10k" },
    "diode1": { "kind": "diode", "type": "1n4007" }
  },
  "wires": [
    { "from": "D9", "to": "Q1.gate" },
    { "path": ["Q1.gate", "R1", "GND"] },
    { "from": "Q1.source", "to": "GND" },
    { "path": ["pack.+", "lock", "Q1.drain"] },
    { "from": "pack.-", "to": "Q1.source" },
    { "path": ["lock.2", "diode1", "lock.1"] }
  ]
}
`,
    },
    {
      about: 'a small relay straight on a pin',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "reed": { "kind": "solenoid", "volts": "5", "resistance": "500 ohm" }
//   ^^^^ flyback-missing [ask]: reed has no diode across its winding, and D9 cuts its current
  },
  "wires": [{ "path": ["D9", "reed", "GND"] }]
}
`,
    },
    {
      about: 'a motor whose diode goes to the supply a little further on',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "crane": { "kind": "dc-motor", "resistance": "20 ohm" },
    "Q1": { "kind": "npn-transistor" },
    "R1": { "kind": "resistor", "value": "330" },
    "catch": { "kind": "diode" }
  },
  "wires": [
    { "path": ["D9", "R1", "Q1.base"] },
    { "from": "Q1.emitter", "to": "GND" },
    { "path": ["5V", "crane", "Q1.collector"] },
    { "path": ["Q1.collector", "catch", "crane.1"] }
  ]
}
`,
    },
    {
      about: 'a lock behind a driver that has its diodes inside',
      build: `
//- sketch.ino
void setup() { pinMode(8, OUTPUT); }
void loop() { digitalWrite(8, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "lock": { "kind": "solenoid", "volts": "5", "resistance": "50 ohm" },
    "driver": { "kind": "darlington-array" }
  },
  "wires": [
    { "from": "D8", "to": "driver.in-1" },
    { "path": ["5V", "lock", "driver.out-1"] },
    { "from": "driver.common", "to": "lock.1" },
    { "from": "driver.-", "to": "GND" }
  ]
}
`,
    },
  ],
});
