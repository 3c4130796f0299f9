/** More current than the pin survives. */

import { defineRule } from './rule';
import { raiseResistor } from './support/lamp-fixes';
import {
  isSupposed,
  type OverCurrentDetail,
  overSeverity,
  overWords,
  pinsOver,
} from './support/over-current';
import { relatedOf } from './support/views';

export default defineRule<OverCurrentDetail>({
  id: 'pin-over-absolute',
  title: 'A pin carries more current than its absolute maximum rating.',
  why: 'Stress beyond the rating may damage the chip for good, at once or some evenings later.',
  source: 'absolute maximum ratings of the chip, DC current per I/O pin',
  severity: 'error',
  maturity: 'settled',
  needs: 'circuit',
  *check(subject) {
    for (const { view, use, amps, state, limits } of pinsOver(subject, 'absolute')) {
      yield {
        identity: view.pin.id,
        span: use.span,
        related: relatedOf(view, use),
        severity: overSeverity(subject, state, 'error'),
        detail: {
          pin: view.pin.id,
          amps,
          limit: limits.absolute.amps,
          limitText: limits.absolute.text,
          working: limits.working.amps,
          state: state.words,
          together: isSupposed(subject, state),
        },
      };
    }
  },
  message(detail) {
    const { pin, limitText, state, together } = detail;
    const words = overWords(detail);
    const ever = together ? ', if these are ever so at once' : '';
    return `${pin} carries up to ${words.amps} (${state}${ever}), and it stands ${words.limit} at most (${limitText}).`;
  },
  fixes: ({ pin, working }, subject) => raiseResistor(subject, pin, working),
  examples: [
    {
      about: 'ten ohms in front of a lamp',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() {
  digitalWrite(7, HIGH);
//             ^ pin-over-absolute [ask]: D7 carries up to
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "stock": { "resistors": ["10", "220", "330", "470", "1k"] },
  "parts": {
    "beacon": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "10" }
  },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`,
    },
    {
      about: 'a load the pin carries easily',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "R1": { "kind": "resistor", "value": "1k" } },
  "wires": [{ "path": ["D7", "R1", "GND"] }]
}
`,
    },
    {
      about: 'a pin that is weaker than its neighbours',
      build: `
//- sketch.ino
void setup() { pinMode(PC13, OUTPUT); }
void loop() {
  digitalWrite(PC13, LOW);
//             ^^^^ pin-over-absolute: PC13 carries up to 6.1 mA (PC13 low, button open), and it stands 3.0 mA at most
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nucleo-f103rb",
  "parts": {
    "beacon": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "330" }
  },
  "wires": [{ "path": ["3V3", "R1", "beacon", "PC13"] }]
}
`,
    },
    {
      about: 'the same lamp on a pin that carries it',
      build: `
//- sketch.ino
void setup() { pinMode(D8, OUTPUT); }
void loop() { digitalWrite(D8, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nucleo-f103rb",
  "parts": {
    "beacon": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "330" }
  },
  "wires": [{ "path": ["3V3", "R1", "beacon", "D8"] }]
}
`,
    },
  ],
});
