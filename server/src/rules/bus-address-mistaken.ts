/** The sketch calls an address that no declared device has. */

import type { PinUse } from '../base/pin-use';
import { defineRule } from './rule';
import { addressOf, busParts } from './support/bus-address';
import { busesUnclear } from './support/bus-wiring';
import { listWords } from './support/views';

interface Detail {
  readonly address: number;
  readonly parts: readonly { readonly id: string; readonly address: number }[];
  readonly place?: { readonly file: string; readonly start: number; readonly end: number };
}

export default defineRule<Detail>({
  id: 'bus-address-mistaken',
  title: 'The sketch speaks to an address that no declared device has.',
  why: 'Nothing answers there: endTransmission gives 2, reads give nothing, and many libraries wait for ever.',
  source: 'Wire.cpp of the boards’ cores (return values of endTransmission)',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    if (busesUnclear(subject)) return;
    const parts = busParts(subject).map((part) => ({ part, address: addressOf(part) }));
    // Where one device has no declared address, it may be the one that is called.
    if (parts.length === 0 || parts.some(({ address }) => address === undefined)) return;
    const told = new Set<number>();
    for (const use of subject.facts.uses) {
      const address = calledAddress(use);
      if (address === undefined || told.has(address)) continue;
      if (parts.some((one) => one.address === address || one.address === address >> 1)) continue;
      told.add(address);
      yield {
        identity: hex(address),
        span: use.valueSpan ?? use.callSpan,
        related: parts.map(({ part, address: own = 0 }) => ({
          message: `${part.id} has ${hex(own)}`,
          span: part.valueSpans.address ?? part.span,
        })),
        detail: {
          address,
          parts: parts.map(({ part, address: own = 0 }) => ({ id: part.id, address: own })),
          ...(use.valueSpan && { place: use.valueSpan }),
        },
      };
    }
  },
  message: ({ address, parts }) =>
    `No declared device has the address ${hex(address)}: ` +
    `${listWords(parts.map((part) => `${part.id} has ${hex(part.address)}`))}. Correct the one that is wrong.`,
  fixes({ address, parts, place }, subject) {
    const [part, ...others] = parts;
    const written = place && subject.texts[place.file]?.slice(place.start, place.end);
    // A constant may stand for the address elsewhere too; only a plain number is rewritten.
    if (!part || others.length > 0 || !place || Number(written) !== address) return [];
    const edits = [{ ...place, text: hex(part.address) }];
    return [{ title: `Speak to ${part.id} at ${hex(part.address)}`, trust: 'ask', edits }];
  },
  examples: [
    clockAt('a clock called by the address of a display', '0x3C', true),
    clockAt('a slip of one digit', '0x69', true),
    clockAt('the clock’s own address', '0x68', false),
    clockAt('its address as a plain number', '104', false),
    screenAt('a display made with another address', '0x3F', true),
    screenAt('a display made with its own address', '0x27', false),
    pictureAt('a display begun at another address', '0x3D', true),
    pictureAt('a display begun at its own address', '0x3C', false),
  ],
});

/** The address of a call to one device; the general call and a search over many are none. */
function calledAddress({ valueIsAddress, value }: PinUse): number | undefined {
  if (!valueIsAddress || value?.kind !== 'known') return undefined;
  const [address, ...others] = value.values;
  return address === undefined || others.length > 0 || address < 8 || address > 0x77 ? undefined : address;
}

function hex(address: number): string {
  return `0x${address.toString(16).toUpperCase().padStart(2, '0')}`;
}

function clockAt(about: string, address: string, wrong: boolean) {
  const text = (called: string, mark = '') => `
//- sketch.ino
#include <Wire.h>
void setup() { Wire.begin(); }
void loop() {
  Wire.beginTransmission(${called});${mark}
  Wire.endTransmission();
}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "clock": { "kind": "i2c-device", "supply": "5", "address": "0x68" } },
  "wires": [
    { "from": "A4", "to": "clock.sda" },
    { "from": "A5", "to": "clock.scl" },
    { "from": "5V", "to": "clock.+" },
    { "from": "GND", "to": "clock.-" }
  ]
}
`;
  if (!wrong) return { about, build: text(address) };
  const mark = `\n//                       ^^^^ bus-address-mistaken [ask]: No declared device has the address ${address}: clock has 0x68`;
  return { about, build: text(address, mark), fixed: text('0x68') };
}

function screen(board: string, kind: string, own: string, pins: readonly [string, string], supply: string) {
  const [sda, scl] = pins;
  return `
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "screen": { "kind": "${kind}", "supply": "${supply}", "address": "${own}" } },
  "wires": [
    { "from": "${sda}", "to": "screen.sda" },
    { "from": "${scl}", "to": "screen.scl" },
    { "from": "${supply === '5' ? '5V' : '3V3'}", "to": "screen.+" },
    { "from": "GND", "to": "screen.-" }
  ]
}
`;
}

function screenAt(about: string, address: string, wrong: boolean) {
  const mark = `\n//                       ^^^^ bus-address-mistaken [ask]: No declared device has the address ${address}: screen has 0x27`;
  return {
    about,
    build: `
//- sketch.ino
#include <Wire.h>
#include <LiquidCrystal_I2C.h>
LiquidCrystal_I2C screen(${address}, 16, 2);${wrong ? mark : ''}
void setup() { screen.init(); }
void loop() { screen.print("tide"); }${screen('uno-r3', 'i2c-display', '0x27', ['A4', 'A5'], '5')}`,
  };
}

function pictureAt(about: string, address: string, wrong: boolean) {
  const mark = `\n//                                   ^^^^ bus-address-mistaken [ask]: screen has 0x3C`;
  return {
    about,
    build: `
//- sketch.ino
#include <Wire.h>
#include <Maker_SSD1306.h>
Maker_SSD1306 screen(128, 64, &Wire, -1);
void setup() {
  screen.begin(SSD1306_SWITCHCAPVCC, ${address});${wrong ? mark : ''}
}
void loop() { screen.display(); }${screen('esp32-devkitc', 'i2c-display', '0x3C', ['IO21', 'IO22'], '3.3')}`,
  };
}
