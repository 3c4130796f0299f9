/** A gate that nothing holds until the sketch makes its pin an output. */
import type { Fix } from '../base/finding';
import { insertPart, insertWire } from '../hardware';
import { defineRule } from './rule';
import type { Placed, Subject } from './subject';
import { railsAmong, reach } from './support/conduction';
import { draftManifest } from './support/draft';
import { fieldEffect, pinsAtGate } from './support/gates';
import { nextName, pullValue } from './support/manifest-edits';
import { partOf, relatedOf } from './support/views';

interface Detail {
  readonly part: string;
  readonly gate: string;
  readonly source: string;
  readonly pin: string;
  readonly loads: readonly string[];
}

export default defineRule<Detail>({
  id: 'floating-control',
  title: 'A transistor’s gate floats until the sketch runs.',
  why: 'From power-up to setup(), and for the whole of an upload, a motor may run or a lock may open by itself.',
  source: 'state of the pins at reset in the chip’s data sheet; common practice',
  severity: 'warning',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    // A pull in the chip holds the gate, and where nobody knows the state nothing can be said.
    if (subject.build.board.limits.pinsAtReset?.state !== 'input') return;
    for (const transistor of fieldEffect(subject)) {
      const { third, nets, primitive } = transistor;
      const part = partOf(subject, transistor.part);
      const pins = pinsAtGate(subject, transistor);
      const [view] = pins;
      // A strapped pin is held by the board; several pins have an understanding of their own.
      if (third === undefined || !part || !view || pins.length !== 1 || view.pin.boot) continue;
      const held = reach(subject, third, { switches: {}, resistances: true });
      if (railsAmong(subject, held).length > 0 || held.has(nets[1])) continue;
      if (others(subject, held, part.id)) continue;
      const loads = loadsAt(subject, nets[0], part.id);
      if (loads.length === 0) continue;
      yield {
        identity: part.id,
        span: part.span,
        related: view.uses[0] ? relatedOf(view, view.uses[0]) : [],
        detail: {
          part: part.id,
          gate: primitive.control,
          source: primitive.ends[1],
          pin: view.pin.id,
          loads,
        },
      };
    }
  },
  message: ({ part, gate, source, pin, loads }) =>
    `${part}.${gate} floats until the sketch makes ${pin} an output, so ${loads[0]} may be on from power-up and during an ` +
    `upload: put a resistor from ${part}.${gate} to ${part}.${source}.`,
  fixes: ({ part, gate, source }, subject) => {
    const value = pullValue(subject);
    if (value === undefined) return [];
    const id = nextName(subject, 'R');
    const fix: Fix = {
      title: `Declare a ${value} resistor from ${part}.${gate} to ${part}.${source}`,
      trust: 'ask',
      edits: draftManifest(subject, [
        (text, file) => insertPart(text, id, { kind: 'resistor', value }, file),
        (text, file) => insertWire(text, { path: [`${part}.${gate}`, id, `${part}.${source}`] }, file),
      ]),
    };
    return [fix];
  },
  examples: [
    {
      about: 'a lock behind a transistor with a bare gate',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "wall": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
    "lock": { "kind": "solenoid", "volts": "12" },
    "catch": { "kind": "diode" },
    "Q1": { "kind": "n-mosfet", "type": "irlz44n" } // on a heat sink
//   ^^ floating-control [ask]: Q1.gate floats until the sketch makes D9 an output, so lock may be on
  },
  "wires": [
    { "from": "D9", "to": "Q1.gate" },
    { "from": "Q1.source", "to": "GND" },
    { "path": ["wall.+", "lock", "Q1.drain"] },
    { "path": ["lock.2", "catch", "lock.1"] },
    { "from": "wall.-", "to": "Q1.source" }
  ]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "wall": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
    "lock": { "kind": "solenoid", "volts": "12" },
    "catch": { "kind": "diode" },
    "Q1": { "kind": "n-mosfet", "type": "irlz44n" }, // on a heat sink
    "R1": { "kind": "resistor", "value": "10k" }
  },
  "wires": [
    { "from": "D9", "to": "Q1.gate" },
    { "from": "Q1.source", "to": "GND" },
    { "path": ["wall.+", "lock", "Q1.drain"] },
    { "path": ["lock.2", "catch", "lock.1"] },
    { "from": "wall.-", "to": "Q1.source" },
    { "path": ["Q1.gate", "R1", "Q1.source"] }
  ]
}
`,
    },
    {
      about: 'a resistor between pin and gate holds nothing',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "mega-2560",
  "parts": {
    "lamps": { "kind": "led-strip", "metres": "1" },
    "wall": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
    "R1": { "kind": "resistor", "value": "220" },
    "Q1": { "kind": "n-mosfet", "type": "irlz44n" }
//   ^^ floating-control [ask]: so lamps may be on from power-up
  },
  "wires": [
    { "path": ["D9", "R1", "Q1.gate"] },
    { "from": "Q1.source", "to": "GND" },
    { "from": "wall.+", "to": "lamps.+" },
    { "from": "lamps.-", "to": "Q1.drain" },
    { "from": "wall.-", "to": "Q1.source" }
  ]
}
`,
    },
    {
      about: 'a board whose pins pull down at reset',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "lamps": { "kind": "led-strip", "metres": "1" },
    "wall": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
    "Q1": { "kind": "n-mosfet", "type": "ao3400a" }
  },
  "wires": [
    { "from": "GP9", "to": "Q1.gate" },
    { "from": "Q1.source", "to": "GND" },
    { "from": "wall.+", "to": "lamps.+" },
    { "from": "lamps.-", "to": "Q1.drain" },
    { "from": "wall.-", "to": "Q1.source" }
  ]
}
`,
    },
  ],
});

/** True where anything with a life of its own is on the gate's nets. */
function others(subject: Subject, nets: ReadonlySet<string>, own: string): boolean {
  return subject.placed.some(
    ({ primitive: { type }, part, nets: ends, third }) =>
      part !== own &&
      (type === 'transistor' || type === 'logic-output' || type === 'diode') &&
      (ends.some((net) => nets.has(net)) || (third !== undefined && nets.has(third))),
  );
}

/** Parts that the transistor switches. */
function loadsAt(subject: Subject, drain: string, own: string): readonly string[] {
  if (subject.rails[drain] !== undefined) return [];
  const nets = reach(subject, drain, { switches: {}, resistances: false });
  const found = subject.placed.filter(
    ({ primitive, part, nets: ends, onBoard }) =>
      !onBoard && part !== own && primitive.type !== 'capacitor' && ends.some((net) => nets.has(net)),
  );
  // A diode across a load is not what anybody hears or sees.
  const weight = ({ primitive: { type } }: Placed) => (type === 'coil' || type === 'load' ? 0 : 1);
  return [...new Set([...found].sort((a, b) => weight(a) - weight(b)).map(({ part }) => part))];
}
