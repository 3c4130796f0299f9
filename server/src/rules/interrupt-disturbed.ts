/** An interrupt waits on a pin that the converter of the chip pulls low now and then. */

import { defineRule } from './rule';
import { isMeant, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly by: string;
}

/** Objects of the library data that start the radio when they are begun. */
const radio = /^WiFi\.(begin|softAP)$/;

export default defineRule<Detail>({
  id: 'interrupt-disturbed',
  title: 'An interrupt waits on a pin that the chip itself pulls low while it measures.',
  why: 'When the converter or the radio goes on, the pin is low for some 80 ns: the handler runs without a cause.',
  source: 'ESP-IDF programming guide, GPIO: interrupts of GPIO36 and GPIO39 with the ADC or the radio in use',
  severity: 'warning',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    const cause = subject.facts.uses.find((use) => use.action === 'analog-read' || radio.test(use.call));
    if (!cause) return;
    for (const view of subject.pins) {
      if (!view.pin.roles.includes('adc.disturbs-interrupt')) continue;
      const use = view.uses.find((one) => one.action === 'interrupt' && isMeant(one));
      if (!use) continue;
      const { id: pin } = view.pin;
      yield {
        identity: pin,
        span: use.span,
        related: [{ message: `${cause.call} is called here`, span: cause.span }, ...relatedOf(view, use)],
        detail: { pin, by: cause.call },
      };
    }
  },
  message: ({ pin, by }) =>
    `${pin} is pulled low for a moment whenever the converter or the radio goes on, which ${by} makes it do: the handler runs ` +
    'without a cause. Wait on another pin.',
  examples: [
    wheelOn('a wheel on IO36 beside a knob', 'IO36', 36, true, true),
    wheelOn('the same on IO39', 'IO39', 39, true, true),
    wheelOn('a wheel on IO34 beside a knob', 'IO34', 34, true, false),
    wheelOn('a wheel on IO36 where nothing measures', 'IO36', 36, false, false),
  ],
});

function wheelOn(about: string, pin: string, number: number, measures: boolean, wrong: boolean) {
  const knob = measures
    ? `,
    { "from": "R1.1", "to": "tide.1" },
    { "from": "IO32", "to": "tide.wiper" },
    { "from": "tide.2", "to": "wheel.2" }`
    : '';
  const mark = `\n//                                      ^^ interrupt-disturbed: ${pin} is pulled low for a moment`;
  return {
    about,
    build: `
//- sketch.ino
volatile bool turned = false;
void IRAM_ATTR onTurn() { turned = true; }
void setup() {
  pinMode(${number}, INPUT);
  attachInterrupt(digitalPinToInterrupt(${number}), onTurn, FALLING);${wrong ? mark : ''}
}
void loop() {${measures ? ' int level = analogRead(32); ' : ''}}
//- hardware.jsonc
{
  "format": 1,
  "board": "esp32-devkitc",
  "parts": {
    "wheel": { "kind": "reed-switch" },
    "R1": { "kind": "resistor", "value": "10k" }${measures ? ',\n    "tide": { "kind": "potentiometer", "value": "10k" }' : ''}
  },
  "wires": [
    { "path": ["${pin}", "wheel", "GND"] },
    { "path": ["3V3", "R1", "wheel.1"] }${knob}
  ]
}
`,
  };
}
