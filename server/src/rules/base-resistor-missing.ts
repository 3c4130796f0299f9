/** A transistor's base straight on a pin. */
import { formatQuantity } from '../base/quantity';
import { type Range, worst } from '../base/range';
import { sizeBaseResistor } from '../circuit';
import { insertIntoWire, insertPart } from '../hardware';
import { defineRule } from './rule';
import { findBareBases } from './support/bases';
import { draftManifest } from './support/draft';
import { nextName, ohmsText, wiresAt } from './support/manifest-edits';
import { limitsOf } from './support/pin-limits';
import { partOf, viewOf, wiresRelated, worstState } from './support/views';

interface Detail {
  readonly part: string;
  readonly element: string;
  readonly base: string;
  readonly pin: string;
  readonly amps?: Range;
  readonly state: string;
  readonly limit: number;
}

export default defineRule<Detail>({
  id: 'base-resistor-missing',
  title: 'A transistor’s base is driven with no resistor.',
  why: 'The base is a diode to the emitter: the pin gives all it has, and pin and transistor suffer.',
  source:
    'DC current per I/O pin in the chip’s datasheet; the current is computed with the pin’s own resistance',
  severity: 'error',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const { transistor, view, state, amps } of findBareBases(subject)) {
      const part = partOf(subject, transistor.part);
      if (!part || transistor.primitive.type !== 'transistor') continue;
      const use = view.uses[0];
      yield {
        identity: part.id,
        span: part.span,
        related: [
          ...(use ? [{ message: `${view.pin.id} is driven here`, span: use.span }] : []),
          ...wiresRelated(view.wires, view.pin.id),
        ],
        detail: {
          part: part.id,
          element: transistor.id,
          base: transistor.primitive.control,
          pin: view.pin.id,
          ...(amps && { amps }),
          state: state?.words ?? '',
          limit: limitsOf(subject.build, view).working.amps,
        },
      };
    }
  },
  message: ({ part, base, pin, amps, state, limit }) =>
    `${part}.${base} has no resistor towards ${pin}` +
    (amps
      ? `: up to ${formatQuantity(worst(amps), 'A')} flows (${state}), and the pin’s limit is ${formatQuantity(limit, 'A')}.`
      : ', and nothing else limits its current.'),
  fixes: ({ part, element, base, pin, limit }, subject) => {
    const placed = subject.placed.find(({ id }) => id === element);
    const region = subject.regions.find(({ elements }) => elements.some(({ id }) => id === element));
    const view = viewOf(subject, pin);
    const supply = viewOf(subject, subject.build.board.logicRail)?.pin.volts;
    if (placed?.primitive.type !== 'transistor' || !region || !view || !supply) return [];
    const load = worstState(subject.points(region), element)?.amps;
    const { gain, channel, volts } = placed.primitive;
    const { stock, board } = subject.build;
    const sized = sizeBaseResistor({
      driveVolts: supply.min,
      highestDriveVolts: supply.max,
      driveOhms: channel === 'n' ? board.limits.outputHighOhms.typ : board.limits.outputLowOhms.typ,
      loadAmps: Math.max(1e-3, load ? worst(load) : 0),
      ...(gain && { gain: gain.min }),
      baseVolts: volts.typ,
      limitAmps: limit,
      stock: stock.resistors,
      tolerance: stock.tolerance,
    });
    const wires = wiresAt(subject, part, base);
    const wire = wires.find(({ ends }) => ends.some((end) => end.kind === 'pin' && end.pin === pin));
    if (!sized.ok || !wire) return [];
    const id = nextName(subject, 'R');
    return [
      {
        title: `Put a ${formatQuantity(sized.ohms, 'ohm')} resistor into the wire of ${part}.${base}`,
        trust: 'ask',
        edits: draftManifest(subject, [
          (text, file) => insertPart(text, id, { kind: 'resistor', value: ohmsText(sized.ohms) }, file),
          (text, file) => insertIntoWire(text, wire.entry, wire.piece, id, ['1', '2'], file),
        ]),
      },
    ];
  },
  examples: [
    {
      about: 'a transistor for a strip of lamps, its base on the pin',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "stock": { "resistors": ["220", "470", "1k", "10k"] },
  "parts": {
    "beacon": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "220" },
    "Q1": { "kind": "npn-transistor" } // a 2N2222 from the old radio
//   ^^ base-resistor-missing [ask]: Q1.base has no resistor towards D9: up to
  },
  "wires": [
    { "from": "D9", "to": "Q1.base" },
    { "from": "Q1.emitter", "to": "GND" },
    { "path": ["5V", "R1", "beacon", "Q1.collector"] }
  ]
}
`,
    },
    {
      about: 'the same on a 3.3 V board',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "beacon": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "330" },
    "Q1": { "kind": "npn-transistor", "type": "bc547" }
//   ^^ base-resistor-missing [ask]: Q1.base has no resistor towards GP9: up to
  },
  "wires": [
    { "from": "GP9", "to": "Q1.base" },
    { "from": "Q1.emitter", "to": "GND" },
    { "path": ["VSYS", "R1", "beacon", "Q1.collector"] }
  ]
}
`,
    },
    {
      about: 'a resistor between pin and base',
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
    "R1": { "kind": "resistor", "value": "220" },
    "R2": { "kind": "resistor", "value": "1k" },
    "Q1": { "kind": "npn-transistor" }
  },
  "wires": [
    { "path": ["D9", "R2", "Q1.base"] },
    { "from": "Q1.emitter", "to": "GND" },
    { "path": ["5V", "R1", "beacon", "Q1.collector"] }
  ]
}
`,
    },
    {
      about: 'a follower, whose load limits the base current too',
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
    "R1": { "kind": "resistor", "value": "220" },
    "Q1": { "kind": "npn-transistor" }
  },
  "wires": [
    { "from": "D9", "to": "Q1.base" },
    { "from": "5V", "to": "Q1.collector" },
    { "path": ["Q1.emitter", "R1", "beacon", "GND"] }
  ]
}
`,
    },
  ],
});
