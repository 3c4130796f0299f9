/** A voltage is read by a converter that the radio takes away. */

import { defineRule } from './rule';
import { freePins, moveFixes } from './support/rewire';
import { isMeant, listWords, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly unit?: number;
  readonly free: readonly string[];
}

/** Objects of the library data that start the radio when they are begun. */
const radio = /^WiFi\.(begin|softAP)$/;

export default defineRule<Detail>({
  id: 'adc-with-radio',
  title: 'analogRead is called on a pin whose converter the radio uses.',
  why: 'While the radio is on, the reading fails or stays at full scale; on the desk, without the radio, it works.',
  source: 'ESP-IDF programming guide, analog to digital converter: ADC2 is used by the Wi-Fi driver',
  severity: 'error',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    const on = subject.facts.uses.find((use) => radio.test(use.call));
    if (!on) return;
    for (const view of subject.pins) {
      if (view.pin.adcBlockedBy !== 'radio') continue;
      const use = view.uses.find((one) => one.action === 'analog-read' && isMeant(one));
      if (!use) continue;
      const free = freePins(subject, ({ pin }) => pin.adc !== undefined && pin.adcBlockedBy === undefined);
      const { id: pin, adcUnit } = view.pin;
      yield {
        identity: pin,
        span: use.span,
        related: [{ message: 'the radio goes on here', span: on.span }, ...relatedOf(view, use)],
        detail: {
          pin,
          ...(adcUnit !== undefined && { unit: adcUnit }),
          free: free.slice(0, 4).map((one) => one.pin.id),
        },
      };
    }
  },
  message: ({ pin, unit, free }) =>
    `${pin} is read by ${unit === undefined ? 'a converter' : `converter ${unit}`}, which the radio takes while it is on: ` +
    `the reading fails. ${free.length > 0 ? `Free inputs of the other one: ${listWords(free)}.` : 'No other input is free.'}`,
  fixes: ({ pin, free }, subject) => moveFixes(subject, pin, free),
  examples: [
    knobOn('a knob on the second converter, and the radio on', 'esp32-devkitc', 'IO25', '25', true, [
      'IO32',
      '32',
    ]),
    knobOn('the same on a small board', 'esp32-c3-devkitm', 'IO5', '5', true, ['IO0', '0']),
    knobOn('a knob on the first converter', 'esp32-devkitc', 'IO33', '33', true),
    knobOn('the second converter without the radio', 'esp32-devkitc', 'IO25', '25', false),
  ],
});

function knobOn(
  about: string,
  board: string,
  pin: string,
  number: string,
  on: boolean,
  to?: readonly [string, string],
) {
  const text = (end: string, written: string, mark = '') => `
//- sketch.ino
${on ? '#include <WiFi.h>\n' : ''}const int tide = ${written};
void setup() { ${on ? 'WiFi.begin("quay", "secret");' : ''} }
void loop() { int level = analogRead(tide); }${mark}
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "tide": { "kind": "potentiometer", "value": "10k" } },
  "wires": [
    { "from": "3V3", "to": "tide.1" },
    { "from": "${end}", "to": "tide.wiper" },
    { "from": "tide.2", "to": "GND" }
  ]
}
`;
  if (!to) return { about, build: text(pin, number) };
  const mark = `\n//                                   ^^^^ adc-with-radio [ask] [ask]: ${pin} is read by converter 2`;
  return { about, build: text(pin, number, mark), fixed: text(...to) };
}
