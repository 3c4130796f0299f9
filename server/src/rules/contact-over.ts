/** A contact of a switch or relay that carries more than it is made for. */
import { formatQuantity } from '../base/quantity';
import { worst } from '../base/range';
import { defineRule } from './rule';
import { shortedBy, supplyPoles } from './support/shorted-supplies';
import { findShorts } from './support/shorts';
import { placedOf } from './support/supplies';
import { isOverdriven } from './support/told-regions';
import { partOf, worstState } from './support/views';

interface Detail {
  readonly part: string;
  readonly amps: number;
  readonly limit: number;
  readonly state: string;
}

export default defineRule<Detail>({
  id: 'contact-over',
  title: 'A contact carries more current than it is made for.',
  why: 'It burns or welds itself shut, and then the motor no longer stops.',
  source: 'contact rating of the part file, with its document; the current is computed',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    const told = new Set<string>();
    // A short through the contact is told by the rules on shorts.
    const shorted = new Set(
      supplyPoles(subject).flatMap((pole) => shortedBy(subject, pole.net, pole.returns) ?? []),
    );
    for (const { by } of findShorts(subject)) for (const id of by) shorted.add(id);
    for (const contact of placedOf(subject, 'switch')) {
      const limit = contact.primitive.maxAmps;
      const part = partOf(subject, contact.part);
      const region = subject.regions.find((candidate) => candidate.elements.includes(contact));
      if (limit === undefined || !part || !region || told.has(part.id) || shorted.has(part.id)) continue;
      // Where a pin or a junction is destroyed as well, the contact is not what has to be changed.
      const found = worstState(
        subject.points(region),
        contact.id,
        (state) => !isOverdriven(subject, region, state),
      );
      if (!found || Math.abs(found.amps.typ) <= limit) continue;
      told.add(part.id);
      yield {
        identity: part.id,
        span: part.span,
        detail: { part: part.id, amps: worst(found.amps), limit, state: found.state.words },
      };
    }
  },
  message: ({ part, amps, limit, state }) =>
    `${part} carries up to ${formatQuantity(amps, 'A')}${state === '' ? '' : ` (${state})`}, and its contact is made for ` +
    `${formatQuantity(limit, 'A')}. Let it switch a relay or a transistor, or take a stronger one.`,
  examples: [
    {
      about: 'a motor straight on a tact switch',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "pack": { "kind": "battery", "volts": "3" },
    "hoist": { "kind": "tact-switch" },
//   ^^^^^ contact-over: hoist carries up to
    "winch": { "kind": "dc-motor", "resistance": "4 ohm" },
    "X1": { "kind": "diode" }
  },
  "wires": [
    { "path": ["pack.+", "hoist", "winch", "pack.-"] },
    { "path": ["winch.2", "X1", "winch.1"] }
  ]
}
`,
    },
    {
      about: 'a strip on a toggle switch for 500 mA',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
    "master": { "kind": "toggle-switch", "maxCurrent": "500 mA" },
//   ^^^^^^ contact-over: master carries up to 1.2 A (master closed), and its contact is made for 500 mA
    "quayLight": { "kind": "led-strip", "metres": 1 }
  },
  "wires": [
    { "path": ["block.+", "master", "quayLight.+"] },
    { "from": "quayLight.-", "to": "block.-" }
  ]
}
`,
    },
    {
      about: 'the same strip on one for 2 A',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
    "master": { "kind": "toggle-switch", "maxCurrent": "2 A" },
    "quayLight": { "kind": "led-strip", "metres": 1 }
  },
  "wires": [
    { "path": ["block.+", "master", "quayLight.+"] },
    { "from": "quayLight.-", "to": "block.-" }
  ]
}
`,
    },
    {
      about: 'a key pad, whose library drives one column at a time',
      build: `
//- sketch.ino
#include <Keypad.h>
char keys[4][3] = { { '1', '2', '3' }, { '4', '5', '6' }, { '7', '8', '9' }, { '*', '0', '#' } };
byte rowPins[4] = { 5, 4, 8, 9 };
byte columnPins[3] = { 3, 2, 6 };
Keypad pad(makeKeymap(keys), rowPins, columnPins, 4, 3);
void setup() {}
void loop() { if (pad.getKey()) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "pad": { "kind": "keypad-matrix", "size": "4x3" }
  },
  "wires": [
    { "from": "D5", "to": "pad.row-1" },
    { "from": "D4", "to": "pad.row-2" },
    { "from": "D8", "to": "pad.row-3" },
    { "from": "D9", "to": "pad.row-4" },
    { "from": "D3", "to": "pad.column-1" },
    { "from": "D2", "to": "pad.column-2" },
    { "from": "D6", "to": "pad.column-3" }
  ]
}
`,
    },
    {
      about: 'a tact switch that tells a pin',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); }
void loop() { if (digitalRead(2) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "hoist": { "kind": "tact-switch" } },
  "wires": [
    { "from": "D2", "to": "hoist.1a" },
    { "from": "hoist.2a", "to": "GND" }
  ]
}
`,
    },
  ],
});
