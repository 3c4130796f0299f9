/** An input that nothing holds while its switch is open. */
import type { Fix } from '../base/finding';
import { defineRule } from './rule';
import { endsDead } from './support/dead-ends';
import { findOpen } from './support/floating';
import { addPull } from './support/manifest-edits';
import { setMode } from './support/sketch-edits';
import { isSignal, relatedOf } from './support/views';
import { writtenPulls } from './support/written-pulls';

interface Detail {
  readonly pin: string;
  /** Switch parts that leave it open; empty where nothing ever ties the pin. */
  readonly open: readonly string[];
  /** Rail that the closed switch ties it to. */
  readonly closedTo?: string;
  readonly pullUp: boolean;
}

export default defineRule<Detail>({
  id: 'floating-input',
  title: 'An input is tied to nothing while its switch is open.',
  why: 'An open input follows the mains hum, a hand nearby, the wire beside it: presses that nobody made.',
  source: 'common practice; ATmega328P datasheet, I/O ports: unconnected pins',
  severity: 'warning',
  maturity: 'settled',
  needs: 'hardware',
  *check(subject) {
    // What seems to be missing may stand in text that could not be read.
    if (subject.facts.damaged) return;
    // A mode call whose pin is not known may be the pull-up that is missing here.
    if (subject.unresolved.some((use) => use.action === 'mode')) return;
    for (const view of subject.pins) {
      if (!isSignal(view) || view.wires.length === 0) continue;
      const use = view.uses.find((candidate) =>
        ['read', 'interrupt', 'analog-read'].includes(candidate.action),
      );
      if (!use || !view.drives.includes('input') || view.drives.some((drive) => drive !== 'input')) continue;
      // A mode that is not known may be the pull-up.
      if (view.uses.some((other) => other.action === 'mode' && other.modes?.length === 0)) continue;
      // The level written in place of the pull-up and the bare contact are told by the rules on those.
      if (writtenPulls(subject).some((one) => one.view === view) || endsDead(subject, view)) continue;
      const open = findOpen(subject, view);
      if (!open) continue;
      yield {
        identity: view.pin.id,
        span: use.span,
        related: relatedOf(view, use),
        detail: { pin: view.pin.id, ...open, pullUp: use.action !== 'analog-read' && view.pin.type === 'io' },
      };
    }
  },
  message: ({ pin, open, closedTo }) =>
    open.length > 0
      ? `${pin} floats while ${open.join(' and ')} is open: nothing but the switch ties it to ${closedTo}.`
      : `${pin} floats: nothing on its wire ties it to a level.`,
  fixes({ pin, closedTo, pullUp }, subject) {
    const view = subject.pins.find((candidate) => candidate.pin.id === pin);
    if (!view || closedTo === undefined) return [];
    const toGround = subject.pins.some((other) => other.pin.id === closedTo && other.pin.type === 'ground');
    const fixes: Fix[] = [];
    const edits = toGround && pullUp ? setMode(subject, view, 'INPUT_PULLUP') : undefined;
    if (edits)
      fixes.push({ title: `Switch on the pull-up of ${pin} with INPUT_PULLUP`, trust: 'ask', edits });
    const pull = addPull(subject, view, toGround ? 'up' : 'down');
    if (pull) fixes.push(pull);
    return fixes;
  },
  examples: [
    {
      about: 'a button to ground on a plain input',
      build: `
//- sketch.ino
const int call = 2;
void setup() {
  pinMode(call, INPUT);
}
void loop() {
  if (digitalRead(call) == LOW) delay(1);
//                ^^^^ floating-input [ask] [ask]: D2 floats while call is open
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "call": { "kind": "push-button" } // rings the harbour master
  },
  "wires": [
    { "path": ["D2", "call", "GND"] }
  ]
}
`,
      fixed: `
//- sketch.ino
const int call = 2;
void setup() {
  pinMode(call, INPUT_PULLUP);
}
void loop() {
  if (digitalRead(call) == LOW) delay(1);
}
`,
    },
    {
      about: 'a pull-down resistor holds the pin while the switch to the supply is open',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT); }
void loop() { if (digitalRead(2) == HIGH) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "gateOpen": { "kind": "toggle-switch" },
    "R1": { "kind": "resistor", "value": "10k" }
  },
  "wires": [
    { "path": ["5V", "gateOpen", "D2"] },
    { "path": ["gateOpen.2", "R1", "GND"] }
  ]
}
`,
    },
  ],
});
