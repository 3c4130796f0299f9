/** A supply, or a part fed by one, with plus and minus exchanged. */
import { defineRule } from './rule';
import { swapLamp } from './support/lamp-fixes';
import { reversedSupplies } from './support/reversed-supplies';
import { partOf } from './support/views';

interface Detail {
  readonly part: string;
  readonly element: string;
  readonly plus: string;
  readonly minus: string;
  readonly words: string;
}

export default defineRule<Detail>({
  id: 'supply-reversed',
  title: 'Plus and minus of a supply, or of a part that it feeds, are exchanged.',
  why: 'Hardly a module survives it: the chip’s protection diodes conduct whatever the supply can give.',
  source: 'absolute maximum ratings of nearly every chip: no supply below -0.5 V',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const { element, words } of reversedSupplies(subject)) {
      const part = partOf(subject, element.part);
      if (!part) continue;
      const [plus, minus] = element.primitive.ends;
      yield {
        identity: part.id,
        span: part.span,
        detail: { part: part.id, element: element.id, plus, minus, words },
      };
    }
  },
  message: ({ part, plus, minus, words }) =>
    `${part} is the wrong way round: ${words}. Exchange ${part}.${plus} and ${part}.${minus}.`,
  fixes: ({ part, element, plus, minus }, subject) =>
    swapLamp(subject, part, element).map((fix) => ({
      ...fix,
      title: `Exchange ${part}.${plus} and ${part}.${minus}`,
    })),
  examples: [
    {
      about: 'a pack with its red lead on ground',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "pack": { "kind": "battery", "volts": "9" }
//   ^^^^ supply-reversed [ask]: pack is the wrong way round: its plus is on ground and its minus on VIN
  },
  "wires": [
    { "from": "pack.+", "to": "GND" }, // as it came
    { "from": "pack.-", "to": "VIN" }
  ]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "pack": { "kind": "battery", "volts": "9" }
  },
  "wires": [
    { "from": "pack.-", "to": "GND" }, // as it came
    { "from": "pack.+", "to": "VIN" }
  ]
}
`,
    },
    {
      about: 'a sensor whose supply wires are exchanged',
      build: `
//- sketch.ino
void setup() {}
void loop() { int level = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "light": { "kind": "analog-sensor" }
//   ^^^^^ supply-reversed [ask]: light is the wrong way round: its + is on ground and its - on 5V
  },
  "wires": [
    { "from": "A0", "to": "light.out" },
    { "from": "5V", "to": "light.-" },
    { "from": "GND", "to": "light.+" }
  ]
}
`,
    },
    {
      about: 'two packs in a row, the right way round',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "upper": { "kind": "battery", "volts": "4.8" },
    "lower": { "kind": "battery", "volts": "4.8" }
  },
  "wires": [
    { "from": "upper.+", "to": "VIN" },
    { "from": "upper.-", "to": "lower.+" },
    { "from": "lower.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a sensor fed as it is printed',
      build: `
//- sketch.ino
void setup() {}
void loop() { int level = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "light": { "kind": "analog-sensor" } },
  "wires": [
    { "from": "A0", "to": "light.out" },
    { "from": "5V", "to": "light.+" },
    { "from": "GND", "to": "light.-" }
  ]
}
`,
    },
  ],
});
