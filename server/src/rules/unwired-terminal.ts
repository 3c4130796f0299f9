/** A part with a terminal that no wire reaches. */

import { defineRule } from './rule';
import { deadEnds, isWired, wiredTerminals } from './support/dead-ends';
import { findJoinedLegs } from './support/joined-legs';
import { connectTerminal } from './support/manifest-edits';
import { findResetLine } from './support/reset-line';
import { listWords } from './support/views';

interface Detail {
  readonly part: string;
  readonly terminals: readonly string[];
  readonly all: boolean;
  /** The wired terminal from which nothing goes on: one of `terminals` is wanted. */
  readonly lone?: string;
}

export default defineRule<Detail>({
  id: 'unwired-terminal',
  title: 'A part has a terminal that no wire reaches.',
  why: 'Current needs a way in and a way out: the part does nothing, or the wire was left out of the list.',
  source: 'common practice',
  severity: 'warning',
  maturity: 'settled',
  needs: 'hardware',
  *check(subject) {
    const wired = wiredTerminals(subject);
    const told = new Set([...resetParts(subject), ...findJoinedLegs(subject).map(({ part }) => part.id)]);
    for (const part of subject.build.parts) {
      if (told.has(part.id)) continue;
      const bare = part.terminals.filter(({ id }) => !isWired(part, id, wired));
      const all = bare.length === part.terminals.length && bare.length > 0;
      const open = bare.filter((terminal) => all || !terminal.optional).map(({ id }) => id);
      const dead = deadEnds(subject).find((one) => one.part === part);
      if (open.length > 0) {
        yield { identity: part.id, span: part.span, detail: { part: part.id, terminals: open, all } };
      } else if (dead) {
        const { terminal: lone, ways: terminals } = dead;
        yield { identity: part.id, span: part.span, detail: { part: part.id, terminals, all, lone } };
      }
    }
  },
  message({ part, terminals, all, lone }) {
    if (all) return `${part} is declared, and no wire reaches it.`;
    const ends = terminals.map((id) => `${part}.${id}`);
    return lone === undefined
      ? `${part} has no wire on ${listWords(ends)}.`
      : `${part} has a wire on ${part}.${lone}, from which nothing goes on: wire ${ends.join(' or ')} too.`;
  },
  fixes: ({ part, terminals, all }, subject) => (all ? [] : connectTerminal(subject, part, terminals)),
  examples: [
    {
      about: 'a potentiometer without its ground',
      build: `
//- sketch.ino
void setup() {}
void loop() { int level = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "tide": { "kind": "potentiometer", "value": "10k" }
//   ^^^^ unwired-terminal [ask]: tide has no wire on tide.2
  },
  "wires": [
    { "from": "5V", "to": "tide.1" },
    { "from": "A0", "to": "tide.wiper" }
  ]
}
`,
    },
    arrival(
      'a limit switch with its common terminal alone',
      ['{ "from": "D4", "to": "arrived.common" }'],
      true,
    ),
    arrival(
      'a limit switch with one of its contacts',
      ['{ "path": ["D4", "arrived.common"] }', '{ "from": "arrived.nc", "to": "GND" }'],
      false,
    ),
    {
      about: 'every terminal is wired',
      build: `
//- sketch.ino
void setup() {}
void loop() { int level = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "tide": { "kind": "potentiometer", "value": "10k" } },
  "wires": [
    { "from": "5V", "to": "tide.1" },
    { "from": "A0", "to": "tide.wiper" },
    { "from": "tide.2", "to": "GND" }
  ]
}
`,
    },
  ],
});

/** A reset button with an open side is told by the rule on the reset line, which says more. */
function resetParts(subject: Parameters<typeof findResetLine>[0]): ReadonlySet<string> {
  const line = findResetLine(subject);
  if (!line || line.held || line.resets) return new Set();
  return new Set(line.switches.map((found) => found.element.part));
}

function arrival(about: string, wires: readonly string[], wrong: boolean) {
  const mark = `\n//   ^^^^^^^ unwired-terminal: wire arrived.no or arrived.nc too`;
  return {
    about,
    build: `
//- sketch.ino
void setup() { pinMode(4, INPUT_PULLUP); }
void loop() { if (digitalRead(4) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "arrived": { "kind": "limit-switch" }${wrong ? mark : ''}
  },
  "wires": [
    ${wires.join(',\n    ')}
  ]
}
`,
  };
}
