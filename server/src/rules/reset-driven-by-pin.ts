/** The reset line on a pin that the sketch drives, as a way to restart. */
import { defineRule } from './rule';
import type { Subject } from './subject';
import { reach } from './support/conduction';
import { isMeant, isSignal, relatedOf, viewOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly reset: string;
  /** True where the pin is never written high. */
  readonly low: boolean;
}

export default defineRule<Detail>({
  id: 'reset-driven-by-pin',
  title: 'A pin that the sketch makes an output is wired to the reset line.',
  why: 'The pin lets go as soon as the reset begins, mostly too early; or it starts low, and the board never gets out of reset.',
  source: 'minimum pulse on the reset pin in the chip’s data sheet (from memory); common practice',
  severity: 'warning',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const { reset } = subject.build.board;
    const line = reset && viewOf(subject, reset.pin);
    if (!line || line.wires.length === 0 || subject.rails[line.net.id] !== undefined) return;
    const nets = reach(subject, line.net.id, { switches: {}, resistances: true });
    for (const view of subject.pins) {
      if (!isSignal(view) || !nets.has(view.net.id) || subject.rails[view.net.id] !== undefined) continue;
      if (subject.doubtful.includes(view.pin.id)) continue;
      const use = view.uses.find((one) => one.modes?.includes('output') && isMeant(one));
      if (!use) continue;
      const low = !view.drives.includes('high');
      yield {
        identity: view.pin.id,
        span: use.span,
        related: relatedOf(view, use),
        severity: low || startsLow(subject, view.pin.id) ? 'error' : 'warning',
        detail: { pin: view.pin.id, reset: line.pin.id, low },
      };
    }
  },
  message: ({ pin, reset, low }) =>
    `${pin} drives ${reset}: ${low ? 'as an output it is low, and the board stays in reset' : 'it lets go before the reset is long enough, or holds the board in it at the start'}. ` +
    'Restart by the watchdog, and leave the line to a button.',
  examples: [
    {
      about: 'a wire from D4 to reset, and an output that is low at once',
      build: `
//- sketch.ino
void setup() {
  pinMode(4, OUTPUT);
//        ^ reset-driven-by-pin: D4 drives RST: it lets go before
  digitalWrite(4, HIGH);
}
void loop() {
  delay(60000);
  digitalWrite(4, LOW);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "wires": [{ "from": "D4", "to": "RST" }]
}
`,
    },
    {
      about: 'a resistor between both does not help',
      build: `
//- sketch.ino
void setup() {}
void loop() {
  delay(60000);
  pinMode(4, OUTPUT);
//        ^ reset-driven-by-pin: as an output it is low, and the board stays in reset
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "R1": { "kind": "resistor", "value": "220" } },
  "wires": [{ "path": ["D4", "R1", "RST"] }]
}
`,
    },
    {
      about: 'the wire that wakes a board from deep sleep',
      build: `
//- sketch.ino
void setup() { delay(10); ESP.deepSleep(60000000); }
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nodemcu-esp8266",
  "wires": [{ "from": "D0", "to": "RST" }]
}
`,
    },
    {
      about: 'a button on the line',
      build: `
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "uno-r3",
  "parts": { "restart": { "kind": "push-button" } },
  "wires": [{ "path": ["RST", "restart", "GND"] }]
}
`,
    },
  ],
});

/** True where the pin becomes an output before anything wrote it high. */
function startsLow(subject: Subject, pin: string): boolean {
  const uses = [...(viewOf(subject, pin)?.uses ?? [])].sort((a, b) => a.order - b.order);
  const mode = uses.findIndex((use) => use.modes?.includes('output'));
  const high = uses.findIndex(
    ({ action, value }) =>
      action === 'write' && value?.kind === 'known' && value.values.every((level) => level !== 0),
  );
  return mode >= 0 && (high < 0 || mode < high);
}
