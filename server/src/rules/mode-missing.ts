/** A pin is written but never made an output: on many chips that only switches a weak pull-up. */

import { defineRule } from './rule';
import { setMode } from './support/sketch-edits';
import { listWords, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly modes: readonly string[];
}

export default defineRule<Detail>({
  id: 'mode-missing',
  title: 'A pin is written without having been made an output.',
  why:
    'After reset every pin is an input. Written HIGH it only gets its pull-up: a lamp glows faintly, a relay does ' +
    'nothing; written LOW nothing happens at all.',
  source:
    'ATmega328P datasheet, I/O ports: configuring the pin; wiring_digital.c of the board-support core for AVR',
  severity: 'error',
  maturity: 'settled',
  needs: 'sketch',
  *check(subject) {
    for (const view of subject.pins) {
      if (view.modes.includes('output')) continue;
      // A mode that is not known may be OUTPUT; analogWrite, tone and Servo make the pin an output by themselves.
      const hidden = view.uses.some((use) => use.action === 'mode' && (use.modes ?? []).length === 0);
      const helped = view.uses.some((use) => ['pwm', 'tone', 'servo'].includes(use.action));
      if (hidden || helped || hiddenMode(subject.unresolved)) continue;
      const use = view.uses.find((candidate) => candidate.action === 'write');
      // With a pull-up asked for, a written level is the old way to switch it.
      if (!use || view.modes.includes('input-pullup')) continue;
      yield {
        identity: view.pin.id,
        span: use.span,
        related: relatedOf(view, use),
        detail: { pin: view.pin.id, modes: view.modes },
      };
    }
  },
  message: ({ pin, modes }) =>
    modes.length === 0
      ? `${pin} is written here, and nothing makes it an output: it can drive nothing.`
      : `${pin} is written here, and its only mode is ${listWords(modes)}: it can drive nothing.`,
  fixes({ pin }, subject) {
    const view = subject.pins.find((candidate) => candidate.pin.id === pin);
    const edits = view && setMode(subject, view, 'OUTPUT');
    return edits ? [{ title: `Make ${pin} an output with pinMode`, trust: 'ask', edits }] : [];
  },
  examples: [
    {
      about: 'a lamp that is written and never made an output',
      build: `
//- sketch.ino
const int beacon = 7;
void setup() {
}
void loop() {
  digitalWrite(beacon, HIGH);
//             ^^^^^^ mode-missing [ask]: D7 is written here, and nothing makes it an output
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`,
      fixed: `
//- sketch.ino
const int beacon = 7;
void setup() {
  pinMode(beacon, OUTPUT);
}
void loop() {
  digitalWrite(beacon, HIGH);
}
`,
    },
    {
      about: 'analogWrite makes the pin an output by itself',
      build: `
//- sketch.ino
void setup() {}
void loop() { analogWrite(9, 80); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [{ "path": ["D9", "R1", "beacon", "GND"] }]
}
`,
    },
  ],
});

function hiddenMode(unresolved: readonly { readonly action: string }[]): boolean {
  return unresolved.some((use) => use.action === 'mode');
}
