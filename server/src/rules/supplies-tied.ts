/** Two things that hold one net at a voltage of their own. */
import { formatQuantity } from '../base/quantity';
import type { Range } from '../base/range';
import { defineRule } from './rule';
import { boardFeeds } from './support/board-feeds';
import { fixedNets, joinedNets, sourceSupplies } from './support/supplies';
import { partOf, wiresRelated } from './support/views';

interface Detail {
  readonly part: string;
  readonly other: string;
  readonly volts: Range;
  readonly otherVolts: Range;
  /** Supply pin that the board drives itself. */
  readonly pin?: string;
  /** The input that is meant for it. */
  readonly better?: string;
}

export default defineRule<Detail>({
  id: 'supplies-tied',
  title: 'Two supplies drive one net.',
  why: 'The higher one feeds into the lower one: through the computer’s USB port, a regulator or a pack that is not to be charged.',
  source: 'common practice; the supply inputs of the board file',
  severity: 'warning',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const told = new Set<string>();
    for (const { source, volts, view, input, most } of boardFeeds(subject)) {
      const part = partOf(subject, source.part);
      if (!part || input || !view.pin.volts || told.has(part.id)) continue;
      // Too many volts are the worse fault, and have a rule of their own.
      if (volts.max > most) continue;
      told.add(part.id);
      const inputs = subject.build.board.supplyInputs ?? [];
      const better = inputs.find(
        (one) => one.pin !== undefined && volts.typ >= one.volts.min && volts.typ <= one.volts.max,
      );
      yield {
        identity: part.id,
        span: part.span,
        related: wiresRelated(view.wires, view.pin.id),
        detail: {
          part: part.id,
          other: 'the board',
          volts,
          otherVolts: view.pin.volts,
          pin: view.pin.id,
          ...(better?.pin !== undefined && { better: better.pin }),
        },
      };
    }
    const sources = sourceSupplies(subject);
    for (const [index, first] of sources.entries()) {
      const nets = joinedNets(subject, first.net);
      const returns = joinedNets(subject, first.source.nets[1]);
      for (const second of sources.slice(index + 1)) {
        if (!nets.has(second.net) || !returns.has(second.source.nets[1])) continue;
        const part = partOf(subject, second.name);
        const other = partOf(subject, first.name);
        // Joined without any switch: a switch between two supplies is there to choose one of them.
        if (!part || !other || !fixedNets(subject, first.net).has(second.net)) continue;
        const apart = first.volts.max < second.volts.min || second.volts.max < first.volts.min;
        yield {
          identity: part.id,
          span: part.span,
          related: [{ message: `${other.id} is declared here`, span: other.span }],
          severity: apart ? 'error' : 'warning',
          detail: { part: part.id, other: other.id, volts: second.volts, otherVolts: first.volts },
        };
      }
    }
  },
  message: ({ part, other, volts, otherVolts, pin, better }) =>
    pin === undefined
      ? `${part} (${formatQuantity(volts.typ, 'V')}) and ${other} (${formatQuantity(otherVolts.typ, 'V')}) are tied ` +
        'together: put a diode behind each, or a switch that chooses.'
      : `${part} and ${other} both drive ${pin} as soon as the USB cable or another supply is plugged in: ` +
        (better === undefined || better === pin
          ? 'put a diode in between, or never use both.'
          : `feed the board at ${better}, or never use both.`),
  examples: [
    {
      about: 'a pack on the 5V pin of a board whose USB port drives the same rail',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "block": { "kind": "usb-power", "port": "charger" }
//   ^^^^^ supplies-tied: block and the board both drive 5V
  },
  "wires": [
    { "from": "block.+", "to": "5V" },
    { "from": "block.-", "to": "GND" }
  ]
}
`,
    },
    {
      about: 'a second pack beside the first to last longer',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "first": { "kind": "nine-volt-battery" },
    "second": { "kind": "nine-volt-battery" }
//   ^^^^^^ supplies-tied: second (8.4 V) and first (8.4 V) are tied together
  },
  "wires": [
    { "from": "first.+", "to": "VIN" },
    { "from": "first.-", "to": "GND" },
    { "from": "second.+", "to": "first.+" },
    { "from": "second.-", "to": "first.-" }
  ]
}
`,
    },
    {
      about: 'a diode behind each pack',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "first": { "kind": "nine-volt-battery" },
    "second": { "kind": "nine-volt-battery" },
    "X1": { "kind": "schottky-diode" },
    "X2": { "kind": "schottky-diode" }
  },
  "wires": [
    { "path": ["first.+", "X1", "VIN"] },
    { "path": ["second.+", "X2", "X1.cathode"] },
    { "from": "first.-", "to": "GND" },
    { "from": "second.-", "to": "first.-" }
  ]
}
`,
    },
    {
      about: 'a pack on the input that is meant for one',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "pro-mini-5v",
  "parts": { "block": { "kind": "power-adapter", "volts": "5" } },
  "wires": [
    { "from": "block.+", "to": "VCC" },
    { "from": "block.-", "to": "GND" }
  ]
}
`,
    },
  ],
});
