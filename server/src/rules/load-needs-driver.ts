/** A motor, relay or other load straight on a pin that cannot feed it. */
import { formatQuantity } from '../base/quantity';
import type { Range } from '../base/range';
import { defineRule } from './rule';
import { findDirectLoads } from './support/direct-loads';
import { partOf, relatedOf, wiresRelated } from './support/views';

interface Detail {
  readonly part: string;
  readonly pin: string;
  readonly state: string;
  readonly amps: Range;
  readonly limit: number;
  readonly limitText: string;
  /** A winding needs a diode as well; a sounder's is small and alternating. */
  readonly kind: 'winding' | 'sounder' | 'load';
}

const cures: Readonly<Record<Detail['kind'], string>> = {
  winding: 'put a transistor between them, and a diode across the winding.',
  sounder: 'put a transistor or a larger resistor between them.',
  load: 'feed it from the supply, or put a transistor between them.',
};

export default defineRule<Detail>({
  id: 'load-needs-driver',
  title: 'A load takes more current than the pin it hangs on can give.',
  why: 'The load does not start, the board resets, and the pin dies within seconds or weeks.',
  source:
    'DC current per I/O pin in the chip’s datasheet; the current is computed with the pin’s own resistance',
  severity: 'error',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    const told = new Set<string>();
    for (const { load, view, use, state, amps, limits } of findDirectLoads(subject)) {
      const part = partOf(subject, load.part);
      if (!part || told.has(part.id)) continue;
      told.add(part.id);
      const others = findDirectLoads(subject).filter(
        (other) => other.load.part === part.id && other.view !== view,
      );
      const over = Math.abs(amps.typ) > limits.absolute.amps;
      const limit = over ? limits.absolute : limits.working;
      yield {
        identity: part.id,
        span: part.span,
        related: [
          { message: `${view.pin.id} is driven here`, span: use.span },
          ...relatedOf(view, use),
          ...others.flatMap((other) => wiresRelated(other.view.wires, other.view.pin.id)),
        ],
        severity: over ? 'error' : 'warning',
        detail: {
          part: part.id,
          pin: view.pin.id,
          state: state.words,
          amps,
          limit: limit.amps,
          limitText: over ? 'at most' : 'for good',
          kind: load.primitive.type !== 'coil' ? 'load' : use.action === 'tone' ? 'sounder' : 'winding',
        },
      };
    }
  },
  message: ({ part, pin, state, amps, limit, limitText, kind }) =>
    `${part} takes ${formatQuantity(Math.abs(amps.typ), 'A')} straight from ${pin} (${state}), and the pin carries ` +
    `${formatQuantity(limit, 'A')} ${limitText}: ${cures[kind]}`,
  examples: [
    {
      about: 'a motor straight on a pin',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "crane": { "kind": "dc-motor" }
//   ^^^^^ load-needs-driver: crane takes 172 mA straight from D9 (D9 high), and the pin carries 40 mA at most
  },
  "wires": [{ "path": ["D9", "crane", "GND"] }]
}
`,
    },
    {
      about: 'a lock’s coil between the supply and a pin that pulls it low',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "lock": { "kind": "solenoid", "volts": "5" }
//   ^^^^ load-needs-driver: lock takes
  },
  "wires": [{ "path": ["5V", "lock", "D9"] }]
}
`,
    },
    {
      about: 'a small relay that a strong pin feeds by itself, with its diode',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "reed": { "kind": "solenoid", "volts": "5", "resistance": "500 ohm" },
    "catch": { "kind": "diode" }
  },
  "wires": [
    { "path": ["D9", "reed", "GND"] },
    { "path": ["reed.2", "catch", "reed.1"] }
  ]
}
`,
    },
    {
      about: 'the motor behind a transistor',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "crane": { "kind": "dc-motor", "resistance": "20 ohm" },
    "Q1": { "kind": "npn-transistor" },
    "R1": { "kind": "resistor", "value": "330" },
    "catch": { "kind": "diode" }
  },
  "wires": [
    { "path": ["D9", "R1", "Q1.base"] },
    { "from": "Q1.emitter", "to": "GND" },
    { "path": ["5V", "crane", "Q1.collector"] },
    { "path": ["crane.2", "catch", "crane.1"] }
  ]
}
`,
    },
  ],
});
