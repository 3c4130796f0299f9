/** A supply and its return joined by nothing but metal and contacts. */

import type { Related } from '../base/finding';
import type { Span } from '../base/span';
import { defineRule } from './rule';
import type { Subject } from './subject';
import { shortedBy, supplyPoles } from './support/shorted-supplies';
import { listWords, partOf, viewOf } from './support/views';

interface Detail {
  readonly supply: string;
  /** Where its return is. */
  readonly ground: string;
  /** Switches that make the short; empty where it is always there. */
  readonly by: readonly string[];
}

export default defineRule<Detail>({
  id: 'supply-shorted',
  title: 'A supply is joined to its own return by metal or by switches alone.',
  why: 'All the current the supply can give flows: wires glow, a pack burns, a regulator or the computer’s port dies.',
  source: 'common practice',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const told = new Set<number>();
    for (const { supply, net, returns, ground } of supplyPoles(subject)) {
      const by = shortedBy(subject, net, returns);
      const place = by && placeOf(subject, supply, by);
      if (!by || !place || subject.doubtful.includes(supply) || told.has(place.span.start)) continue;
      told.add(place.span.start);
      yield {
        identity: supply,
        ...place,
        // Two contacts that are never used together do no harm, but nothing keeps a hand from it.
        ...(by.length > 1 && { severity: 'warning' as const }),
        detail: { supply, ground, by },
      };
    }
  },
  message: ({ supply, ground, by }) =>
    by.length === 0
      ? `${supply} is shorted to ${ground}: nothing but wire lies between them. Take one of the wires away.`
      : `${supply} is shorted to ${ground} as soon as ${listWords(by)} ${by.length > 1 ? 'are' : 'is'} operated: ` +
        'put the load or a resistor between them.',
  examples: [
    {
      about: 'a button with the supply on one side and ground on the other',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT); }
void loop() { if (digitalRead(2) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "call": { "kind": "push-button" }
//   ^^^^ supply-shorted: 5V is shorted to GND as soon as call is operated
  },
  "wires": [
    { "from": "5V", "to": "call.1" },
    { "from": "D2", "to": "call.1" },
    { "from": "call.2", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'two buttons on one pin, one to each rail',
      build: `
//- sketch.ino
void setup() { pinMode(15, INPUT_PULLDOWN); }
void loop() { if (digitalRead(15) == HIGH) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "up": { "kind": "push-button" },
//   ^^ supply-shorted: 3V3 is shorted to GND as soon as up and down are operated
    "down": { "kind": "push-button" }
  },
  "wires": [
    { "path": ["3V3", "up", "GP15"] },
    { "path": ["up.2", "down", "GND"] }
  ]
}
`,
    },
    {
      about: 'a resistor keeps both buttons apart',
      build: `
//- sketch.ino
void setup() { pinMode(15, INPUT_PULLDOWN); }
void loop() { if (digitalRead(15) == HIGH) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "up": { "kind": "push-button" },
    "down": { "kind": "push-button" },
    "R1": { "kind": "resistor", "value": "1k" }
  },
  "wires": [
    { "path": ["3V3", "up", "GP15"] },
    { "path": ["up.2", "R1", "down", "GND"] }
  ]
}
`,
    },
    {
      about: 'a change-over switch is never on both sides at once',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT); }
void loop() { if (digitalRead(2) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "side": { "kind": "slide-switch" } },
  "wires": [
    { "from": "D2", "to": "side.common" },
    { "from": "5V", "to": "side.1" },
    { "from": "GND", "to": "side.2" }
  ]
}
`,
    },
  ],
});

function placeOf(
  subject: Subject,
  supply: string,
  by: readonly string[],
): { readonly span: Span; readonly related: readonly Related[] } | undefined {
  const [first, second] = by.map((id) => partOf(subject, id));
  const other = second ? [{ message: 'and this one', span: second.span }] : [];
  const wires = viewOf(subject, supply)?.wires ?? [];
  const related = wires.slice(0, 3).map(({ span }) => ({ message: `${supply} is wired here`, span }));
  const span = first?.span ?? partOf(subject, supply)?.span ?? wires[0]?.span;
  return span && { span, related: [...other, ...(first ? related : related.slice(1))] };
}
