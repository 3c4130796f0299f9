/** Two wires where one header position is: a hole takes one, and a count along the header finds the wrong one. */
import type { End, Position, Wire } from '../base/build';
import { defineRule } from './rule';
import { findDoubledWires } from './support/doubled-wires';
import { movePosition } from './support/manifest-edits';

interface Detail {
  readonly pin: string;
  /** Undefined where no position of the pin is left at all. */
  readonly words?: string;
  /** Which end of which wire is one too many. */
  readonly wire: string;
  readonly end: 0 | 1;
}

export default defineRule<Detail>({
  id: 'position-shared',
  title: 'Two wires are on one header position.',
  why: 'A header position takes one wire. Two in one hole work loose, and whoever repeats the build miscounts.',
  source: 'common practice',
  severity: 'warning',
  maturity: 'settled',
  needs: 'hardware',
  *check(subject) {
    const taken = new Map<string, End>();
    // A wire that stands twice in the list is one slip, told by the rule on it.
    const doubled = new Set(findDoubledWires(subject).map(({ wire }) => wire.id));
    for (const [end, wire, index] of pinEnds(subject.build.wires)) {
      if (end.kind !== 'pin' || doubled.has(wire.id)) continue;
      const headed = subject.build.board.headers.some((header) => header.positions.includes(end.pin));
      if (!end.position) {
        if (headed) yield hit(end.pin, undefined, wire, index, end);
        continue;
      }
      const place = `${end.position.header}.${end.position.index}`;
      const first = taken.get(place);
      if (first) yield hit(end.pin, end.position, wire, index, end, first);
      else taken.set(place, end);
    }
  },
  message: ({ pin, words }) =>
    words === undefined
      ? `No header position of ${pin} is left for this wire. Join it to another wire at a part, or use a terminal block.`
      : `Another wire is already on this position (${words}).`,
  fixes: (detail, subject) => movePosition(subject, detail),
  examples: [
    {
      about: 'two wires that name the same ground position',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); pinMode(3, INPUT_PULLUP); }
void loop() { if (digitalRead(2) == LOW || digitalRead(3) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "call": { "kind": "push-button" },
    "stop": { "kind": "push-button" }
  },
  "wires": [
    { "path": ["D2", "call", "GND@right.12"] },
    { "path": ["D3", "stop", "GND@right.12"] }
//                            ^^^^^^^^^^^^ position-shared [ask] [ask]: Another wire is already on this position
  ]
}
`,
    },
    {
      about: 'each wire finds a position of its own',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); pinMode(3, INPUT_PULLUP); }
void loop() { if (digitalRead(2) == LOW || digitalRead(3) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "call": { "kind": "push-button" },
    "stop": { "kind": "push-button" }
  },
  "wires": [
    { "path": ["D2", "call", "GND"] },
    { "path": ["D3", "stop", "GND"] }
  ]
}
`,
    },
  ],
});

/** Declared positions first: a wire that was given its place keeps it, and the one that has to move is the other. */
function pinEnds(wires: readonly Wire[]): readonly (readonly [End, Wire, 0 | 1])[] {
  const ends = wires.flatMap((wire) => [[wire.ends[0], wire, 0] as const, [wire.ends[1], wire, 1] as const]);
  const declared = (end: End) => end.kind === 'pin' && end.position?.declared === true;
  return [...ends.filter(([end]) => declared(end)), ...ends.filter(([end]) => !declared(end))];
}

function hit(pin: string, position: Position | undefined, wire: Wire, end: 0 | 1, at: End, first?: End) {
  return {
    identity: `${pin}:${wire.id}`,
    span: at.span,
    related: first ? [{ message: 'the other wire is here', span: first.span }] : [],
    detail: { pin, wire: wire.id, end, ...(position && { words: position.words }) },
  };
}
