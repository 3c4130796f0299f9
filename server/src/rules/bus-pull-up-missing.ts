/** A bus whose lines everybody pulls low and nobody pulls up. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { addBusPulls } from './support/bus-fixes';
import { busLines, groupLines } from './support/bus-lines';
import { reversedParts } from './support/reversed-supplies';
import { listWords, relatedOf } from './support/views';

interface Detail {
  readonly pins: readonly string[];
  readonly kind: 'two-wire' | 'one-wire';
  readonly parts: readonly string[];
  /** Ohms of the pull-up in the chip, where the core switches it on. */
  readonly own?: number;
}

/** The usual pull-up of both buses, ohms (common practice; UM10204 gives the range for two wires). */
const usualOhms = 4700;

/**
 * Cores whose two-wire library leaves the pull-ups of the chip off; the others switch them on by themselves (Wire of
 * each core: AVR, SAMD and STM32 as read for the library's data, the others from memory).
 */
const bareCores = ['ARDUINO_ARCH_SAMD', 'ARDUINO_ARCH_STM32', 'ARDUINO_ARCH_RENESAS'];

export default defineRule<Detail>({
  id: 'bus-pull-up-missing',
  title: 'Nothing outside the chip pulls a bus line up.',
  why: 'The devices only ever pull low: without a resistor the line does not rise, or too slowly, and nobody is found.',
  source: 'UM10204, I2C-bus specification, section 7.1; data sheets of one-wire sensors (from memory)',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    if (subject.facts.damaged) return;
    const reversed = reversedParts(subject);
    const bare = busLines(subject).filter(
      // The pull-ups of a part that is fed the wrong way round pull down.
      ({ pulls, parts }) => pulls.length === 0 && !parts.some((part) => reversed.has(part)),
    );
    for (const group of groupLines(bare)) {
      const [{ view, kind, parts, use }] = group;
      const { board } = subject.build;
      const switchedOn =
        view.drives.includes('pull-up') ||
        (kind === 'two-wire' && !bareCores.some((core) => board.platform.macros[core] !== undefined));
      yield {
        identity: view.pin.id,
        span: use.span,
        related: group.flatMap((line) => relatedOf(line.view, use)).slice(0, 6),
        severity: switchedOn ? 'warning' : 'error',
        detail: {
          pins: group.map((line) => line.view.pin.id),
          kind,
          parts,
          ...(switchedOn && { own: board.limits.pullUpOhms.typ }),
        },
      };
    }
  },
  message: ({ pins, kind, parts, own }) =>
    (own === undefined
      ? `Nothing pulls ${listWords(pins)} up, and ${listWords(parts)} only pulls low`
      : `Only the chip’s own pull-up of about ${formatQuantity(own, 'ohm')} is on ${listWords(pins)} of ${listWords(parts)}: ` +
        'it works on the desk and fails with longer wires') +
    `. Put ${formatQuantity(usualOhms, 'ohm')} from ${pins.length > 1 ? 'each' : 'it'} to the supply of the ${kind} bus.`,
  fixes: ({ pins, parts }, subject) => addBusPulls(subject, pins, parts, usualOhms),
  examples: [
    {
      about: 'a temperature sensor on one wire without its resistor',
      build: `
//- sketch.ino
#include <OneWire.h>
OneWire water(4);
//            ^ bus-pull-up-missing [ask]: Nothing pulls D4 up, and pool only pulls low
void setup() {}
void loop() { water.reset(); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "pool": { "kind": "one-wire-sensor" } },
  "wires": [
    { "from": "5V", "to": "pool.+" },
    { "from": "pool.-", "to": "GND" },
    { "from": "D4", "to": "pool.data" }
  ]
}
`,
    },
    {
      about: 'the resistor beside the sensor',
      build: `
//- sketch.ino
#include <OneWire.h>
OneWire water(4);
void setup() {}
void loop() { water.reset(); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "pool": { "kind": "one-wire-sensor" },
    "R1": { "kind": "resistor", "value": "4k7" }
  },
  "wires": [
    { "from": "5V", "to": "pool.+" },
    { "from": "pool.-", "to": "GND" },
    { "from": "D4", "to": "pool.data" },
    { "path": ["pool.+", "R1", "pool.data"] }
  ]
}
`,
    },
    {
      about: 'a bare chip on two wires of a board whose core adds nothing',
      build: `
//- sketch.ino
#include <Wire.h>
void setup() {
  Wire.begin();
//     ^^^^^ bus-pull-up-missing [ask]: Nothing pulls
}
void loop() { Wire.beginTransmission(0x48); Wire.endTransmission(); }
//- hardware.jsonc
{
  "format": 1,
  "board": "zero",
  "parts": { "chip": { "kind": "i2c-device", "supply": "3.3", "pullUps": false } },
  "wires": [
    { "from": "3V3", "to": "chip.+" },
    { "from": "chip.-", "to": "GND" },
    { "from": "SDA", "to": "chip.sda" },
    { "from": "SCL", "to": "chip.scl" }
  ]
}
`,
    },
    {
      about: 'the same on a core that puts the weak ones in the chip to work',
      build: `
//- sketch.ino
#include <Wire.h>
void setup() {
  Wire.begin();
//     ^^^^^ bus-pull-up-missing [ask]: Only the chip’s own pull-up of about 35 kohm is on A4 and A5 of chip
}
void loop() { Wire.beginTransmission(0x48); Wire.endTransmission(); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "chip": { "kind": "i2c-device", "pullUps": false } },
  "wires": [
    { "from": "5V", "to": "chip.+" },
    { "from": "chip.-", "to": "GND" },
    { "from": "A4", "to": "chip.sda" },
    { "from": "A5", "to": "chip.scl" }
  ]
}
`,
    },
    {
      about: 'a module that has its resistors on it',
      build: `
//- sketch.ino
#include <Wire.h>
void setup() { Wire.begin(); }
void loop() { Wire.beginTransmission(0x48); Wire.endTransmission(); }
//- hardware.jsonc
{
  "format": 1,
  "board": "zero",
  "parts": { "chip": { "kind": "i2c-device", "supply": "3.3" } },
  "wires": [
    { "from": "3V3", "to": "chip.+" },
    { "from": "chip.-", "to": "GND" },
    { "from": "SDA", "to": "chip.sda" },
    { "from": "SCL", "to": "chip.scl" }
  ]
}
`,
    },
  ],
});
