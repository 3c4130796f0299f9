/** The sketch waits for somebody to open the console, on a board that runs without a computer. */

import { defineRule } from './rule';
import { boardFeeds } from './support/board-feeds';
import { habitsOf } from './support/habits';
import { partOf } from './support/views';

interface Detail {
  readonly name: string;
  readonly source: string;
}

export default defineRule<Detail>({
  id: 'serial-awaited',
  title: 'The sketch waits for a computer that need not be there.',
  why: 'Without a computer that opens the port the board never gets past this line: on its own supply it seems dead.',
  source: 'USBAPI.h of the cores whose chip talks USB itself: the port is true once a computer has opened it',
  severity: 'warning',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const [feed] = boardFeeds(subject);
    const source = feed && partOf(subject, feed.source.part);
    if (!source) return;
    const [wait] = habitsOf(subject, 'wait-loop').filter(({ waitsFor }) => waitsFor === 'console');
    if (wait?.name === undefined) return;
    // A port with pins is no USB socket: it is there at once.
    const begin = subject.facts.uses.find((use) => use.call === `${wait.name}.begin`);
    if (begin?.pins.kind !== 'known' || begin.pins.values.length > 0) return;
    yield {
      identity: wait.name,
      span: wait.span,
      related: [{ message: `${source.id} feeds the board here`, span: source.span }],
      detail: { name: wait.name, source: source.id },
    };
  },
  message: ({ name, source }) =>
    `${name} is the USB socket here and stays false until a computer opens it: fed by ${source}, the board never gets past this ` +
    `line. Give the wait an end: while (!${name} && millis() < 3000) {}.`,
  examples: [
    lamp('a battery, and a wait for the console', 'leonardo', 'VIN', 'while (!Serial) {}', true),
    lamp('the same on another board', 'pico', 'VSYS', 'while (!Serial) { delay(10); }', true),
    lamp('a wait with an end', 'leonardo', 'VIN', 'while (!Serial && millis() < 3000) {}', false),
    lamp('a board whose port has pins', 'uno-r3', 'VIN', 'while (!Serial) {}', false),
  ],
});

function lamp(about: string, board: string, pin: string, wait: string, wrong: boolean) {
  const mark = `\n//                                  ${'^'.repeat(wait.length)} serial-awaited: fed by pack`;
  return {
    about,
    build: `
//- sketch.ino
void setup() { Serial.begin(9600);  ${wait} }${wrong ? mark : ''}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "pack": { "kind": "battery", "volts": "${pin === 'VSYS' ? '4.5' : '9'}" } },
  "wires": [
    { "from": "pack.+", "to": "${pin}" },
    { "from": "pack.-", "to": "GND" }
  ]
}
`,
  };
}
