/** Pins that are within the limits of each and of their groups, and together over that of the chip. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { mostTogether } from './support/group-sums';
import { listWords } from './support/views';

interface Detail {
  readonly amps: number;
  readonly limit: number;
  readonly way: string;
  readonly pins: readonly string[];
}

const ways = [
  ['source', 'give'],
  ['sink', 'take'],
] as const;

export default defineRule<Detail>({
  id: 'total-over',
  title: 'All pins together carry more than the chip stands.',
  why: 'It all passes one supply pin and one ground pin of the chip: the bond wire inside melts, or the chip resets.',
  source:
    'absolute maximum ratings of the chip, current of the supply and ground pins; the currents are computed',
  severity: 'error',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    const limit = subject.build.board.limits.total?.max;
    if (limit === undefined) return;
    for (const [direction, way] of ways) {
      const most = mostTogether(subject, () => true, direction);
      const [first, ...others] = most?.pins ?? [];
      const uses = first?.view.uses ?? [];
      const use = uses.find(({ action }) => action === 'write' || action === 'pwm') ?? uses[0];
      if (!most || !use || others.length === 0 || most.amps <= limit) continue;
      yield {
        identity: direction,
        span: use.span,
        related: others.slice(0, 8).flatMap(({ view, amps }) => {
          const other = view.uses.find(({ action }) => action === 'write') ?? view.uses[0];
          return other
            ? [{ message: `${view.pin.id} carries ${formatQuantity(amps, 'A')}`, span: other.span }]
            : [];
        }),
        detail: { amps: most.amps, limit, way, pins: most.pins.map(({ view }) => view.pin.id) },
      };
    }
  },
  message: ({ amps, limit, way, pins }) =>
    `All pins together ${way} ${formatQuantity(amps, 'A')} when they are on at once, most of it ` +
    `${listWords(pins.slice(0, 4))}, and ${formatQuantity(limit, 'A')} is what the chip stands. Put a driver behind the ` +
    'larger loads, or feed them from the supply.',
  examples: [
    {
      about: 'sixteen loads that each pin and each group carries easily',
      build: `
//- sketch.ino
const byte loads[] = {2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, A0, A1, A2, A3, A4};
void setup() {
  for (int i = 0; i < 16; i++) pinMode(loads[i], OUTPUT);
}
void loop() {
  for (int i = 0; i < 16; i++) digitalWrite(loads[i], HIGH);
//                                          ^^^^^^^^ total-over: 200 mA is what the chip stands
}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "N1": { "kind": "resistor-network", "value": "330", "count": "8" },
    "N2": { "kind": "resistor-network", "value": "330", "count": "8" }
  },
  "wires": [
    { "from": "D2", "to": "N1.1" },
    { "from": "D3", "to": "N1.2" },
    { "from": "D4", "to": "N1.3" },
    { "from": "D5", "to": "N1.4" },
    { "from": "D6", "to": "N1.5" },
    { "from": "D7", "to": "N1.6" },
    { "from": "D8", "to": "N1.7" },
    { "from": "D9", "to": "N1.8" },
    { "from": "D10", "to": "N2.1" },
    { "from": "D11", "to": "N2.2" },
    { "from": "D12", "to": "N2.3" },
    { "from": "A0", "to": "N2.4" },
    { "from": "A1", "to": "N2.5" },
    { "from": "A2", "to": "N2.6" },
    { "from": "A3", "to": "N2.7" },
    { "from": "A4", "to": "N2.8" },
    { "from": "N1.common", "to": "GND" },
    { "from": "N2.common", "to": "N1.common" }
  ]
}
`,
    },
    {
      about: 'the same on a chip that stands less',
      build: `
//- sketch.ino
const byte loads[] = {2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, A0, A1, A2, A3, A4};
void setup() {
  for (int i = 0; i < 16; i++) pinMode(loads[i], OUTPUT);
}
void loop() {
  for (int i = 0; i < 16; i++) digitalWrite(loads[i], HIGH);
//                                          ^^^^^^^^ total-over: 92 mA is what the chip stands
}
//- hardware.jsonc
{
  "format": 1,
  "board": "zero",
  "parts": {
    "N1": { "kind": "resistor-network", "value": "510", "count": "8" },
    "N2": { "kind": "resistor-network", "value": "510", "count": "8" }
  },
  "wires": [
    { "from": "D2", "to": "N1.1" },
    { "from": "D3", "to": "N1.2" },
    { "from": "D4", "to": "N1.3" },
    { "from": "D5", "to": "N1.4" },
    { "from": "D6", "to": "N1.5" },
    { "from": "D7", "to": "N1.6" },
    { "from": "D8", "to": "N1.7" },
    { "from": "D9", "to": "N1.8" },
    { "from": "D10", "to": "N2.1" },
    { "from": "D11", "to": "N2.2" },
    { "from": "D12", "to": "N2.3" },
    { "from": "A0", "to": "N2.4" },
    { "from": "A1", "to": "N2.5" },
    { "from": "A2", "to": "N2.6" },
    { "from": "A3", "to": "N2.7" },
    { "from": "A4", "to": "N2.8" },
    { "from": "N1.common", "to": "GND" },
    { "from": "N2.common", "to": "N1.common" }
  ]
}
`,
    },
    {
      about: 'just within the limit',
      build: `
//- sketch.ino
const byte loads[] = {2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, A0, A1, A2, A3, A4};
void setup() {
  for (int i = 0; i < 16; i++) pinMode(loads[i], OUTPUT);
}
void loop() {
  for (int i = 0; i < 16; i++) digitalWrite(loads[i], HIGH);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "zero",
  "parts": {
    "N1": { "kind": "resistor-network", "value": "560", "count": "8" },
    "N2": { "kind": "resistor-network", "value": "560", "count": "8" }
  },
  "wires": [
    { "from": "D2", "to": "N1.1" },
    { "from": "D3", "to": "N1.2" },
    { "from": "D4", "to": "N1.3" },
    { "from": "D5", "to": "N1.4" },
    { "from": "D6", "to": "N1.5" },
    { "from": "D7", "to": "N1.6" },
    { "from": "D8", "to": "N1.7" },
    { "from": "D9", "to": "N1.8" },
    { "from": "D10", "to": "N2.1" },
    { "from": "D11", "to": "N2.2" },
    { "from": "D12", "to": "N2.3" },
    { "from": "A0", "to": "N2.4" },
    { "from": "A1", "to": "N2.5" },
    { "from": "A2", "to": "N2.6" },
    { "from": "A3", "to": "N2.7" },
    { "from": "A4", "to": "N2.8" },
    { "from": "N1.common", "to": "GND" },
    { "from": "N2.common", "to": "N1.common" }
  ]
}
`,
    },
  ],
});
