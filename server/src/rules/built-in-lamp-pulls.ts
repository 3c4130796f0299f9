/** A button with pull-up on the pin of the board's lamp. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { pulledByLamp } from './support/lamp-pulls';
import { isSignal, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly lamp: string;
  readonly volts: number;
  readonly high: number;
}

export default defineRule<Detail>({
  id: 'built-in-lamp-pulls',
  title: 'The board’s own lamp holds an input with pull-up low.',
  why: 'The pull-up lights the lamp a little and gets no further: the input reads low whether anybody presses or not.',
  source: 'input levels in the chip’s DC characteristics; the voltage is computed',
  severity: 'error',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const view of subject.pins) {
      const use = view.uses.find(({ action }) => action === 'read' || action === 'interrupt');
      const found = isSignal(view) && use ? pulledByLamp(subject, view) : undefined;
      if (!found || !use) continue;
      yield {
        identity: view.pin.id,
        span: use.span,
        related: relatedOf(view, use),
        detail: {
          pin: view.pin.id,
          ...found,
          high: subject.build.board.limits.inputHighVolts.min,
        },
      };
    }
  },
  message: ({ pin, lamp, volts, high }) =>
    `${pin} gets no higher than ${formatQuantity(volts, 'V')} with its pull-up, for the ${lamp} of the board hangs on ` +
    `it, and it is high from ${formatQuantity(high, 'V')}. Take another pin, or a pull-up of 1 kohm outside.`,
  examples: [
    {
      about: 'a button on the pin of the built-in lamp',
      build: `
//- sketch.ino
void setup() { pinMode(13, INPUT_PULLUP); }
void loop() {
  if (digitalRead(13) == LOW) delay(1);
//                ^^ built-in-lamp-pulls: D13 gets no higher than 1.
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["D13", "call", "GND"] }]
}
`,
    },
    {
      about: 'the same on a smaller board',
      build: `
//- sketch.ino
void setup() { pinMode(LED_BUILTIN, INPUT_PULLUP); }
void loop() {
  if (digitalRead(LED_BUILTIN) == LOW) delay(1);
//                ^^^^^^^^^^^ built-in-lamp-pulls: D13 gets no higher than
}
//- hardware.jsonc
{
  "format": 1,
  "board": "pro-mini-5v",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["D13", "call", "GND"] }]
}
`,
    },
    {
      about: 'a board that has an amplifier in front of its lamp',
      build: `
//- sketch.ino
void setup() { pinMode(13, INPUT_PULLUP); }
void loop() { if (digitalRead(13) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["D13", "call", "GND"] }]
}
`,
    },
    {
      about: 'a pull-up outside that is stronger than the lamp',
      build: `
//- sketch.ino
void setup() { pinMode(13, INPUT_PULLUP); }
void loop() { if (digitalRead(13) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "call": { "kind": "push-button" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [
    { "path": ["D13", "call", "GND"] },
    { "path": ["5V", "R1", "call.1"] }
  ]
}
`,
    },
  ],
});
