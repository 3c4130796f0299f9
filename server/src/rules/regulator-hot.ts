/** A linear regulator that turns more volts into heat than it gets rid of. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { type Regulator, regulatorsOf } from './support/regulators';
import { partOf } from './support/views';

interface Detail {
  readonly regulator: Regulator;
  /** Watts, usual. */
  readonly heat: number;
  readonly limit: number;
}

export default defineRule<Detail>({
  id: 'regulator-hot',
  title: 'A linear regulator has to turn more power into heat than it gets rid of.',
  why: 'It gets too hot to touch and switches off: the build works for minutes, rests, and works again.',
  source: 'heat figures of board and part file; the heat is computed from usual volts and amperes',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const regulator of regulatorsOf(subject)) {
      const part = partOf(subject, regulator.part);
      const heat = (regulator.input.typ - regulator.output.typ) * regulator.amps.typ;
      if (!part || !regulator.linear || regulator.watts === undefined || heat <= regulator.watts) continue;
      yield { identity: part.id, span: part.span, detail: { regulator, heat, limit: regulator.watts } };
    }
  },
  message: ({ regulator: { name, input, output, amps }, heat, limit }) =>
    `${name} turns (${formatQuantity(input.typ, 'V')} - ${formatQuantity(output.typ, 'V')}) x ` +
    `${formatQuantity(amps.typ, 'A')} = ${formatQuantity(heat, 'W')} into heat, and gets rid of ` +
    `${formatQuantity(limit, 'W')}. Feed it with fewer volts, use a switching converter, or give the load a supply of its own.`,
  examples: [
    {
      about: '12 V on VIN and a strip on 5V',
      build: `
//- sketch.ino
void setup() { pinMode(6, OUTPUT); }
void loop() { digitalWrite(6, HIGH); digitalWrite(6, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
//   ^^^^^ regulator-hot: the regulator behind VIN turns (12 V - 5.0 V) x 320 mA = 2.24 W into heat, and gets rid of 1.4 W
    "R1": { "kind": "resistor", "value": "330" },
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "10 V" },
    "water": { "kind": "addressable-strip", "count": 16 }
  },
  "wires": [
    { "from": "block.+", "to": "VIN" },
    { "from": "block.-", "to": "GND" },
    { "from": "5V", "to": "water.+" },
    { "from": "water.-", "to": "GND" },
    { "path": ["water.+", "C1", "water.-"] },
    { "path": ["D6", "R1", "water.data-in"] }
  ]
}
`,
    },
    {
      about: 'a regulator among the parts, from 12 V to a strip',
      build: `
//- sketch.ino
void setup() { pinMode(6, OUTPUT); }
void loop() { digitalWrite(6, HIGH); digitalWrite(6, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
    "U1": { "kind": "voltage-regulator", "volts": "5", "maxCurrent": "1.5 A" },
//   ^^ regulator-hot: U1 turns (12 V - 5.0 V) x 320 mA = 2.24 W into heat, and gets rid of 2.0 W
    "R1": { "kind": "resistor", "value": "330" },
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "10 V" },
    "water": { "kind": "addressable-strip", "count": 16 }
  },
  "wires": [
    { "from": "block.+", "to": "U1.in" },
    { "from": "block.-", "to": "GND" },
    { "from": "U1.-", "to": "block.-" },
    { "from": "U1.out", "to": "water.+" },
    { "from": "water.-", "to": "U1.-" },
    { "path": ["water.+", "C1", "water.-"] },
    { "path": ["D6", "R1", "water.data-in"] }
  ]
}
`,
    },
    {
      about: '9 V on VIN leaves the heat just inside',
      build: `
//- sketch.ino
void setup() { pinMode(6, OUTPUT); }
void loop() { digitalWrite(6, HIGH); digitalWrite(6, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "9", "maxCurrent": "2 A" },
    "R1": { "kind": "resistor", "value": "330" },
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "10 V" },
    "water": { "kind": "addressable-strip", "count": 16 }
  },
  "wires": [
    { "from": "block.+", "to": "VIN" },
    { "from": "block.-", "to": "GND" },
    { "from": "5V", "to": "water.+" },
    { "from": "water.-", "to": "GND" },
    { "path": ["water.+", "C1", "water.-"] },
    { "path": ["D6", "R1", "water.data-in"] }
  ]
}
`,
    },
    {
      about: 'a switching converter instead',
      build: `
//- sketch.ino
void setup() { pinMode(6, OUTPUT); }
void loop() { digitalWrite(6, HIGH); digitalWrite(6, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
    "down": { "kind": "step-down-module", "volts": "5" },
    "R1": { "kind": "resistor", "value": "330" },
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "10 V" },
    "water": { "kind": "addressable-strip", "count": 16 }
  },
  "wires": [
    { "from": "block.+", "to": "down.in+" },
    { "from": "block.-", "to": "GND" },
    { "from": "down.in-", "to": "block.-" },
    { "from": "down.out+", "to": "water.+" },
    { "from": "water.-", "to": "down.out-" },
    { "path": ["water.+", "C1", "water.-"] },
    { "path": ["D6", "R1", "water.data-in"] }
  ]
}
`,
    },
  ],
});
