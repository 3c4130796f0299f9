/** An analog input fed through more resistance than the converter copes with. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import type { PinView, Subject } from './subject';
import { sourceOhms } from './support/source-ohms';
import { regionOf, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly ohms: number;
  readonly limit: number;
  readonly others: number;
}

export default defineRule<Detail>({
  id: 'adc-source-weak',
  title: 'An analog input is fed through too much resistance.',
  why: 'The converter’s capacitor does not fill in its time: the reading leans towards the channel read before.',
  source: 'analog input circuitry in the chip’s datasheet; the resistance is computed',
  severity: 'information',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    const limit = subject.build.board.analog?.sourceOhms?.max;
    if (limit === undefined) return;
    const read = subject.pins.filter(({ uses }) => uses.some(({ action }) => action === 'analog-read'));
    // With one channel alone the capacitor keeps what it has.
    if (read.length < 2) return;
    for (const view of read) {
      const use = view.uses.find(({ action }) => action === 'analog-read');
      const ohms = weakest(subject, view);
      if (!use || ohms === undefined || ohms <= limit) continue;
      yield {
        identity: view.pin.id,
        span: use.span,
        related: relatedOf(view, use),
        detail: { pin: view.pin.id, ohms, limit, others: read.length - 1 },
      };
    }
  },
  message: ({ pin, ohms, limit, others }) =>
    `${pin} is fed through ${formatQuantity(ohms, 'ohm')}, the converter wants ${formatQuantity(limit, 'ohm')} at most, and ` +
    `${others === 1 ? 'another channel is' : `${others} more channels are`} read as well: put 100 nF from ${pin} to ` +
    'ground, or read twice and throw the first away.',
  examples: [
    {
      about: 'a potentiometer of a hundred kilohms beside another',
      build: `
//- sketch.ino
void setup() {}
void loop() {
  int depth = analogRead(A0);
//                       ^^ adc-source-weak: A0 is fed through 25 kohm
  int tide = analogRead(A1);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "depth": { "kind": "potentiometer", "value": "100k" },
    "tide": { "kind": "potentiometer", "value": "10k" }
  },
  "wires": [
    { "from": "5V", "to": "depth.1" },
    { "from": "depth.1", "to": "tide.1" },
    { "from": "GND", "to": "depth.2" },
    { "from": "depth.2", "to": "tide.2" },
    { "from": "A0", "to": "depth.wiper" },
    { "from": "A1", "to": "tide.wiper" }
  ]
}
`,
    },
    {
      about: 'a divider for a battery out of large resistors',
      build: `
//- sketch.ino
void setup() {}
void loop() {
  int pack = analogRead(A0);
//                      ^^ adc-source-weak: A0 is fed through 50 kohm
  int tide = analogRead(A1);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "R1": { "kind": "resistor", "value": "100k" },
    "R2": { "kind": "resistor", "value": "100k" },
    "tide": { "kind": "potentiometer", "value": "10k" }
  },
  "wires": [
    { "from": "5V", "to": "tide.1" },
    { "from": "GND", "to": "tide.2" },
    { "from": "A1", "to": "tide.wiper" },
    { "path": ["tide.1", "R1", "A0"] },
    { "path": ["R1.2", "R2", "tide.2"] }
  ]
}
`,
    },
    {
      about: 'a capacitor at the input gives the charge',
      build: `
//- sketch.ino
void setup() {}
void loop() { int pack = analogRead(A0); int tide = analogRead(A1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "R1": { "kind": "resistor", "value": "100k" },
    "R2": { "kind": "resistor", "value": "100k" },
    "C1": { "kind": "capacitor", "value": "100 nF" },
    "tide": { "kind": "potentiometer", "value": "10k" }
  },
  "wires": [
    { "from": "5V", "to": "tide.1" },
    { "from": "GND", "to": "tide.2" },
    { "from": "A1", "to": "tide.wiper" },
    { "path": ["tide.1", "R1", "A0"] },
    { "path": ["R1.2", "R2", "tide.2"] },
    { "path": ["R1.2", "C1", "R2.2"] }
  ]
}
`,
    },
    {
      about: 'a potentiometer that is just low enough',
      build: `
//- sketch.ino
void setup() {}
void loop() { int depth = analogRead(A0); int tide = analogRead(A1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "depth": { "kind": "potentiometer", "value": "22k" },
    "tide": { "kind": "potentiometer", "value": "10k" }
  },
  "wires": [
    { "from": "5V", "to": "depth.1" },
    { "from": "depth.1", "to": "tide.1" },
    { "from": "GND", "to": "depth.2" },
    { "from": "depth.2", "to": "tide.2" },
    { "from": "A0", "to": "depth.wiper" },
    { "from": "A1", "to": "tide.wiper" }
  ]
}
`,
    },
  ],
});

/** The most that the source's resistance comes to in any state; undefined where a capacitor gives the charge. */
function weakest(subject: Subject, view: PinView): number | undefined {
  const region = regionOf(subject, view.pin.id);
  const buffered = subject.placed.some(
    ({ primitive, nets }) => primitive.type === 'capacitor' && nets.includes(view.net.id),
  );
  if (!region || buffered || view.wires.length === 0) return undefined;
  const all = subject
    .points(region)
    .slice(0, 16)
    .flatMap((state) => sourceOhms(subject, region, state, view.net.id, 'in the middle')?.typ ?? []);
  return all.length === 0 ? undefined : Math.max(...all);
}
