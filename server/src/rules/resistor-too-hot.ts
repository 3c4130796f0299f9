/** A resistor that turns more power into heat than it stands. */
import type { Fix } from '../base/finding';
import { formatQuantity } from '../base/quantity';
import { POWER_RATINGS } from '../circuit';
import { replaceValue } from '../hardware';
import { defineRule } from './rule';
import { findDirectLoads } from './support/direct-loads';
import { draftManifest } from './support/draft';
import { findShorts } from './support/shorts';
import { isSignal, partOf, worstState } from './support/views';

interface Detail {
  readonly part: string;
  readonly watts: number;
  readonly stands: number;
  readonly amps: number;
  readonly state: string;
}

export default defineRule<Detail>({
  id: 'resistor-too-hot',
  title: 'A resistor gets hotter than it stands.',
  why: 'It scorches the board and drifts, and one day it opens.',
  source: 'rated power of the part; the current is computed',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    // A short elsewhere makes currents that the build will not have for long.
    if (findShorts(subject).length > 0 || findDirectLoads(subject).length > 0) return;
    for (const region of subject.regions) {
      const pins = subject.pins.filter((view) => isSignal(view) && region.pins.includes(view.pin.id));
      // Dimmed, it is on for a part of the time.
      if (pins.some(({ uses }) => uses.some(({ action }) => action === 'pwm' || action === 'tone'))) continue;
      for (const { id, primitive, part: owner, onBoard } of region.elements) {
        if (primitive.type !== 'resistor' || primitive.maxWatts === undefined || onBoard) continue;
        // A sensor's resistance is wide; which of its ends goes with the current is not known here.
        if (primitive.ohms.max > 3 * primitive.ohms.min) continue;
        const part = partOf(subject, owner);
        const most = part && worstState(subject.points(region), id);
        if (!part || !most) continue;
        const watts = most.amps.typ ** 2 * primitive.ohms.typ;
        if (watts <= primitive.maxWatts) continue;
        yield {
          identity: part.id,
          span: part.span,
          detail: {
            part: part.id,
            watts,
            stands: primitive.maxWatts,
            amps: Math.abs(most.amps.typ),
            state: most.state.words,
          },
        };
      }
    }
  },
  message: ({ part, watts, stands, amps, state }) =>
    `${part} turns ${formatQuantity(watts, 'W')} into heat at ${formatQuantity(amps, 'A')}${state ? ` (${state})` : ''}, ` +
    `and it stands ${formatQuantity(stands, 'W')}: take one for ${formatQuantity(ratingFor(watts), 'W')}.`,
  fixes: ({ part, watts }, subject) => {
    const found = partOf(subject, part);
    // Of a part without a rating of its own the stock's is meant, and that is not for one resistor to change.
    if (!found?.valueSpans.power) return [];
    const rating = ratingFor(watts);
    const fix: Fix = {
      title: `Declare ${part} for ${formatQuantity(rating, 'W')}`,
      trust: 'ask',
      edits: draftManifest(subject, [
        (text, file) => replaceValue(text, ['parts', part, 'power'], `${rating} W`, file),
      ]),
    };
    return [fix];
  },
  examples: [
    {
      about: 'a small resistor in front of a bright lamp on 12 V',
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
    "glow": { "kind": "led", "colour": "white", "maxCurrent": "50 mA" },
    "R1": { "kind": "resistor", "value": "220", "power": "0.25 W" }
//   ^^ resistor-too-hot [ask]: R1 turns 349 mW into heat at 39.8 mA, and it stands 250 mW: take one for 1.0 W
  },
  "wires": [
    { "from": "wall.-", "to": "GND" },
    { "path": ["wall.+", "R1", "glow", "wall.-"] }
  ]
}
`,
    },
    {
      about: 'a load resistor straight across the supply',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "R1": { "kind": "resistor", "value": "68" }
//   ^^ resistor-too-hot: R1 turns 368 mW into heat
  },
  "wires": [{ "path": ["5V", "R1", "GND"] }]
}
`,
    },
    {
      about: 'just within what it stands',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "R1": { "kind": "resistor", "value": "120" } },
  "wires": [{ "path": ["5V", "R1", "GND"] }]
}
`,
    },
    {
      about: 'a larger one in the same place',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "R1": { "kind": "resistor", "value": "68", "power": "1 W" } },
  "wires": [{ "path": ["5V", "R1", "GND"] }]
}
`,
    },
  ],
});

/** The next rating that is run at half of itself at the most. */
function ratingFor(watts: number): number {
  return POWER_RATINGS.find((rating) => rating >= 2 * watts) ?? Math.ceil(2 * watts);
}
