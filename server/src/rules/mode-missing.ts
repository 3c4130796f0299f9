/** A pin is written but never made an output: on many chips that only switches a weak pull-up. */

import type { PinAction } from '../base/pin-use';
import { defineRule } from './rule';
import type { PinView, Subject } from './subject';
import { findOpen } from './support/floating';
import { setMode } from './support/sketch-edits';
import { isMeant, listWords, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly modes: readonly string[];
  readonly use: 'written' | 'read';
  /** The mode that the use needs, as the sketch writes it. */
  readonly wants: string;
}

export default defineRule<Detail>({
  id: 'mode-missing',
  title: 'A pin is written or read without the mode that its use needs.',
  why:
    'After reset every pin is an input. Written HIGH it only gets its pull-up: a lamp glows faintly, a relay does ' +
    'nothing; written LOW nothing happens at all. Read without a mode it works by the luck of the reset state.',
  source:
    'ATmega328P datasheet, I/O ports: configuring the pin; wiring_digital.c of the board-support core for AVR',
  severity: 'error',
  maturity: 'settled',
  needs: 'sketch',
  *check(subject) {
    // What seems to be missing may stand in text that could not be read.
    if (subject.facts.damaged) return;
    // A mode call whose pin is not known may be the missing one.
    if (subject.unresolved.some((use) => use.action === 'mode')) return;
    for (const view of subject.pins) {
      // A mode that is not known may be the right one; analogWrite, tone and Servo make the pin an output themselves.
      if (view.uses.some((use) => use.action === 'mode' && (use.modes ?? []).length === 0)) continue;
      // What a pin cannot be, no mode makes it: the rule on input-only pins tells that.
      if (view.pin.inputOnly && view.uses.some((use) => use.action === 'write')) continue;
      if (view.modes.includes('output') || view.uses.some((use) => makesOutput.has(use.action))) continue;
      const { modes } = view;
      const pin = view.pin.id;
      const written = view.uses.find((use) => use.action === 'write' && isMeant(use));
      const read = view.uses.find((use) => use.action === 'read' || use.action === 'interrupt');
      // With a pull-up asked for, or a switch to read, a written level is the old way to switch the pull-up.
      if (written && !(read && hasSwitch(subject, view)) && !modes.includes('input-pullup')) {
        const detail = { pin, modes, use: 'written', wants: 'OUTPUT' } as const;
        yield { identity: pin, span: written.span, related: relatedOf(view, written), detail };
      } else if (
        read &&
        !written &&
        modes.length === 0 &&
        view.wires.length > 0 &&
        !findOpen(subject, view)
      ) {
        const detail = { pin, modes, use: 'read', wants: 'INPUT' } as const;
        yield {
          identity: pin,
          span: read.span,
          related: relatedOf(view, read),
          severity: 'information',
          detail,
        };
      }
    }
  },
  message: ({ pin, modes, use }) => {
    if (use === 'read')
      return `${pin} is read here, and nothing sets its mode: it is an input only because reset made it one.`;
    const mode = modes.length === 0 ? 'nothing makes it an output' : `its only mode is ${listWords(modes)}`;
    return `${pin} is written here, and ${mode}: it can drive nothing.`;
  },
  fixes({ pin, wants }, subject) {
    const view = subject.pins.find((candidate) => candidate.pin.id === pin);
    const edits = view && setMode(subject, view, wants);
    return edits ? [{ title: `Set the mode of ${pin} to ${wants} with pinMode`, trust: 'ask', edits }] : [];
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
      about: 'a button that is read and never given a mode',
      build: `
//- sketch.ino
void setup() {}
void loop() {
  if (digitalRead(2) == HIGH) delay(1);
//                ^ mode-missing [ask]: D2 is read here, and nothing sets its mode
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "call": { "kind": "push-button" }, "R1": { "kind": "resistor", "value": "10k" } },
  "wires": [{ "path": ["5V", "call", "D2"] }, { "path": ["call.2", "R1", "GND"] }]
}
`,
      fixed: `
//- sketch.ino
void setup() { pinMode(2, INPUT); }
void loop() {
  if (digitalRead(2) == HIGH) delay(1);
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

/** Calls after which a pin drives, whatever its mode was. */
const makesOutput: ReadonlySet<PinAction> = new Set(['pwm', 'tone', 'servo']);

function hasSwitch(subject: Subject, view: PinView): boolean {
  return subject.placed.some(
    ({ primitive, nets }) => primitive.type === 'switch' && nets.includes(view.net.id),
  );
}
