/** A battery that is empty sooner than the manifest wishes. */
import { formatQuantity } from '../base/quantity';
import { runTime } from '../circuit';
import { defineRule } from './rule';
import type { Subject } from './subject';
import { boardFeeds } from './support/board-feeds';
import { drawnFrom } from './support/draws';
import { railSupplies, sourceSupplies } from './support/supplies';
import { partOf } from './support/views';

interface Detail {
  readonly part: string;
  readonly ampHours: number;
  readonly amps: number;
  readonly seconds: number;
  readonly wish: number;
  /** Ampere-hours that the wish would take. */
  readonly needed: number;
}

export default defineRule<Detail>({
  id: 'run-time-short',
  title: 'A battery does not last as long as the manifest wishes.',
  why: 'The exhibit stands still in the afternoon, with the visitors there.',
  source:
    'the run time wished for under policy, and the capacity of the battery as declared; the time is computed',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    const wish = subject.build.policy.runSeconds;
    if (wish === undefined) return;
    for (const supply of sourceSupplies(subject)) {
      const part = partOf(subject, supply.name);
      const { ampHours } = supply.source.primitive;
      if (!part || ampHours === undefined) continue;
      const drawn = drawnFrom(subject, supply);
      const amps = drawn.typ + throughBoard(subject, supply.source.id, 'typ');
      const run = runTime({ ampHours, phases: [{ amps, seconds: 1 }] });
      if (!run.ok || run.seconds >= wish) continue;
      const least = drawn.min + throughBoard(subject, supply.source.id, 'min');
      yield {
        identity: part.id,
        span: part.valueSpans.capacity ?? part.span,
        related: subject.build.policy.runSpan
          ? [{ message: 'the wish stands here', span: subject.build.policy.runSpan }]
          : [],
        // What draws may rest most of the time; only where even at rest it draws too much is it sure.
        severity: (least * wish) / 3600 > ampHours ? 'warning' : 'information',
        detail: {
          part: part.id,
          ampHours,
          amps,
          seconds: run.seconds,
          wish,
          needed: (amps * wish) / 3600,
        },
      };
    }
  },
  message: ({ part, ampHours, amps, seconds, wish, needed }) =>
    `${part} (${formatQuantity(ampHours, 'Ah')}) lasts ${formatQuantity(seconds, 's')} while all of it works ` +
    `(${formatQuantity(amps, 'A')}, the board itself not counted), and ${formatQuantity(wish, 's')} are wished for: ` +
    `that takes ${formatQuantity(needed, 'Ah')}.`,
  examples: [
    {
      about: 'a strip all day long on a small pack',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "policy": { "runTime": "8 h" },
  "parts": {
    "pack": { "kind": "battery", "volts": "12", "spread": "10%", "capacity": "2000 mAh" },
//                                                                            ^^^^^^^^ run-time-short: pack (2 Ah) lasts 2.5 h
    "quayLight": { "kind": "led-strip", "metres": 1 }
  },
  "wires": [
    { "path": ["pack.+", "quayLight.+"] },
    { "from": "quayLight.-", "to": "pack.-" }
  ]
}
`,
    },
    {
      about: 'a 9 V block that feeds a sensor through the board',
      build: `
//- sketch.ino
void setup() {}
void loop() { int level = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "policy": { "runTime": "24 h" },
  "parts": {
    "block": { "kind": "nine-volt-battery" },
//   ^^^^^ run-time-short: block (550 mAh) lasts 18.3 h while all of it works
    "gas": { "kind": "analog-sensor", "current": "30 mA" }
  },
  "wires": [
    { "from": "block.+", "to": "VIN" },
    { "from": "block.-", "to": "GND" },
    { "from": "5V", "to": "gas.+" },
    { "from": "A0", "to": "gas.out" },
    { "from": "gas.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'the same strip for two hours',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "policy": { "runTime": "2 h" },
  "parts": {
    "pack": { "kind": "battery", "volts": "12", "spread": "10%", "capacity": "2000 mAh" },
    "quayLight": { "kind": "led-strip", "metres": 1 }
  },
  "wires": [
    { "path": ["pack.+", "quayLight.+"] },
    { "from": "quayLight.-", "to": "pack.-" }
  ]
}
`,
    },
    {
      about: 'nothing is wished for',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "pack": { "kind": "battery", "volts": "12", "spread": "10%", "capacity": "200 mAh" },
    "quayLight": { "kind": "led-strip", "metres": 1 }
  },
  "wires": [
    { "path": ["pack.+", "quayLight.+"] },
    { "from": "quayLight.-", "to": "pack.-" }
  ]
}
`,
    },
  ],
});

/** Amperes that a source gives to the rail behind the board's input that it feeds. */
function throughBoard(subject: Subject, source: string, key: 'min' | 'typ'): number {
  const feed = boardFeeds(subject).find((one) => one.source.id === source);
  const rail = railSupplies(subject).find(({ name }) => name === feed?.input?.feeds);
  return rail ? drawnFrom(subject, rail)[key] : 0;
}
