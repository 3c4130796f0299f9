/** A part with a terminal that no wire reaches. */

import type { Part } from '../base/build';
import { defineRule } from './rule';
import { findJoinedLegs } from './support/joined-legs';
import { connectTerminal } from './support/manifest-edits';
import { findResetLine } from './support/reset-line';
import { listWords } from './support/views';

interface Detail {
  readonly part: string;
  readonly terminals: readonly string[];
  readonly all: boolean;
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
    const wired = new Set<string>();
    for (const wire of subject.build.wires) {
      for (const end of wire.ends) if (end.kind === 'terminal') wired.add(`${end.part}.${end.terminal}`);
    }
    const told = new Set([...resetParts(subject), ...findJoinedLegs(subject).map(({ part }) => part.id)]);
    for (const part of subject.build.parts) {
      if (told.has(part.id)) continue;
      const bare = part.terminals.filter(({ id }) => !isWired(part, id, wired));
      const all = bare.length === part.terminals.length && bare.length > 0;
      const open = bare.filter((terminal) => all || !terminal.optional).map(({ id }) => id);
      if (open.length === 0) continue;
      yield { identity: part.id, span: part.span, detail: { part: part.id, terminals: open, all } };
    }
  },
  message: ({ part, terminals, all }) =>
    all
      ? `${part} is declared, and no wire reaches it.`
      : `${part} has no wire on ${listWords(terminals.map((id) => `${part}.${id}`))}.`,
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

/** True where a wire reaches the terminal, or one that the part itself joins to it. */
function isWired(part: Part, terminal: string, wired: ReadonlySet<string>): boolean {
  const joined = part.joined?.find((group) => group.includes(terminal)) ?? [terminal];
  return joined.some((id) => wired.has(`${part.id}.${id}`));
}

/** A reset button with an open side is told by the rule on the reset line, which says more. */
function resetParts(subject: Parameters<typeof findResetLine>[0]): ReadonlySet<string> {
  const line = findResetLine(subject);
  if (!line || line.held || line.resets) return new Set();
  return new Set(line.switches.map((found) => found.element.part));
}
