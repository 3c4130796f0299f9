/** A load that works while its pin is low, on a pin that is made an output before it is high. */
import type { PinUse } from '../base/pin-use';
import { defineRule } from './rule';
import { loadWhenLow, lowAtFirst } from './support/active-low';
import { isSignal, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly part: string;
  readonly mode: PinUse;
}

export default defineRule<Detail>({
  id: 'load-pulsed-at-start',
  title: 'A load that works while its pin is low is switched on for a moment at each start.',
  why: 'A pin that becomes an output is low until something writes it: the relay clicks, or the motor jerks, at every reset.',
  source: 'common practice; output latches are clear after reset',
  severity: 'warning',
  maturity: 'new',
  needs: 'circuit',
  *check(subject) {
    if (subject.facts.damaged || subject.unresolved.length > 0) return;
    for (const view of subject.pins) {
      if (!isSignal(view) || !view.drives.includes('low') || !view.drives.includes('high')) continue;
      const gap = lowAtFirst(view.uses);
      const part = gap && loadWhenLow(subject, view);
      if (!gap || part === undefined) continue;
      const waits = subject.facts.uses.some(
        ({ action, order, certain }) =>
          action === 'wait' && certain && order > gap.mode.order && order < gap.high.order,
      );
      // Microseconds between two statements move no relay; a wait between them does.
      if (!waits) continue;
      yield {
        identity: view.pin.id,
        span: gap.mode.span,
        related: [
          { message: `${view.pin.id} goes high only here`, span: gap.high.span },
          ...relatedOf(view, gap.mode),
        ],
        detail: { pin: view.pin.id, part, mode: gap.mode },
      };
    }
  },
  message: ({ pin, part }) =>
    `${part} works while ${pin} is low, and ${pin} is low from here until it is written high, with a wait in between. ` +
    'Write it high before it becomes an output.',
  fixes({ pin, mode }, subject) {
    const { file, start } = mode.callSpan;
    const text = subject.texts[file] ?? '';
    const line = text.slice(text.lastIndexOf('\n', start - 1) + 1, start);
    // Somewhere else on a line an inserted statement could land behind an `if`.
    const before = text.slice(0, start).trimEnd().at(-1);
    const alone = /^[ \t]*$/.test(line) && before !== undefined && ';{}'.includes(before);
    if (!alone || mode.pins.kind !== 'known' || mode.pins.values.length !== 1) return [];
    const argument = text.slice(mode.span.start, mode.span.end);
    const newline = text.includes('\r\n') ? '\r\n' : '\n';
    return [
      {
        title: `Write ${pin} high before it becomes an output`,
        trust: 'ask',
        edits: [{ file, start, end: start, text: `digitalWrite(${argument}, HIGH);${newline}${line}` }],
      },
    ];
  },
  examples: [
    {
      about: 'a relay module that acts when low, and a wait before it is let go',
      build: `
//- sketch.ino
const int flood = 7;
void setup() {
  pinMode(flood, OUTPUT);
//        ^^^^^ load-pulsed-at-start [ask]: works while D7 is low, and D7 is low from here until it is written high, with a wait
  delay(500);
  digitalWrite(flood, HIGH);
}
void loop() { delay(60000); digitalWrite(flood, LOW); delay(1000); digitalWrite(flood, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": {
    "relay": { "kind": "relay-module" },
    "pack": { "kind": "battery", "volts": "6" },
    "floodlight": { "kind": "filament-lamp", "hotOhms": "60" }
  },
  "wires": [
    { "from": "D7", "to": "relay.in" },
    { "from": "5V", "to": "relay.+" },
    { "from": "relay.-", "to": "GND" },
    { "path": ["pack.+", "floodlight", "relay.common"] },
    { "from": "relay.no", "to": "pack.-" }
  ]
}
`,
      fixed: `
//- sketch.ino
const int flood = 7;
void setup() {
  digitalWrite(flood, HIGH);
  pinMode(flood, OUTPUT);
  delay(500);
  digitalWrite(flood, HIGH);
}
void loop() { delay(60000); digitalWrite(flood, LOW); delay(1000); digitalWrite(flood, HIGH); }
`,
    },
    {
      about: 'high directly after it became an output: a few microseconds, which move no relay',
      build: `
//- sketch.ino
void setup() {
  pinMode(7, OUTPUT);
  digitalWrite(7, HIGH);
}
void loop() { delay(60000); digitalWrite(7, LOW); delay(1000); digitalWrite(7, HIGH); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "relay": { "kind": "relay-module" },
    "pack": { "kind": "battery", "volts": "6" },
    "floodlight": { "kind": "filament-lamp", "hotOhms": "60" }
  },
  "wires": [
    { "from": "D7", "to": "relay.in" },
    { "from": "5V", "to": "relay.+" },
    { "from": "relay.-", "to": "GND" },
    { "path": ["pack.+", "floodlight", "relay.common"] },
    { "from": "relay.no", "to": "pack.-" }
  ]
}
`,
    },
    {
      about: 'high for the first time in loop, after a wait',
      build: `
//- sketch.ino
void setup() {
  pinMode(7, OUTPUT);
//        ^ load-pulsed-at-start [ask]: relay works while D7 is low
}
void loop() { delay(60000); digitalWrite(7, HIGH); delay(1000); digitalWrite(7, LOW); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "relay": { "kind": "relay-module" },
    "pack": { "kind": "battery", "volts": "6" },
    "floodlight": { "kind": "filament-lamp", "hotOhms": "60" }
  },
  "wires": [
    { "from": "D7", "to": "relay.in" },
    { "from": "5V", "to": "relay.+" },
    { "from": "relay.-", "to": "GND" },
    { "path": ["pack.+", "floodlight", "relay.common"] },
    { "from": "relay.no", "to": "pack.-" }
  ]
}
`,
    },
    {
      about: 'a lamp to the supply only blinks, which harms nobody',
      build: `
//- sketch.ino
void setup() {
  pinMode(7, OUTPUT);
  digitalWrite(7, HIGH);
}
void loop() {
  delay(500);
  digitalWrite(7, LOW);
  delay(500);
  digitalWrite(7, HIGH);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
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
