/** A pin that is dimmed is read as a level, which stops the dimming. */

import { defineRule } from './rule';
import { digitalCallsStopPwm } from './support/cores';
import { isMeant, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
}

export default defineRule<Detail>({
  id: 'pwm-read-digitally',
  title: 'digitalRead is called on a pin that analogWrite dims.',
  why: 'The core stops the PWM of the pin before it reads: the lamp jumps to full or dark and stays so.',
  source: 'wiring_digital.c of the board-support core for AVR 1.8.7 (turnOffPWM in digitalRead)',
  severity: 'warning',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    if (!digitalCallsStopPwm(subject.build.board)) return;
    for (const view of subject.pins) {
      if (view.pin.pwm === undefined) continue;
      const dims = view.uses.find((use) => use.call === 'analogWrite' && isMeant(use));
      const reads = view.uses.find((use) => use.call === 'digitalRead' && isMeant(use));
      // Full on and full off are plain levels to the core, and those may be read.
      if (!dims || !reads) continue;
      if (dims.value?.kind === 'known' && dims.value.values.every((one) => one === 0 || one === 255))
        continue;
      const { id: pin } = view.pin;
      yield {
        identity: pin,
        span: reads.span,
        related: [{ message: `${pin} is dimmed here`, span: dims.span }, ...relatedOf(view, reads)],
        detail: { pin },
      };
    }
  },
  message: ({ pin }) =>
    `digitalRead stops the PWM that analogWrite gives ${pin}. Keep what was written in a variable and ask that.`,
  examples: [
    dimmed('a dimmed lamp that is asked for its state', 'uno-r3', 9, '80', true),
    dimmed('the same on the large board', 'mega-2560', 44, '80', true),
    dimmed('only full on and full off are written', 'uno-r3', 9, '255', false),
    dimmed('a core that leaves the PWM alone', 'zero', 9, '80', false),
  ],
});

function dimmed(about: string, board: string, pin: number, duty: string, wrong: boolean) {
  const caret = '^'.repeat(`${pin}`.length);
  const value = board === 'zero' ? '330' : '470';
  return {
    about,
    build: `
//- sketch.ino
void setup() { pinMode(${pin}, OUTPUT); }
void loop() {
  analogWrite(${pin}, ${duty});
  if (digitalRead(${pin}) == HIGH) delay(1);${wrong ? `\n//                ${caret} pwm-read-digitally: digitalRead stops the PWM` : ''}
}
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "beacon": { "kind": "led", "colour": "green" }, "R1": { "kind": "resistor", "value": "${value}" } },
  "wires": [{ "path": ["D${pin}", "R1", "beacon", "GND"] }]
}
`,
  };
}
