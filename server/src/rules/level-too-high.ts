/** An input that gets more volts than it stands. */
import { formatQuantity } from '../base/quantity';
import type { Range } from '../base/range';
import { defineRule } from './rule';
import { tooHighAt } from './support/high-pins';
import { highest, partInputs, regionOfInput, voltsAtInput } from './support/input-volts';
import { liftedBy } from './support/lifted';
import { isAdrift } from './support/parted-grounds';
import { isReversedRegion } from './support/reversed-supplies';
import { listWords, partOf, wiresRelated } from './support/views';

interface Detail {
  readonly input: string;
  readonly volts: Range;
  readonly stands: number;
  readonly state: string;
  /** Parts and rails it comes from. */
  readonly from: readonly string[];
}

export default defineRule<Detail>({
  id: 'level-too-high',
  title: 'An input gets more volts than it stands.',
  why: 'Current flows through the protection of the input into its supply: it works for a while, then it is dead.',
  source: 'absolute maximum ratings of the chip and of the part, input voltage; the voltage is computed',
  severity: 'error',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    for (const view of subject.pins) {
      const high = tooHighAt(subject, view);
      const [wire] = view.wires;
      if (!high || !wire) continue;
      const { sure, ...figures } = high;
      const end = wire.ends.find((one) => one.kind === 'pin' && one.pin === view.pin.id);
      yield {
        identity: view.pin.id,
        span: end?.span ?? wire.span,
        related: [
          ...wiresRelated(view.wires.slice(1), view.pin.id),
          ...view.uses.slice(0, 1).map(({ span }) => ({ message: `${view.pin.id} is used here`, span })),
        ],
        severity: sure ? 'error' : 'warning',
        detail: { input: view.pin.id, ...figures },
      };
    }
    const told = new Set<string>();
    for (const input of partInputs(subject)) {
      const part = partOf(subject, input.part);
      const stands = input.primitive.maxVolts;
      const most = highest(voltsAtInput(subject, input));
      if (!part || stands === undefined || !most || most.volts.typ <= stands || told.has(part.id)) continue;
      if (isAdrift(subject, input.nets[0]) || isReversedRegion(subject, regionOfInput(subject, input)))
        continue;
      const from = liftedBy(subject, input.nets[0], most, stands, part.id);
      if (from.length === 0) continue;
      told.add(part.id);
      yield {
        identity: part.id,
        span: part.span,
        detail: {
          input: `${part.id}.${input.primitive.ends[0]}`,
          volts: most.volts,
          stands,
          state: most.state?.words ?? '',
          from,
        },
      };
    }
  },
  message: ({ input, volts, stands, state, from }) =>
    `${input} gets ${formatQuantity(volts.typ, 'V')} from ${listWords(from)}` +
    `${state ? ` (${state})` : ''}, and it stands ${formatQuantity(stands, 'V')} at most: put a divider or a level ` +
    'shifter between them.',
  examples: [
    {
      about: 'the echo of a 5 V ranger on a 3.3 V board',
      build: `
//- sketch.ino
void setup() { pinMode(3, INPUT); pinMode(2, OUTPUT); } void loop() { digitalWrite(2, HIGH); delay(1); digitalWrite(2, LOW); unsigned long t = pulseIn(3, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": { "depth": { "kind": "ultrasonic-ranger" } },
  "wires": [
    { "from": "VBUS", "to": "depth.+" },
    { "from": "depth.-", "to": "GND" },
    { "from": "GP2", "to": "depth.trigger" },
    { "from": "GP3", "to": "depth.echo" }
//             ^^^ level-too-high: GP3 gets 5.0 V from depth
  ]
}
`,
    },
    {
      about: 'the same echo behind a divider',
      build: `
//- sketch.ino
void setup() { pinMode(3, INPUT); pinMode(2, OUTPUT); } void loop() { digitalWrite(2, HIGH); delay(1); digitalWrite(2, LOW); unsigned long t = pulseIn(3, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": {
    "depth": { "kind": "ultrasonic-ranger" },
    "R1": { "kind": "resistor", "value": "1k" },
    "R2": { "kind": "resistor", "value": "2k2" }
  },
  "wires": [
    { "from": "VBUS", "to": "depth.+" },
    { "from": "depth.-", "to": "GND" },
    { "from": "GP2", "to": "depth.trigger" },
    { "path": ["depth.echo", "R1", "GP3"] },
    { "path": ["R1.2", "R2", "GND"] }
  ]
}
`,
    },
    {
      about: 'a 5 V board that talks to a 3.3 V module',
      build: `
//- sketch.ino
void setup() { Serial1.begin(9600); } void loop() { Serial1.println("ahoy"); }
//- hardware.jsonc
{
  "format": 1,
  "board": "mega-2560",
  "parts": {
    "radio": { "kind": "serial-device", "supply": "3.3", "current": "20 mA" }
//   ^^^^^ level-too-high: radio.rx gets 5.0 V from D18
  },
  "wires": [
    { "from": "3V3", "to": "radio.+" },
    { "from": "radio.-", "to": "GND" },
    { "from": "D18", "to": "radio.rx" },
    { "from": "D19", "to": "radio.tx" }
  ]
}
`,
    },
    {
      about: 'a relay module whose own lamp leaves the pin less than it stands',
      build: `
//- sketch.ino
void setup() { pinMode(4, OUTPUT); } void loop() { digitalWrite(4, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "pico",
  "parts": { "horn": { "kind": "relay-module" }, "bell": { "kind": "filament-lamp" }, "pack": { "kind": "battery", "volts": "6" } },
  "wires": [
    { "from": "VBUS", "to": "horn.+" },
    { "from": "horn.-", "to": "GND" },
    { "from": "GP4", "to": "horn.in" },
    { "path": ["pack.+", "horn.common"] },
    { "path": ["horn.no", "bell", "pack.-"] }
  ]
}
`,
    },
    {
      about: 'a knob that ends at 5 V, on a pin that stands less',
      build: `
//- sketch.ino
void setup() {} void loop() { if (analogRead(A0) > 900) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nucleo-f103rb",
  "parts": { "dial": { "kind": "potentiometer", "value": "10k" } },
  "wires": [
    { "path": ["5V", "dial.1"] },
    { "path": ["dial.2", "GND"] },
    { "from": "dial.wiper", "to": "A0" }
//                                 ^^ level-too-high: A0 gets 5.0 V from 5V (A0 as input, dial turned to its first end)
  ]
}
`,
    },
    {
      about: 'a 5 V signal on a pin that tolerates it',
      build: `
//- sketch.ino
void setup() { pinMode(D7, INPUT); } void loop() { if (digitalRead(D7) == HIGH) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nucleo-f103rb",
  "parts": { "door": { "kind": "digital-sensor", "supply": "5" } },
  "wires": [
    { "from": "5V", "to": "door.+" },
    { "from": "door.-", "to": "GND" },
    { "from": "D7", "to": "door.out" }
  ]
}
`,
    },
  ],
});
