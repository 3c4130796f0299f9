/** A junction that gets more volts the wrong way round than it stands. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { litLamps } from './support/lit-lamps';
import { partOf } from './support/views';
import { voltsOf } from './support/volts';

interface Detail {
  readonly part: string;
  readonly volts: number;
  readonly stands: number;
  readonly state: string;
  readonly sure: boolean;
}

/** Less than this forward is dark, amperes: a lamp that never lights is told by the rule on reversed lamps. */
const dark = 1e-5;

export default defineRule<Detail>({
  id: 'reverse-voltage',
  title: 'A junction gets more reverse volts than it stands.',
  why: 'It breaks down: a lamp fades within weeks, a diode conducts where it should block.',
  source: 'reverse voltage in the part’s data sheet; the voltage is computed',
  severity: 'error',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    const lit = new Set(
      litLamps(subject)
        .filter(({ amps }) => amps.max > dark)
        .map(({ lamp }) => lamp.id),
    );
    const told = new Set<string>();
    for (const region of subject.regions) {
      for (const { id, primitive, nets, part: owner, onBoard } of region.elements) {
        if (primitive.type !== 'diode' || primitive.maxReverseVolts === undefined || onBoard) continue;
        const part = partOf(subject, owner);
        if (!part || told.has(part.id) || (primitive.lamp && !lit.has(id))) continue;
        const stands = primitive.maxReverseVolts;
        let most: { readonly volts: number; readonly typ: number; readonly state: string } | undefined;
        for (const state of subject.points(region)) {
          const [anode, cathode] = [voltsOf(subject, state, nets[0]), voltsOf(subject, state, nets[1])];
          if (!anode || !cathode) continue;
          const typ = cathode.typ - anode.typ;
          if (!most || typ > most.typ) most = { volts: cathode.max - anode.min, typ, state: state.words };
        }
        if (!most || most.typ <= stands) continue;
        told.add(part.id);
        yield {
          identity: part.id,
          span: part.span,
          detail: { part: part.id, volts: most.typ, stands, state: most.state, sure: true },
        };
      }
    }
  },
  message: ({ part, volts, stands, state }) =>
    `${part} gets ${formatQuantity(volts, 'V')} the wrong way round${state ? ` (${state})` : ''}, and it stands ` +
    `${formatQuantity(stands, 'V')}: put a diode in series with it, or one across it the other way round.`,
  examples: [
    {
      about: 'a two-coloured pair of lamps on 12 V through a change of pins',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); delay(100); digitalWrite(9, LOW); delay(100); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "wall": { "kind": "power-adapter", "volts": "12", "maxCurrent": "1 A" },
    "way": { "kind": "slide-switch" },
    "glow": { "kind": "led", "colour": "red" },
//   ^^^^ reverse-voltage: glow gets
    "R1": { "kind": "resistor", "value": "1k" }
  },
  "wires": [
    { "from": "wall.-", "to": "GND" },
    { "path": ["D9", "R1", "glow.anode"] },
    { "from": "glow.cathode", "to": "way.common" },
    { "from": "way.1", "to": "wall.-" },
    { "from": "way.2", "to": "wall.+" }
  ]
}
`,
    },
    {
      about: 'the same on 5 V, which it stands',
      build: `
//- sketch.ino
void setup() { pinMode(9, OUTPUT); }
void loop() { digitalWrite(9, HIGH); delay(100); digitalWrite(9, LOW); delay(100); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "way": { "kind": "slide-switch" },
    "glow": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "1k" }
  },
  "wires": [
    { "path": ["D9", "R1", "glow.anode"] },
    { "from": "glow.cathode", "to": "way.common" },
    { "from": "way.1", "to": "GND" },
    { "from": "way.2", "to": "5V" }
  ]
}
`,
    },
    {
      about: 'a rectifier that stands a thousand volts',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "wall": { "kind": "power-adapter", "volts": "12", "maxCurrent": "1 A" },
    "guard": { "kind": "diode" },
    "R1": { "kind": "resistor", "value": "1k" }
  },
  "wires": [
    { "from": "wall.-", "to": "GND" },
    { "path": ["GND", "guard", "R1", "wall.+"] }
  ]
}
`,
    },
  ],
});
