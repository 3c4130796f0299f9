/** A lamp without a series resistor: only the pin and the junction fight over the current. */
import { formatQuantity } from '../base/quantity';
import { type Range, worst } from '../base/range';
import { defineRule } from './rule';
import { insertResistor } from './support/lamp-fixes';
import { findUnlimited } from './support/limiting';
import { limitsOf } from './support/pin-limits';
import { lampName, lampsOf, partOf, regionOf, viewOf, wiresRelated, worstState } from './support/views';

interface Detail {
  readonly lamp: string;
  /** The lamp as people call it. */
  readonly name: string;
  readonly element: string;
  readonly pin?: string;
  readonly amps?: Range;
  readonly limit: number;
}

export default defineRule<Detail>({
  id: 'lamp-unlimited',
  title: 'A lamp is driven with no resistor to limit its current.',
  why: 'The current is whatever the pin happens to give: far over its working figure. Pin and lamp age in days.',
  source:
    'DC current per I/O pin in the chip’s datasheet; the current is computed with the pin’s own resistance',
  severity: 'error',
  maturity: 'settled',
  needs: 'circuit',
  *check(subject) {
    for (const { lamp, pins } of findUnlimited(subject, lampsOf(subject))) {
      const part = partOf(subject, lamp.part);
      if (!part) continue;
      let worstAmps: Range | undefined;
      let worstPin = pins[0];
      for (const pin of pins) {
        const region = regionOf(subject, pin);
        const amps = region && worstState(subject.points(region), lamp.id)?.amps;
        if (amps && (!worstAmps || worst(amps) > worst(worstAmps))) {
          worstAmps = amps;
          worstPin = pin;
        }
      }
      const view = worstPin === undefined ? undefined : viewOf(subject, worstPin);
      const use = view?.uses[0];
      const name = lampName(subject, lamp);
      yield {
        identity: name,
        span: part.span,
        related: [
          ...(use ? [{ message: `${worstPin} is driven here`, span: use.span }] : []),
          ...(view ? wiresRelated(view.wires, view.pin.id) : []),
        ],
        detail: {
          lamp: lamp.part,
          name,
          element: lamp.id,
          ...(worstPin !== undefined && { pin: worstPin }),
          // A lamp that stays dark in every state (wired backwards) has no current to tell.
          ...(worstAmps && worst(worstAmps) > 1e-4 && { amps: worstAmps }),
          limit: view ? limitsOf(subject.build, view).working.amps : subject.build.policy.pinAmps,
        },
      };
    }
  },
  message: ({ name, pin, amps, limit }) =>
    `${name} has no resistor in series${pin ? ` on ${pin}` : ''}: ` +
    (amps
      ? `with the pin’s own resistance alone ${formatQuantity(amps.typ, 'A')} would flow, ` +
        `${formatQuantity(worst(amps), 'A')} at the worst, and the limit is ${formatQuantity(limit, 'A')}.`
      : 'nothing but the junction limits the current.'),
  fixes: ({ lamp, element, pin }, subject) => insertResistor(subject, lamp, element, pin),
  examples: [
    {
      about: 'a lamp straight between pin and ground',
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
    // the lamp on the pier
    "beacon": { "kind": "led", "colour": "green" }
//   ^^^^^^ lamp-unlimited [ask]: beacon has no resistor in series on D7
  },
  "wires": [
    { "path": ["D7", "beacon", "GND"], "colours": ["red", "black"] }
  ]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "stock": { "resistors": ["220", "330", "470", "1k"] },
  "parts": {
    // the lamp on the pier
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "330" }
  },
  "wires": [
    { "path": ["D7", "R1", "beacon", "GND"], "colours": ["red", "red", "black"] }
  ]
}
`,
    },
    {
      about: 'a lamp between two wires of its own',
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
    "beacon": { "kind": "led", "colour": "green" }
//   ^^^^^^ lamp-unlimited [ask]: beacon has no resistor in series on D7
  },
  "wires": [
    { "from": "D7", "to": "beacon.anode", "colour": "red" },
    { "from": "beacon.cathode", "to": "GND", "colour": "black" }
  ]
}
`,
    },
    {
      about: 'a resistor on either side will do',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [
    { "path": ["D7", "beacon", "R1", "GND"], "colours": ["red", "black", "black"] }
  ]
}
`,
    },
  ],
});
