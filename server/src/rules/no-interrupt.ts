/** attachInterrupt on a pin that no interrupt line serves. */

import { defineRule } from './rule';
import { freePins, moveFixes } from './support/rewire';
import { isMeant, listWords, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  /** All pins of the board that have one. */
  readonly can: readonly string[];
  /** Those that are still free. */
  readonly free: readonly string[];
}

const calls: ReadonlySet<string> = new Set(['attachInterrupt', 'attachInterruptArg']);

export default defineRule<Detail>({
  id: 'no-interrupt',
  title: 'attachInterrupt is called for a pin that has no interrupt line.',
  why: 'The call does nothing and says nothing: the handler never runs.',
  source: 'WInterrupts.c and pins_arduino.h of the boards’ cores; the boards’ pin tables',
  severity: 'error',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    const able = subject.pins.filter(({ pin }) => pin.interrupt !== undefined);
    // A board file that names no interrupt at all says nothing about them.
    if (able.length === 0) return;
    for (const view of subject.pins) {
      if (view.pin.interrupt !== undefined || view.pin.number === undefined) continue;
      const use = view.uses.find((one) => calls.has(one.call) && one.lines === undefined && isMeant(one));
      if (!use) continue;
      yield {
        identity: view.pin.id,
        span: use.span,
        related: relatedOf(view, use),
        detail: {
          pin: view.pin.id,
          can: able.map(({ pin }) => pin.id),
          free: freePins(subject, ({ pin }) => pin.interrupt !== undefined).map(({ pin }) => pin.id),
        },
      };
    }
  },
  message({ pin, can, free }) {
    const all =
      can.length > 8 ? 'Most other pins of this board have one' : `This board has one on ${listWords(can)}`;
    const some = free.length === 0 ? 'none of them is free' : `free are ${listWords(free.slice(0, 4))}`;
    return `${pin} has no interrupt line, so the handler never runs. ${all}; ${some}.`;
  },
  fixes: ({ pin, free }, subject) => moveFixes(subject, pin, free),
  examples: [
    example('a pulse wheel on D4, where the chip has no line', 'nano-v3', 'D4', '4', {
      mark: '[ask] [ask]: This board has one on D2 and D3; free are D2 and D3',
      to: ['D2', '2'],
    }),
    example('the same on D0 of a board whose other pins all have one', 'nodemcu-esp8266', 'D1', 'D1'),
    example('D4 of the board whose line is kept for an emergency', 'zero', 'D4', '4', {
      mark: '[ask] [ask]: Most other pins of this board have one',
      to: ['D2', '2'],
    }),
    example('a pulse wheel on D3', 'nano-v3', 'D3', '3'),
    example('D7 of a board that has a line there', 'leonardo', 'D7', '7'),
  ],
});

/** A contact on a pin, waited for by an interrupt. */
function example(
  about: string,
  board: string,
  pin: string,
  written: string,
  fault?: { readonly mark: string; readonly to: readonly [string, string] },
) {
  const text = (end: string, number: string, mark = '') => `
//- sketch.ino
const int wheel = ${number};
volatile bool turned = false;
void IRAM_ATTR count() { turned = true; }
void setup() {
  pinMode(wheel, INPUT_PULLUP);
  attachInterrupt(digitalPinToInterrupt(wheel), count, FALLING);${mark}
}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "wheel": { "kind": "reed-switch" } },
  "wires": [{ "path": ["${end}", "wheel", "GND"] }]
}
`;
  if (!fault) return { about, build: text(pin, written) };
  const mark = `\n//                                      ^^^^^ no-interrupt ${fault.mark}`;
  return { about, build: text(pin, written, mark), fixed: text(...fault.to) };
}
