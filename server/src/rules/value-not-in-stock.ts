/** A resistor whose value is not among those that the manifest says are at hand. */
import { formatQuantity } from '../base/quantity';
import { replaceValue } from '../hardware';
import { defineRule } from './rule';
import type { Subject } from './subject';
import { draftManifest } from './support/draft';
import { ohmsText } from './support/manifest-edits';
import { placedOf } from './support/supplies';
import { partOf } from './support/views';

interface Detail {
  readonly part: string;
  readonly ohms: number;
  readonly nearest: number;
  readonly stock: string;
}

export default defineRule<Detail>({
  id: 'value-not-in-stock',
  title: 'A resistor has a value that is not in the declared stock.',
  why: 'Whoever builds it will not find it in the drawer, and takes what lies next to it.',
  source: 'the stock that the manifest declares',
  severity: 'information',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const { stock } = subject.build;
    if (!saysStock(subject)) return;
    for (const { part: id, primitive } of placedOf(subject, 'resistor')) {
      const part = partOf(subject, id);
      const span = part?.valueSpans.value;
      // Only a part that is nothing but this resistor is taken out of the drawer by its value.
      if (!part || !span || part.inside.length !== 1 || primitive.maxAmps !== undefined) continue;
      const ohms = primitive.ohms.typ;
      const [first, ...others] = stock.resistors;
      if (first === undefined || stock.resistors.some((value) => Math.abs(value / ohms - 1) < 1e-3)) continue;
      const distance = (value: number) => Math.abs(Math.log(value / ohms));
      const nearest = others.reduce(
        (best, value) => (distance(value) < distance(best) ? value : best),
        first,
      );
      yield { identity: id, span, detail: { part: id, ohms, nearest, stock: stock.text } };
    }
  },
  message: ({ part, ohms, nearest, stock }) =>
    `${part} is ${formatQuantity(ohms, 'ohm')}, and the stock has ${stock}: ${formatQuantity(nearest, 'ohm')} is next to it. ` +
    'Change it, or put the value into the stock.',
  fixes: ({ part, nearest }, subject) => [
    {
      title: `Change ${part} to ${formatQuantity(nearest, 'ohm')} from stock`,
      trust: 'ask',
      edits: draftManifest(subject, [
        (text, file) => replaceValue(text, ['parts', part, 'value'], ohmsText(nearest), file),
      ]),
    },
  ],
  examples: [
    {
      about: 'a value from somewhere else',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "stock": { "resistors": ["220", "330", "470", "1k"] },
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "510" } // from the old lamp
//                                        ^^^ value-not-in-stock [ask]: R1 is 510 ohm
  },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "stock": { "resistors": ["220", "330", "470", "1k"] },
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "470" } // from the old lamp
  },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`,
    },
    {
      about: 'a value between two of the series',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT); }
void loop() { if (digitalRead(2) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "stock": { "resistors": "E12" },
  "parts": {
    "call": { "kind": "push-button" },
    "R1": { "kind": "resistor", "value": "11k" }
//                                        ^^^ value-not-in-stock [ask]: R1 is 11 kohm
  },
  "wires": [
    { "path": ["GP2", "call", "GND"] },
    { "path": ["3V3", "R1", "call.1"] }
  ]
}
`,
    },
    {
      about: 'the same value, written in another way',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "stock": { "resistors": ["220", "1k", "0.47k"] },
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "470R" }
  },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`,
    },
    {
      about: 'no stock is declared',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "511" }
  },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`,
    },
  ],
});

/** Where the manifest says nothing, the stock is a default, which is nobody's drawer. */
function saysStock(subject: Subject): boolean {
  return /"resistors"\s*:/.test(subject.texts[subject.build.file] ?? '');
}
