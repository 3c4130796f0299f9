/** A strip of addressable lamps whose data line never reaches the level that the strip promises to read. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { partOf, relatedOf } from './support/views';
import { weakInputs } from './support/weak-inputs';

interface Detail {
  readonly part: string;
  readonly terminal: string;
  readonly pin: string;
  readonly volts: number;
  readonly needed: number;
  readonly supply?: number;
}

export default defineRule<Detail>({
  id: 'strip-level',
  title: 'A strip’s data line is driven below the level it needs.',
  why: 'It works on the desk; in the warm or on a long wire the first lamp flickers and passes nonsense on.',
  source: 'input high level in the data sheet of the strip’s lamps; the voltage is computed',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const { input, most, needed, view, strip } of weakInputs(subject)) {
      const part = partOf(subject, input.part);
      if (!strip || !part) continue;
      yield {
        identity: part.id,
        span: part.span,
        related: view.uses[0] ? relatedOf(view, view.uses[0]) : [],
        detail: {
          part: part.id,
          terminal: input.primitive.ends[0],
          pin: view.pin.id,
          volts: most.volts.typ,
          needed: needed.high,
          ...(needed.supply !== undefined && { supply: needed.supply }),
        },
      };
    }
  },
  message: ({ part, terminal, pin, volts, needed, supply }) =>
    `${part}.${terminal} gets ${formatQuantity(volts, 'V')} from ${pin}, and ` +
    `${supply === undefined ? 'it' : `fed with ${formatQuantity(supply, 'V')} it`} needs ${formatQuantity(needed, 'V')} ` +
    'to read a high level for certain: put a level shifter between them, or feed the strip with less.',
  examples: [
    {
      about: 'a strip at 5 V on a 3.3 V board',
      build: `
//- sketch.ino
void setup() { pinMode(6, OUTPUT); }
void loop() { digitalWrite(6, HIGH); digitalWrite(6, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "10 V" },
    "waves": { "kind": "addressable-strip", "count": "8" }
//   ^^^^^ strip-level: waves.data-in gets 3.3 V from GP6, and fed with 5.0 V it needs 3.5 V
  },
  "wires": [
    { "from": "VBUS", "to": "waves.+" },
    { "from": "waves.-", "to": "GND" },
    { "path": ["waves.+", "C1", "waves.-"] },
    { "from": "GP6", "to": "waves.data-in" }
  ]
}
`,
    },
    {
      about: 'the same on another one',
      build: `
//- sketch.ino
void setup() { pinMode(6, OUTPUT); }
void loop() { digitalWrite(6, HIGH); digitalWrite(6, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "zero",
  "parts": {
    "R1": { "kind": "resistor", "value": "330" },
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "10 V" },
    "waves": { "kind": "addressable-strip", "count": "8" }
//   ^^^^^ strip-level: waves.data-in gets 3.3 V from D6
  },
  "wires": [
    { "from": "5V", "to": "waves.+" },
    { "from": "waves.-", "to": "GND" },
    { "path": ["waves.+", "C1", "waves.-"] },
    { "path": ["D6", "R1", "waves.data-in"] }
  ]
}
`,
    },
    {
      about: 'the strip on a 5 V board',
      build: `
//- sketch.ino
void setup() { pinMode(6, OUTPUT); }
void loop() { digitalWrite(6, HIGH); digitalWrite(6, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "R1": { "kind": "resistor", "value": "330" },
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "10 V" },
    "waves": { "kind": "addressable-strip", "count": "8" }
  },
  "wires": [
    { "from": "5V", "to": "waves.+" },
    { "from": "waves.-", "to": "GND" },
    { "path": ["waves.+", "C1", "waves.-"] },
    { "path": ["D6", "R1", "waves.data-in"] }
  ]
}
`,
    },
  ],
});
