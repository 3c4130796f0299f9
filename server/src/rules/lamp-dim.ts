/** A lamp that gets so little that nobody sees it. */
import { formatQuantity } from '../base/quantity';
import type { Range } from '../base/range';
import { defineRule } from './rule';
import type { Region } from './subject';
import { isFed, isLitByBoard } from './support/fed-lamps';
import { lowerLampResistor } from './support/lamp-row';
import { type LitLamp, litLamps } from './support/lit-lamps';
import { lampName, partOf } from './support/views';

interface Detail {
  readonly name: string;
  readonly element: string;
  readonly amps: Range;
  readonly visible: number;
  readonly state: string;
  /** Volts forward across the lamp, and those at which it is lit as its data sheet says. */
  readonly volts: number;
  readonly needs: Range;
  readonly sure: boolean;
}

/** What a part that blocks lets through at the most, amperes. */
const leak = 1e-6;

export default defineRule<Detail>({
  id: 'lamp-dim',
  title: 'A lamp gets too little current to be seen.',
  why: 'It stays dark, or it glows so that one sees it at night only: the resistor is too large or the volts do not suffice.',
  source: 'current from which the part’s data say that it is seen; the current is computed',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    const told: LitLamp[] = [];
    for (const lit of litLamps(subject)) {
      const { lamp, region, state, amps, volts } = lit;
      const part = partOf(subject, lamp.part);
      const { visibleAmps, volts: needs } = lamp.primitive;
      if (!part || visibleAmps === undefined || amps.min >= visibleAmps) continue;
      // Without volts over it nothing is said to the lamp; and what only a pull-up lights, in the chip or on the board, is no output's affair.
      if (volts < needs.min / 2 || Object.values(state.drives).includes('pull-up')) continue;
      if (isLitByBoard(subject, lit)) continue;
      // Behind a transistor that blocks a lamp is off on purpose, whatever leaks through it.
      if (amps.typ < leak && !isFed(subject, lit)) continue;
      const sure = amps.typ < visibleAmps;
      // Every lamp is dim on an empty battery, and of a large region not every corner is solved.
      if (!sure && (region.limit !== undefined || hasBattery(region))) continue;
      // What a neighbour on the same wires takes is told of both together.
      if (hasNeighbour(litLamps(subject), lit)) continue;
      // Lamps in one row share their cause.
      if (told.some((other) => other.region === region && sameAmps(other.amps.typ, amps.typ))) continue;
      told.push(lit);
      const row = litLamps(subject).filter(
        (other) => other.lamp !== lamp && other.region === region && sameAmps(other.amps.typ, amps.typ),
      );
      yield {
        identity: lampName(subject, lamp),
        span: part.span,
        related: row.flatMap((other) => {
          const span = partOf(subject, other.lamp.part)?.span;
          return span ? [{ message: `${lampName(subject, other.lamp)} carries the same`, span }] : [];
        }),
        severity: sure ? 'warning' : 'information',
        detail: {
          name: lampName(subject, lamp),
          element: lamp.id,
          amps,
          visible: visibleAmps,
          state: state.words,
          volts,
          needs,
          sure,
        },
      };
    }
  },
  message: ({ name, amps, visible, state, volts, needs, sure }) => {
    const when = state ? ` (${state})` : '';
    const seen = `it is clearly seen from ${formatQuantity(visible, 'A')}`;
    if (!sure)
      return `${name} may be dim: with unlucky parts ${formatQuantity(amps.min, 'A')} flows${when}, and ${seen}.`;
    const little = volts < needs.min || amps.typ < visible / 100;
    return little
      ? `${name} stays dark: only ${formatQuantity(volts, 'V')} are left for it${when}, and it needs ` +
          `${formatQuantity(needs.typ, 'V')}. Feed it with more, or take a lamp of another colour.`
      : `${name} is dim: ${formatQuantity(amps.typ, 'A')} flows${when}, and ${seen}.`;
  },
  fixes: ({ element }, subject) => lowerLampResistor(subject, element),
  examples: [
    {
      about: 'a resistor a hundred times too large',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "stock": { "resistors": ["220", "330", "470", "1k", "47k"] },
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
//   ^^^^^^ lamp-dim [ask]: beacon is dim: 67.9
    "R1": { "kind": "resistor", "value": "47k" } // read the bands wrong
  },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "stock": { "resistors": ["220", "330", "470", "1k", "47k"] },
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "330" } // read the bands wrong
  },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`,
    },
    {
      about: 'three lamps in a row on a pin that has not the volts',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "port": { "kind": "led", "colour": "red" },
//   ^^^^ lamp-dim: port stays dark
    "mast": { "kind": "led", "colour": "red" },
    "stern": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "100" }
  },
  "wires": [{ "path": ["GP7", "R1", "port", "mast", "stern", "GND"] }]
}
`,
    },
    {
      about: 'a blue lamp whose forward volts may lie above the supply',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "ice": { "kind": "led", "colour": "blue" },
//   ^^^ lamp-dim: ice may be dim: with unlucky parts
    "R1": { "kind": "resistor", "value": "330" }
  },
  "wires": [{ "path": ["GP7", "R1", "ice", "GND"] }]
}
`,
    },
    {
      about: 'a lamp that is just seen',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "3k3" }
  },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`,
    },
  ],
});

function sameAmps(a: number, b: number): boolean {
  return Math.abs(a - b) <= 0.01 * Math.max(Math.abs(a), Math.abs(b));
}

function hasBattery({ elements }: Region): boolean {
  return elements.some(({ primitive }) => primitive.type === 'source');
}

function hasNeighbour(all: readonly LitLamp[], { lamp }: LitLamp): boolean {
  return all.some((other) => other.lamp !== lamp && other.lamp.nets.join() === lamp.nets.join());
}
