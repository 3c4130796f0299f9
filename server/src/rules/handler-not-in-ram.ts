/** A handler lies in flash, which the chip cannot read while it writes to it or its cache is off. */

import type { HandlerHabit } from '../base/habit';
import { defineRule } from './rule';
import { coreOf, habitsOf } from './support/habits';

interface Detail {
  readonly handler: HandlerHabit;
  readonly always: boolean;
}

export default defineRule<Detail>({
  id: 'handler-not-in-ram',
  title: 'An interrupt handler lies in flash instead of RAM.',
  why: 'When the interrupt comes while the flash is busy, the chip cannot read its code: the sketch crashes and restarts.',
  source:
    'ESP8266 Arduino core, documentation on interrupts; ESP-IDF programming guide, IRAM-safe interrupt handlers',
  severity: 'warning',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    const core = coreOf(subject.build.board);
    if (core !== 'esp8266' && core !== 'esp32') return;
    for (const handler of habitsOf(subject, 'handler')) {
      if (handler.inMemory || handler.attached.length === 0) continue;
      yield {
        identity: handler.name,
        span: handler.span,
        // The core for ESP8266 looks, and stops the sketch at once.
        ...(core === 'esp8266' && { severity: 'error' as const }),
        related: handler.attached.map((span) => ({ message: 'it becomes a handler here', span })),
        detail: { handler, always: core === 'esp8266' },
      };
    }
  },
  message: ({ handler: { name }, always }) =>
    `The handler ${name || 'here'} lies in flash: ` +
    (always
      ? 'the core stops the sketch with "ISR not in IRAM" when it is attached. '
      : 'the chip crashes when the interrupt comes while the flash is being written. ') +
    'Put IRAM_ATTR in front of its name.',
  fixes: ({ handler: { span, attributeAt: at } }) =>
    at === undefined
      ? []
      : [
          {
            title: 'Put IRAM_ATTR in front of the name',
            trust: 'ask',
            edits: [{ file: span.file, start: at, end: at, text: 'IRAM_ATTR ' }],
          },
        ],
  examples: [
    wheel('a handler without the attribute', 'nodemcu-esp8266', 'D1', 'void onTurn()', true),
    wheel('the same on an ESP32', 'esp32-devkitc', 'IO4', 'void onTurn()', true),
    wheel('with the attribute', 'nodemcu-esp8266', 'D1', 'void IRAM_ATTR onTurn()', false),
    wheel('with the attribute in front', 'esp32-devkitc', 'IO4', 'IRAM_ATTR void onTurn()', false),
    wheel('a chip that runs from flash always', 'uno-r3', 'D2', 'void onTurn()', false),
  ],
});

function wheel(about: string, board: string, end: string, head: string, wrong: boolean) {
  const text = (own: string, mark = '') => `
//- sketch.ino
const int wheel = ${/^D1$/.test(end) ? 'D1' : end.replace(/\D+/, '')};
volatile bool turned = false;
${own} { turned = true; }${mark}
void setup() {
  pinMode(wheel, INPUT_PULLUP);
  attachInterrupt(digitalPinToInterrupt(wheel), onTurn, FALLING);
}
void loop() { if (turned) turned = false; }
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "wheel": { "kind": "reed-switch" } },
  "wires": [{ "path": ["${end}", "wheel", "GND"] }]
}
`;
  if (!wrong) return { about, build: text(head) };
  const mark = '\n//   ^^^^^^ handler-not-in-ram [ask]: The handler onTurn lies in flash';
  return { about, build: text(head, mark), fixed: text('void IRAM_ATTR onTurn()') };
}
