/** A red wire on ground, or a black one on a supply. */
import type { Wire } from '../base/build';
import { replaceValue } from '../hardware';
import { defineRule } from './rule';
import type { Subject } from './subject';
import { draftManifest } from './support/draft';
import { isPath } from './support/manifest-edits';
import { groundNets, placedOf, railSupplies } from './support/supplies';

interface Detail {
  readonly colour: string;
  readonly better: string;
  readonly on: string;
  readonly wire: Wire;
}

export default defineRule<Detail>({
  id: 'wire-colour-misleads',
  title: 'A wire has the colour that everybody takes for the other pole.',
  why: 'Whoever measures or repairs the build puts the probe, or the supply, on the wrong one.',
  source: 'common practice: red for plus, black for ground',
  severity: 'information',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const grounds = groundNets(subject);
    const supplies = supplyNets(subject);
    for (const net of subject.build.nets) {
      const ground = grounds.has(net.id);
      const supply = supplies.get(net.id);
      if (!ground && supply === undefined) continue;
      const wrong = ground ? 'red' : 'black';
      for (const wire of subject.build.wires.filter(({ id }) => net.wires.includes(id))) {
        if (wire.colour?.trim().toLowerCase() !== wrong) continue;
        const end = wire.ends.find(({ kind }) => kind === 'pin') ?? wire.ends[0];
        yield {
          identity: wire.id,
          span: end.span,
          detail: {
            colour: wrong,
            better: ground ? 'black' : 'red',
            on: ground ? 'ground' : (supply ?? ''),
            wire,
          },
        };
      }
    }
  },
  message: ({ colour, better, on }) => `This wire is ${colour} and lies on ${on}. Take a ${better} one.`,
  fixes({ better, wire }, subject) {
    const { entry, piece } = wire;
    const path = isPath(wire) ? ['wires', entry, 'colours', piece] : ['wires', entry, 'colour'];
    return [
      {
        title: `Make this wire ${better}`,
        trust: 'ask',
        edits: draftManifest(subject, [(text, file) => replaceValue(text, path, better, file)]),
      },
    ];
  },
  examples: [
    {
      about: 'the colours of a run in the wrong order',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [
    { "path": ["D7", "R1", "beacon", "GND"], "colours": ["black", "red", "red"] } // as on the bench
//                                    ^^^ wire-colour-misleads [ask]: This wire is red and lies on ground
  ]
}
`,
      fixed: `
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [
    { "path": ["D7", "R1", "beacon", "GND"], "colours": ["black", "red", "black"] } // as on the bench
  ]
}
`,
    },
    {
      about: 'a black wire from the supply to a potentiometer',
      build: `
//- sketch.ino
void setup() {}
void loop() { int level = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "tide": { "kind": "potentiometer", "value": "10k" } },
  "wires": [
    { "from": "5V", "to": "tide.1", "colour": "Black" },
//             ^^ wire-colour-misleads [ask]: This wire is black and lies on 5V
    { "from": "A0", "to": "tide.wiper", "colour": "green" },
    { "from": "tide.2", "to": "GND", "colour": "blue" }
  ]
}
`,
    },
    {
      about: 'red on plus, black on ground, any colour between',
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
    { "from": "5V", "to": "tide.1", "colour": "red" },
    { "from": "A0", "to": "tide.wiper", "colour": "black" },
    { "from": "tide.2", "to": "GND", "colour": "black" }
  ]
}
`,
    },
    {
      about: 'the upper pack in a row: its minus is the lower one’s plus',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "upper": { "kind": "battery", "volts": "4.8" },
    "lower": { "kind": "battery", "volts": "4.8" }
  },
  "wires": [
    { "from": "upper.+", "to": "VIN", "colour": "red" },
    { "from": "upper.-", "to": "lower.+", "colour": "black" },
    { "from": "lower.-", "to": "GND", "colour": "black" }
  ]
}
`,
    },
  ],
});

/** Nets at the plus of a supply, with its name; not where another pack's minus is on it. */
function supplyNets(subject: Subject): ReadonlyMap<string, string> {
  const sources = placedOf(subject, 'source');
  const minus = new Set(sources.map(({ nets }) => nets[1]));
  const plus = new Map(sources.map(({ part, nets, primitive }) => [nets[0], `${part}.${primitive.ends[0]}`]));
  for (const { net, name } of railSupplies(subject)) plus.set(net, name);
  for (const net of minus) plus.delete(net);
  return plus;
}
