/** More current drawn from a supply pin, or from a source, than it gives. */
import { formatQuantity } from '../base/quantity';
import { budgetOf } from '../circuit';
import { defineRule } from './rule';
import type { Subject } from './subject';
import { boardFeeds } from './support/board-feeds';
import { drawsOf } from './support/draws';
import { shortedBy, supplyPoles } from './support/shorted-supplies';
import { railSupplies, type Supply, sourceSupplies } from './support/supplies';
import { listWords, partOf } from './support/views';

interface Detail {
  readonly supply: string;
  readonly typ: number;
  readonly max: number;
  readonly limit: number;
  readonly usually: boolean;
  readonly largest: readonly string[];
}

export default defineRule<Detail>({
  id: 'supply-over',
  title: 'More current is drawn from a supply than it gives.',
  why: 'The voltage falls as soon as the motor moves or the lamps light: the board resets, again and again.',
  source:
    'current of the supply pins in the board file and of the sources in the part files; the sum is computed',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const { supply, limit } of limitedSupplies(subject)) {
      const draws = drawsOf(subject, supply);
      const budget = budgetOf(draws, limit);
      const parts = [...draws]
        .sort((a, b) => b.amps.max - a.amps.max)
        .flatMap((draw) => draw.parts.slice(0, 1));
      const [part, ...others] = parts.flatMap((id) => partOf(subject, id) ?? []);
      if (budget.exceeded === 'never' || !part) continue;
      const usually = budget.exceeded === 'usually';
      yield {
        identity: supply.name,
        span: part.span,
        related: others
          .slice(0, 3)
          .map(({ id, span }) => ({ message: `${id} is fed from ${supply.name} too`, span })),
        severity: usually ? 'warning' : 'information',
        detail: {
          supply: supply.name,
          typ: budget.used.typ,
          max: budget.used.max,
          limit,
          usually,
          largest: [...new Set(parts)].slice(0, 3),
        },
      };
    }
  },
  message: ({ supply, typ, max, limit, usually, largest }) =>
    (usually
      ? `${formatQuantity(typ, 'A')} are drawn from ${supply} while all of it works` +
        (max > typ ? `, up to ${formatQuantity(max, 'A')}` : '')
      : `Up to ${formatQuantity(max, 'A')} are drawn from ${supply} at peaks, ${formatQuantity(typ, 'A')} usually`) +
    `, and ${supply} gives ${formatQuantity(limit, 'A')}: most goes to ${listWords(largest)}. ` +
    'Feed that from a supply of its own, and join the grounds.',
  examples: [
    {
      about: 'a strip of sixty lamps on the 5V pin',
      build: `
//- sketch.ino
void setup() { pinMode(6, OUTPUT); }
void loop() { digitalWrite(6, HIGH); digitalWrite(6, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "R1": { "kind": "resistor", "value": "330" },
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "10 V" },
    "water": { "kind": "addressable-strip", "count": 60 }
//   ^^^^^ supply-over: 1.2 A are drawn from 5V while all of it works, up to 3.6 A, and 5V gives 500 mA
  },
  "wires": [
    { "from": "5V", "to": "water.+" },
    { "from": "water.-", "to": "GND" },
    { "path": ["water.+", "C1", "water.-"] },
    { "path": ["D6", "R1", "water.data-in"] }
  ]
}
`,
    },
    {
      about: 'a sensor that takes more than the 3.3 V pin gives',
      build: `
//- sketch.ino
void setup() {}
void loop() { int level = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "gas": { "kind": "analog-sensor", "supply": "3.3", "current": "60 mA" }
//   ^^^ supply-over: 60 mA are drawn from 3V3
  },
  "wires": [
    { "from": "3V3", "to": "gas.+" },
    { "from": "A0", "to": "gas.out" },
    { "from": "gas.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'the same sensor just inside the limit',
      build: `
//- sketch.ino
void setup() {}
void loop() { int level = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "gas": { "kind": "analog-sensor", "supply": "3.3", "current": "30 mA" } },
  "wires": [
    { "from": "3V3", "to": "gas.+" },
    { "from": "A0", "to": "gas.out" },
    { "from": "gas.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a strip on an adapter that gives enough',
      build: `
//- sketch.ino
void setup() { pinMode(6, OUTPUT); }
void loop() { digitalWrite(6, HIGH); digitalWrite(6, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "power-adapter", "volts": "5", "maxCurrent": "4 A" },
    "R1": { "kind": "resistor", "value": "330" },
    "C1": { "kind": "electrolytic-capacitor", "value": "470 uF", "volts": "10 V" },
    "water": { "kind": "addressable-strip", "count": 60 }
  },
  "wires": [
    { "from": "block.+", "to": "water.+" },
    { "from": "block.-", "to": "GND" },
    { "from": "water.-", "to": "block.-" },
    { "path": ["water.+", "C1", "water.-"] },
    { "path": ["D6", "R1", "water.data-in"] }
  ]
}
`,
    },
  ],
});

/** Supplies with a known limit, but for those that are shorted, and those that two things feed: who gives how much? */
function limitedSupplies(subject: Subject): readonly { readonly supply: Supply; readonly limit: number }[] {
  const feeds = boardFeeds(subject);
  const shorted = new Set(
    supplyPoles(subject).flatMap(({ supply, net, returns }) =>
      shortedBy(subject, net, returns) === undefined ? [] : [supply],
    ),
  );
  const rails = railSupplies(subject).flatMap((supply) => {
    const limit = supply.pin?.maxAmps?.max;
    // A rail's limit may be that of the USB port, which a declared source takes the place of.
    const isFed = feeds.some(
      ({ view, input }) => view.pin.id === supply.name || input?.feeds === supply.name,
    );
    return limit === undefined || isFed ? [] : [{ supply, limit }];
  });
  const nets = new Set(Object.keys(subject.rails));
  const sources = sourceSupplies(subject).flatMap((supply) => {
    const limit = supply.source.primitive.maxAmps;
    return limit === undefined || nets.has(supply.net) ? [] : [{ supply, limit }];
  });
  return [...rails, ...sources].filter(({ supply }) => !shorted.has(supply.name));
}
