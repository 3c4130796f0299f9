/** A switch that changes nothing at the pin which reads it. */

import type { Fix } from '../base/finding';
import { defineRule } from './rule';
import type { Placed, Subject } from './subject';
import { endsDead } from './support/dead-ends';
import { findOpen } from './support/floating';
import { groundTerminal } from './support/manifest-edits';
import { isSignal, listWords, regionOf, relatedOf, viewOf } from './support/views';
import { voltsOf } from './support/volts';

interface Detail {
  readonly pin: string;
  readonly level: 'HIGH' | 'LOW';
  readonly switches: readonly string[];
  readonly pull: string;
  /** Terminal of the only switch that could go to ground instead. */
  readonly far?: { readonly part: string; readonly terminal: string };
}

export default defineRule<Detail>({
  id: 'button-never-seen',
  title: 'An input has the same level whether its switch is open or closed.',
  why: 'Pull and switch lead to the same rail: the sketch waits for a press that it can never see.',
  source: 'common practice; the levels are computed',
  severity: 'error',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    // A mode that could not be read may be the one that makes it right.
    if (subject.facts.damaged || subject.unresolved.some((use) => use.action === 'mode')) return;
    const { inputHighVolts, inputLowVolts } = subject.build.board.limits;
    for (const view of subject.pins) {
      const [drive, ...others] = view.drives;
      if (
        !isSignal(view) ||
        view.wires.length === 0 ||
        others.length > 0 ||
        drive === 'high' ||
        drive === 'low'
      )
        continue;
      if (endsDead(subject, view)) continue;
      // A plain input that one position leaves open is told by the rule on floating.
      if (drive === 'input' && findOpen(subject, view)) continue;
      const use = view.uses.find((one) => one.action === 'read' || one.action === 'interrupt');
      const region = use && regionOf(subject, view.pin.id);
      if (!region || region.limit !== undefined || region.pins.length !== 1) continue;
      // Anything with a life of its own may move the level.
      if (!region.elements.every(({ primitive }) => plain.has(primitive.type))) continue;
      const switches = region.elements.filter(({ primitive }) => primitive.type === 'switch');
      // Before the sketch has set the mode, the pin is an input whatever it becomes.
      const states = subject.points(region).filter((state) => state.drives[view.pin.id] === drive);
      const volts = states.map((state) => voltsOf(subject, state, view.net.id));
      if (switches.length === 0 || states.length < 2) continue;
      const high = volts.every((one) => one !== undefined && one.min >= inputHighVolts.min);
      const low = volts.every((one) => one !== undefined && one.max <= inputLowVolts.max);
      if (!high && !low) continue;
      const far = high ? farEnd(subject, switches, view.net.id) : undefined;
      yield {
        identity: view.pin.id,
        span: use.span,
        related: relatedOf(view, use),
        detail: {
          pin: view.pin.id,
          level: high ? 'HIGH' : 'LOW',
          switches: [...new Set(switches.map((one) => one.part))],
          pull:
            drive === 'pull-up'
              ? 'the pull-up of the pin'
              : drive === 'pull-down'
                ? 'its pull-down'
                : 'the resistor',
          ...(far && { far }),
        },
      };
    }
  },
  message: ({ pin, level, switches, pull }) =>
    `${pin} reads ${level} whether ${listWords(switches)} is open or closed: ${pull} and the switch lead to the same rail. ` +
    `Take the switch to the other one.`,
  fixes: ({ far }, subject): readonly Fix[] => (far ? groundTerminal(subject, far.part, far.terminal) : []),
  examples: [
    {
      about: 'a button to the supply on a pin that is pulled up',
      build: `
//- sketch.ino
const int call = 2;
void setup() { pinMode(call, INPUT_PULLUP); }
void loop() {
  if (digitalRead(call) == HIGH) delay(1);
//                ^^^^ button-never-seen [ask]: D2 reads HIGH whether call is open or closed
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [
    { "from": "D2", "to": "call.1" }, // along the mast
    { "from": "call.2", "to": "5V" }
  ]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [
    { "from": "D2", "to": "call.1" }, // along the mast
    { "from": "call.2", "to": "GND@left.14" }
  ]
}
`,
    },
    {
      about: 'a button to ground on a pin that is pulled down',
      build: `
//- sketch.ino
const int call = 5;
void setup() { pinMode(call, INPUT_PULLDOWN); }
void loop() {
  if (digitalRead(call) == LOW) delay(1);
//                ^^^^ button-never-seen: GP5 reads LOW whether call is open or closed
}
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["GP5", "call", "GND"] }]
}
`,
    },
    {
      about: 'a button to ground on a pin that is pulled up',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); }
void loop() { if (digitalRead(2) == LOW) delay(1); }
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
      about: 'a button to the supply on a pin that is pulled down',
      build: `
//- sketch.ino
void setup() { pinMode(5, INPUT_PULLDOWN); }
void loop() { if (digitalRead(5) == HIGH) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["3V3", "call", "GP5"] }]
}
`,
    },
  ],
});

const plain: ReadonlySet<string> = new Set(['resistor', 'switch', 'capacitor']);

/** The end of the one switch at the pin that lies on a supply rail. */
function farEnd(subject: Subject, switches: readonly Placed[], net: string) {
  const [one, ...others] = switches;
  if (!one || others.length > 0) return undefined;
  const at = one.nets.findIndex((other) => other !== net && isSupply(subject, other));
  const terminal = one.primitive.ends[at];
  return terminal === undefined ? undefined : { part: one.part, terminal };
}

function isSupply(subject: Subject, net: string): boolean {
  return viewOf(subject, subject.rails[net] ?? '')?.pin.type === 'supply';
}
