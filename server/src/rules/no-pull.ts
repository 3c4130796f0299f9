/** A pull-up or pull-down is switched on that the pin does not have. */

import type { Fix } from '../base/finding';
import { defineRule } from './rule';
import { findOpen } from './support/floating';
import { addPull } from './support/manifest-edits';
import { modeCalls } from './support/sketch-edits';
import { isMeant, relatedOf, viewOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly pull: 'up' | 'down';
  /** Switches that leave it open. */
  readonly open: readonly string[];
}

export default defineRule<Detail>({
  id: 'no-pull',
  title: 'A pull resistor is asked of a pin that has none inside the chip.',
  why: 'The call compiles and does nothing, so the input floats: presses that nobody made, and none that were.',
  source: 'GPIO chapters of the chips’ documents, in the boards’ pin tables',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const view of subject.pins) {
      const { id: pin, pulls } = view.pin;
      if (!pulls) continue;
      for (const pull of ['up', 'down'] as const) {
        const mode = `input-pull${pull}` as const;
        if (pulls.includes(pull)) continue;
        const use = modeCalls(view).find((one) => one.modes?.includes(mode) && isMeant(one));
        if (!use) continue;
        // Where a resistor on the wire holds the pin, the mode does no harm; without a wire nobody knows what will.
        const open = view.wires.length > 0 ? findOpen(subject, view) : undefined;
        if (!open) continue;
        yield {
          identity: pin,
          span: use.valueSpan ?? use.span,
          related: relatedOf(view, use),
          detail: { pin, pull, open: open.open },
        };
      }
    }
  },
  message: ({ pin, pull, open }) =>
    `${pin} has no pull-${pull} in the chip, so ${open.length > 0 ? `while ${open.join(' and ')} is open it floats` : 'it floats'}. ` +
    'Solder a resistor, or take a pin that has one.',
  fixes({ pin, pull }, subject) {
    const view = viewOf(subject, pin);
    const fix: Fix | undefined = view ? addPull(subject, view, pull) : undefined;
    return fix ? [fix] : [];
  },
  examples: [
    {
      about: 'a button on a pin without a pull-up',
      build: `
//- sketch.ino
const int call = 35;
void setup() { pinMode(call, INPUT_PULLUP); }
//                           ^^^^^^^^^^^^ no-pull [ask]: IO35 has no pull-up in the chip, so while call is open it floats
void loop() { if (digitalRead(call) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["IO35", "call", "GND"] }]
}
`,
    },
    {
      about: 'the resistor on the wire does the work already',
      build: `
//- sketch.ino
const int call = 35;
void setup() { pinMode(call, INPUT_PULLUP); }
void loop() { if (digitalRead(call) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": { "call": { "kind": "push-button" }, "R1": { "kind": "resistor", "value": "10k" } },
  "wires": [{ "path": ["IO35", "call", "GND"] }, { "path": ["3V3", "R1", "call.1"] }]
}
`,
    },
    {
      about: 'a pin that has both',
      build: `
//- sketch.ino
const int call = 33;
void setup() { pinMode(call, INPUT_PULLUP); }
void loop() { if (digitalRead(call) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["IO33", "call", "GND"] }]
}
`,
    },
    {
      about: 'a pin with a pull-up of a board where D0 alone lacks one',
      build: `
//- sketch.ino
void setup() { pinMode(D5, INPUT_PULLUP); }
void loop() { if (digitalRead(D5) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nodemcu-esp8266",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["D5", "call", "GND"] }]
}
`,
    },
  ],
});
