/** A diode in a feed with its ring towards the supply: nothing comes through. */
import { defineRule } from './rule';
import { blockedFeeds } from './support/blocked-feeds';
import { swapLamp } from './support/lamp-fixes';
import { partOf } from './support/views';

interface Detail {
  readonly part: string;
  readonly element: string;
  readonly towards: string;
  readonly starved: string;
}

export default defineRule<Detail>({
  id: 'series-diode-reversed',
  title: 'A diode in a feed is the wrong way round.',
  why: 'It blocks all that the supply gives: what hangs behind it stays dead.',
  source: 'common practice',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const { diode, towards, starved } of blockedFeeds(subject)) {
      const part = partOf(subject, diode.part);
      if (!part) continue;
      yield {
        identity: part.id,
        span: part.span,
        detail: { part: part.id, element: diode.id, towards, starved },
      };
    }
  },
  message: ({ part, towards, starved }) =>
    `${part} is the wrong way round: with its ${towards} towards ${starved} it lets nothing through, and ${starved} has no ` +
    'other feed. Turn it round.',
  fixes: ({ part, element }, subject) => swapLamp(subject, part, element),
  examples: [
    strip('the ring towards the adapter', ['block.+', 'X1.cathode'], ['X1.anode', 'quayLight.+'], true),
    strip('the ring towards the strip', ['block.+', 'X1.anode'], ['X1.cathode', 'quayLight.+'], false),
    {
      about: 'a diode that keeps a pack from the board’s own feed, and keeps it out too',
      build: packed('X1.cathode', 'X1.anode', true),
      fixed: packed('X1.anode', 'X1.cathode', false),
    },
    { about: 'the same the right way', build: packed('X1.anode', 'X1.cathode', false) },
    {
      about: 'two supplies that take turns, each by its own diode',
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
    "pack": { "kind": "battery", "volts": "12" },
    "X1": { "kind": "diode" },
    "X2": { "kind": "diode" },
    "quayLight": { "kind": "led-strip", "metres": 1 }
  },
  "wires": [
    { "path": ["block.+", "X1", "quayLight.+"] },
    { "path": ["pack.+", "X2", "quayLight.+"] },
    { "from": "quayLight.-", "to": "block.-" },
    { "from": "quayLight.-", "to": "pack.-" }
  ]
}
`,
    },
    {
      about: 'a diode across a motor',
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
    "master": { "kind": "toggle-switch" },
    "winch": { "kind": "dc-motor", "resistance": "40 ohm" },
    "X1": { "kind": "diode" }
  },
  "wires": [
    { "path": ["pack.+", "winch", "master", "pack.-"] },
    { "path": ["winch.2", "X1", "winch.1"] }
  ]
}
`,
    },
  ],
});

function strip(about: string, first: readonly string[], second: readonly string[], wrong: boolean) {
  const text = (one: readonly string[], other: readonly string[], mark = '') => `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
    "X1": { "kind": "diode" },${mark}
    "quayLight": { "kind": "led-strip", "metres": 1 }
  },
  "wires": [
    { "from": "${one[0]}", "to": "${one[1]}" },
    { "from": "${other[0]}", "to": "${other[1]}" },
    { "from": "quayLight.-", "to": "block.-" }
  ]
}
`;
  if (!wrong) return { about, build: text(first, second) };
  const mark =
    '\n//   ^^ series-diode-reversed [ask]: with its anode towards quayLight.+ it lets nothing through';
  return {
    about,
    build: text(first, second, mark),
    fixed: text(['block.+', 'X1.anode'], ['X1.cathode', 'quayLight.+']),
  };
}

function packed(first: string, second: string, wrong: boolean) {
  const mark = wrong
    ? '\n//   ^^ series-diode-reversed [ask]: with its anode towards VIN it lets nothing through'
    : '';
  return `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "pack": { "kind": "battery", "volts": "9" },
    "X1": { "kind": "diode" }${mark}
  },
  "wires": [
    { "from": "pack.+", "to": "${first}" },
    { "from": "${second}", "to": "VIN" },
    { "from": "pack.-", "to": "GND" }
  ]
}
`;
}
