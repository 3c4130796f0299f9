/** An output that a switch, or a plain wire, ties to the opposite rail. */

import type { PinUse } from '../base/pin-use';
import { formatQuantity } from '../base/quantity';
import { worst } from '../base/range';
import { defineRule } from './rule';
import { findJoinedLegs } from './support/joined-legs';
import { limitsOf } from './support/pin-limits';
import { findShorts } from './support/shorts';
import { modeCalls, setMode } from './support/sketch-edits';
import { listWords, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly drive: string;
  readonly rail: string;
  readonly by: readonly string[];
  readonly amps: number;
  readonly absolute: number;
  readonly pullUp: boolean;
}

export default defineRule<Detail>({
  id: 'output-shorted',
  title: 'An output pin is tied straight to the opposite rail.',
  why: 'Nothing but the pin itself limits the current. The pin dies, sometimes the chip with it.',
  source: 'absolute maximum ratings of the chip, DC current per I/O pin; the current is computed',
  severity: 'error',
  maturity: 'settled',
  needs: 'circuit',
  *check(subject) {
    const crossed = new Set(findJoinedLegs(subject).map(({ part }) => part.id));
    for (const { view, state, amps, rail, by } of findShorts(subject)) {
      // A button across joined legs makes the short, and that is told where the button is.
      if (view.net.terminals.some(({ part }) => crossed.has(part))) continue;
      const drive = state.drives[view.pin.id] ?? 'high';
      const use = modeCalls(view).find((call) => call.modes?.includes('output')) ?? view.uses[0];
      if (!use) continue;
      const pin = view.pin.id;
      const absolute = limitsOf(subject.build, view).absolute.amps;
      const pullUp = rail.startsWith('GND') && view.pin.type === 'io';
      yield {
        identity: pin,
        span: use.span,
        related: relatedOf(view, use),
        detail: { pin, drive, rail, by, amps: worst(amps), absolute, pullUp },
      };
    }
  },
  message: ({ pin, drive, rail, by, amps, absolute }) =>
    `${pin} is an output, and driven ${drive} it is shorted to ${rail}` +
    `${by.length > 0 ? ` as soon as ${listWords(by)} closes` : ''}: up to ${formatQuantity(amps, 'A')} flows, ` +
    `the pin stands ${formatQuantity(absolute, 'A')} at most.`,
  fixes({ pin, pullUp }, subject) {
    const view = subject.pins.find((candidate) => candidate.pin.id === pin);
    // A pin that is also written low is no button: then only the wiring can be wrong.
    const low = view?.uses.some((use) => use.action === 'write' && !onlyHigh(use));
    if (!view || !pullUp || low) return [];
    const edits = setMode(subject, view, 'INPUT_PULLUP');
    return edits ? [{ title: `Make ${pin} an input with pull-up`, trust: 'ask', edits }] : [];
  },
  examples: [
    {
      about: 'a button to ground on a pin that is an output and driven high',
      build: `
//- sketch.ino
const int call = 2;
void setup() {
  pinMode(call, OUTPUT);
//        ^^^^ output-shorted [ask]: D2 is an output, and driven high it is shorted to GND as soon as call closes
  digitalWrite(call, HIGH);
}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["D2", "call", "GND"] }]
}
`,
    },
    {
      about: 'the same button on an input with pull-up',
      build: `
//- sketch.ino
const int call = 2;
void setup() { pinMode(call, INPUT_PULLUP); }
void loop() { if (digitalRead(call) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["D2", "call", "GND"] }]
}
`,
    },
  ],
});

function onlyHigh(use: PinUse): boolean {
  return use.value?.kind === 'known' && use.value.values.every((value) => value !== 0);
}
