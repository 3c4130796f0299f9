/** A voltage on the reference pin while the converter has its reference on that pin. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import { railsAmong, reach } from './support/conduction';
import { viewOf, wiresRelated } from './support/views';

interface Detail {
  readonly pin: string;
  readonly from: string;
  readonly volts?: number;
}

export default defineRule<Detail>({
  id: 'aref-fed',
  title: 'The reference pin is fed, and the sketch does not say so.',
  why: 'The chip ties its own reference to that pin: two supplies meet through the converter, which dies of it.',
  source:
    'ATmega328P datasheet, ADC voltage reference: no other voltage on AREF with an internal reference selected',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    if (subject.facts.damaged) return;
    const { uses } = subject.facts;
    // A sketch that sets the reference knows of it; which one it sets is its own affair.
    if (uses.some(({ action, call }) => action === 'reference' && /reference/i.test(call))) return;
    const read = uses.find(({ action }) => action === 'analog-read');
    if (!read) return;
    for (const view of subject.pins) {
      if (view.pin.type !== 'reference' || view.wires.length === 0) continue;
      const nets = reach(subject, view.net.id, { switches: {}, resistances: false });
      const rail = railsAmong(subject, nets)
        .map((id) => viewOf(subject, id))
        .find((found) => found?.pin.type === 'supply');
      const source = subject.placed.find(
        ({ primitive, nets: ends }) => primitive.type === 'source' && nets.has(ends[0]),
      );
      const from = rail?.pin.id ?? source?.part;
      const [wire] = view.wires;
      if (from === undefined || !wire) continue;
      const end = wire.ends.find((one) => one.kind === 'pin' && one.pin === view.pin.id);
      const volts =
        rail?.pin.volts ?? (source?.primitive.type === 'source' ? source.primitive.volts : undefined);
      yield {
        identity: view.pin.id,
        span: end?.span ?? wire.span,
        related: [
          { message: 'the converter is read here', span: read.span },
          ...wiresRelated(view.wires.slice(1), view.pin.id),
        ],
        detail: { pin: view.pin.id, from, ...(volts && { volts: volts.typ }) },
      };
    }
  },
  message: ({ pin, from, volts }) =>
    `${pin} is fed by ${from}${volts === undefined ? '' : ` with ${formatQuantity(volts, 'V')}`}, and the sketch reads analog ` +
    'inputs without analogReference(EXTERNAL): call that before the first analogRead, or take the wire away.',
  examples: [
    {
      about: '3.3 V on the reference pin with the reference left as it is',
      build: `
//- sketch.ino
void setup() {}
void loop() { int tide = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "tide": { "kind": "potentiometer", "value": "10k" } },
  "wires": [
    { "from": "3V3", "to": "tide.1" },
    { "from": "tide.1", "to": "AREF" },
//                             ^^^^ aref-fed: AREF is fed by 3V3 with 3.3 V
    { "from": "tide.2", "to": "GND" },
    { "from": "A0", "to": "tide.wiper" }
  ]
}
`,
    },
    {
      about: 'the same with the reference chosen',
      build: `
//- sketch.ino
void setup() { analogReference(EXTERNAL); }
void loop() { int tide = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "tide": { "kind": "potentiometer", "value": "10k" } },
  "wires": [
    { "from": "3V3", "to": "tide.1" },
    { "from": "tide.1", "to": "AREF" },
    { "from": "tide.2", "to": "GND" },
    { "from": "A0", "to": "tide.wiper" }
  ]
}
`,
    },
    {
      about: 'a capacitor on the reference pin is what it wants',
      build: `
//- sketch.ino
void setup() {}
void loop() { int tide = analogRead(A0); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "C1": { "kind": "capacitor", "value": "100 nF" },
    "tide": { "kind": "potentiometer", "value": "10k" }
  },
  "wires": [
    { "from": "5V", "to": "tide.1" },
    { "from": "tide.2", "to": "GND" },
    { "from": "A0", "to": "tide.wiper" },
    { "path": ["AREF", "C1", "tide.2"] }
  ]
}
`,
    },
  ],
});
