/** A part of which nobody said what it is for, among others of which somebody did. */
import type { Primitive } from '../base/primitive';
import { defineRule } from './rule';

interface Detail {
  readonly part: string;
  readonly title: string;
}

/** What a part needs to do something that a person sees, presses or feels. */
const seen: ReadonlySet<Primitive['type']> = new Set(['switch', 'load', 'coil', 'potentiometer', 'source']);

export default defineRule<Detail>({
  id: 'purpose-missing',
  title: 'A part has no purpose, while others have one.',
  why: 'The build guide and its tests say of every part what it does; of this one they cannot.',
  source: 'common practice',
  severity: 'hint',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const { parts } = subject.build;
    const matters = parts.filter(({ inside }) =>
      inside.some((one) => seen.has(one.type) || (one.type === 'diode' && one.lamp)),
    );
    const missing = matters.filter(({ purpose }) => purpose === undefined);
    // Where most have none, nobody means to write any.
    if (missing.length * 2 >= matters.length) return;
    for (const { id, title, span } of missing) yield { identity: id, span, detail: { part: id, title } };
  },
  message: ({ part, title }) => `${part} has no "purpose": say in a few words what this ${title} is for.`,
  examples: [
    {
      about: 'one of three parts was forgotten',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); pinMode(3, INPUT_PULLUP); pinMode(4, INPUT_PULLUP); }
void loop() { if (digitalRead(2) + digitalRead(3) + digitalRead(4) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "call": { "kind": "push-button", "purpose": "calls the harbour master" },
    "stop": { "kind": "push-button", "purpose": "stops the gate" },
    "bell": { "kind": "push-button" }
//   ^^^^ purpose-missing: bell has no "purpose": say in a few words what this push-button is for
  },
  "wires": [
    { "path": ["D2", "call", "GND"] },
    { "path": ["D3", "stop", "call.2"] },
    { "path": ["D4", "bell", "stop.2"] }
  ]
}
`,
    },
    {
      about: 'a lamp without one; its resistor needs none',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); pinMode(15, INPUT_PULLUP); pinMode(14, OUTPUT); }
void loop() { digitalWrite(14, digitalRead(2) && digitalRead(15)); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "call": { "kind": "push-button", "purpose": "calls the harbour master" },
    "stop": { "kind": "push-button", "purpose": "stops the gate" },
    "beacon": { "kind": "led", "colour": "red" },
//   ^^^^^^ purpose-missing: beacon has no "purpose"
    "R1": { "kind": "resistor", "value": "1k" }
  },
  "wires": [
    { "path": ["GP2", "call", "GND"] },
    { "path": ["GP15", "stop", "GND"] },
    { "path": ["GP14", "R1", "beacon", "GND"] }
  ]
}
`,
    },
    {
      about: 'every part that does something has one',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green", "purpose": "lit at high water" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`,
    },
    {
      about: 'half of them have one: nobody means to write them all',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); pinMode(3, INPUT_PULLUP); }
void loop() { if (digitalRead(2) == LOW || digitalRead(3) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "call": { "kind": "push-button", "purpose": "calls the harbour master" },
    "stop": { "kind": "push-button" }
  },
  "wires": [
    { "path": ["D2", "call", "GND"] },
    { "path": ["D3", "stop", "GND"] }
  ]
}
`,
    },
  ],
});
