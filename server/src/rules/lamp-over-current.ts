/** A lamp that carries more than it stands. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import type { PinView, Subject } from './subject';

import { raiseLampResistor } from './support/lamp-row';
import { findUnlimited } from './support/limiting';
import { litLamps } from './support/lit-lamps';
import { pinsOver } from './support/over-current';
import { isScanned } from './support/scanned';
import { isSignal, lampName, lampsOf, partOf } from './support/views';

interface Detail {
  readonly name: string;
  readonly element: string;
  readonly amps: number;
  readonly stands: number;
  readonly state: string;
}

export default defineRule<Detail>({
  id: 'lamp-over-current',
  title: 'A lamp carries more current than it stands.',
  why: 'It grows dim and changes its colour within weeks, or it burns at once.',
  source: 'continuous forward current in the lamp’s data sheet; the current is computed',
  severity: 'error',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    const unlimited = new Set(findUnlimited(subject, lampsOf(subject)).map(({ lamp }) => lamp.id));
    for (const { lamp, region, state, amps } of litLamps(subject)) {
      const part = partOf(subject, lamp.part);
      const stands = lamp.primitive.maxAmps;
      if (!part || stands === undefined || amps.typ <= stands || unlimited.has(lamp.id)) continue;
      // A lamp in a grid, or one that is dimmed, is on for a part of the time only.
      const pins = subject.pins.filter((view) => isSignal(view) && region.pins.includes(view.pin.id));
      if (isScanned(subject, lamp) || pins.some(isDimmed)) continue;
      // Where the pin is overloaded too, that is told, and cures both.
      if (overloaded(subject, pins)) continue;
      const name = lampName(subject, lamp);
      yield {
        identity: name,
        span: part.span,
        detail: { name, element: lamp.id, amps: amps.typ, stands, state: state.words },
      };
    }
  },
  message: ({ name, amps, stands, state }) =>
    `${name} carries ${formatQuantity(amps, 'A')}${state ? ` (${state})` : ''}, and it stands ` +
    `${formatQuantity(stands, 'A')} for good: give it a larger resistor.`,
  fixes: ({ element, stands }, subject) => raiseLampResistor(subject, element, stands),
  examples: [
    {
      about: 'a resistor for 5 V on a battery of 12 V',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "pack": { "kind": "battery", "volts": "12" },
    "glow": { "kind": "led", "colour": "white" },
//   ^^^^ lamp-over-current [ask]: glow carries
    "R1": { "kind": "resistor", "value": "270", "power": "0.5 W" }
  },
  "wires": [
    { "path": ["pack.+", "R1", "glow", "pack.-"] },
    { "from": "pack.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a lamp behind a transistor with too small a resistor',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "beacon": { "kind": "led", "colour": "red" },
//   ^^^^^^ lamp-over-current [ask]: beacon carries
    "R1": { "kind": "resistor", "value": "100" },
    "R2": { "kind": "resistor", "value": "1k" },
    "Q1": { "kind": "npn-transistor" }
  },
  "wires": [
    { "path": ["D9", "R2", "Q1.base"] },
    { "from": "Q1.emitter", "to": "GND" },
    { "path": ["5V", "R1", "beacon", "Q1.collector"] }
  ]
}
`,
    },
    {
      about: 'a lamp just under what it stands',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "pack": { "kind": "battery", "volts": "12" },
    "glow": { "kind": "led", "colour": "white" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [
    { "path": ["pack.+", "R1", "glow", "pack.-"] },
    { "from": "pack.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a brighter lamp that stands more',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "pack": { "kind": "battery", "volts": "12" },
    "glow": { "kind": "led", "colour": "white", "maxCurrent": "50 mA" },
    "R1": { "kind": "resistor", "value": "270", "power": "0.5 W" }
  },
  "wires": [
    { "path": ["pack.+", "R1", "glow", "pack.-"] },
    { "from": "pack.-", "to": "GND" }
  ]
}
`,
    },
  ],
});

function isDimmed({ uses }: PinView): boolean {
  return uses.some(({ action }) => action === 'pwm' || action === 'device');
}

function overloaded(subject: Subject, pins: readonly PinView[]): boolean {
  return [...pinsOver(subject, 'working'), ...pinsOver(subject, 'absolute')].some(({ view }) =>
    pins.includes(view),
  );
}
