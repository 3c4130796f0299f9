/** LOW is written to an input with pull-up: the pull-up goes, or the pin drives low. */

import { type LevelOnInput, levelOnInput } from '../base/level-on-input';
import type { PinUse } from '../base/pin-use';
import type { Span } from '../base/span';
import { defineRule } from './rule';
import type { PinView } from './subject';
import { findOpen } from './support/floating';
import { modeCalls } from './support/sketch-edits';
import { relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly call: string;
  readonly effect: LevelOnInput;
  readonly open: readonly string[];
  /** The level, where it stands there for this pin alone. */
  readonly level?: Span;
}

export default defineRule<Detail>({
  id: 'pull-up-lost',
  title: 'LOW is written to an input that needs its pull-up.',
  why: 'The level goes to the register of the pull-up: it is switched off again, or the pin is held low for good.',
  source: 'wiring_digital.c of the cores for AVR and SAMD; wiring_digital.cpp of arduino-pico',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const effect = levelOnInput(subject.build.board.platform);
    if (effect === undefined || effect === 'nothing') return;
    if (subject.facts.damaged || subject.unresolved.some((use) => use.action === 'mode')) return;
    for (const view of subject.pins) {
      const write = lastLow(view);
      if (!write || view.wires.length === 0) continue;
      const open = findOpen(subject, view);
      if (!open) continue;
      const { id: pin } = view.pin;
      const level = levelOf(write);
      yield {
        identity: pin,
        span: write.span,
        related: relatedOf(view, write),
        detail: {
          pin,
          call: write.call,
          effect,
          open: open.open,
          ...(level && { level }),
        },
      };
    }
  },
  message({ pin, call, effect, open }) {
    const state = open.length > 0 ? ` while ${open.join(' and ')} is open` : '';
    if (effect === 'turns-pull')
      return `${call} gives LOW to ${pin}, which turns its pull-up into a pull-down: nothing pulls it up${state}. Leave the call out.`;
    return effect === 'drives-low'
      ? `${call} gives LOW to ${pin}, which drives it low against its own pull-up: it reads LOW for ever. Leave the call out.`
      : `${call} gives LOW to ${pin}, which switches its pull-up off again: it floats${state}. Leave the call out.`;
  },
  fixes: ({ pin, level }) =>
    level
      ? [
          {
            title: `Write HIGH to ${pin}, which keeps the pull-up`,
            trust: 'ask',
            edits: [{ ...level, text: 'HIGH' }],
          },
        ]
      : [],
  examples: [
    pulled(
      'a level that is meant to put all pins to rest',
      'uno-r3',
      'D4',
      '4',
      'LOW',
      'switches its pull-up off again',
    ),
    pulled('the same on a chip that drives instead', 'pico', 'GP6', '6', 'LOW', 'it reads LOW for ever'),
    pulled('HIGH, which leaves the pull-up on', 'uno-r3', 'D4', '4', 'HIGH'),
    pulled('LOW where the output latch waits for an output', 'esp32-devkitc', 'IO4', '4', 'LOW'),
  ],
});

/** The level of a plain digitalWrite to one pin. */
function levelOf({ call, pins, valueSpan }: PinUse): Span | undefined {
  return call === 'digitalWrite' && pins.kind === 'known' && pins.values.length === 1 ? valueSpan : undefined;
}

/** A certain LOW behind the last mode, which is an input with pull-up. */
function lastLow(view: PinView): PinUse | undefined {
  const modes = modeCalls(view);
  if (modes.length === 0 || !modes.every((use) => use.modes?.length === 1 && use.modes[0] === 'input-pullup'))
    return undefined;
  if (view.modes.some((mode) => mode !== 'input-pullup')) return undefined;
  // A mode set again and again, or a level given now and then, may be a way to measure or to talk both ways.
  if (modes.some((use) => use.phase !== 'setup' || !use.certain)) return undefined;
  if (!view.uses.some((use) => use.action === 'read' || use.action === 'interrupt')) return undefined;
  const last = Math.max(...modes.map((use) => use.order));
  const writes = view.uses.filter((use) => use.action === 'write');
  const isLow = ({ value }: PinUse) => value?.kind === 'known' && value.values.every((one) => one === 0);
  if (!writes.every(isLow)) return undefined;
  return writes.find((use) => use.certain && (use.phase !== 'setup' || use.order > last));
}

function pulled(about: string, board: string, pin: string, written: string, level: string, fault?: string) {
  const text = (given: string, mark = '') => `
//- sketch.ino
void setup() {
  pinMode(${written}, INPUT_PULLUP);
  digitalWrite(${written}, ${given});${mark}
}
void loop() { if (digitalRead(${written}) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["${pin}", "call", "GND"] }]
}
`;
  if (fault === undefined) return { about, build: text(level) };
  const mark = `\n//             ^ pull-up-lost [ask]: ${fault}`;
  return { about, build: text(level, mark), fixed: text('HIGH') };
}
