/** A part of a bus hangs on pins that the bus does not come to on this board. */

import { defineRule } from './rule';
import { misplacedParts } from './support/bus-wiring';
import { draftManifest } from './support/draft';
import { setEnd } from './support/manifest-edits';
import { listWords, wiresRelated } from './support/views';

interface Detail {
  readonly part: string;
  readonly bus: string;
  readonly call: string;
  readonly ends: readonly { readonly terminal: string; readonly pin: string; readonly right: string }[];
}

export default defineRule<Detail>({
  id: 'bus-pins-wrong',
  title: 'A part of a bus is wired to pins that this board’s bus does not come to.',
  why: 'Every board has its bus elsewhere, and instructions for one are soldered on another: the part is never found.',
  source: 'pins_arduino.h of the boards’ cores; the boards’ pin tables',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const { part, bus, ends } of misplacedParts(subject)) {
      const places = ends.flatMap(({ end }) => wiresRelated(end.pin.wires, end.pin.pin.id));
      const [place, ...related] = places;
      yield {
        identity: part.id,
        span: place?.span ?? part.span,
        related: [{ message: `${bus.use.call} opens the bus here`, span: bus.use.callSpan }, ...related],
        detail: {
          part: part.id,
          bus: bus.name.toUpperCase(),
          call: bus.use.call,
          ends: ends.map(({ end, right }) => ({
            terminal: end.terminal,
            pin: end.pin.pin.id,
            right: right.pin.id,
          })),
        },
      };
    }
  },
  message: ({ part, bus, call, ends }) => {
    const is = listWords(ends.map(({ terminal, pin }) => `${terminal} on ${pin}`));
    const should = listWords(ends.map(({ terminal, right }) => `${terminal} to ${right}`));
    return `${part} has ${is}, but ${call} opens ${bus} elsewhere on this board: move ${should}.`;
  },
  fixes({ part, ends }, subject) {
    const steps = subject.build.wires.flatMap((wire) =>
      ([0, 1] as const).flatMap((index) => {
        const end = wire.ends[index];
        const move = end.kind === 'pin' ? ends.find(({ pin }) => pin === end.pin) : undefined;
        return move ? [setEnd(wire, index, move.right)] : [];
      }),
    );
    // Where other parts hang on the same wires, moving all is a question of its own.
    if (steps.length !== ends.length) return [];
    const moves = listWords(ends.map(({ terminal, right }) => `${terminal} to ${right}`));
    return [{ title: `Move ${moves} of ${part}`, trust: 'ask', edits: draftManifest(subject, steps) }];
  },
  examples: [
    clockOn('the small board’s I2C pins on the large board', 'mega-2560', 'A4', 'A5', {
      mark: 'clock has sda on A4 and scl on A5, but Wire.begin opens I2C elsewhere on this board',
      to: ['D20', 'D21'],
    }),
    clockOn('the two lines crossed', 'uno-r3', 'A5', 'A4', {
      mark: 'move sda to A4 and scl to A5',
      to: ['A4', 'A5'],
    }),
    clockOn('the bus where the small board has it', 'uno-r3', 'A4', 'A5'),
    clockOn('the bus where the large board has it', 'mega-2560', 'D20', 'D21'),
  ],
});

function clockOn(
  about: string,
  board: string,
  sda: string,
  scl: string,
  fault?: { readonly mark: string; readonly to: readonly [string, string] },
) {
  const text = (data: string, beat: string, mark = '') => `
//- sketch.ino
#include <Wire.h>
void setup() { Wire.begin(); }
void loop() {
  Wire.beginTransmission(0x68);
  Wire.endTransmission();
}
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "clock": { "kind": "i2c-device", "supply": "5" } },
  "wires": [
    { "from": "${data}", "to": "clock.sda" },${mark}
    { "from": "${beat}", "to": "clock.scl" },
    { "from": "5V", "to": "clock.+" },
    { "from": "GND", "to": "clock.-" }
  ]
}
`;
  if (!fault) return { about, build: text(sda, scl) };
  return {
    about,
    build: text(sda, scl, `\n//             ^^ bus-pins-wrong [ask]: ${fault.mark}`),
    fixed: text(...fault.to),
  };
}
