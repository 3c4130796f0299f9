/** More pins are given to a call than its timers or channels can serve. */

import type { PinUse } from '../base/pin-use';
import type { CallFacts, LibraryFacts } from '../base/platform';
import { defineRule } from './rule';
import type { Subject } from './subject';
import { forChip } from './support/chip-data';
import { isMeant, pathRelated } from './support/views';

interface Detail {
  readonly call: string;
  readonly pins: number;
  readonly most: number;
}

export default defineRule<Detail>({
  id: 'outputs-too-many',
  title: 'More pins are given to a call than it can serve at a time.',
  why: 'The last ones get nothing, and no call says so: servos that never move, lamps that stay dark.',
  source: 'Servo.h (servos for each timer); the chips’ documents (PWM channels), in the library files',
  severity: 'error',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    for (const [call, most] of limits(subject)) {
      const uses = subject.facts.uses.filter((use) => use.call === call && isMeant(use));
      // Pins that are let go may take turns.
      if (uses.length === 0 || subject.facts.uses.some((use) => isRelease(use, call))) continue;
      const pins = new Set<number>();
      let over: PinUse | undefined;
      for (const use of uses) {
        for (const pin of use.pins.kind === 'known' ? use.pins.values : []) pins.add(pin);
        if (pins.size > most) over ??= use;
      }
      if (!over) continue;
      const detail = { call, pins: pins.size, most };
      yield { identity: call, span: over.span, related: pathRelated(over), detail };
    }
  },
  message: ({ call, pins, most }) =>
    `${call} is given ${pins} pins, and ${most} is the most it can serve on this board: ${pins - most} of them get nothing. ` +
    'Drive the others by a driver board of their own.',
  examples: [
    servos('thirteen servos on a chip that serves twelve', 'uno-r3', 13, true),
    servos('thirteen on another chip with one timer for them', 'leonardo', 13, true),
    servos('twelve servos', 'uno-r3', 12, false),
    servos('thirteen on a chip with four timers for them', 'mega-2560', 13, false),
  ],
});

const tables = new WeakMap<readonly LibraryFacts[], readonly (readonly [string, CallFacts])[]>();

/** Calls with a limit, by their names in uses. */
function limitedCalls(libraries: readonly LibraryFacts[]): readonly (readonly [string, CallFacts])[] {
  const kept = tables.get(libraries);
  if (kept) return kept;
  const calls = libraries.flatMap(({ functions, classes }) => [
    ...functions.map((call) => [call.name, call] as const),
    ...classes.flatMap(({ name, methods }) =>
      methods.map((method) => [`${name}.${method.name}`, method] as const),
    ),
  ]);
  const limited = calls.filter(([, { most }]) => most !== undefined);
  tables.set(libraries, limited);
  return limited;
}

/** The most pins of a call on this board, by its name in uses. */
function* limits({ libraries, build }: Subject): Generator<readonly [string, number]> {
  for (const [name, { most = {} }] of limitedCalls(libraries)) {
    const limit = forChip(build.board, most);
    if (limit !== undefined) yield [name, limit];
  }
}

function isRelease({ action, call }: PinUse, served: string): boolean {
  return action === 'release' && call.split('.')[0] === served.split('.')[0];
}

function servos(about: string, board: string, count: number, wrong: boolean) {
  const parts = Array.from({ length: count }, (_, index) => `"arm${index}": { "kind": "servo" }`);
  const wires = Array.from({ length: count }, (_, index) => {
    const end = board === 'uno-r3' || index < 12 ? `D${index + 2}` : 'A0';
    const plus = index === 0 ? 'pack.+' : `arm${index - 1}.+`;
    const minus = index === 0 ? 'GND' : `arm${index - 1}.-`;
    const signal = end === 'D14' ? 'A0' : end;
    return [
      `{ "from": "${signal}", "to": "arm${index}.signal" }`,
      `{ "from": "${plus}", "to": "arm${index}.+" }`,
      `{ "from": "${minus}", "to": "arm${index}.-" }`,
    ].join(', ');
  });
  return {
    about,
    build: `
//- sketch.ino
#include <Servo.h>
const byte pins[] = { 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13${count > 12 ? ', A0' : ''} };
Servo arms[${count}];
void setup() {
  for (byte i = 0; i < ${count}; i++) arms[i].attach(pins[i]);${wrong ? '\n//                                             ^^^^^^^ outputs-too-many: Servo.attach is given 13 pins, and 12 is the most' : ''}
}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": {
    ${parts.join(',\n    ')},
    "pack": { "kind": "battery", "volts": "4.8", "capacity": "2000 mAh" }
  },
  "wires": [
    ${wires.join(',\n    ')},
    { "from": "pack.-", "to": "arm0.-" }
  ]
}
`,
  };
}
