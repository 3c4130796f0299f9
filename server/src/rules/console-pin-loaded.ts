/** A switch or a lamp hangs on a line of the serial port that the sketch talks over. */

import { defineRule } from './rule';
import type { PinView, Subject } from './subject';
import { findShorts } from './support/shorts';
import { listWords, regionOf, wiresRelated } from './support/views';

interface Detail {
  readonly pin: string;
  readonly line: string;
  readonly call: string;
  readonly parts: readonly string[];
  readonly holds: boolean;
}

export default defineRule<Detail>({
  id: 'console-pin-loaded',
  title: 'A part that is no serial part hangs on a line of the open serial port.',
  why: 'A closed contact holds the line, so that uploads fail and nothing is received; a lamp flickers with the text.',
  source: 'common practice; the boards’ pin tables',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const view of subject.pins) {
      const role = view.pin.roles.find((one) => /^uart\d*\.(rx|tx)$/.test(one));
      const opens = view.uses.find((use) => use.action === 'bus' && use.certain);
      // What the sketch does with the pin besides is told by the rule on two roles.
      if (role === undefined || !opens || view.uses.some((use) => use.action !== 'bus')) continue;
      const found = plainParts(subject, view);
      const [place, ...related] = wiresRelated(view.wires, view.pin.id);
      if (!found || !place) continue;
      // A line that a switch shorts is told by the rule on that.
      if (findShorts(subject).some((short) => short.view === view)) continue;
      const { id: pin } = view.pin;
      yield {
        identity: pin,
        span: place.span,
        related: [...related, { message: `${opens.call} opens the port here`, span: opens.callSpan }],
        severity: found.holds ? ('warning' as const) : ('information' as const),
        detail: { pin, line: role.slice(-2).toUpperCase(), call: opens.call, ...found },
      };
    }
  },
  message({ pin, line, call, parts, holds }) {
    const [has, effect] = parts.length > 1 ? ['hang', 'they'] : ['hangs', 'it'];
    const what = holds
      ? `${effect} can hold the line, and then nothing is sent or loaded`
      : `${effect} will flicker with everything that is sent`;
    return `${listWords(parts)} ${has} on ${pin}, the ${line} line of the port that ${call} opens: ${what}. Take another pin.`;
  },
  examples: [
    partOn(
      'a button on the line that listens',
      'uno-r3',
      'D0',
      '"call": { "kind": "push-button" }',
      ['call'],
      'call hangs on D0, the RX line',
    ),
    partOn(
      'a lamp on the line that sends',
      'nano-v3',
      'D1',
      '"R1": { "kind": "resistor", "value": "470" }, "beacon": { "kind": "led", "colour": "red" }',
      ['R1', 'beacon'],
      'beacon hangs on D1, the TX line of the port that Serial.begin opens: it will flicker',
    ),
    partOn(
      'a board whose console is not on these pins',
      'leonardo',
      'D0',
      '"call": { "kind": "push-button" }',
      ['call'],
    ),
    {
      about: 'a receiver behind a switch that parts it while a sketch is loaded',
      build: `
//- sketch.ino
void setup() { Serial.begin(9600); }
void loop() { if (Serial.available()) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "gps": { "kind": "serial-device", "supply": "5" }, "parting": { "kind": "slide-switch" } },
  "wires": [
    { "from": "D0", "to": "parting.common" },
    { "from": "parting.1", "to": "gps.tx" },
    { "from": "5V", "to": "gps.+" },
    { "from": "GND", "to": "gps.-" }
  ]
}
`,
    },
  ],
});

const plain: ReadonlySet<string> = new Set(['resistor', 'switch', 'diode', 'capacitor']);

/** Switches and lamps on a pin that nothing with a signal of its own shares. */
function plainParts(subject: Subject, view: PinView) {
  const region = view.wires.length > 0 ? regionOf(subject, view.pin.id) : undefined;
  if (region?.pins.length !== 1) return undefined;
  const own = region.elements.filter((element) => !element.onBoard);
  if (own.length === 0 || !own.every(({ primitive }) => plain.has(primitive.type))) return undefined;
  const switches = own.filter(({ primitive }) => primitive.type === 'switch');
  const lamps = own.filter(({ primitive }) => primitive.type === 'diode' && primitive.lamp);
  const told = switches.length > 0 ? switches : lamps;
  if (told.length === 0) return undefined;
  return { parts: [...new Set(told.map(({ part }) => part))], holds: switches.length > 0 };
}

function partOn(
  about: string,
  board: string,
  pin: string,
  parts: string,
  path: readonly string[],
  mark?: string,
) {
  const use = mark === undefined ? ' pinMode(0, INPUT_PULLUP); digitalRead(0);' : '';
  return {
    about,
    build: `
//- sketch.ino
void setup() { Serial.begin(9600);${use} }
void loop() { Serial.println("ahoy"); delay(500); }
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { ${parts} },
  "wires": [{ "path": ["${pin}", "${path.join('", "')}", "GND"] }]${mark === undefined ? '' : `\n//                      ^^ console-pin-loaded: ${mark}`}
}
`,
  };
}
