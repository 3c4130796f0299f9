/** A button wired across two legs that are one piece of metal. */
import { defineRule } from './rule';
import { draftManifest } from './support/draft';
import { findJoinedLegs, type JoinedLegs } from './support/joined-legs';
import { isInside, setEnd } from './support/manifest-edits';

export default defineRule<JoinedLegs>({
  id: 'legs-joined',
  title: 'A button is wired across two legs that are joined inside it.',
  why: 'It is always closed, whether anybody presses it or not.',
  source: 'the part file: which terminals are one conductor',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    // The wire on the other side may be one that could not be read.
    if (subject.doubtful.length > 0) return;
    for (const legs of findJoinedLegs(subject)) {
      const end = legs.wire.ends[legs.end];
      yield {
        identity: legs.part.id,
        span: end.span,
        related: [{ message: `${legs.part.id} is declared here`, span: legs.part.span }],
        detail: legs,
      };
    }
  },
  message: ({ part, legs, free }) =>
    `${part.id}.${legs[0]} and ${part.id}.${legs[1]} are joined inside ${part.id}: it is always closed. ` +
    `Use ${part.id}.${free}, which lies diagonally.`,
  fixes({ part, wire, end, free }, subject) {
    if (isInside(subject, wire, end)) return [];
    return [
      {
        title: `Take this wire to ${part.id}.${free}`,
        trust: 'ask',
        edits: draftManifest(subject, [setEnd(wire, end, `${part.id}.${free}`)]),
      },
    ];
  },
  examples: [
    {
      about: 'pin and ground on the two legs of one side',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); }
void loop() { if (digitalRead(2) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "call": { "kind": "tact-switch" } },
  "wires": [
    { "from": "D2", "to": "call.1a" },
    { "from": "call.1b", "to": "GND" } // legs side by side
//             ^^^^^^^ legs-joined [ask]: call.1a and call.1b are joined inside call
  ]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "call": { "kind": "tact-switch" } },
  "wires": [
    { "from": "D2", "to": "call.1a" },
    { "from": "call.2a", "to": "GND" } // legs side by side
  ]
}
`,
    },
    {
      about: 'a reset button across its joined legs',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "restart": { "kind": "tact-switch" } },
  "wires": [
    { "from": "GND", "to": "restart.2b" },
    { "from": "restart.2a", "to": "RST" }
//             ^^^^^^^^^^ legs-joined [ask]: restart.2b and restart.2a are joined inside restart
  ]
}
`,
    },
    {
      about: 'legs that lie diagonally',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); }
void loop() { if (digitalRead(2) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "call": { "kind": "tact-switch" } },
  "wires": [
    { "from": "D2", "to": "call.1b" },
    { "from": "call.2a", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'the second leg of a side passes ground on to another button',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); pinMode(3, INPUT_PULLUP); }
void loop() { if (digitalRead(2) == LOW || digitalRead(3) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "call": { "kind": "tact-switch" }, "stop": { "kind": "tact-switch" } },
  "wires": [
    { "from": "D2", "to": "call.1a" },
    { "from": "D3", "to": "stop.1a" },
    { "from": "call.2a", "to": "GND" },
    { "from": "call.2b", "to": "stop.2a" }
  ]
}
`,
    },
  ],
});
