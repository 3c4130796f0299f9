/** A supply of its own whose minus is not joined to the board's ground, while a signal goes from one to the other. */
import { insertWire } from '../hardware';
import { defineRule } from './rule';
import { draftManifest } from './support/draft';
import { groundEnd } from './support/manifest-edits';
import { partedGrounds } from './support/parted-grounds';
import { listWords, wiresRelated } from './support/views';

interface Detail {
  readonly part: string;
  readonly terminal: string;
  readonly pins: readonly string[];
}

export default defineRule<Detail>({
  id: 'grounds-apart',
  title: 'A part with a supply of its own shares a signal with the board, but not its ground.',
  why: 'A signal is a voltage against ground. Without a common one the servo twitches and serial data is garbage.',
  source: 'common practice',
  severity: 'error',
  maturity: 'settled',
  needs: 'hardware',
  *check(subject) {
    for (const { part, terminal, views } of partedGrounds(subject)) {
      const [first] = views;
      if (!first) continue;
      yield {
        identity: part.id,
        span: part.span,
        related: wiresRelated(first.wires, first.pin.id),
        detail: { part: part.id, terminal, pins: views.map((view) => view.pin.id) },
      };
    }
  },
  message: ({ part, terminal, pins }) =>
    `${part}.${terminal} is not joined to the board’s ground, and ${listWords(pins)} ` +
    `${pins.length > 1 ? 'lead' : 'leads'} to what ${part} feeds: the signal has no return. Join the grounds.`,
  fixes({ part, terminal }, subject) {
    const ground = groundEnd(subject);
    if (ground === undefined) return [];
    const name = `${part}.${terminal}`;
    return [
      {
        title: `Declare a wire from ${name} to ${ground}`,
        trust: 'ask',
        edits: draftManifest(subject, [
          (text, file) => insertWire(text, { from: name, to: ground, colour: 'black' }, file),
        ]),
      },
    ];
  },
  examples: [
    {
      about: 'a servo on its own pack, with nothing but the signal wire to the board',
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
    "pack": { "kind": "battery", "volts": "4.8" }
//   ^^^^ grounds-apart [ask]: pack.- is not joined to the board’s ground, and D9 leads to what pack feeds
  },
  "wires": [
    { "from": "D9", "to": "gate.signal", "colour": "yellow" },
    { "from": "pack.+", "to": "gate.+", "colour": "red" },
    { "from": "pack.-", "to": "gate.-", "colour": "black" }
  ]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "gate": { "kind": "servo" },
    "pack": { "kind": "battery", "volts": "4.8" }
  },
  "wires": [
    { "from": "D9", "to": "gate.signal", "colour": "yellow" },
    { "from": "pack.+", "to": "gate.+", "colour": "red" },
    { "from": "pack.-", "to": "gate.-", "colour": "black" },
    { "from": "pack.-", "to": "GND@left.14", "colour": "black" }
  ]
}
`,
    },
    {
      about: 'a transistor that switches another pack, whose emitter went to that pack alone',
      build: `
//- sketch.ino
void setup() { pinMode(15, OUTPUT); }
void loop() { digitalWrite(15, HIGH); delay(500); digitalWrite(15, LOW); delay(500); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "pack": { "kind": "battery", "volts": "6" },
//   ^^^^ grounds-apart [ask]: pack.- is not joined to the board’s ground, and GP15 leads to what pack feeds
    "floodlight": { "kind": "filament-lamp", "hotOhms": "60" },
    "switcher": { "kind": "npn-transistor" },
    "R1": { "kind": "resistor", "value": "1k" }
  },
  "wires": [
    { "path": ["GP15", "R1", "switcher.base"] },
    { "path": ["pack.+", "floodlight", "switcher.collector"] },
    { "from": "switcher.emitter", "to": "pack.-" }
  ]
}
`,
    },
    {
      about: 'a switch in the joined ground',
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
    "gate": { "kind": "servo" },
    "master": { "kind": "toggle-switch" },
    "pack": { "kind": "battery", "volts": "4.8" }
  },
  "wires": [
    { "from": "D9", "to": "gate.signal" },
    { "from": "pack.+", "to": "gate.+" },
    { "path": ["pack.-", "master", "gate.-"] },
    { "from": "gate.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a circuit of its own that shares nothing with the board',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "pack": { "kind": "battery", "volts": "6" },
    "nightLamp": { "kind": "filament-lamp", "hotOhms": "60" },
    "master": { "kind": "toggle-switch" }
  },
  "wires": [
    { "path": ["pack.+", "master", "nightLamp", "pack.-"] }
  ]
}
`,
    },
  ],
});
