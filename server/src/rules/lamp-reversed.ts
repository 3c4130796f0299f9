/** A lamp that only ever sees voltage the wrong way. */
import { formatQuantity } from '../base/quantity';
import { defineRule } from './rule';
import type { Placed, Subject } from './subject';
import { reach } from './support/conduction';
import { swapLamp } from './support/lamp-fixes';
import { isSignal, lampName, lampsOf, partOf } from './support/views';
import { voltsOf } from './support/volts';

interface Detail {
  readonly lamp: string;
  /** The lamp as people call it. */
  readonly name: string;
  readonly element: string;
  readonly anode: string;
  readonly cathode: string;
  readonly volts: number;
  readonly stands?: number;
  readonly state: string;
}

/** Less than this forward is dark, amperes; more than this backwards is meant to drive something, volts. */
const dark = 1e-5;
const backwards = 1;

export default defineRule<Detail>({
  id: 'lamp-reversed',
  title: 'A lamp is wired the wrong way round.',
  why: 'It stays dark, and above its reverse voltage (often 5 V) it is damaged.',
  source: 'reverse voltage in the lamps’ datasheets; the voltage is computed',
  severity: 'error',
  maturity: 'settled',
  needs: 'circuit',
  *check(subject) {
    for (const lamp of lampsOf(subject)) {
      const part = partOf(subject, lamp.part);
      const region = subject.regions.find((candidate) => candidate.elements.includes(lamp));
      if (!part || !region || lamp.primitive.type !== 'diode') continue;
      let most: { volts: number; state: string } | undefined;
      let lit = false;
      for (const state of subject.points(region)) {
        if ((state.point.amps[lamp.id]?.max ?? 0) > dark) lit = true;
        const anode = voltsOf(subject, state, lamp.nets[0]);
        const cathode = voltsOf(subject, state, lamp.nets[1]);
        if (!anode || !cathode) continue;
        const reverse = cathode.typ - anode.typ;
        if (reverse > backwards && (!most || reverse > most.volts)) {
          most = { volts: cathode.max - anode.min, state: state.words };
        }
      }
      if (lit || !most || pinsOnBothSides(subject, lamp)) continue;
      const { maxReverseVolts, ends } = lamp.primitive;
      const name = lampName(subject, lamp);
      yield {
        identity: name,
        span: part.span,
        related: subject.build.wires
          .filter((wire) =>
            wire.ends.some(
              (end) =>
                end.kind === 'terminal' && end.part === part.id && lamp.primitive.ends.includes(end.terminal),
            ),
          )
          .map((wire) => ({ message: `${part.id} is wired here`, span: wire.span })),
        detail: {
          lamp: lamp.part,
          name,
          element: lamp.id,
          anode: ends[0],
          cathode: ends[1],
          volts: most.volts,
          ...(maxReverseVolts !== undefined && { stands: maxReverseVolts }),
          state: most.state,
        },
      };
    }
  },
  message: ({ name, anode, cathode, volts, stands, state }) =>
    `${name} is the wrong way round: it never lights, and its ${cathode} lies up to ${formatQuantity(volts, 'V')} ` +
    `above its ${anode}${state ? ` (${state})` : ''}` +
    `${stands === undefined ? '.' : `; it stands ${formatQuantity(stands, 'V')} in reverse.`}`,
  fixes: ({ lamp, element }, subject) => swapLamp(subject, lamp, element),
  examples: [
    {
      about: 'a run that enters the lamp from the ground side',
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
//   ^^^^^^ lamp-reversed [ask]: beacon is the wrong way round
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [
    { "path": ["GND", "beacon", "R1", "D7"], "colours": ["black", "red", "red"] }
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
    { "path": ["D7", "R1", "beacon", "GND"], "colours": ["red", "red", "black"] }
  ]
}
`,
    },
    {
      about: 'another pin on the same ground by way of a resistor',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); pinMode(2, INPUT); }
void loop() { digitalWrite(7, digitalRead(2)); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
//   ^^^^^^ lamp-reversed [ask]: beacon is the wrong way round
    "R1": { "kind": "resistor", "value": "470" },
    "R2": { "kind": "resistor", "value": "10k" },
    "call": { "kind": "push-button" }
  },
  "wires": [
    { "path": ["GND", "beacon", "R1", "D7"] },
    { "path": ["D2", "R2", "GND"] },
    { "path": ["R2.1", "call", "5V"] }
  ]
}
`,
    },
    {
      about: 'a lamp between the supply and a pin that pulls it low',
      build: `
//- sketch.ino
void setup() { pinMode(7, OUTPUT); }
void loop() { digitalWrite(7, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [{ "path": ["5V", "R1", "beacon", "D7"] }]
}
`,
    },
  ],
});

/** True where pins drive either side: then it is the code that never lights it, and turning it round would not. */
function pinsOnBothSides(subject: Subject, lamp: Placed): boolean {
  const driven = lamp.nets.map((net) => {
    const nets = reach(subject, net, { switches: {}, resistances: true, without: lamp.id });
    return subject.pins.some(
      (view) => isSignal(view) && nets.has(view.net.id) && subject.rails[view.net.id] === undefined,
    );
  });
  return driven.every(Boolean);
}
