/** A port made in software listens on a pin whose changes interrupt nothing. */

import { defineRule } from './rule';
import { freePins, moveFixes } from './support/rewire';
import { isMeant, listWords, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly can: readonly string[];
  readonly free: readonly string[];
}

export default defineRule<Detail>({
  id: 'software-serial-pin',
  title: 'SoftwareSerial listens on a pin that cannot wake it.',
  why: 'The port sends and never receives: it waits for a pin-change interrupt, and on this pin there is none.',
  source: 'pins_arduino.h of the board-support core for AVR (digitalPinToPCICR), SoftwareSerial.cpp',
  severity: 'error',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    const able = subject.pins.filter(({ pin }) => pin.roles.includes('pin-change'));
    // Boards whose every pin has it say nothing of it.
    if (able.length === 0) return;
    for (const view of subject.pins) {
      if (view.pin.roles.includes('pin-change')) continue;
      const use = view.uses.find(
        (one) => one.call === 'SoftwareSerial' && one.modes?.includes('input-pullup') && isMeant(one),
      );
      if (!use) continue;
      const free = freePins(subject, ({ pin }) => pin.roles.includes('pin-change'));
      const { id: pin } = view.pin;
      yield {
        identity: pin,
        span: use.span,
        related: relatedOf(view, use),
        detail: {
          pin,
          can: able.map((one) => one.pin.id),
          free: free.map((one) => one.pin.id),
        },
      };
    }
  },
  message: ({ pin, can, free }) =>
    `${pin} has no pin-change interrupt, so the port never hears anything. Pins that have one: ${listWords(can)}` +
    `${free.length > 0 ? `; free is ${free[0]}` : ''}.`,
  fixes: ({ pin, free }, subject) => moveFixes(subject, pin, free),
  examples: [
    gpsOn('a receiver on D2 of the large board', 'mega-2560', 'D2', '2', ['D10', '10']),
    gpsOn('the same on a board that talks USB itself', 'leonardo', 'D4', '4', ['D8', '8']),
    gpsOn('D10 of the large board', 'mega-2560', 'D10', '10'),
    gpsOn('D2 of the small board, whose every pin has the interrupt', 'uno-r3', 'D2', '2'),
  ],
});

function gpsOn(about: string, board: string, pin: string, number: string, to?: readonly [string, string]) {
  const text = (end: string, written: string, mark = '') => `
//- sketch.ino
#include <SoftwareSerial.h>
SoftwareSerial gps(${written}, 5);${mark}
void setup() { gps.begin(9600); }
void loop() { if (gps.available()) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "receiver": { "kind": "serial-device", "supply": "5" } },
  "wires": [
    { "from": "${end}", "to": "receiver.tx" },
    { "from": "D5", "to": "receiver.rx" },
    { "from": "5V", "to": "receiver.+" },
    { "from": "GND", "to": "receiver.-" }
  ]
}
`;
  if (!to) return { about, build: text(pin, number) };
  const mark = `\n//                 ${'^'.repeat(number.length)} software-serial-pin [ask] [ask]: ${pin} has no pin-change interrupt`;
  return { about, build: text(pin, number, mark), fixed: text(...to) };
}
