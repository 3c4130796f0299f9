/** A pin the sketch uses and nobody wired: the part is missing from the list, or the number is wrong. */

import type { PinAction, PinUse } from '../base/pin-use';
import { defineRule } from './rule';
import type { PinView, Subject } from './subject';
import { usesBus } from './support/buses';
import { declarePart } from './support/declare-fixes';
import { isToldElsewhere } from './support/mistaken';
import { hasUseOnBoard, isMeant, isSignal, pathRelated } from './support/views';

interface Detail {
  readonly pin: string;
  readonly call: string;
  readonly actions: readonly string[];
  readonly name: string;
}

export default defineRule<Detail>({
  id: 'unwired-pin',
  title: 'The sketch uses a pin that nothing is wired to.',
  why: 'The lamp, button or sensor the code speaks of is missing from the build and from its papers.',
  source: 'common practice',
  severity: 'warning',
  maturity: 'settled',
  needs: 'hardware',
  *check(subject) {
    for (const view of subject.pins) {
      if (!isSignal(view) || view.wires.length > 0 || hasUseOnBoard(subject, view)) continue;
      // A wrong number and a pin that is not free are told by the rules on them.
      if (usesBus(subject, view.pin.roles) || isToldElsewhere(subject, view)) continue;
      if (isSpare(subject, view)) continue;
      // Several pins behind one argument are possibilities, not statements, unless the run surely meets them all.
      const use = view.uses.find((candidate) => speaks(view, candidate));
      if (!use) continue;
      yield {
        identity: view.pin.id,
        span: use.span,
        related: pathRelated(use),
        detail: {
          pin: view.pin.id,
          call: use.call,
          actions: [...new Set(view.uses.map((candidate) => candidate.action))],
          name: use.pinText,
        },
      };
    }
  },
  message: ({ pin, call }) => `${call} uses ${pin}, and nothing is wired to it.`,
  fixes: (detail, subject) => declarePart(subject, detail),
  examples: [
    {
      about: 'a lamp that is in the code and not in the list',
      build: `
//- sketch.ino board:nano-v3
const int beacon = 7;
void setup() {
  pinMode(beacon, OUTPUT);
//        ^^^^^^ unwired-pin [ask] [ask]: pinMode uses D7, and nothing is wired to it
}
void loop() {
  digitalWrite(beacon, HIGH);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  // what is in the drawer
  "stock": { "resistors": ["220", "330", "470"] }
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  // what is in the drawer
  "stock": { "resistors": ["220", "330", "470"] },
  "parts": {
    "beacon": { "kind": "led" },
    "R1": { "kind": "resistor", "value": "330" }
  },
  "wires": [
    { "path": ["D7", "R1", "beacon", "GND@left.14"], "colours": ["red", "red", "black"] }
  ]
}
`,
    },
    {
      about: 'a button that is in the code and not in the list',
      build: `
//- sketch.ino board:nano-v3
#define CALL_PIN 2
void setup() {
  pinMode(CALL_PIN, INPUT_PULLUP);
//        ^^^^^^^^ unwired-pin [ask] [ask] [ask] [ask]: pinMode uses D2, and nothing is wired to it
}
void loop() {
  if (digitalRead(CALL_PIN) == LOW) delay(1);
}
`,
    },
    listening('a port that only listens', [4], []),
    listening('a port with no wire at all', [], [4, 5]),
    {
      about: 'two ports that take turns do not make the pins of another bus its own',
      build: `
//- sketch.ino
#include <SoftwareSerial.h>
SoftwareSerial depth(10, 3);
void setup() { depth.begin(9600); pinMode(11, OUTPUT); }
//                                        ^^ unwired-pin [ask] [ask] [ask] [ask]: pinMode uses D11
void loop() { depth.listen(); analogWrite(11, depth.read()); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "sounder": { "kind": "serial-device", "supply": "5" } },
  "wires": [
    { "from": "D10", "to": "sounder.tx" },
    { "from": "5V", "to": "sounder.+" },
    { "from": "GND", "to": "sounder.-" }
  ]
}
`,
    },
    {
      about: 'the lamp on the board needs no wire',
      build: `
//- sketch.ino board:nano-v3
void setup() { pinMode(LED_BUILTIN, OUTPUT); }
void loop() { digitalWrite(LED_BUILTIN, HIGH); }
`,
    },
  ],
});

/** Calls that say nothing of a part on the pin: a bus may serve the computer alone, and a pin let go needs no wire. */
const quiet: ReadonlySet<PinAction> = new Set([
  'bus',
  'transfer',
  'tone-off',
  'release',
  'interrupt-off',
  'reference',
]);

/** True where a use says that something is meant to be on the pin. */
function speaks(view: PinView, use: PinUse): boolean {
  if (quiet.has(use.action) || !isMeant(use)) return false;
  // Writing a whole port sets pins nobody cares for, as inputs or with their pull-ups, which is good practice.
  const register = /^(?:DDR|PORT|PIN)[A-L]$/.test(use.call);
  return !register || (view.modes.includes('output') && !(use.modes?.includes('input') ?? false));
}

const device: ReadonlySet<PinAction> = new Set(['device', 'transfer', 'release']);

/** A pin that a call wants to be named though nothing is on it: a port that only listens has no wire to send on. */
function isSpare(subject: Subject, view: PinView): boolean {
  const named = view.uses.filter((use) => use.mayStayOpen);
  if (named.length === 0 || view.uses.some((use) => !device.has(use.action))) return false;
  return named.every((use) =>
    subject.pins.some(
      (other) =>
        other !== view &&
        other.wires.length > 0 &&
        other.uses.some(({ mayStayOpen, callSpan: { file, start } }) => {
          return mayStayOpen && file === use.callSpan.file && start === use.callSpan.start;
        }),
    ),
  );
}

function listening(about: string, wired: readonly number[], told: readonly number[]) {
  const mark = (pin: number, at: number) =>
    told.includes(pin)
      ? `\n//${' '.repeat(at - 2)}^ unwired-pin ${pin === 4 ? '[ask] [ask]' : '[ask]'}: SoftwareSerial uses D${pin}, and nothing is wired to it`
      : '';
  return {
    about,
    build: `
//- sketch.ino
#include <SoftwareSerial.h>
SoftwareSerial depth(4, 5);${mark(4, 21)}${mark(5, 24)}
void setup() { depth.begin(9600); }
void loop() { if (depth.available()) depth.read(); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "sounder": { "kind": "serial-device", "supply": "5" } },
  "wires": [
    ${wired.map((pin) => `{ "from": "D${pin}", "to": "sounder.tx" },`).join('\n    ')}
    { "from": "5V", "to": "sounder.+" },
    { "from": "GND", "to": "sounder.-" }
  ]
}
`,
  };
}
