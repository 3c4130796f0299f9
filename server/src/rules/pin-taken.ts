/** A pin that the board itself needs: its flash memory, its crystal, its radio. */
import type { PinUse } from '../base/pin-use';
import { defineRule } from './rule';
import { isMistaken } from './support/mistaken';
import { freePins, moveFixes } from './support/rewire';
import { isMeant, relatedOf, wiresRelated } from './support/views';

interface Detail {
  readonly pin: string;
  readonly why: string;
  readonly used: boolean;
}

/** Takers that a sketch opens itself: their pins are used as they are meant. */
const ports: ReadonlySet<string> = new Set(['serial', 'usb']);

export default defineRule<Detail>({
  id: 'pin-taken',
  title: 'A pin is used that something on the board needs for itself.',
  why: 'The pin comes to the header all the same. Whoever uses it takes the flash memory or the clock away from the chip: it crashes at once, or never starts.',
  source: 'the board files, each with its maker’s document',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const view of subject.pins) {
      const { id: pin, takenBy } = view.pin;
      if (!takenBy || takenBy.free || isMistaken(subject, view)) continue;
      const isOwn = ({ action }: PinUse) => action === 'bus' && ports.has(takenBy.what);
      const use = view.uses.find((one) => isMeant(one) && !isOwn(one));
      const detail = { pin, why: takenBy.why, used: use !== undefined };
      const [wire] = view.wires;
      if (use) yield { identity: pin, span: use.span, related: relatedOf(view, use), detail };
      else if (wire) {
        const [place, ...related] = wiresRelated(view.wires, pin);
        yield { identity: pin, span: place?.span ?? wire.span, related, detail };
      }
    }
  },
  message: ({ pin, why, used }) =>
    `${pin} is not free: it ${why}. ${used ? 'Take another pin.' : 'Nothing may hang on it: move this wire.'}`,
  fixes({ pin, used }, subject) {
    const free = freePins(subject, (view) => view.pin.type === 'io' && view.pin.inputOnly !== true);
    const ids = free.map((view) => view.pin.id);
    return used ? moveFixes(subject, pin, ids) : [];
  },
  examples: [
    {
      about: 'the console itself, on the pins that the board keeps for it',
      build: `
//- sketch.ino board:nucleo-f103rb
void setup() { Serial.begin(9600); }
void loop() { Serial.println(millis()); delay(500); }
`,
    },
    {
      about: 'a lamp on a pin of the flash memory',
      build: `
//- sketch.ino
const int beacon = 9;
void setup() { pinMode(beacon, OUTPUT); }
//                     ^^^^^^ pin-taken [ask] [ask]: IO9 is not free: it joins the chip to the flash memory
void loop() { digitalWrite(beacon, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": { "beacon": { "kind": "led", "colour": "red" }, "R1": { "kind": "resistor", "value": "220" } },
  "wires": [{ "path": ["IO9", "R1", "beacon", "GND"] }]
}
`,
    },
    {
      about: 'a button on a pin of the flash memory that no line of the sketch reads',
      build: `
//- sketch.ino
void setup() {}
void loop() { delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nodemcu-esp8266",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["CMD", "call", "GND"] }]
//                      ^^^ pin-taken: CMD is not free
}
`,
    },
    {
      about: 'the pin that lights the lamp of the sister board, and here selects the radio',
      build: `
//- sketch.ino board:pico-w
void setup() { pinMode(25, OUTPUT); }
//                     ^^ pin-taken: GP25 is not free: it selects the radio chip; it is not the lamp as on the Pico
void loop() { digitalWrite(25, HIGH); }
`,
    },
    {
      about: 'a pin that is taken on modules with more memory only',
      build: `
//- sketch.ino
const int beacon = 16;
void setup() { pinMode(beacon, OUTPUT); }
void loop() { digitalWrite(beacon, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": { "beacon": { "kind": "led", "colour": "red" }, "R1": { "kind": "resistor", "value": "220" } },
  "wires": [{ "path": ["IO16", "R1", "beacon", "GND"] }]
}
`,
    },
    {
      about: 'pin 9 of a board that has nothing on it',
      build: `
//- sketch.ino
const int beacon = 9;
void setup() { pinMode(beacon, OUTPUT); }
void loop() { digitalWrite(beacon, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "beacon": { "kind": "led", "colour": "red" }, "R1": { "kind": "resistor", "value": "470" } },
  "wires": [{ "path": ["D9", "R1", "beacon", "GND"] }]
}
`,
    },
  ],
});
