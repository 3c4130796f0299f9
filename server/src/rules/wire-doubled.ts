/** Two wires in the list that join the same two ends. */
import type { Span } from '../base/span';
import { removeWire } from '../hardware';
import { defineRule } from './rule';
import { findDoubledWires } from './support/doubled-wires';
import { draftManifest } from './support/draft';
import { isPath } from './support/manifest-edits';

interface Detail {
  readonly from: string;
  readonly to: string;
  /** Index of the entry that can be taken out; undefined where it holds more than this wire. */
  readonly entry?: number;
}

export default defineRule<Detail>({
  id: 'wire-doubled',
  title: 'Two wires join the same two ends.',
  why: 'One of them is a slip in the list more often than not, and somebody will look for where it should have gone.',
  source: 'common practice',
  severity: 'information',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const { wire, first } of findDoubledWires(subject)) {
      const [from, to] = wire.ends.map((end) =>
        end.kind === 'pin' ? end.pin : `${end.part}.${end.terminal}`,
      );
      const span: Span = wire.ends[1].span;
      yield {
        identity: wire.id,
        span,
        related: [{ message: 'the same wire stands here', span: first.span }],
        detail: { from: from ?? '', to: to ?? '', ...(!isPath(wire) && { entry: wire.entry }) },
      };
    }
  },
  message: ({ from, to }) => `Another wire joins ${from} and ${to} already. Take one out, or change its end.`,
  fixes({ entry }, subject) {
    if (entry === undefined) return [];
    return [
      {
        title: 'Take this wire out of the list',
        trust: 'ask',
        edits: draftManifest(subject, [(text, file) => removeWire(text, entry, file)]),
      },
    ];
  },
  examples: [
    {
      about: 'the same wire twice in the list',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); }
void loop() { if (digitalRead(2) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [
    { "from": "D2", "to": "call.1" },
    { "from": "call.2", "to": "GND" },
    { "from": "GND", "to": "call.2" }
//                          ^^^^^^ wire-doubled [ask]: Another wire joins GND and call.2 already
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
    { "from": "D2", "to": "call.1" },
    { "from": "call.2", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a wire that a path has as well',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); }
void loop() { if (digitalRead(2) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [
    { "from": "D2", "to": "call.1" },
    { "path": ["D2", "call", "GND"] }
//                    ^^^^ wire-doubled: Another wire joins D2 and call.1 already
  ]
}
`,
    },
    {
      about: 'two wires from ground to different parts',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); pinMode(3, INPUT_PULLUP); }
void loop() { if (digitalRead(2) == LOW || digitalRead(3) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "call": { "kind": "push-button" }, "stop": { "kind": "push-button" } },
  "wires": [
    { "path": ["D2", "call", "GND"] },
    { "path": ["D3", "stop", "GND"] }
  ]
}
`,
    },
    {
      about: 'two wires between the same two parts, at other terminals',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); }
void loop() { if (digitalRead(2) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": { "call": { "kind": "push-button" }, "second": { "kind": "push-button" } },
  "wires": [
    { "path": ["GP2", "call", "GND"] },
    { "from": "call.1", "to": "second.1" },
    { "from": "call.2", "to": "second.2" }
  ]
}
`,
    },
  ],
});
