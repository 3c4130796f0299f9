/** What the readers of the manifest and of boards found: one finding for each place. */

import type { Problem } from '../base/read';
import { defineRule } from './rule';

export default defineRule<Problem>({
  id: 'manifest-fault',
  title: 'The manifest, or the board file it names, has a place that cannot be read or means nothing.',
  why: 'What cannot be read is left out of every check and of the papers. Everything else in the file still counts.',
  source: 'hardware-schemas/manifest.schema.json and hardware-schemas/board.schema.json',
  severity: 'error',
  maturity: 'settled',
  needs: 'reading',
  *check(subject) {
    for (const problem of subject.problems) {
      if (subject.facts.problems.includes(problem)) continue;
      yield { identity: `${problem.code}@${problem.span.start}`, span: problem.span, detail: problem };
    }
  },
  message: ({ message, hint }) => (hint === undefined ? message : `${message} ${hint}`),
  fixes: ({ fix }) => (fix ? [{ title: fix.title, trust: 'safe', edits: fix.edits }] : []),
  examples: [
    {
      about: 'a part that does not exist, and its nearest name',
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
    { "from": "cal.2", "to": "GND" }
//             ^^^ manifest-fault [safe]: There is no part "cal". Did you mean "call"?
  ]
}
`,
    },
    {
      about: 'a key that the kind of part does not have',
      build: `
//- sketch.ino
void setup() {}
void loop() { int level = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "light": { "kind": "analog-sensor", "curent": "5 mA" }
//                                       ^^^^^^ manifest-fault [safe]: "light" is an analog sensor, which has no key "curent". Did you mean "current"?
  },
  "wires": [
    { "from": "5V", "to": "light.+" },
    { "from": "A0", "to": "light.out" },
    { "from": "light.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a manifest without faults',
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
  ],
});
