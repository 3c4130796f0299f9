/** A pin that the chip reads at reset, held at the wrong level by what is soldered to it. */
import type { BootStrap } from '../base/build';
import { formatQuantity } from '../base/quantity';
import type { Range } from '../base/range';
import { defineRule } from './rule';
import type { PinView, Subject } from './subject';
import { voltsAtReset } from './support/at-reset';
import { freePins, moveFixes } from './support/rewire';
import { listWords, regionOf, viewOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly volts: Range;
  readonly boot: BootStrap;
  readonly limit: number;
  readonly parts: readonly string[];
  /** A switch that has to be moved for it. */
  readonly moved?: string;
}

export default defineRule<Detail>({
  id: 'boot-strap-loaded',
  title: 'What is soldered to a boot pin holds it at the wrong level at reset.',
  why: 'The chip reads the pin before the sketch runs: it waits for a download, or does not start at all.',
  source: 'boot pins and input thresholds of the board file, each with its document; the voltage is computed',
  severity: 'error',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const view of subject.pins) {
      const { boot } = view.pin;
      const [wire] = view.wires;
      const end = wire?.ends.find((one) => one.kind === 'pin' && one.pin === view.pin.id);
      if (!boot || !end || subject.doubtful.includes(view.pin.id)) continue;
      const wrong = wrongLevel(subject, view, boot);
      if (!wrong) continue;
      yield { identity: view.pin.id, span: end.span, severity: wrong.severity, detail: wrong.detail };
    }
  },
  message: ({ pin, volts, boot, limit, parts, moved }) =>
    `${pin} is at ${formatQuantity(volts.typ, 'V')} at reset${moved === undefined ? '' : ` while ${moved} is on`}, ` +
    `through ${listWords(parts)}, and has to be ${boot.level} ` +
    `(${boot.level === 'high' ? 'above' : 'below'} ${formatQuantity(limit, 'V')}): ${boot.why}. Use another pin.`,
  fixes({ pin, moved }, subject) {
    const view = viewOf(subject, pin);
    // Where only a hand on a switch makes the fault, nobody moves the part for it.
    if (!view || moved !== undefined) return [];
    const free = freePins(subject, ({ pin: { type, inputOnly } }) => type === 'io' && !inputOnly);
    return moveFixes(
      subject,
      pin,
      free.map((one) => one.pin.id),
    );
  },
  examples: [
    {
      about: 'a pull-up on the pin that chooses the flash voltage',
      build: `
//- sketch.ino
void setup() { pinMode(12, INPUT); }
void loop() { if (digitalRead(12) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": {
    "call": { "kind": "push-button" },
    "R1": { "kind": "resistor", "value": "10k" }
  },
  "wires": [
    { "path": ["IO12", "call", "GND"] },
//              ^^^^ boot-strap-loaded [ask] [ask]: IO12 is at
    { "path": ["3V3", "R1", "call.1"] }
  ]
}
`,
    },
    {
      about: 'a lamp to ground on the pin that starts the loader',
      build: `
//- sketch.ino
void setup() { pinMode(0, OUTPUT); }
void loop() { digitalWrite(0, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": {
    "beacon": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [
    { "path": ["IO0", "R1", "beacon", "GND"] }
//              ^^^ boot-strap-loaded [ask] [ask]: has to be high
  ]
}
`,
    },
    {
      about: 'a button on that pin, which is open at reset',
      build: `
//- sketch.ino
void setup() { pinMode(0, INPUT_PULLUP); }
void loop() { if (digitalRead(0) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["IO0", "call", "GND"] }]
}
`,
    },
    {
      about: 'a pull-up on a pin that wants to be high',
      build: `
//- sketch.ino
void setup() { pinMode(D3, INPUT); }
void loop() { if (digitalRead(D3) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nodemcu-esp8266",
  "parts": {
    "call": { "kind": "push-button" },
    "R1": { "kind": "resistor", "value": "10k" }
  },
  "wires": [
    { "path": ["D3", "call", "GND"] },
    { "path": ["3V3", "R1", "call.1"] }
  ]
}
`,
    },
  ],
});

function wrongLevel(
  subject: Subject,
  view: PinView,
  boot: BootStrap,
): { readonly detail: Detail; readonly severity: 'error' | 'warning' | 'information' } | undefined {
  const { limits } = subject.build.board;
  const high = boot.level === 'high';
  const limit = high ? limits.inputHighVolts.min : limits.inputLowVolts.max;
  const against = high ? limits.inputLowVolts.max : limits.inputHighVolts.min;
  const elements = regionOf(subject, view.pin.id)?.elements.filter((element) => !element.onBoard) ?? [];
  const latching = elements.flatMap((element) =>
    element.primitive.type === 'switch' &&
    element.primitive.action === 'latching' &&
    element.primitive.operatedBy === undefined
      ? [element]
      : [],
  );
  const parts = [
    ...new Set(elements.filter(({ primitive }) => primitive.type !== 'switch').map(({ part }) => part)),
  ];
  for (const contact of [undefined, ...latching]) {
    const volts = voltsAtReset(subject, view, boot.level, new Set(contact ? [contact.id] : []));
    if (!volts || (high ? volts.max >= limit : volts.min <= limit)) continue;
    const certain = high ? volts.max <= against : volts.min >= against;
    if (!boot.must && !certain) continue;
    const severity = !boot.must ? 'information' : certain && !contact ? 'error' : 'warning';
    const detail = {
      pin: view.pin.id,
      volts,
      boot,
      limit,
      parts: contact ? [contact.part] : parts,
      ...(contact && { moved: contact.part }),
    };
    return { detail, severity };
  }
  return undefined;
}
