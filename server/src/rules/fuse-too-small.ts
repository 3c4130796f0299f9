/** A fuse that carries more than its rating as a matter of course. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { fusesOf } from './support/fuses';
import { partOf } from './support/views';

interface Detail {
  readonly part: string;
  readonly amps: number;
  readonly rated: number;
  readonly state: string;
}

export default defineRule<Detail>({
  id: 'fuse-too-small',
  title: 'A fuse carries more than its rated current while all is well.',
  why: 'It opens in use, and sooner or later somebody puts a piece of wire in its place.',
  source: 'rated current of the fuse as declared; the current is computed',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const { fuse, rated, amps, state } of fusesOf(subject)) {
      const part = partOf(subject, fuse.part);
      if (!part || amps.typ <= rated) continue;
      yield {
        identity: part.id,
        span: part.valueSpans.current ?? part.span,
        detail: { part: part.id, amps: amps.typ, rated, state },
      };
    }
  },
  message: ({ part, amps, rated, state }) =>
    `${part} carries ${formatQuantity(amps, 'A')}${state === '' ? '' : ` (${state})`}, and it is rated ` +
    `${formatQuantity(rated, 'A')}. Take a fuse above what flows, and below what the wire carries.`,
  examples: [
    {
      about: 'a fuse of 500 mA before a strip that takes 800 mA',
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
    "F1": { "kind": "fuse", "current": "500 mA" },
//                                      ^^^^^^ fuse-too-small: F1 carries 800 mA, and it is rated 500 mA
    "quayLight": { "kind": "led-strip", "metres": 1 }
  },
  "wires": [
    { "path": ["block.+", "F1", "quayLight.+"] },
    { "from": "quayLight.-", "to": "block.-" }
  ]
}
`,
    },
    {
      about: 'a motor that is blocked at the moment it starts',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "pack": { "kind": "battery", "volts": "6", "resistance": "0.1 ohm" },
    "F1": { "kind": "resettable-fuse", "current": "500 mA", "resistance": "0.2 ohm" },
//                                                 ^^^^^^ fuse-too-small: F1 carries 1.4 A (master closed), and it is rated 500 mA
    "master": { "kind": "toggle-switch", "maxCurrent": "3 A" },
    "winch": { "kind": "dc-motor", "resistance": "4 ohm" },
    "X1": { "kind": "diode" }
  },
  "wires": [
    { "path": ["pack.+", "F1", "master", "winch", "pack.-"] },
    { "path": ["winch.2", "X1", "winch.1"] }
  ]
}
`,
    },
    {
      about: 'a fuse of 1 A before the same strip',
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
    "F1": { "kind": "fuse", "current": "1 A" },
    "quayLight": { "kind": "led-strip", "metres": 1 }
  },
  "wires": [
    { "path": ["block.+", "F1", "quayLight.+"] },
    { "from": "quayLight.-", "to": "block.-" }
  ]
}
`,
    },
    {
      about: 'a fuse for which nobody knows what flows',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "9", "maxCurrent": "1 A" },
    "F1": { "kind": "fuse", "current": "500 mA" }
  },
  "wires": [
    { "path": ["block.+", "F1", "VIN"] },
    { "from": "GND", "to": "block.-" }
  ]
}
`,
    },
  ],
});
