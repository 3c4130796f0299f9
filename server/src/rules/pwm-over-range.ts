/** analogWrite is given more than its range. */

import { defineRule } from './rule';
import { callFacts } from './support/habits';
import { relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly value: number;
  readonly highest: number;
}

export default defineRule<Detail>({
  id: 'pwm-over-range',
  title: 'analogWrite is given a value above its range.',
  why: 'Depending on the core the pin is fully on from there, or begins again from dark: the upper part of the scale is lost.',
  source: 'wiring_analog.c of the boards’ cores; documentation of the ESP8266 Arduino core 3, analogWrite',
  severity: 'warning',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    // A range or resolution of the sketch's own is the sketch's business.
    if (subject.facts.uses.some(({ call }) => /^analogWrite(Range|Resolution)$/.test(call))) return;
    const highest = callFacts(subject.libraries, 'analogWrite')?.highest;
    if (highest === undefined) return;
    for (const view of subject.pins) {
      const use = view.uses.find(
        ({ call, value, certain }) =>
          call === 'analogWrite' &&
          value?.kind === 'known' &&
          (certain || value.values.length === 1) &&
          value.values.some((one) => one > highest),
      );
      if (use?.value?.kind !== 'known') continue;
      yield {
        identity: view.pin.id,
        span: use.valueSpan ?? use.callSpan,
        related: relatedOf(view, use),
        detail: { pin: view.pin.id, value: Math.max(...use.value.values), highest },
      };
    }
  },
  message: ({ pin, value, highest }) =>
    `analogWrite on ${pin} gets ${value}, and its range ends at ${highest} on this core: above it the pin is fully on, or begins from ` +
    `dark again. Scale the value to ${highest}.`,
  examples: [
    dim('full on as 1023', 'uno-r3', 'D5', '5', '1023', true),
    dim('one step too far', 'nodemcu-esp8266', 'D1', 'D1', '256', true),
    dim('the end of the range', 'uno-r3', 'D5', '5', '255', false),
    dim('a range of its own', 'nodemcu-esp8266', 'D1', 'D1', '1023', false, 'analogWriteRange(1023); '),
  ],
});

function dim(
  about: string,
  board: string,
  end: string,
  pin: string,
  value: string,
  wrong: boolean,
  before = '',
) {
  const mark = `\n//            ${' '.repeat(before.length)}${' '.repeat(pin.length + 16)}${'^'.repeat(value.length)} pwm-over-range: its range ends at 255`;
  return {
    about,
    build: `
//- sketch.ino
void setup() { ${before} analogWrite(${pin}, ${value}); }${wrong ? mark : ''}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "lamp": { "kind": "led", "colour": "red" }, "R1": { "kind": "resistor", "value": "330" } },
  "wires": [{ "path": ["${end}", "R1", "lamp", "GND"] }]
}
`,
  };
}
