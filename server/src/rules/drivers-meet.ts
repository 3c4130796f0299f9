/** Two outputs on one wire. */
import { formatQuantity } from '../base/quantity';
import { worst } from '../base/range';
import { defineRule } from './rule';
import { crossings } from './support/crossings';
import { findMeetings } from './support/meetings';
import { limitsOf } from './support/pin-limits';
import { setMode } from './support/sketch-edits';
import { partOf, relatedOf, viewOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly other: string;
  readonly otherIsPin: boolean;
  readonly state: string;
  readonly amps: number;
  readonly stands: number;
}

export default defineRule<Detail>({
  id: 'drivers-meet',
  title: 'Two outputs drive one wire to different levels.',
  why: 'One pulls up, the other down, and nothing in between limits the current: the weaker one dies.',
  source: 'absolute maximum ratings of the chip, DC current per I/O pin; the current is computed',
  severity: 'error',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    // A library's pins in the wrong order are told as that, and so is what they meet.
    const crossed = new Set(crossings(subject).flatMap(({ pins }) => pins.map(({ pin }) => pin)));
    for (const { view, use, other, otherUse, state, amps } of findMeetings(subject)) {
      if (crossed.has(view.pin.id) || crossed.has(other)) continue;
      const part = partOf(subject, other);
      yield {
        identity: view.pin.id,
        span: use.span,
        related: [
          ...(otherUse ? [{ message: `${other} is made an output here`, span: otherUse.span }] : []),
          ...(part ? [{ message: `${other} is declared here`, span: part.span }] : []),
          ...relatedOf(view, use),
        ],
        detail: {
          pin: view.pin.id,
          other,
          otherIsPin: otherUse !== undefined,
          state: state.words,
          amps: worst(amps),
          stands: limitsOf(subject.build, view).absolute.amps,
        },
      };
    }
  },
  message: ({ pin, other, otherIsPin, state, amps, stands }) =>
    `${pin} and ${otherIsPin ? other : `the output of ${other}`} drive the same wire to different levels (${state}): up ` +
    `to ${formatQuantity(amps, 'A')} flows, and ${pin} stands ${formatQuantity(stands, 'A')}. ` +
    (otherIsPin ? 'Make one of them an input.' : `Make ${pin} an input.`),
  fixes: ({ pin, otherIsPin }, subject) => {
    const view = viewOf(subject, pin);
    // Of a pin that is written somebody wants something; then the wiring may be wrong as well.
    if (!view || otherIsPin || view.uses.some(({ action }) => action === 'write' || action === 'pwm'))
      return [];
    const edits = setMode(subject, view, 'INPUT');
    return edits ? [{ title: `Make ${pin} an input`, trust: 'ask', edits }] : [];
  },
  examples: [
    {
      about: 'a sensor on a pin that was made an output by mistake',
      build: `
//- sketch.ino
void setup() {
  pinMode(4, OUTPUT);
//        ^ drivers-meet [ask]: D4 and the output of door drive the same wire to different levels
}
void loop() { if (digitalRead(4) == HIGH) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "door": { "kind": "digital-sensor" } },
  "wires": [
    { "from": "5V", "to": "door.+" },
    { "from": "door.-", "to": "GND" },
    { "from": "D4", "to": "door.out" }
  ]
}
`,
      fixed: `
//- sketch.ino
void setup() {
  pinMode(4, INPUT);
}
void loop() { if (digitalRead(4) == HIGH) delay(1); }
`,
    },
    {
      about: 'two pins that are joined to carry more, and are not written together',
      build: `
//- sketch.ino
void setup() {
  pinMode(4, OUTPUT);
//        ^ drivers-meet: D4 and D5 drive the same wire to different levels
  pinMode(5, OUTPUT);
}
void loop() {
  digitalWrite(4, HIGH);
  delay(10);
  digitalWrite(5, HIGH);
  delay(10);
  digitalWrite(4, LOW);
  digitalWrite(5, LOW);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [
    { "path": ["D4", "R1", "beacon", "GND"] },
    { "from": "D5", "to": "R1.1" }
  ]
}
`,
    },
    {
      about: 'a library’s pins in the wrong order, which is told as that',
      build: `
//- sketch.ino
#include <NewPing.h>
NewPing depth(8, 7);
//            ^ library-pins-crossed [ask] [ask]: NewPing gets D8 for trigger, which is wired to echo
void setup() { pinMode(8, OUTPUT); pinMode(7, INPUT); }
void loop() { depth.ping_cm(); delay(50); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "ranger": { "kind": "ultrasonic-ranger" } },
  "wires": [
    { "from": "D7", "to": "ranger.trigger" },
    { "from": "D8", "to": "ranger.echo" },
    { "from": "5V", "to": "ranger.+" },
    { "from": "GND", "to": "ranger.-" }
  ]
}
`,
    },
    {
      about: 'the sensor on an input',
      build: `
//- sketch.ino
void setup() { pinMode(4, INPUT); }
void loop() { if (digitalRead(4) == HIGH) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "door": { "kind": "digital-sensor" } },
  "wires": [
    { "from": "5V", "to": "door.+" },
    { "from": "door.-", "to": "GND" },
    { "from": "D4", "to": "door.out" }
  ]
}
`,
    },
    {
      about: 'a resistor between the two pins limits what flows',
      build: `
//- sketch.ino
void setup() { pinMode(4, OUTPUT); pinMode(5, OUTPUT); }
void loop() { digitalWrite(4, HIGH); digitalWrite(5, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "R1": { "kind": "resistor", "value": "1k" } },
  "wires": [{ "path": ["D4", "R1", "D5"] }]
}
`,
    },
  ],
});
