/** The sketch gives an address with the bit for reading and writing, where the bus library wants it without. */

import { defineRule } from './rule';
import { addressOf, busParts } from './support/bus-address';
import { busesUnclear } from './support/bus-wiring';

interface Detail {
  readonly written: number;
  readonly meant: number;
  readonly part?: string;
  readonly place?: { readonly file: string; readonly start: number; readonly end: number };
}

/** Addresses above have no room in seven bits. */
const highest = 0x7f;

export default defineRule<Detail>({
  id: 'bus-address-eight-bit',
  title: 'An I2C address is given in eight bits where seven are wanted.',
  why: 'The library adds the bit for reading and writing itself: the call reaches another address, and nobody answers.',
  source: 'Wire.h of the boards’ cores; I2C-bus specification UM10204, section on the first byte',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const addresses = busesUnclear(subject)
      ? []
      : busParts(subject).map((part) => ({ id: part.id, address: addressOf(part) }));
    const told = new Set<number>();
    for (const { valueIsAddress, value, valueSpan, callSpan } of subject.facts.uses) {
      if (!valueIsAddress || value?.kind !== 'known') continue;
      const [written, ...others] = value.values;
      if (written === undefined || others.length > 0 || told.has(written) || written > 0xff) continue;
      const part = addresses.find(({ address }) => address === written >> 1);
      // A device that has no address, or this one, may be the one that is meant.
      const isOther = addresses.some(({ address }) => address === undefined || address === written);
      if (written <= highest && (!part || isOther || written < 8)) continue;
      told.add(written);
      const detail = {
        written,
        meant: written >> 1,
        ...(part && { part: part.id }),
        ...(valueSpan && { place: valueSpan }),
      };
      yield { identity: hex(written), span: valueSpan ?? callSpan, detail };
    }
  },
  message: ({ written, meant, part }) =>
    `${hex(written)} is an address with the bit for reading and writing; ${part ? `${part} has` : 'seven bits of it are'} ${hex(meant)}. Give ${hex(meant)}, ` +
    'the library adds the bit.',
  fixes({ written, meant, place }, subject) {
    const text = place && subject.texts[place.file]?.slice(place.start, place.end);
    // A constant may stand for the address elsewhere too; only a plain number is rewritten.
    if (!place || Number(text) !== written) return [];
    return [{ title: `Give ${hex(meant)}`, trust: 'ask', edits: [{ ...place, text: hex(meant) }] }];
  },
  examples: [
    clockAt('the write address of a clock', '0xD0', '0x68', true),
    clockAt('an address that is small enough for seven bits', '0x70', '0x38', true),
    clockAt('the address in seven bits', '0x68', '0x68', false),
    clockAt('the highest that a device has', '0x77', '0x77', false),
  ],
});

function hex(address: number): string {
  return `0x${address.toString(16).toUpperCase().padStart(2, '0')}`;
}

function clockAt(about: string, called: string, own: string, wrong: boolean) {
  const text = (address: string, mark = '') => `
//- sketch.ino
#include <Wire.h>
void setup() { Wire.begin(); }
void loop() {
  Wire.beginTransmission(${address});${mark}
  Wire.endTransmission();
}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "clock": { "kind": "i2c-device", "supply": "5", "address": "${own}" } },
  "wires": [
    { "from": "A4", "to": "clock.sda" },
    { "from": "A5", "to": "clock.scl" },
    { "from": "5V", "to": "clock.+" },
    { "from": "GND", "to": "clock.-" }
  ]
}
`;
  if (!wrong) return { about, build: text(called) };
  const mark = `\n//                       ^^^^ bus-address-eight-bit [ask]: clock has ${own}`;
  return { about, build: text(called, mark), fixed: text(own) };
}
