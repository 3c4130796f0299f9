/** A field-effect transistor whose gate does not get what it needs to conduct. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { gateDrives } from './support/gates';
import { isAdrift } from './support/parted-grounds';
import { partOf, relatedOf } from './support/views';

interface Detail {
  readonly part: string;
  readonly gate: string;
  readonly pin: string;
  /** Volts between gate and source, the lowest the pin may give. */
  readonly volts: number;
  readonly threshold: number;
  readonly full?: number;
  readonly amps: number;
  readonly doubtful: boolean;
}

export default defineRule<Detail>({
  id: 'gate-not-full',
  title: 'A transistor’s gate gets too few volts.',
  why: 'Half open, the transistor takes volts and heat for itself: the load is weak and the transistor burns.',
  source: 'threshold and on-resistance in the transistor’s data sheet; the volts are computed',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    const { pinAbsolute } = subject.build.board.limits;
    for (const { transistor, view, volts, amps } of gateDrives(subject)) {
      const part = partOf(subject, transistor.part);
      const { fullVolts, volts: threshold, control } = transistor.primitive;
      if (!part || isAdrift(subject, view.net.id)) continue;
      const doubtful = volts.min < threshold.max;
      // What a pin could feed by itself asks nothing of the transistor.
      const works = amps <= pinAbsolute.typ;
      const half =
        fullVolts !== undefined &&
        volts.typ - threshold.max < (fullVolts - threshold.max) * openShare &&
        !works;
      if (!doubtful && !half) continue;
      const use = view.uses[0];
      yield {
        identity: part.id,
        span: part.span,
        related: use ? relatedOf(view, use) : [],
        severity: doubtful ? 'warning' : 'information',
        detail: {
          part: part.id,
          gate: control,
          pin: view.pin.id,
          volts: doubtful ? volts.min : volts.typ,
          threshold: threshold.max,
          ...(fullVolts !== undefined && { full: fullVolts }),
          amps,
          doubtful,
        },
      };
    }
  },
  message: ({ part, gate, pin, volts, threshold, full, amps, doubtful }) =>
    doubtful
      ? `${part}.${gate} gets ${formatQuantity(volts, 'V')} from ${pin} at the least, and some of its kind begin to ` +
        `conduct at ${formatQuantity(threshold, 'V')} only: take one for logic levels.`
      : `${part}.${gate} gets ${formatQuantity(volts, 'V')} from ${pin}, and its resistance is promised at ` +
        `${formatQuantity(full ?? 0, 'V')}; ${formatQuantity(amps, 'A')} flow through it. Take one for logic levels.`,
  examples: [
    {
      about: 'a transistor for ten volts on a 3.3 V pin',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "pack": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
    "lamps": { "kind": "led-strip", "metres": "1" },
    "R1": { "kind": "resistor", "value": "10k" },
    "Q1": { "kind": "n-mosfet", "type": "irfz44n" }
//   ^^ gate-not-full: Q1.gate gets 3.1 V from GP9 at the least, and some of its kind begin to conduct at 4.0 V only
  },
  "wires": [
    { "from": "GP9", "to": "Q1.gate" },
    { "path": ["Q1.gate", "R1", "GND"] },
    { "from": "Q1.source", "to": "GND" },
    { "from": "pack.-", "to": "Q1.source" },
    { "from": "pack.+", "to": "lamps.+" },
    { "from": "lamps.-", "to": "Q1.drain" }
  ]
}
`,
    },
    {
      about: 'the same on a 5 V pin, where it conducts and nobody promises how well',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "pack": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
    "lamps": { "kind": "led-strip", "metres": "1" },
    "R1": { "kind": "resistor", "value": "10k" },
    "Q1": { "kind": "n-mosfet", "type": "irfz44n" }
//   ^^ gate-not-full: Q1.gate gets 5.0 V from D9, and its resistance is promised at 10 V
  },
  "wires": [
    { "from": "D9", "to": "Q1.gate" },
    { "path": ["Q1.gate", "R1", "GND"] },
    { "from": "Q1.source", "to": "GND" },
    { "from": "pack.-", "to": "Q1.source" },
    { "from": "pack.+", "to": "lamps.+" },
    { "from": "lamps.-", "to": "Q1.drain" }
  ]
}
`,
    },
    {
      about: 'a transistor for logic levels',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "pack": { "kind": "power-adapter", "volts": "12", "maxCurrent": "2 A" },
    "lamps": { "kind": "led-strip", "metres": "1" },
    "R1": { "kind": "resistor", "value": "10k" },
    "Q1": { "kind": "n-mosfet", "type": "irlz44n" }
  },
  "wires": [
    { "from": "D9", "to": "Q1.gate" },
    { "path": ["Q1.gate", "R1", "GND"] },
    { "from": "Q1.source", "to": "GND" },
    { "from": "pack.-", "to": "Q1.source" },
    { "from": "pack.+", "to": "lamps.+" },
    { "from": "lamps.-", "to": "Q1.drain" }
  ]
}
`,
    },
    {
      about: 'a small one for a lamp, which asks little of it',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "beacon": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "10k" },
    "R2": { "kind": "resistor", "value": "330" },
    "Q1": { "kind": "n-mosfet", "type": "2n7000" }
  },
  "wires": [
    { "from": "D9", "to": "Q1.gate" },
    { "path": ["Q1.gate", "R1", "GND"] },
    { "from": "Q1.source", "to": "GND" },
    { "path": ["5V", "R2", "beacon", "Q1.drain"] }
  ]
}
`,
    },
  ],
});

/** Share of the way from the threshold to the promised volts from which a gate is taken to be open (common practice). */
const openShare = 0.5;
