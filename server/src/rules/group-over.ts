/** Pins that are each within their limit and together over that of their group. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { mostTogether } from './support/group-sums';
import { listWords } from './support/views';

interface Detail {
  readonly title: string;
  readonly amps: number;
  readonly limit: number;
  readonly pins: readonly string[];
}

export default defineRule<Detail>({
  id: 'group-over',
  title: 'Pins of one group carry more together than the chip allows them.',
  why: 'They share one supply line inside the chip: levels fall out of their promise, and the line ages.',
  source: 'limits of port groups in the notes on the chip’s DC characteristics; the currents are computed',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const { title, pins, direction, amps: limit } of subject.build.board.limits.groups) {
      const most = mostTogether(subject, ({ pin }) => pins.includes(pin.id), direction);
      const [first, ...others] = most?.pins ?? [];
      const use =
        first?.view.uses.find(({ action }) => action === 'write' || action === 'pwm') ?? first?.view.uses[0];
      if (!most || !first || !use || others.length === 0 || most.amps <= limit.max) continue;
      yield {
        identity: title,
        span: use.span,
        related: others.flatMap(({ view, amps }) => {
          const other = view.uses.find(({ action }) => action === 'write') ?? view.uses[0];
          return other
            ? [{ message: `${view.pin.id} carries ${formatQuantity(amps, 'A')}`, span: other.span }]
            : [];
        }),
        detail: { title, amps: most.amps, limit: limit.max, pins: most.pins.map(({ view }) => view.pin.id) },
      };
    }
  },
  message: ({ title, amps, limit, pins }) =>
    `${listWords(pins.slice(0, 6))}${pins.length > 6 ? ` and ${pins.length - 6} more` : ''} carry ` +
    `${formatQuantity(amps, 'A')} when they are on together, and ${formatQuantity(limit, 'A')} is the limit of ${title}. ` +
    'Give them larger resistors, spread them over other pins, or put a driver behind them.',
  examples: [
    {
      about: 'eight loads that one side of the chip takes to ground together',
      build: `
//- sketch.ino
void setup() {
  for (int pin = 5; pin < 13; pin++) pinMode(pin, OUTPUT);
}
void loop() {
  for (int pin = 5; pin < 13; pin++) digitalWrite(pin, LOW);
//                                                ^^^ group-over: D5, D6, D7, D8, D9 and D10 and 2 more carry
}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "N1": { "kind": "resistor-network", "value": "330", "count": "8" }
  },
  "wires": [
    { "from": "D5", "to": "N1.1" },
    { "from": "D6", "to": "N1.2" },
    { "from": "D7", "to": "N1.3" },
    { "from": "D8", "to": "N1.4" },
    { "from": "D9", "to": "N1.5" },
    { "from": "D10", "to": "N1.6" },
    { "from": "D11", "to": "N1.7" },
    { "from": "D12", "to": "N1.8" },
    { "from": "N1.common", "to": "5V" }
  ]
}
`,
    },
    {
      about: 'eight loads on a chip that gives less',
      build: `
//- sketch.ino
void setup() {
  for (int pin = 0; pin < 8; pin++) pinMode(pin, OUTPUT_12MA);
}
void loop() {
  for (int pin = 0; pin < 8; pin++) digitalWrite(pin, HIGH);
//                                               ^^^ group-over: and 50 mA is the limit of all pins, together giving
}
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "N1": { "kind": "resistor-network", "value": "470", "count": "8" }
  },
  "wires": [
    { "from": "GP0", "to": "N1.1" },
    { "from": "GP1", "to": "N1.2" },
    { "from": "GP2", "to": "N1.3" },
    { "from": "GP3", "to": "N1.4" },
    { "from": "GP4", "to": "N1.5" },
    { "from": "GP5", "to": "N1.6" },
    { "from": "GP6", "to": "N1.7" },
    { "from": "GP7", "to": "N1.8" },
    { "from": "N1.common", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'the same, one after the other',
      build: `
//- sketch.ino
void setup() {
  for (int pin = 5; pin < 13; pin++) pinMode(pin, OUTPUT);
  for (int pin = 5; pin < 13; pin++) digitalWrite(pin, HIGH);
}
void loop() {
  for (int pin = 5; pin < 13; pin++) {
    digitalWrite(pin, LOW);
    delay(100);
    digitalWrite(pin, HIGH);
  }
}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "N1": { "kind": "resistor-network", "value": "330", "count": "8" }
  },
  "wires": [
    { "from": "D5", "to": "N1.1" },
    { "from": "D6", "to": "N1.2" },
    { "from": "D7", "to": "N1.3" },
    { "from": "D8", "to": "N1.4" },
    { "from": "D9", "to": "N1.5" },
    { "from": "D10", "to": "N1.6" },
    { "from": "D11", "to": "N1.7" },
    { "from": "D12", "to": "N1.8" },
    { "from": "N1.common", "to": "5V" }
  ]
}
`,
    },
    {
      about: 'eight loads that are just within the limit',
      build: `
//- sketch.ino
void setup() {
  for (int pin = 5; pin < 13; pin++) pinMode(pin, OUTPUT);
}
void loop() {
  for (int pin = 5; pin < 13; pin++) digitalWrite(pin, LOW);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "N1": { "kind": "resistor-network", "value": "390", "count": "8" }
  },
  "wires": [
    { "from": "D5", "to": "N1.1" },
    { "from": "D6", "to": "N1.2" },
    { "from": "D7", "to": "N1.3" },
    { "from": "D8", "to": "N1.4" },
    { "from": "D9", "to": "N1.5" },
    { "from": "D10", "to": "N1.6" },
    { "from": "D11", "to": "N1.7" },
    { "from": "D12", "to": "N1.8" },
    { "from": "N1.common", "to": "5V" }
  ]
}
`,
    },
  ],
});
