/** A handler waits, measures a pulse or prints: other interrupts, and the clock, stand still meanwhile. */

import type { PinUse } from '../base/pin-use';
import { defineRule } from './rule';
import { handlerOf } from './support/habits';
import { pathRelated } from './support/views';

interface Detail {
  readonly handler: string;
  readonly call: string;
  readonly hangs: boolean;
}

export default defineRule<Detail>({
  id: 'interrupt-waits',
  title: 'An interrupt handler waits or prints.',
  why: 'While a handler runs, other interrupts wait: the clock loses ticks, bytes are lost, and a delay may never end.',
  source: 'wiring.c and HardwareSerial.cpp of the core for AVR; common practice on all chips',
  severity: 'error',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    const told = new Set<string>();
    for (const use of subject.facts.uses) {
      const kind = kindOf(use);
      if (kind === undefined) continue;
      const handler = handlerOf(subject, use);
      if (!handler || told.has(handler.name)) continue;
      told.add(handler.name);
      yield {
        identity: handler.name,
        span: use.callSpan,
        severity: kind === 'prints' ? 'warning' : 'error',
        related: [
          ...handler.attached.map((span) => ({ message: `${handler.name} becomes a handler here`, span })),
          ...pathRelated(use),
        ],
        detail: { handler: handler.name || 'it', call: use.call, hangs: kind === 'waits' },
      };
    }
  },
  message: ({ handler, call, hangs }) =>
    hangs
      ? `${call} waits for a clock that stands still while the handler ${handler} runs: it loses ticks or never ends. Set a ` +
        'variable here and wait in loop().'
      : `${call} in the handler ${handler} waits for room in a buffer that only another interrupt empties. Set a variable ` +
        'here and print in loop().',
  examples: [
    tick('a delay in a handler of the chip', 'uno-r3', 'delay(5);', 'error'),
    tick('a line printed there', 'mega-2560', 'Serial.println(1);', 'warning'),
    tick('a flag that loop looks at', 'uno-r3', 'due = true;'),
    tick('some microseconds for a short pulse', 'nano-v3', 'delayMicroseconds(3);'),
  ],
});

function kindOf({ action, call }: PinUse): 'waits' | 'prints' | undefined {
  // Some microseconds are counted by the processor itself and do no harm.
  if (action === 'wait') return /micros|_us$|^yield$/i.test(call) ? undefined : 'waits';
  if (/^pulseIn(Long)?$/.test(call)) return 'waits';
  return /^Serial\d?\.(print|println|printf|write|flush)$/.test(call) ? 'prints' : undefined;
}

function tick(about: string, board: string, line: string, wrong?: 'error' | 'warning') {
  const call = line.slice(0, line.indexOf(';'));
  const mark = `\n//                       ${'^'.repeat(call.length)} interrupt-waits: the handler ISR(TIMER1_COMPA_vect)`;
  return {
    about,
    build: `
//- sketch.ino board:${board}
volatile bool due = false;
ISR(TIMER1_COMPA_vect) { ${line} }${wrong ? mark : ''}
void setup() { Serial.begin(9600); }
void loop() { if (due) due = false; }
`,
  };
}
