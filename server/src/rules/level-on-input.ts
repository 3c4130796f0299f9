/** A pull-up is meant to be switched on by writing HIGH to an input, and this core does not do that. */

import type { PinUse } from '../base/pin-use';
import { defineRule } from './rule';
import { setMode } from './support/sketch-edits';
import { listWords, relatedOf, viewOf } from './support/views';
import { type WrittenPull, writtenPulls } from './support/written-pulls';

interface Detail {
  readonly pins: readonly string[];
  readonly open: readonly string[];
}

export default defineRule<Detail>({
  id: 'level-on-input',
  title: 'HIGH is written to an input for its pull-up, which this core does not switch that way.',
  why: 'It works on the boards of the first hour and nowhere else: the input floats, and presses come from nowhere.',
  source:
    'wiring_digital.c of the board-support core for AVR (where it works); the same file of the other boards’ cores',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    // A loop over an array writes to several pins in one call, which is one thing to repair.
    const calls = new Map<PinUse, WrittenPull[]>();
    for (const one of writtenPulls(subject)) calls.set(one.write, [...(calls.get(one.write) ?? []), one]);
    for (const [write, all] of calls) {
      const pins = all.map(({ view }) => view.pin.id);
      yield {
        identity: pins.join(),
        span: write.span,
        related: all.flatMap(({ view }) => relatedOf(view, write)),
        detail: { pins, open: [...new Set(all.flatMap(({ open }) => open))] },
      };
    }
  },
  message: ({ pins, open }) =>
    `HIGH written to ${listWords(pins)}, ${pins.length > 1 ? 'inputs' : 'an input'}, switches no pull-up on with this core: ` +
    `${pins.length > 1 ? 'each' : 'the pin'} floats while ${open.join(' or ')} is open. Ask for INPUT_PULLUP.`,
  fixes({ pins }, subject) {
    const [pin = '', ...others] = pins;
    const view = others.length === 0 ? viewOf(subject, pin) : undefined;
    const edits = view && setMode(subject, view, 'INPUT_PULLUP');
    return edits ? [{ title: `Switch on the pull-up of ${pin} with INPUT_PULLUP`, trust: 'ask', edits }] : [];
  },
  examples: [
    pulled('the old way on a chip with output latches', 'esp32-devkitc', 'IO4', '4', true),
    pulled('the same on a small board', 'nodemcu-esp8266', 'D5', 'D5', true),
    pulled(
      'the same where the latch of the chip has nothing to do with the pull',
      'nucleo-f103rb',
      'D4',
      'D4',
      true,
    ),
    pulled('the old way where it works', 'uno-r3', 'D4', '4', false),
    pulled('a core that switches the pull-up of an input', 'teensy-4-0', 'D4', '4', false),
    keys('the old way in a loop over an array', 'INPUT', true),
    keys('the loop with the pull-ups', 'INPUT_PULLUP', false),
    {
      about: 'a resistor holds the pin',
      build: `
//- sketch.ino
void setup() { pinMode(4, INPUT); digitalWrite(4, HIGH); }
void loop() { if (digitalRead(4) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": { "call": { "kind": "push-button" }, "R1": { "kind": "resistor", "value": "10k" } },
  "wires": [{ "path": ["IO4", "call", "GND"] }, { "path": ["3V3", "R1", "call.1"] }]
}
`,
    },
  ],
});

function pulled(about: string, board: string, pin: string, written: string, wrong: boolean) {
  const text = (mode: string, mark = '') => `
//- sketch.ino
void setup() {
  pinMode(${written}, ${mode});
  digitalWrite(${written}, HIGH);${mark}
}
void loop() { if (digitalRead(${written}) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["${pin}", "call", "GND"] }]
}
`;
  if (!wrong) return { about, build: text('INPUT') };
  const mark = `\n//             ${'^'.repeat(written.length)} level-on-input [ask]: the pin floats while call is open`;
  return { about, build: text('INPUT', mark), fixed: text('INPUT_PULLUP') };
}

function keys(about: string, mode: string, wrong: boolean) {
  const mark =
    '\n//               ^^^ level-on-input: HIGH written to IO4 and IO16, inputs, switches no pull-up on';
  return {
    about,
    build: `
//- sketch.ino
const byte keys[] = { 4, 16 };
void setup() {
  for (byte key : keys) {
    pinMode(key, ${mode});
    digitalWrite(key, HIGH);${wrong ? mark : ''}
  }
}
void loop() {
  for (byte key : keys) {
    if (digitalRead(key) == LOW) delay(1);
  }
}
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": { "low": { "kind": "push-button" }, "high": { "kind": "push-button" } },
  "wires": [{ "path": ["IO4", "low", "GND"] }, { "path": ["IO16", "high", "low.2"] }]
}
`,
  };
}
