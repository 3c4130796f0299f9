/** A level that is meant to be high and is not read as high for certain. */

import type { Related } from '../base/finding';
import { formatQuantity } from '../base/quantity';
import type { Span } from '../base/span';
import { defineRule } from './rule';
import type { PinView, Subject } from './subject';
import { isStarved } from './support/blocked-feeds';
import { isTooLow } from './support/low-pins';
import { isSignal, partOf, relatedOf, wiresRelated } from './support/views';
import { weakInputs } from './support/weak-inputs';

interface Detail {
  readonly input: string;
  readonly from: string;
  readonly volts: number;
  readonly needed: number;
}

export default defineRule<Detail>({
  id: 'level-too-low',
  title: 'A high level is lower than the input needs.',
  why: 'Most days it is read as high: with a cold board, another batch or a long wire it is not.',
  source: 'input high level in the data sheets of the chip and of the part; the voltage is computed',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const { input, most, needed, view, strip } of weakInputs(subject)) {
      const part = partOf(subject, input.part);
      if (strip || !part) continue;
      yield {
        identity: part.id,
        span: part.span,
        related: view.uses[0] ? relatedOf(view, view.uses[0]) : [],
        detail: {
          input: `${part.id}.${input.primitive.ends[0]}`,
          from: view.pin.id,
          volts: most.volts.typ,
          needed: needed.high,
        },
      };
    }
    for (const view of subject.pins) {
      const low = isSignal(view) ? isTooLow(subject, view) : undefined;
      const place = low && placeOf(subject, view, low.part);
      if (!low || !place || isStarved(subject, low.part)) continue;
      const needed = subject.build.board.limits.inputHighVolts.max;
      yield {
        identity: view.pin.id,
        ...place,
        detail: { input: view.pin.id, from: low.part, volts: low.volts, needed },
      };
    }
  },
  message: ({ input, from, volts, needed }) =>
    `${input} gets ${formatQuantity(volts, 'V')} from ${from} at the most, and needs ${formatQuantity(needed, 'V')} to ` +
    'read a high level for certain: put a level shifter or a transistor between them.',
  examples: [
    {
      about: 'a sensor with a 3.3 V output on a 5 V board that asks for four',
      build: `
//- sketch.ino
void setup() { pinMode(7, INPUT); }
void loop() {
  if (digitalRead(7) == HIGH) delay(1);
//                ^ level-too-low: D7 gets 3.3 V from watch at the most, and needs 4.0 V
}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r4-minima",
  "parts": { "watch": { "kind": "pir-sensor" } },
  "wires": [
    { "from": "5V", "to": "watch.+" },
    { "from": "watch.-", "to": "GND" },
    { "from": "D7", "to": "watch.out" }
  ]
}
`,
    },
    {
      about: 'a shift register at 5 V on a 3.3 V board',
      build: `
//- sketch.ino
void setup() { pinMode(2, OUTPUT); }
void loop() { digitalWrite(2, HIGH); digitalWrite(2, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "zero",
  "parts": {
    "lights": { "kind": "shift-register" }
//   ^^^^^^ level-too-low: lights.data gets 3.3 V from D2 at the most, and needs 3.5 V
  },
  "wires": [
    { "from": "5V", "to": "lights.+" },
    { "from": "lights.-", "to": "GND" },
    { "from": "D2", "to": "lights.data" },
    { "path": ["lights.shift-clock", "lights.latch"] },
    { "path": ["lights.latch", "lights.clear"] },
    { "path": ["lights.clear", "lights.+"] },
    { "path": ["lights.output-enable", "lights.-"] }
  ]
}
`,
    },
    {
      about: 'the sensor on a 5 V board that asks for three',
      build: `
//- sketch.ino
void setup() { pinMode(7, INPUT); }
void loop() { if (digitalRead(7) == HIGH) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "watch": { "kind": "pir-sensor" } },
  "wires": [
    { "from": "5V", "to": "watch.+" },
    { "from": "watch.-", "to": "GND" },
    { "from": "D7", "to": "watch.out" }
  ]
}
`,
    },
    {
      about: 'the shift register at the voltage of the board',
      build: `
//- sketch.ino
void setup() { pinMode(2, OUTPUT); }
void loop() { digitalWrite(2, HIGH); digitalWrite(2, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "zero",
  "parts": { "lights": { "kind": "shift-register" } },
  "wires": [
    { "from": "3V3", "to": "lights.+" },
    { "from": "lights.-", "to": "GND" },
    { "from": "D2", "to": "lights.data" },
    { "path": ["lights.shift-clock", "lights.latch"] },
    { "path": ["lights.latch", "lights.clear"] },
    { "path": ["lights.clear", "lights.+"] },
    { "path": ["lights.output-enable", "lights.-"] }
  ]
}
`,
    },
  ],
});

/** Where the pin is read, else where it is wired. */
function placeOf(
  subject: Subject,
  view: PinView,
  part: string,
): { readonly span: Span; readonly related: readonly Related[] } | undefined {
  const use = view.uses.find(({ action }) => action === 'read' || action === 'interrupt');
  if (!use) return undefined;
  const source = partOf(subject, part);
  const wires = wiresRelated(view.wires, view.pin.id);
  return {
    span: use.span,
    related: source ? [...wires, { message: `${part} is declared here`, span: source.span }] : wires,
  };
}
