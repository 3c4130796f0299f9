/** A fuse that what feeds it can never make open. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { fusesOf } from './support/fuses';
import { feedersOf } from './support/supplies';
import { partOf } from './support/views';

interface Detail {
  readonly part: string;
  readonly rated: number;
  readonly source: string;
  readonly gives: number;
}

export default defineRule<Detail>({
  id: 'fuse-too-large',
  title: 'A fuse is rated higher than all that its source can give.',
  why: 'It never opens: a short lasts until the source gives up or the wire does.',
  source: 'rated current of the fuse and current of the source as declared',
  severity: 'information',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const { fuse, rated } of fusesOf(subject)) {
      const part = partOf(subject, fuse.part);
      const feeders = feedersOf(subject, fuse.nets[0]);
      const [source] = feeders;
      const gives = source?.source?.primitive.maxAmps ?? source?.pin?.maxAmps?.max;
      // Between two supplies, or behind one of unknown strength, nothing can be said.
      if (!part || !source || feeders.length > 1 || gives === undefined || rated <= gives) continue;
      yield {
        identity: part.id,
        span: part.valueSpans.current ?? part.span,
        detail: { part: part.id, rated, source: source.name, gives },
      };
    }
  },
  message: ({ part, rated, source, gives }) =>
    `${part} is rated ${formatQuantity(rated, 'A')}, and ${source} gives ${formatQuantity(gives, 'A')} at the most: ` +
    'it never opens. Take a fuse well below that.',
  examples: [
    {
      about: 'a fuse of 3 A behind an adapter of 2 A',
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
    "F1": { "kind": "fuse", "current": "3 A" },
//                                      ^^^ fuse-too-large: F1 is rated 3.0 A, and block gives 2.0 A at the most
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
      about: 'a fuse in the line from the 3.3 V pin of a board',
      build: `
//- sketch.ino
void setup() {}
void loop() { int level = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "F1": { "kind": "fuse", "current": "100 mA" },
//                                      ^^^^^^ fuse-too-large: F1 is rated 100 mA, and 3V3 gives 50 mA at the most
    "light": { "kind": "analog-sensor", "supply": "3.3" }
  },
  "wires": [
    { "path": ["3V3", "F1", "light.+"] },
    { "from": "A0", "to": "light.out" },
    { "from": "light.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a fuse between what flows and what the adapter gives',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "12", "maxCurrent": "4 A" },
    "F1": { "kind": "fuse", "current": "2 A" },
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
      about: 'an adapter of which nobody knows what it gives',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "12" },
    "F1": { "kind": "fuse", "current": "3 A" },
    "quayLight": { "kind": "led-strip", "metres": 1 }
  },
  "wires": [
    { "path": ["block.+", "F1", "quayLight.+"] },
    { "from": "quayLight.-", "to": "block.-" }
  ]
}
`,
    },
  ],
});
