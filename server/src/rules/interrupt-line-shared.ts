/** Two handlers on pins that share one interrupt line of the chip. */

import { defineRule } from './rule';
import type { PinView } from './subject';
import { freePins, moveFixes } from './support/rewire';
import { isMeant, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly other: string;
  readonly line: string;
  /** Free pins with a line that nothing waits on. */
  readonly free: readonly string[];
}

/** The line of a pin. */
function lineOf({ pin }: PinView): string | undefined {
  return pin.roles.find((role) => lines.test(role));
}

/** Lines of the chip that several pins can be joined to, among the roles of the board files. */
const lines = /^(extint|exti|irq)\d+$/;

export default defineRule<Detail>({
  id: 'interrupt-line-shared',
  title: 'Two pins with a handler share one interrupt line of the chip.',
  why: 'The second call takes the line from the first pin, whose handler never runs again.',
  source: 'WInterrupts.c of the SAMD core, the variants of the boards’ cores; the chips’ tables of pins',
  severity: 'error',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    const owners = new Map<string, PinView>();
    for (const view of subject.pins) {
      const line = lineOf(view);
      const use = view.uses.find((one) => one.action === 'interrupt' && isMeant(one));
      if (line === undefined || !use) continue;
      // A line that is let go can be given to the other pin.
      if (view.uses.some((one) => one.action === 'interrupt-off')) continue;
      const other = owners.get(line);
      const first = other?.uses.find((one) => one.action === 'interrupt');
      if (!other || !first) {
        owners.set(line, view);
        continue;
      }
      const { id: pin } = view.pin;
      const free = freePins(subject, (one) => {
        const own = lineOf(one);
        return one.pin.interrupt !== undefined && (own === undefined || !owners.has(own));
      }).map((one) => one.pin.id);
      yield {
        identity: pin,
        span: use.span,
        related: [
          { message: `${other.pin.id} takes the line here`, span: first.span },
          ...relatedOf(view, use),
        ],
        detail: { pin, other: other.pin.id, line, free },
      };
    }
  },
  message: ({ pin, other, line }) =>
    `${pin} and ${other} share the line ${line.toUpperCase()} of the chip, so only one of the two handlers can run. Move one of ` +
    'them to a pin with another line.',
  fixes: ({ pin, free }, subject) => moveFixes(subject, pin, free),
  examples: [
    wheels('two wheels on D3 and A2', 'zero', ['D3', '3'], ['A2', 'A2'], 'D3 share the line EXTINT9'),
    wheels('two wheels on D0 and A1', 'uno-r4-minima', ['D0', '0'], ['A1', 'A1'], 'D0 share the line IRQ6'),
    wheels('pins with lines of their own', 'zero', ['D3', '3'], ['A1', 'A1']),
    wheels('the two lines of the small board', 'uno-r3', ['D2', '2'], ['D3', '3']),
  ],
});

type Place = readonly [string, string];

function wheels(about: string, board: string, [pin, first]: Place, [other, second]: Place, fault?: string) {
  const mark = `\n//                                      ${'^'.repeat(second.length)} interrupt-line-shared [ask] [ask]: ${other} and ${fault}`;
  return {
    about,
    build: `
//- sketch.ino
volatile bool turned = false, passed = false;
void onTurn() { turned = true; }
void onPass() { passed = true; }
void setup() {
  pinMode(${first}, INPUT_PULLUP);
  pinMode(${second}, INPUT_PULLUP);
  attachInterrupt(digitalPinToInterrupt(${first}), onTurn, FALLING);
  attachInterrupt(digitalPinToInterrupt(${second}), onPass, FALLING);${fault === undefined ? '' : mark}
}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "wheel": { "kind": "reed-switch" }, "gate": { "kind": "reed-switch" } },
  "wires": [{ "path": ["${pin}", "wheel", "GND"] }, { "path": ["${other}", "gate", "wheel.2"] }]
}
`,
  };
}
