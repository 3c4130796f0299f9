/** The lamp of the board takes a train of bits, and the sketch gives it a level. */

import { defineRule } from './rule';
import { renumber } from './support/rewire';
import { isMeant, pathRelated, viewOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly title: string;
  readonly call: string;
}

export default defineRule<Detail>({
  id: 'lamp-needs-data',
  title: 'An addressable lamp of the board is given a plain level.',
  why: 'The lamp listens for bits of a microsecond: with a level it stays dark, or keeps the colour it had.',
  source: 'user guides of the boards; the core’s digitalWrite serves such a lamp by its own name alone',
  severity: 'warning',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    for (const { title, lamp } of subject.build.board.onBoard) {
      const view = lamp?.litBy === 'data' ? viewOf(subject, lamp.pin) : undefined;
      // With a part of one's own on the pin, the level may be meant for that.
      if (!view || view.wires.length > 0) continue;
      const { id: pin, names } = view.pin;
      // By the number that the core's own name for the lamp has, it sends the bits itself.
      const served = subject.build.board.platform.names.RGB_BUILTIN;
      const use = view.uses.find(
        (one) =>
          (one.action === 'write' || one.action === 'pwm') &&
          isMeant(one) &&
          one.pins.kind === 'known' &&
          one.pins.values.some((number) => number !== served && names.includes(`GPIO${number}`)),
      );
      if (!use || view.uses.some((one) => one.action === 'device')) continue;
      yield {
        identity: pin,
        span: use.span,
        related: pathRelated(use),
        detail: { pin, title, call: use.call },
      };
    }
  },
  message: ({ pin, title, call }) =>
    `${call} gives ${pin} a level, and the ${title} takes data. Write to LED_BUILTIN, which the core translates, or use ` +
    'a library for addressable lamps.',
  fixes({ pin }, subject) {
    const view = viewOf(subject, pin);
    const { names } = subject.build.board.platform;
    const edits =
      view && names.LED_BUILTIN === names.RGB_BUILTIN ? renumber(subject, view, 'LED_BUILTIN') : undefined;
    return edits ? [{ title: 'Name the lamp by LED_BUILTIN', trust: 'ask', edits }] : [];
  },
  examples: [
    blink('the lamp by the number of its pin', 'esp32-s3-devkitc', '48', true),
    blink('the same by the name of the pin', 'esp32-s3-devkitc', 'PIN_RGB_LED', true),
    blink('the lamp by the core’s name for it', 'esp32-s3-devkitc', 'LED_BUILTIN', false),
    blink('the lamp of a sister board by the number of its pin', 'esp32-c3-devkitm', '8', true),
    blink('the same by the core’s name for it', 'esp32-c3-devkitm', 'RGB_BUILTIN', false),
    blink('a board with a plain lamp', 'uno-r3', '13', false),
  ],
});

function blink(about: string, board: string, written: string, wrong: boolean) {
  const mark = `\n//             ${'^'.repeat(written.length)} lamp-needs-data [ask]: and the`;
  return {
    about,
    build: `
//- sketch.ino board:${board}
void setup() { pinMode(${written}, OUTPUT); }
void loop() {
  digitalWrite(${written}, HIGH);${wrong ? mark : ''}
  delay(500);
  digitalWrite(${written}, LOW);
  delay(500);
}
`,
  };
}
