/** A wired pin that the sketch never touches: a forgotten line of code, or a wire that should have gone. */

import { defineRule } from './rule';
import { usesBus, wakesChip } from './support/buses';
import { isToldElsewhere } from './support/mistaken';
import { isSignal } from './support/views';

interface Detail {
  readonly pin: string;
  readonly hangs: readonly string[];
}

export default defineRule<Detail>({
  id: 'idle-wire',
  title: 'A wired pin is never used by the sketch.',
  why: 'The part on it stays dead, or an input nobody reads: code and wiring have drifted apart.',
  source: 'common practice',
  severity: 'warning',
  maturity: 'settled',
  needs: 'hardware',
  *check(subject) {
    // What seems to be missing may stand in text that could not be read.
    if (subject.facts.damaged) return;
    // With a pin argument that could not be resolved, any pin may be the one it means.
    if (subject.unresolved.length > 0 || subject.facts.uses.length === 0) return;
    for (const view of subject.pins) {
      const wire = view.wires[0];
      if (!isSignal(view) || !wire || view.uses.length > 0 || usesBus(subject, view.pin.roles)) continue;
      if (wakesChip(subject, view.pin.roles)) continue;
      // A wrong number and a pin that is not free are told by the rules on them.
      if (isToldElsewhere(subject, view)) continue;
      const end = wire.ends.find((candidate) => candidate.kind === 'pin' && candidate.pin === view.pin.id);
      yield {
        identity: view.pin.id,
        span: end?.span ?? wire.span,
        detail: {
          pin: view.pin.id,
          hangs: [...new Set(view.net.terminals.map((terminal) => terminal.part))],
        },
      };
    }
  },
  message: ({ pin, hangs }) =>
    hangs.length > 0
      ? `${pin} is wired to ${hangs.join(', ')}, and the sketch never uses it.`
      : `A wire is on ${pin}, and the sketch never uses the pin.`,
  examples: [
    {
      about: 'a lamp that no line of the sketch lights',
      build: `
//- sketch.ino
void setup() {
  pinMode(7, OUTPUT);
  digitalWrite(7, HIGH);
}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "fog": { "kind": "led", "colour": "yellow" },
    "R1": { "kind": "resistor", "value": "470" },
    "R2": { "kind": "resistor", "value": "470" }
  },
  "wires": [
    { "path": ["D7", "R1", "beacon", "GND"] },
    { "path": ["D8", "R2", "fog", "beacon.cathode"] }
//              ^^ idle-wire: D8 is wired to R2, and the sketch never uses it
  ]
}
`,
    },
    {
      about: 'a lamp that a sketch by port registers leaves out',
      build: `
//- sketch.ino
void setup() {
  DDRD |= _BV(PD7);
}
void loop() {
  PORTD ^= _BV(PD7);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "fog": { "kind": "led", "colour": "yellow" },
    "R1": { "kind": "resistor", "value": "470" },
    "R2": { "kind": "resistor", "value": "470" }
  },
  "wires": [
    { "path": ["D7", "R1", "beacon", "GND"] },
    { "path": ["D8", "R2", "fog", "beacon.cathode"] }
//              ^^ idle-wire: D8 is wired to R2, and the sketch never uses it
  ]
}
`,
    },
    {
      about: 'a bus wire whose library is there and whose bus is never opened',
      build: `
//- sketch.ino
#include <Wire.h>
void setup() {
  pinMode(13, OUTPUT);
}
void loop() {
  digitalWrite(13, HIGH);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "R1": { "kind": "resistor", "value": "4k7" } },
  "wires": [
    { "path": ["A4", "R1", "5V"] }
//              ^^ idle-wire: A4 is wired to R1, and the sketch never uses it
  ]
}
`,
    },
    {
      about: 'a library that nobody describes may open the bus by itself',
      build: `
//- sketch.ino
#include <TideSensor.h>
TideSensor tide;
void setup() {
  pinMode(13, OUTPUT);
  tide.begin();
}
void loop() {
  digitalWrite(13, tide.high());
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "R1": { "kind": "resistor", "value": "4k7" } },
  "wires": [
    { "path": ["A4", "R1", "5V"] }
  ]
}
`,
    },
    {
      about: 'every wired pin is used',
      build: `
//- sketch.ino
void setup() {
  pinMode(7, OUTPUT);
  digitalWrite(7, HIGH);
}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [
    { "path": ["D7", "R1", "beacon", "GND"] }
  ]
}
`,
    },
  ],
});
