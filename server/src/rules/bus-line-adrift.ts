/** A line of a bus joins parts to each other, and no wire of it leads to the board. */
import { insertWire } from '../hardware';
import { defineRule } from './rule';
import { adriftLines } from './support/adrift-lines';
import { openBuses } from './support/bus-wiring';
import { draftManifest } from './support/draft';
import { listWords, viewOf } from './support/views';

interface Detail {
  readonly line: string;
  /** `part.terminal`. */
  readonly ends: readonly string[];
  /** Pin of the board on that line of the bus, where the sketch opens it and nothing is on it yet. */
  readonly pin?: string;
}

export default defineRule<Detail>({
  id: 'bus-line-adrift',
  title: 'A line of a bus joins its parts and does not reach the board.',
  why: 'The parts hear each other and nobody speaks to them: no device answers, and many libraries wait for ever.',
  source: 'I2C-bus specification (UM10204), section 3.1: every device hangs on both lines; common practice',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const { bus, line, ends } of adriftLines(subject)) {
      const [first] = ends;
      if (!first) continue;
      const open = openBuses(subject, bus).find(({ lines }) => lines.has(line));
      const pin = open?.lines.get(line);
      const names = ends.map(({ part, terminal }) => `${part.id}.${terminal}`);
      yield {
        identity: names.join(),
        span: first.span,
        related: [
          ...ends.slice(1).map(({ part, span }) => ({ message: `${part.id} is on the same line`, span })),
          ...(open ? [{ message: `${open.use.call} opens the bus here`, span: open.use.callSpan }] : []),
        ],
        detail: {
          line: line.toUpperCase(),
          ends: names,
          ...(pin?.wires.length === 0 && { pin: pin.pin.id }),
        },
      };
    }
  },
  message: ({ line, ends, pin }) =>
    `${line} is wired to ${listWords(ends)}, and to no pin of the board: wire ${ends[0]} to ${pin ?? `the board’s ${line}`}.`,
  fixes({ ends, pin }, subject) {
    const [to] = ends;
    if (pin === undefined || to === undefined || !viewOf(subject, pin)) return [];
    const edits = draftManifest(subject, [(text, file) => insertWire(text, { from: pin, to }, file)]);
    return [{ title: `Wire ${pin} to ${to}`, trust: 'ask', edits }];
  },
  examples: [
    pair('two devices whose data line stays among them', 'uno-r3', ['', 'A5'], '[ask]'),
    pair('a clock line that stays among them', 'mega-2560', ['D20', ''], '[ask]'),
    pair('both lines come to the board', 'uno-r3', ['A4', 'A5']),
    pair('both lines come to the bus of a larger board', 'mega-2560', ['D20', 'D21']),
  ],
});

function pair(about: string, board: string, [sda, scl]: readonly [string, string], trust?: string) {
  const mark = (line: string, pin: string) =>
    trust && pin === ''
      ? `\n//             ^^^^^^^^^ bus-line-adrift ${trust}: ${line.toUpperCase()} is wired to clock.${line} and screen.${line}, and to no pin of the board`
      : '';
  const wire = (line: string, pin: string) =>
    pin === '' ? '' : `,\n    { "from": "${pin}", "to": "clock.${line}" }`;
  return {
    about,
    build: `
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
  "parts": {
    "clock": { "kind": "i2c-device", "supply": "5", "address": "0x68", "pullUps": true },
    "screen": { "kind": "i2c-display", "supply": "5", "address": "0x3C" }
  },
  "wires": [
    { "from": "clock.sda", "to": "screen.sda" },${mark('sda', sda)}
    { "from": "clock.scl", "to": "screen.scl" },${mark('scl', scl)}
    { "from": "clock.+", "to": "screen.+" },
    { "from": "clock.-", "to": "screen.-" },
    { "from": "5V", "to": "clock.+" },
    { "from": "GND", "to": "clock.-" }${wire('sda', sda)}${wire('scl', scl)}
  ]
}
`,
  };
}
