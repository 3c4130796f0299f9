/** The select pin of the SPI controller is made an input while the bus is open. */

import { defineRule } from './rule';
import { freePins, moveFixes } from './support/rewire';
import { isMeant, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
}

export default defineRule<Detail>({
  id: 'slave-select-input',
  title: 'The chip’s own select pin is an input while SPI is open.',
  why: 'A LOW on it drops the chip out of the role of the master, and every transfer waits for ever after.',
  source:
    'ATmega328P datasheet, SPI: SS pin functionality, master mode; SPI.cpp of the board-support core for AVR',
  severity: 'error',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    if (subject.build.board.platform.macros.ARDUINO_ARCH_AVR === undefined) return;
    // A library may open the bus by its clock and its data lines alone.
    const clock = subject.pins.find(({ pin }) => pin.roles.includes('spi.sck'));
    const openings = clock?.uses.filter((use) => use.action === 'bus') ?? [];
    for (const view of subject.pins) {
      if (!view.pin.roles.includes('spi.ss')) continue;
      const opens = openings.find((use) => use.certain);
      if (!opens || view.uses.some((use) => use.action === 'release')) continue;
      const isInput = (mode: string) => mode === 'input' || mode === 'input-pullup';
      const use = view.uses.find(
        (one) =>
          one.action === 'mode' &&
          one.modes?.length === 1 &&
          one.modes.every(isInput) &&
          isMeant(one) &&
          (one.phase !== 'setup' || one.order > opens.order),
      );
      if (!use) continue;
      const { id: pin } = view.pin;
      yield {
        identity: pin,
        span: use.span,
        related: [{ message: `${opens.call} opens SPI here`, span: opens.callSpan }, ...relatedOf(view, use)],
        detail: { pin },
      };
    }
  },
  message: ({ pin }) =>
    `${pin} is the chip’s own select pin, and SPI is open: as an input a LOW on it ends the transfers. Leave it an output, ` +
    'and put what it reads on another pin.',
  fixes({ pin }, subject) {
    const free = freePins(subject, (view) => view.pin.type === 'io');
    return moveFixes(
      subject,
      pin,
      free.map((view) => view.pin.id),
    );
  },
  examples: [
    doorOn('a contact on the select pin, its mode set behind SPI.begin', 'uno-r3', 10, true),
    doorOn('the same on the large board', 'mega-2560', 53, true),
    cardBeside('a library opens the bus', 10),
    cardBeside('a library opens the bus, and the contact is elsewhere', 8),
    doorOn('a contact on a pin beside it', 'uno-r3', 9, false),
    doorOn('a pin with that number on the large board, where it is no select pin', 'mega-2560', 10, false),
  ],
});

function doorOn(about: string, board: string, pin: number, wrong: boolean) {
  const caret = '^'.repeat(`${pin}`.length);
  const large = board === 'mega-2560';
  const [mosi, miso, sck] = large ? ['D51', 'D50', 'D52'] : ['D11', 'D12', 'D13'];
  return {
    about,
    build: `
//- sketch.ino
#include <SPI.h>
void setup() {
  pinMode(8, OUTPUT);
  SPI.begin();
  pinMode(${pin}, INPUT_PULLUP);${wrong ? `\n//        ${caret} slave-select-input [ask] [ask]: D${pin} is the chip’s own select pin` : ''}
}
void loop() {
  if (digitalRead(${pin}) == LOW) delay(1);
  digitalWrite(8, LOW);
  SPI.transfer(1);
  digitalWrite(8, HIGH);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": {
    "store": { "kind": "spi-device", "supply": "5" },
    "door": { "kind": "reed-switch" },
    "R1": { "kind": "resistor", "value": "1k" }
  },
  "wires": [
    { "from": "D8", "to": "store.select" },
    { "from": "${mosi}", "to": "store.mosi" },
    { "from": "${miso}", "to": "store.miso" },
    { "from": "${sck}", "to": "store.sck" },
    { "from": "5V", "to": "store.+" },
    { "from": "GND", "to": "store.-" },
    { "path": ["D${pin}", "R1", "door", "store.-"] }
  ]
}
`,
  };
}

function cardBeside(about: string, pin: number) {
  const written = pin === 10 ? 'PIN_SPI_SS' : `${pin}`;
  const mark = `\n//        ^^^^^^^^^^ slave-select-input [ask] [ask]: D10 is the chip’s own select pin`;
  return {
    about,
    build: `
//- sketch.ino
#include <SPI.h>
#include <SD.h>
void setup() {
  SD.begin(9);
}
void loop() {
  pinMode(${written}, INPUT_PULLUP);${pin === 10 ? mark : ''}
  if (digitalRead(${written}) == LOW) SD.remove("log.txt");
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "card": { "kind": "spi-device", "supply": "5" },
    "door": { "kind": "reed-switch" },
    "R1": { "kind": "resistor", "value": "1k" }
  },
  "wires": [
    { "from": "D9", "to": "card.select" },
    { "from": "D11", "to": "card.mosi" },
    { "from": "D12", "to": "card.miso" },
    { "from": "D13", "to": "card.sck" },
    { "from": "5V", "to": "card.+" },
    { "from": "GND", "to": "card.-" },
    { "path": ["D${pin}", "R1", "door", "card.-"] }
  ]
}
`,
  };
}
