/** A capacitor that gets more volts than it stands. */
import { formatQuantity } from '../base/quantity';
import { type Range, worst } from '../base/range';
import { defineRule } from './rule';
import { chargedCapacitors } from './support/capacitor-volts';
import { partOf } from './support/views';

interface Detail {
  readonly part: string;
  readonly volts: Range;
  readonly stands: number;
  readonly state: string;
  readonly sure: boolean;
}

export default defineRule<Detail>({
  id: 'capacitor-over-voltage',
  title: 'A capacitor gets more volts than it stands.',
  why: 'An electrolytic one bursts; a ceramic one cracks to a short.',
  source: 'rated voltage of the part; the voltage is computed',
  severity: 'error',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    const told = new Set<string>();
    for (const { capacitor, volts, state } of chargedCapacitors(subject)) {
      const part = partOf(subject, capacitor.part);
      const stands = capacitor.primitive.maxVolts;
      if (!part || stands === undefined || worst(volts) <= stands || told.has(part.id)) continue;
      told.add(part.id);
      const sure = Math.abs(volts.typ) > stands;
      yield {
        identity: part.id,
        span: part.valueSpans.volts ?? part.span,
        severity: sure ? 'error' : 'warning',
        detail: { part: part.id, volts, stands, state, sure },
      };
    }
  },
  message: ({ part, volts, stands, state, sure }) =>
    `${part} gets ${sure ? '' : 'up to '}${formatQuantity(sure ? Math.abs(volts.typ) : worst(volts), 'V')}` +
    `${state ? ` (${state})` : ''}, and it stands ${formatQuantity(stands, 'V')}: take one for more volts.`,
  examples: [
    {
      about: 'a capacitor for 6.3 V on an adapter of 9 V',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "wall": { "kind": "power-adapter", "volts": "9", "maxCurrent": "1 A" },
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "6.3 V" }
//                                                                         ^^^^^ capacitor-over-voltage: C1 gets 9.0 V, and it stands 6.3 V
  },
  "wires": [
    { "from": "wall.+", "to": "VIN" },
    { "from": "wall.-", "to": "GND" },
    { "path": ["wall.+", "C1", "wall.-"] }
  ]
}
`,
    },
    {
      about: 'a capacitor that a fresh battery brings over what it stands',
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
    "C1": { "kind": "electrolytic-capacitor", "value": "100 uF", "volts": "10 V" }
//                                                                         ^^^^ capacitor-over-voltage: C1 gets up to 10.8 V
  },
  "wires": [
    { "from": "pack.-", "to": "GND" },
    { "path": ["pack.+", "C1", "pack.-"] }
  ]
}
`,
    },
    {
      about: 'a capacitor with room',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "6.3 V" } },
  "wires": [{ "path": ["5V", "C1", "GND"] }]
}
`,
    },
  ],
});
