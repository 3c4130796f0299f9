/** A digital input that resistors hold between low and high. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { pulledByLamp } from './support/lamp-pulls';
import { heldBetween } from './support/low-pins';
import { isSignal, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly volts: number;
  readonly state: string;
  readonly low: number;
  readonly high: number;
  readonly pullUp: boolean;
}

export default defineRule<Detail>({
  id: 'level-between',
  title: 'An input is held between low and high.',
  why: 'What is read there is chance: it changes with the chip, the supply and the weather.',
  source: 'input low and high levels in the chip’s DC characteristics; the voltage is computed',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    if (subject.unresolved.some((use) => use.action === 'mode')) return;
    const { inputLowVolts, inputHighVolts } = subject.build.board.limits;
    for (const view of subject.pins) {
      if (!isSignal(view) || view.wires.length === 0 || pulledByLamp(subject, view)) continue;
      const use = view.uses.find(({ action }) => action === 'read' || action === 'interrupt');
      const found = use && heldBetween(subject, view);
      if (!found) continue;
      yield {
        identity: view.pin.id,
        span: use.span,
        related: relatedOf(view, use),
        detail: {
          pin: view.pin.id,
          volts: found.volts,
          state: found.state.words,
          low: inputLowVolts.max,
          high: inputHighVolts.min,
          pullUp: found.state.drives[view.pin.id] === 'pull-up',
        },
      };
    }
  },
  message: ({ pin, volts, state, low, high, pullUp }) =>
    `${pin} lies at ${formatQuantity(volts, 'V')}${state ? ` (${state})` : ''}: it is low up to ` +
    `${formatQuantity(low, 'V')} and high from ${formatQuantity(high, 'V')}. ` +
    (pullUp
      ? 'Its own pull-up fights what is wired to it: leave one of them out.'
      : 'Let one of the resistors win.'),
  examples: [
    {
      about: 'a pull-up in the chip against a pull-down of the same size',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); }
void loop() {
  if (digitalRead(2) == HIGH) delay(1);
//                ^ level-between: D2 lies at 2.9 V (D2 with pull-up, door open)
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "door": { "kind": "reed-switch" },
    "R1": { "kind": "resistor", "value": "47k" }
  },
  "wires": [
    { "path": ["5V", "door", "D2"] },
    { "path": ["door.2", "R1", "GND"] }
  ]
}
`,
    },
    {
      about: 'a divider by two on a digital input',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT); }
void loop() {
  if (digitalRead(2) == HIGH) delay(1);
//                ^ level-between: GP2 lies at 1.6 V
}
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "R1": { "kind": "resistor", "value": "10k" },
    "R2": { "kind": "resistor", "value": "10k" }
  },
  "wires": [
    { "path": ["3V3", "R1", "GP2"] },
    { "path": ["R1.2", "R2", "GND"] }
  ]
}
`,
    },
    {
      about: 'a pull-down that wins over the pull-up in the chip',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); }
void loop() { if (digitalRead(2) == HIGH) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "door": { "kind": "reed-switch" },
    "R1": { "kind": "resistor", "value": "10k" }
  },
  "wires": [
    { "path": ["5V", "door", "D2"] },
    { "path": ["door.2", "R1", "GND"] }
  ]
}
`,
    },
    {
      about: 'a light sensor that is read like a switch goes through every level',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT); }
void loop() { if (digitalRead(2) == HIGH) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "dusk": { "kind": "photoresistor" },
    "R1": { "kind": "resistor", "value": "10k" }
  },
  "wires": [
    { "path": ["5V", "dusk", "D2"] },
    { "path": ["dusk.2", "R1", "GND"] }
  ]
}
`,
    },
  ],
});
