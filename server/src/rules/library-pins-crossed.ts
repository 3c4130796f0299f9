/** A library is given a pin for one terminal of a part, and the pin is wired to another. */

import type { Fix } from '../base/finding';
import { defineRule } from './rule';
import { type Crossing, crossings } from './support/crossings';
import { draftManifest } from './support/draft';
import { moveWires, renumber, writtenPin } from './support/rewire';
import { listWords, relatedOf, viewOf } from './support/views';

interface Detail {
  readonly part: string;
  readonly call: string;
  readonly pins: readonly Omit<Crossing['pins'][number], 'use' | 'view'>[];
}

export default defineRule<Detail>({
  id: 'library-pins-crossed',
  title: 'Pins are given to a call in another order than they are wired in.',
  why: 'The library talks to the wrong legs: the display shows nothing, the ranger measures nothing, and all looks right.',
  source: 'headers of the libraries, in the library files; common practice',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const { part, pins } of crossings(subject)) {
      const [first] = pins;
      if (!first) continue;
      yield {
        identity: part.id,
        span: first.use.span,
        related: pins.flatMap(({ view, use }) => relatedOf(view, use)),
        detail: {
          part: part.id,
          call: first.use.call,
          pins: pins.map(({ pin, meant, wired, right }) => ({ pin, meant, wired, ...(right && { right }) })),
        },
      };
    }
  },
  message: ({ part, call, pins }) => {
    const words = pins.map(({ pin, meant, wired }) => `${pin} for ${meant}, which is wired to ${wired}`);
    return `${call} gets ${listWords(words)} of ${part}. Give the pins in the order of the wires, or change the wires.`;
  },
  fixes({ part, pins }, subject) {
    const moves = pins.flatMap(({ pin, right }) => {
      const from = viewOf(subject, pin);
      const to = right === undefined ? undefined : viewOf(subject, right);
      return from && to ? [{ from, to }] : [];
    });
    const targets = new Set(moves.map(({ to }) => to));
    // Only pins that change places among themselves can do so in one go.
    if (moves.length !== pins.length || !moves.every(({ from }) => targets.has(from))) return [];
    const fixes: Fix[] = [];
    const numbers = moves.map(({ from, to }) => renumber(subject, from, writtenPin(subject, to)));
    if (numbers.every((edits) => edits !== undefined)) {
      fixes.push({
        title: `Give the pins of ${part} in the order of the wires`,
        trust: 'ask',
        edits: numbers.flat(),
      });
    }
    fixes.push({
      title: `Change the wires of ${part} on ${listWords(moves.map(({ from }) => from.pin.id))}`,
      trust: 'ask',
      edits: draftManifest(
        subject,
        moves.flatMap(({ from, to }) => moveWires(subject, to, from.pin.id)),
      ),
    });
    return fixes;
  },
  examples: [
    ranger('trigger and echo the wrong way round', 7, 8, 'D8', 'D7', true),
    display('two data lines exchanged', '12, 11, 5, 4, 2, 3', true),
    ranger('trigger and echo as they are wired', 7, 8, 'D7', 'D8', false),
    display('all lines in their order', '12, 11, 5, 4, 3, 2', false),
  ],
});

function ranger(about: string, trigger: number, echo: number, first: string, second: string, wrong: boolean) {
  const text = (one: number, other: number, mark = '') => `
//- sketch.ino
#include <NewPing.h>
const int TRIGGER = ${one};
const int ECHO_PIN = ${other};
NewPing depth(TRIGGER, ECHO_PIN);${mark}
void setup() {}
void loop() { depth.ping_cm(); delay(50); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "ranger": { "kind": "ultrasonic-ranger" } },
  "wires": [
    { "from": "${first}", "to": "ranger.trigger" },
    { "from": "${second}", "to": "ranger.echo" },
    { "from": "5V", "to": "ranger.+" },
    { "from": "GND", "to": "ranger.-" }
  ]
}
`;
  if (!wrong) return { about, build: text(trigger, echo) };
  const mark = `\n//            ^^^^^^^ library-pins-crossed [ask] [ask]: NewPing gets D7 for trigger, which is wired to echo`;
  return { about, build: text(trigger, echo, mark), fixed: text(echo, trigger) };
}

function display(about: string, pins: string, wrong: boolean) {
  const text = (order: string, mark = '') => `
//- sketch.ino
#include <LiquidCrystal.h>
LiquidCrystal board(${order});${mark}
void setup() { board.begin(16, 2); }
void loop() { board.print("12:40"); delay(500); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "times": { "kind": "character-lcd" }, "tint": { "kind": "potentiometer", "value": "10k" } },
  "wires": [
    { "from": "D12", "to": "times.register-select" },
    { "from": "D11", "to": "times.enable" },
    { "from": "D5", "to": "times.d4" },
    { "from": "D4", "to": "times.d5" },
    { "from": "D3", "to": "times.d6" },
    { "from": "D2", "to": "times.d7" },
    { "from": "5V", "to": "times.+" },
    { "from": "GND", "to": "times.-" },
    { "from": "times.read-write", "to": "times.-" },
    { "from": "times.+", "to": "tint.1" },
    { "from": "tint.wiper", "to": "times.contrast" },
    { "from": "tint.2", "to": "times.-" }
  ]
}
`;
  if (!wrong) return { about, build: text(pins) };
  const mark = `\n//                                ^ library-pins-crossed [ask] [ask]: D2 for d6, which is wired to d7 and D3 for d7`;
  return { about, build: text(pins, mark), fixed: text('12, 11, 5, 4, 3, 2') };
}
