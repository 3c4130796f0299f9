/** An output is asked of a pin that has no output stage. */

import type { PinAction } from '../base/pin-use';
import { defineRule } from './rule';
import { freePins, moveFixes } from './support/rewire';
import { isMeant, listWords, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly call: string;
  readonly free: readonly string[];
}

const driving: ReadonlySet<PinAction> = new Set(['write', 'pwm', 'tone', 'servo', 'dac']);

export default defineRule<Detail>({
  id: 'input-only-driven',
  title: 'A pin that can only read levels is used as an output.',
  why: 'The chip has no output stage there. The call does nothing, and the lamp stays dark without any message.',
  source: 'GPIO chapters of the chips’ documents, in the boards’ pin tables',
  severity: 'error',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    for (const view of subject.pins) {
      if (view.pin.inputOnly !== true) continue;
      const use = view.uses.find(
        (one) => (driving.has(one.action) || one.modes?.includes('output')) && isMeant(one),
      );
      if (!use) continue;
      const can = freePins(subject, ({ pin }) => pin.type === 'io' && pin.inputOnly !== true);
      const { id: pin } = view.pin;
      yield {
        identity: pin,
        span: use.span,
        related: relatedOf(view, use),
        detail: { pin, call: use.call, free: can.slice(0, 4).map((one) => one.pin.id) },
      };
    }
  },
  message: ({ pin, call, free }) =>
    `${call} cannot make ${pin} drive anything: the pin is an input and nothing else. ` +
    (free.length > 0
      ? `Free pins that can drive: ${listWords(free)}.`
      : 'No free pin that can drive is left.'),
  fixes: ({ pin, free }, subject) => moveFixes(subject, pin, free),
  examples: [
    lampOn('a lamp on a pin of the upper bank', 'IO34', 34, 'pinMode cannot make IO34 drive anything'),
    lampOn('the same on IO39', 'IO39', 39, 'pinMode cannot make IO39 drive anything'),
    lampOn('a lamp on a pin that drives', 'IO33', 33),
    {
      about: 'a potentiometer on the same pin',
      build: `
//- sketch.ino
void setup() {}
void loop() { int level = analogRead(34); }
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": { "tide": { "kind": "potentiometer", "value": "10k" } },
  "wires": [{ "from": "3V3", "to": "tide.1" }, { "from": "IO34", "to": "tide.wiper" }, { "from": "tide.2", "to": "GND" }]
}
`,
    },
  ],
});

function lampOn(about: string, pin: string, number: number, fault?: string) {
  const text = (end: string, written: number, mark = '') => `
//- sketch.ino
const int beacon = ${written};
void setup() { pinMode(beacon, OUTPUT); }${mark}
void loop() { digitalWrite(beacon, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": { "beacon": { "kind": "led", "colour": "red" }, "R1": { "kind": "resistor", "value": "220" } },
  "wires": [{ "path": ["${end}", "R1", "beacon", "GND"] }]
}
`;
  if (fault === undefined) return { about, build: text(pin, number) };
  const mark = `\n//                     ^^^^^^ input-only-driven [ask] [ask]: ${fault}`;
  return { about, build: text(pin, number, mark), fixed: text('IO4', 4) };
}
