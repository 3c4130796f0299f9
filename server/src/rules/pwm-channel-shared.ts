/** Two dimmed pins come from one channel of a timer: the last call sets both. */

import { defineRule } from './rule';
import type { PinView } from './subject';
import { freePins, moveFixes } from './support/rewire';
import { isMeant, listWords, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly other: string;
  readonly channel: string;
  readonly free: readonly string[];
}

export default defineRule<Detail>({
  id: 'pwm-channel-shared',
  title: 'Two pins are dimmed by the same channel of a timer.',
  why: 'There is one duty for both: whichever is written last sets the other as well.',
  source: 'RP2040 datasheet, PWM: channels and pins repeat after 16; the boards’ pin tables',
  severity: 'error',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    const owners = new Map<string, PinView>();
    for (const view of subject.pins) {
      const channel = channelOf(view);
      const use = view.uses.find((one) => one.call === 'analogWrite' && isMeant(one));
      if (channel === undefined || !use) continue;
      const other = owners.get(channel);
      if (!other) {
        owners.set(channel, view);
        continue;
      }
      const { id: pin } = view.pin;
      const isFree = (one: PinView) => {
        const own = channelOf(one);
        return own !== undefined && !subject.pins.some((at) => at.uses.length > 0 && channelOf(at) === own);
      };
      const first = other.uses.find((one) => one.call === 'analogWrite');
      yield {
        identity: pin,
        span: use.span,
        related: [
          ...(first ? [{ message: `${other.pin.id} is dimmed here`, span: first.span }] : []),
          ...relatedOf(view, use),
        ],
        detail: {
          pin,
          other: other.pin.id,
          channel,
          free: freePins(subject, isFree)
            .slice(0, 4)
            .map((one) => one.pin.id),
        },
      };
    }
  },
  message: ({ pin, other, channel, free }) =>
    `${pin} and ${other} are both ${channel}, so one duty serves both. ` +
    (free.length > 0
      ? `Free pins with a channel of their own: ${listWords(free)}.`
      : 'No other channel is free.'),
  fixes: ({ pin, free }, subject) => moveFixes(subject, pin, free),
  examples: [
    lamps('two lamps 16 pins apart', 'pico', 'GP2', 2, 'GP18', 18, 'GP18 and GP2 are both slice1.a'),
    lamps(
      'two outputs of one timer channel',
      'uno-r4-minima',
      'D2',
      2,
      'D11',
      11,
      'D11 and D2 are both gpt1.a',
    ),
    lamps('two channels of one slice', 'pico', 'GP2', 2, 'GP19', 19),
    lamps('pins of different slices', 'pico', 'GP2', 2, 'GP16', 16),
  ],
});

/** The channel behind a pin's PWM, where its timer has several. */
function channelOf({ pin }: PinView): string | undefined {
  return pin.pwm === undefined ? undefined : pin.roles.find((role) => role.startsWith(`${pin.pwm}.`));
}

function lamps(
  about: string,
  board: string,
  pin: string,
  first: number,
  other: string,
  second: number,
  fault?: string,
) {
  const caret = '^'.repeat(`${second}`.length);
  const mark = fault === undefined ? '' : `\n//            ${caret} pwm-channel-shared [ask] [ask]: ${fault}`;
  const value = '1k';
  return {
    about,
    build: `
//- sketch.ino
void setup() { pinMode(${first}, OUTPUT); pinMode(${second}, OUTPUT); }
void loop() {
  analogWrite(${first}, 80);
  analogWrite(${second}, 200);${mark}
}
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": {
    "port": { "kind": "led", "colour": "red" },
    "starboard": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "${value}" },
    "R2": { "kind": "resistor", "value": "${value}" }
  },
  "wires": [
    { "path": ["${pin}", "R1", "port", "GND"] },
    { "path": ["${other}", "R2", "starboard", "port.cathode"] }
  ]
}
`,
  };
}
