/** Too many pull-ups on one bus line. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { busLines, groupLines } from './support/bus-lines';
import { listWords, relatedOf } from './support/views';

interface Detail {
  readonly pins: readonly string[];
  readonly ohms: number;
  readonly amps: number;
  readonly parts: readonly string[];
}

/** What every device on the bus has to be able to take while it holds the line low, amperes (UM10204, table 10). */
const sinkAmps = 3e-3;

export default defineRule<Detail>({
  id: 'bus-pull-up-strong',
  title: 'The pull-ups of a bus line are too strong together.',
  why: 'A device that pulls low does not get the line down to a low level any more: bits are lost now and then.',
  source:
    'UM10204, I2C-bus specification, table 10: sink current 3 mA in standard and fast mode (from memory)',
  severity: 'warning',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const strong = busLines(subject).filter(
      ({ kind, ohms, volts }) => kind === 'two-wire' && ohms && ohms.typ > 0 && volts / ohms.typ > sinkAmps,
    );
    for (const group of groupLines(strong)) {
      const [{ view, use, pulls, ohms, volts }] = group;
      if (!ohms) continue;
      yield {
        identity: view.pin.id,
        span: use.span,
        related: group.flatMap((line) => relatedOf(line.view, use)).slice(0, 6),
        detail: {
          pins: group.map((line) => line.view.pin.id),
          ohms: ohms.typ,
          amps: volts / ohms.typ,
          parts: [...new Set(pulls.map(({ part }) => part))],
        },
      };
    }
  },
  message: ({ pins, ohms, amps, parts }) =>
    `The pull-ups on ${listWords(pins)} are ${formatQuantity(ohms, 'ohm')} together (${listWords(parts)}): a device takes ` +
    `${formatQuantity(amps, 'A')} to hold it low, and ${formatQuantity(sinkAmps, 'A')} is what every one can. Take ` +
    'some of them off.',
  examples: [
    {
      about: 'four modules that each bring their resistors',
      build: `
//- sketch.ino
#include <Wire.h>
void setup() {
  Wire.begin();
//     ^^^^^ bus-pull-up-strong: The pull-ups on A4 and A5 are 749 ohm together
}
void loop() { Wire.beginTransmission(0x48); Wire.endTransmission(); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "clock": { "kind": "i2c-device" },
    "tilt": { "kind": "i2c-device" },
    "air": { "kind": "i2c-device", "pullUpOhms": "2k2" },
    "panel": { "kind": "i2c-display", "pullUpOhms": "2k2" }
  },
  "wires": [
    { "from": "5V", "to": "clock.+" },
    { "path": ["clock.+", "tilt.+"] },
    { "path": ["tilt.+", "air.+"] },
    { "path": ["air.+", "panel.+"] },
    { "from": "GND", "to": "clock.-" },
    { "path": ["clock.-", "tilt.-"] },
    { "path": ["tilt.-", "air.-"] },
    { "path": ["air.-", "panel.-"] },
    { "from": "A4", "to": "clock.sda" },
    { "path": ["clock.sda", "tilt.sda"] },
    { "path": ["tilt.sda", "air.sda"] },
    { "path": ["air.sda", "panel.sda"] },
    { "from": "A5", "to": "clock.scl" },
    { "path": ["clock.scl", "tilt.scl"] },
    { "path": ["tilt.scl", "air.scl"] },
    { "path": ["air.scl", "panel.scl"] }
  ]
}
`,
    },
    {
      about: 'two modules, which are fine',
      build: `
//- sketch.ino
#include <Wire.h>
void setup() { Wire.begin(); }
void loop() { Wire.beginTransmission(0x48); Wire.endTransmission(); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "clock": { "kind": "i2c-device" },
    "panel": { "kind": "i2c-display" }
  },
  "wires": [
    { "from": "5V", "to": "clock.+" },
    { "path": ["clock.+", "panel.+"] },
    { "from": "GND", "to": "clock.-" },
    { "path": ["clock.-", "panel.-"] },
    { "from": "A4", "to": "clock.sda" },
    { "path": ["clock.sda", "panel.sda"] },
    { "from": "A5", "to": "clock.scl" },
    { "path": ["clock.scl", "panel.scl"] }
  ]
}
`,
    },
  ],
});
