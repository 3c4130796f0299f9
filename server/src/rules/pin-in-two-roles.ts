/** A pin of an open bus or serial port is driven or measured as a plain pin as well. */

import type { PinAction, PinUse } from '../base/pin-use';
import { defineRule } from './rule';
import type { PinView, Subject } from './subject';
import { freePins, moveFixes } from './support/rewire';
import { isMeant, listWords, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  /** What the bus calls it: `i2c.sda`. */
  readonly role: string;
  /** The call that opens the bus, and the one that does something else. */
  readonly opens: string;
  readonly call: string;
  readonly free: readonly string[];
}

const always: ReadonlySet<PinAction> = new Set(['pwm', 'tone', 'servo', 'analog-read']);

export default defineRule<Detail>({
  id: 'pin-in-two-roles',
  title: 'A pin of an open bus is used as a plain pin as well.',
  why:
    'The bus and the plain call take the pin from each other: data is garbled, readings stick near the supply, and what ' +
    'hangs there gets the console’s text.',
  source:
    'common practice; the boards’ pin tables; twi.c, SPI.cpp and HardwareSerial.cpp of the boards’ cores',
  severity: 'error',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    for (const view of subject.pins) {
      const role = view.pin.roles.find((one) =>
        /^(i2c|spi|uart)\d*\.(sda|scl|sck|mosi|miso|rx|tx)$/.test(one),
      );
      if (role === undefined) continue;
      const opens = view.uses.find((use) => use.action === 'bus' && use.certain);
      // A bus that is closed gives its pins back.
      if (!opens || view.uses.some((use) => use.action === 'release')) continue;
      const other = view.uses.find((use) => isAgainst(subject, view, use, opens));
      if (!other) continue;
      const { id: pin } = view.pin;
      const free = freePins(subject, (one) => one.pin.type === 'io').slice(0, 4);
      yield {
        identity: pin,
        span: other.span,
        related: [
          { message: `${opens.call} takes ${pin} here`, span: opens.callSpan },
          ...relatedOf(view, other),
        ],
        severity: role.startsWith('uart') ? ('warning' as const) : ('error' as const),
        detail: { pin, role, opens: opens.call, call: other.call, free: free.map((one) => one.pin.id) },
      };
    }
  },
  message({ pin, role, opens, call, free }) {
    const [bus = '', line = ''] = role.toUpperCase().split('.');
    const name = bus.startsWith('UART') ? `${line} of the serial port` : `${line} of ${bus}`;
    const way = free.length > 0 ? `Free pins: ${listWords(free)}.` : 'No other pin is free.';
    const what = pin === line ? name.replace(`${line} of`, 'one of the lines of') : name;
    return `${pin} is ${what}, which ${opens} has opened, and ${call} uses it as a plain pin. ${way}`;
  },
  fixes: ({ pin, free }, subject) => moveFixes(subject, pin, free),
  examples: [
    {
      about: 'a knob on a line of the bus that a clock is on',
      build: `
//- sketch.ino
#include <Wire.h>
void setup() { Wire.begin(); }
void loop() {
  int level = analogRead(A4);
//                       ^^ pin-in-two-roles: A4 is SDA of I2C, which Wire.begin has opened
  Wire.beginTransmission(0x68);
  Wire.endTransmission();
}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "clock": { "kind": "i2c-device", "supply": "5" } },
  "wires": [
    { "from": "A4", "to": "clock.sda" },
    { "from": "A5", "to": "clock.scl" },
    { "from": "5V", "to": "clock.+" },
    { "from": "GND", "to": "clock.-" }
  ]
}
`,
    },
    lampOn(
      'a lamp on the pin that sends, and the console open',
      'D1',
      1,
      'Serial.begin(9600);',
      'D1 is TX of the serial port, which Serial.begin has opened',
    ),
    lampOn(
      'the lamp of the board blinks on the clock line of SPI',
      'D13',
      13,
      'SPI.begin();',
      'D13 is SCK of SPI, which SPI.begin has opened',
    ),
    lampOn('the same lamp without the bus', 'D13', 13, ''),
    lampOn('a lamp beside the console’s pins', 'D4', 4, 'Serial.begin(9600);'),
    {
      about: 'the select line is a plain output beside the bus',
      build: `
//- sketch.ino
#include <SPI.h>
void setup() { pinMode(10, OUTPUT); SPI.begin(); }
void loop() {
  digitalWrite(10, LOW);
  SPI.transfer(1);
  digitalWrite(10, HIGH);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "store": { "kind": "spi-device", "supply": "5" } },
  "wires": [
    { "from": "D10", "to": "store.select" },
    { "from": "D11", "to": "store.mosi" },
    { "from": "D12", "to": "store.miso" },
    { "from": "D13", "to": "store.sck" },
    { "from": "5V", "to": "store.+" },
    { "from": "GND", "to": "store.-" }
  ]
}
`,
    },
  ],
});

/** A use that cannot be part of setting the bus up. */
function isAgainst(subject: Subject, view: PinView, use: PinUse, opens: PinUse): boolean {
  if (!isMeant(use)) return false;
  if (always.has(use.action)) return true;
  const later = use.phase !== 'setup' || use.order > opens.order;
  if (!later) return false;
  // Without an output, a level only sets the pull-up, and many set that of a bus by hand.
  if (use.action === 'write') return view.modes.includes('output') && use.phase !== 'setup';
  const switches = subject.placed.some(
    ({ primitive, nets }) => primitive.type === 'switch' && nets.includes(view.net.id),
  );
  return use.action === 'read' && use.phase !== 'setup' && switches;
}

function lampOn(about: string, pin: string, number: number, begin: string, fault?: string) {
  const caret = '^'.repeat(`${number}`.length);
  const mark = fault !== undefined ? `\n//             ${caret} pin-in-two-roles [ask] [ask]: ${fault}` : '';
  return {
    about,
    build: `
//- sketch.ino
${begin.startsWith('SPI') ? '#include <SPI.h>\n' : ''}void setup() { pinMode(${number}, OUTPUT); ${begin} }
void loop() {
  digitalWrite(${number}, HIGH);${mark}
  delay(500);
  digitalWrite(${number}, LOW);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "beacon": { "kind": "led", "colour": "green" }, "R1": { "kind": "resistor", "value": "470" } },
  "wires": [{ "path": ["${pin}", "R1", "beacon", "GND"] }]
}
`,
  };
}
