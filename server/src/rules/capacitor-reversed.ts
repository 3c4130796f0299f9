/** An electrolytic capacitor that gets its voltage the wrong way round. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { chargedCapacitors } from './support/capacitor-volts';
import { swapLamp } from './support/lamp-fixes';
import { partOf } from './support/views';

interface Detail {
  readonly part: string;
  readonly element: string;
  readonly plus: string;
  readonly volts: number;
  readonly state: string;
}

export default defineRule<Detail>({
  id: 'capacitor-reversed',
  title: 'A polarised capacitor is the wrong way round.',
  why: 'It leaks, gets hot and bursts, at once or after an hour.',
  source: 'common practice; the voltage is computed',
  severity: 'error',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    const told = new Set<string>();
    for (const { capacitor, volts, state } of chargedCapacitors(subject)) {
      const part = partOf(subject, capacitor.part);
      // Below zero for certain, in whatever corner the tolerances stand.
      if (!part || capacitor.primitive.polarised !== true || told.has(part.id)) continue;
      if (volts.max >= 0 || volts.typ > -reverse) continue;
      told.add(part.id);
      yield {
        identity: part.id,
        span: part.span,
        related: subject.build.wires
          .filter(({ ends }) => ends.some((end) => end.kind === 'terminal' && end.part === part.id))
          .map(({ span }) => ({ message: `${part.id} is wired here`, span })),
        detail: {
          part: part.id,
          element: capacitor.id,
          plus: capacitor.primitive.ends[0],
          volts: -volts.typ,
          state,
        },
      };
    }
  },
  message: ({ part, plus, volts, state }) =>
    `${part} is the wrong way round: its ${plus} lies ${formatQuantity(volts, 'V')} below the other end` +
    `${state ? ` (${state})` : ''}. Turn it round.`,
  fixes: ({ part, element }, subject) => swapLamp(subject, part, element),
  examples: [
    {
      about: 'a capacitor beside a strip, plus to ground',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "16 V" } // the tall one
//   ^^ capacitor-reversed [ask]: C1 is the wrong way round: its + lies 5.0 V below the other end
  },
  "wires": [
    { "from": "5V", "to": "C1.-" },
    { "from": "C1.+", "to": "GND" }
  ]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "16 V" } // the tall one
  },
  "wires": [
    { "from": "5V", "to": "C1.+" },
    { "from": "C1.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a capacitor on a battery, entered from the wrong side',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "pack": { "kind": "battery", "volts": "9" },
    "C1": { "kind": "electrolytic-capacitor", "value": "100 uF", "volts": "16 V" }
//   ^^ capacitor-reversed: C1 is the wrong way round
  },
  "wires": [
    { "from": "pack.-", "to": "GND" },
    { "path": ["GND", "C1", "pack.+"] }
  ]
}
`,
    },
    {
      about: 'a capacitor the right way round',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "16 V" } },
  "wires": [{ "path": ["5V", "C1", "GND"] }]
}
`,
    },
    {
      about: 'one without polarity stands either way',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "C1": { "kind": "capacitor", "value": "100 nF" } },
  "wires": [{ "path": ["GND", "C1", "5V"] }]
}
`,
    },
  ],
});

/** A few tenths of a volt the wrong way round hurt no electrolytic capacitor, volts (common practice). */
const reverse = 0.5;
