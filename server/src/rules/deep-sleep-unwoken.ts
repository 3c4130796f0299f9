/** The chip is sent to sleep for a time, and nothing joins its alarm to its reset. */

import { insertWire } from '../hardware';
import { defineRule } from './rule';
import type { Subject } from './subject';
import { reach } from './support/conduction';
import { draftManifest } from './support/draft';
import { pathRelated } from './support/views';

interface Detail {
  readonly wake: string;
  readonly reset: string;
}

export default defineRule<Detail>({
  id: 'deep-sleep-unwoken',
  title: 'The chip sleeps for a time, and its wake-up pin is not joined to its reset.',
  why: 'The timer pulls that pin low when the time is over, and only a reset wakes the chip: it sleeps for ever.',
  source: 'ESP8266 Arduino core, documentation of ESP.deepSleep: GPIO16 needs to be tied to RST',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const wake = subject.pins.find(({ pin }) => pin.roles.includes('wake'));
    const reset = subject.pins.find(({ pin }) => pin.type === 'reset');
    if (!wake || !reset) return;
    const use = subject.facts.uses.find(
      ({ call, value }) =>
        // Without a time it is meant to sleep until somebody presses the reset button.
        call === 'ESP.deepSleep' && value?.kind === 'known' && value.values.every((one) => one > 0),
    );
    if (!use || isDoubtful(subject, [wake.pin.id, reset.pin.id])) return;
    const joined = reach(subject, wake.net.id, { switches: {}, resistances: true, diodes: 'up' });
    if (joined.has(reset.net.id)) return;
    yield {
      identity: wake.pin.id,
      span: use.span,
      related: pathRelated(use),
      detail: { wake: wake.pin.id, reset: reset.pin.id },
    };
  },
  message: ({ wake, reset }) =>
    `The chip sleeps here and never wakes: nothing joins ${wake}, which goes low when the time is over, to ${reset}. Solder a ` +
    'wire between them, and take it off while a sketch is loaded.',
  fixes: ({ wake, reset }, subject) => [
    {
      title: `Declare a wire from ${wake} to ${reset}`,
      trust: 'ask',
      edits: draftManifest(subject, [(text, file) => insertWire(text, { from: wake, to: reset }, file)]),
    },
  ],
  examples: [
    sleeping('ten seconds of sleep, and no wire', '10000000', '', true),
    sleeping('a time that is a constant', 'NAP', '', true),
    sleeping('the wire is there', '10000000', '{ "from": "D0", "to": "RST" }', false),
    sleeping('sleep until somebody presses reset', '0', '', false),
  ],
});

function isDoubtful(subject: Subject, pins: readonly string[]): boolean {
  return pins.some((pin) => subject.doubtful.includes(pin));
}

function sleeping(about: string, time: string, wire: string, wrong: boolean) {
  const named = time === 'NAP' ? 'const unsigned long NAP = 60UL * 1000UL * 1000UL;\n' : '';
  const text = (line: string, mark = '') => `
//- sketch.ino
${named}void setup() {
  ESP.deepSleep(${time});${mark}
}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nodemcu-esp8266",
  "wires": [${line}]
}
`;
  if (!wrong) return { about, build: text(wire) };
  const mark = '\n//    ^^^^^^^^^ deep-sleep-unwoken [ask]: nothing joins D0';
  return { about, build: text('', mark), fixed: text('\n    { "from": "D0", "to": "RST" }\n  ') };
}
