/** Two devices with one address on the same bus. */

import type { Part } from '../base/build';
import { defineRule } from './rule';
import { addressOf } from './support/bus-address';
import { partOf } from './support/views';

interface Detail {
  readonly part: string;
  readonly other: string;
  readonly address: number;
}

export default defineRule<Detail>({
  id: 'bus-address-shared',
  title: 'Two devices on one bus have the same address.',
  why: 'Both answer at once: what is read is a mixture, and what is written goes to both.',
  source: 'I2C-bus specification UM10204, section 3.1.10: every device has an address of its own',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const net of subject.build.nets) {
      const seen = new Map<number, Part>();
      for (const { part: id, terminal } of net.terminals) {
        const part = partOf(subject, id);
        if (!part?.terminals.some((one) => one.id === terminal && one.roles?.includes('i2c.sda'))) continue;
        const address = addressOf(part);
        if (address === undefined) continue;
        const other = seen.get(address);
        if (other === undefined) {
          seen.set(address, part);
          continue;
        }
        yield {
          identity: part.id,
          span: part.valueSpans.address ?? part.span,
          related: [{ message: `${other.id} has it too`, span: other.valueSpans.address ?? other.span }],
          detail: { part: part.id, other: other.id, address },
        };
      }
    }
  },
  message: ({ part, other, address }) =>
    `${part} and ${other} both have the address 0x${address.toString(16).toUpperCase()} on one bus. Set another one by ` +
    'the address pins of one of them, or put it on a second bus.',
  examples: [
    twoOn('two displays as they come out of the bag', '0x3C', '0x3C', true),
    twoOn('one address, written in two ways', '0x3c', '60', true),
    twoOn('one of them set to its other address', '0x3C', '0x3D', false),
    twoOn('one of them whose address nobody said', '0x3C', '', false),
  ],
});

function twoOn(about: string, first: string, second: string, wrong: boolean) {
  const mark = `\n//                                               ${'^'.repeat(second.length)} bus-address-shared: port and starboard both have the address 0x3C`;
  const address = (text: string) => (text === '' ? '' : `, "address": "${text}"`);
  return {
    about,
    build: `
//- sketch.ino
#include <Wire.h>
void setup() { Wire.begin(); }
void loop() { Wire.beginTransmission(0x3C); Wire.endTransmission(); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "starboard": { "kind": "i2c-display"${address(first)} },
    "port": { "kind": "i2c-display"${address(second)} }${wrong ? mark : ''}
  },
  "wires": [
    { "from": "A4", "to": "starboard.sda" },
    { "from": "A5", "to": "starboard.scl" },
    { "from": "5V", "to": "starboard.+" },
    { "from": "GND", "to": "starboard.-" },
    { "from": "starboard.sda", "to": "port.sda" },
    { "from": "starboard.scl", "to": "port.scl" },
    { "from": "starboard.+", "to": "port.+" },
    { "from": "starboard.-", "to": "port.-" }
  ]
}
`,
  };
}
