/** Several lamps side by side on one resistor. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { type LitLamp, litLamps } from './support/lit-lamps';
import { lampName, listWords, partOf } from './support/views';

interface Detail {
  readonly names: readonly string[];
  /** Amperes by lamp, in the order of the names. */
  readonly amps: readonly number[];
  /** True where one takes what another would need to be seen. */
  readonly unequal: boolean;
}

export default defineRule<Detail>({
  id: 'lamps-parallel',
  title: 'Lamps side by side share one resistor.',
  why: 'The one with the least forward volts takes most of the current: the others are dim, and it wears out first.',
  source: 'spread of the forward volts in the lamps’ data sheets; common practice',
  severity: 'information',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    const groups = new Map<string, LitLamp[]>();
    for (const lit of litLamps(subject)) {
      const key = lit.lamp.nets.join(' > ');
      const group = groups.get(key);
      if (group) group.push(lit);
      else groups.set(key, [lit]);
    }
    for (const [first, ...others] of groups.values()) {
      const part = first && partOf(subject, first.lamp.part);
      if (!first || !part || others.length === 0) continue;
      const all = [first, ...others];
      // Between two rails each is told as a lamp without a resistor.
      if (first.lamp.nets.every((net) => subject.rails[net] !== undefined)) continue;
      const most = Math.max(...all.map(({ amps }) => amps.typ));
      const unequal = all.some(
        ({ lamp, amps }) =>
          lamp.primitive.visibleAmps !== undefined &&
          amps.typ < lamp.primitive.visibleAmps &&
          most > lamp.primitive.visibleAmps,
      );
      yield {
        identity: lampName(subject, first.lamp),
        span: part.span,
        severity: unequal ? 'warning' : 'information',
        related: others.flatMap(({ lamp }) => {
          const span = partOf(subject, lamp.part)?.span;
          return span ? [{ message: `${lampName(subject, lamp)} is on the same two wires`, span }] : [];
        }),
        detail: {
          names: all.map(({ lamp }) => lampName(subject, lamp)),
          amps: all.map(({ amps }) => amps.typ),
          unequal,
        },
      };
    }
  },
  message: ({ names, amps, unequal }) => {
    const each = names.map((name, index) => `${name} ${formatQuantity(amps[index] ?? 0, 'A')}`);
    return unequal
      ? `${listWords(names)} are side by side on one resistor and do not share its current: ${each.join(', ')}. Give ` +
          'each lamp a resistor of its own.'
      : `${listWords(names)} are side by side on one resistor: how they share its current is chance. Give each lamp a ` +
          'resistor of its own.';
  },
  examples: [
    {
      about: 'a red and a blue lamp, of which only the red one lights',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "port": { "kind": "led", "colour": "red" },
//   ^^^^ lamps-parallel: port and ice are side by side on one resistor and do not share its current
    "ice": { "kind": "led", "colour": "blue" },
    "R1": { "kind": "resistor", "value": "330" }
  },
  "wires": [
    { "path": ["D7", "R1", "port", "GND"] },
    { "from": "port.anode", "to": "ice.anode" },
    { "from": "port.cathode", "to": "ice.cathode" }
  ]
}
`,
    },
    {
      about: 'two lamps of one colour',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "port": { "kind": "led", "colour": "red" },
//   ^^^^ lamps-parallel: port and stern are side by side on one resistor: how they share
    "stern": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "330" }
  },
  "wires": [
    { "path": ["D7", "R1", "port", "GND"] },
    { "from": "port.anode", "to": "stern.anode" },
    { "from": "port.cathode", "to": "stern.cathode" }
  ]
}
`,
    },
    {
      about: 'a resistor for each',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "port": { "kind": "led", "colour": "red" },
    "stern": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "680" },
    "R2": { "kind": "resistor", "value": "680" }
  },
  "wires": [
    { "path": ["D7", "R1", "port", "GND"] },
    { "path": ["R1.1", "R2", "stern", "port.cathode"] }
  ]
}
`,
    },
  ],
});
