/** A supply of its own whose minus is not joined to the board's ground, while a signal goes from one to the other. */
import { insertWire } from '../hardware';
import { defineRule } from './rule';
import type { Placed, Subject } from './subject';
import { draftManifest } from './support/draft';
import { groundEnd } from './support/manifest-edits';
import { groundNets, placedOf } from './support/supplies';
import { isSignal, listWords, partOf, wiresRelated } from './support/views';
import { walk } from './support/walk';

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
    const grounds = groundNets(subject);
    if (grounds.size === 0 || subject.doubtful.length > 0) return;
    const told = new Set<string>();
    const isPin = (net: string) => subject.pins.some((view) => view.net.id === net);
    for (const source of placedOf(subject, 'source')) {
      const [, minus] = source.nets;
      const terminal = source.primitive.ends[1];
      const part = partOf(subject, source.part);
      // A minus without any wire is an open terminal, which another rule tells.
      const isWired = subject.build.nets.some(({ id }) => id === minus);
      if (!part || !isWired || told.has(minus) || isPlusOfAnother(subject, source)) continue;
      const held = walk(subject, [minus], mayJoin, isPin);
      if ([...held].some((net) => grounds.has(net))) continue;
      const touched = walk(subject, [...held], (element) => element.primitive.type !== 'capacitor', isPin);
      const views = subject.pins.filter((view) => isSignal(view) && touched.has(view.net.id));
      const [first] = views;
      if (!first) continue;
      told.add(minus);
      for (const net of held) told.add(net);
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

/** Whatever may join two grounds, be it badly: of such a build nothing is said here. */
function mayJoin({ primitive }: Placed): boolean {
  return ['switch', 'resistor', 'coil', 'diode', 'transistor', 'potentiometer'].includes(primitive.type);
}

/** The upper one of two packs in a row: its minus is the other's plus. */
function isPlusOfAnother(subject: Subject, source: Placed): boolean {
  return placedOf(subject, 'source').some((other) => other !== source && other.nets[0] === source.nets[1]);
}
