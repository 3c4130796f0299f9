/** One of several devices on a bus is selected all the time. */

import type { PinAction } from '../base/pin-use';
import { defineRule } from './rule';
import type { PinView, Subject } from './subject';
import { busesUnclear } from './support/bus-wiring';
import { isSignal, listWords, relatedOf } from './support/views';

interface Detail {
  readonly part: string;
  readonly pin: string;
  readonly others: readonly string[];
}

export default defineRule<Detail>({
  id: 'chip-select-idle',
  title: 'A device on a shared bus stays selected for ever.',
  why: 'It answers whatever is said to the others: two outputs drive one line, and both give wrong data.',
  source: 'common practice: of the devices on a bus only one select line is low at a time',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    if (busesUnclear(subject)) return;
    for (const { part, view, sharers } of selects(subject)) {
      const others = sharers.filter((other) => other !== part);
      const use = view.uses.find((one) => one.action === 'mode' && one.modes?.includes('output'));
      if (others.length === 0 || !use || !staysLow(view)) continue;
      const { id: pin } = view.pin;
      yield { identity: part, span: use.span, related: relatedOf(view, use), detail: { part, pin, others } };
    }
  },
  message: ({ part, pin, others }) =>
    `${pin}, which selects ${part} by LOW, is made an output and never written HIGH, so ${part} talks into everything that ` +
    `is said to ${listWords(others)}. Write HIGH to ${pin} before the bus is used.`,
  fixes({ pin }, subject) {
    const view = subject.pins.find((one) => one.pin.id === pin);
    const [use, ...others] = view?.uses.filter((one) => one.action === 'mode') ?? [];
    const text = use && subject.texts[use.callSpan.file];
    if (!use || text === undefined || others.length > 0 || !use.certain) return [];
    const { file, end } = use.callSpan;
    // The statement ends with the call, or there is no place behind it.
    if (text[end] !== ';') return [];
    const edits = [{ file, start: end + 1, end: end + 1, text: ` digitalWrite(${use.pinText}, HIGH);` }];
    return [{ title: `Write HIGH to ${pin} as soon as it is an output`, trust: 'ask', edits }];
  },
  examples: [
    twoOn('the second device is never let go', 'uno-r3', true),
    twoOn('the same on the large board', 'mega-2560', true),
    twoOn('both are let go in setup', 'uno-r3', false),
    twoOn('both are let go, on the large board', 'mega-2560', false),
  ],
});

/** Select terminals on pins, with the parts that share the data line of the bus. */
function selects(subject: Subject) {
  const found: { part: string; view: PinView; sharers: readonly string[] }[] = [];
  const withRole = (role: string, part: string, terminal: string) =>
    subject.build.parts
      .find((one) => one.id === part)
      ?.terminals.some((one) => one.id === terminal && one.roles?.includes(role)) === true;
  for (const view of subject.pins) {
    if (!isSignal(view) || view.wires.length === 0) continue;
    for (const { part, terminal } of view.net.terminals) {
      if (!withRole('spi.ss', part, terminal)) continue;
      const data = subject.build.nets.find((net) =>
        net.terminals.some((one) => one.part === part && withRole('spi.miso', part, one.terminal)),
      );
      const sharers = (data?.terminals ?? [])
        .filter((one) => withRole('spi.miso', one.part, one.terminal))
        .map((one) => one.part);
      found.push({ part, view, sharers: [...new Set(sharers)] });
    }
  }
  return found;
}

const plain: ReadonlySet<PinAction> = new Set(['mode', 'write']);

/** Only plain calls touch the pin, and none of them can make it high. */
function staysLow({ uses }: PinView): boolean {
  return uses.every(
    ({ action, value }) =>
      plain.has(action) &&
      (action !== 'write' || (value?.kind === 'known' && value.values.every((one) => one === 0))),
  );
}

function twoOn(about: string, board: string, wrong: boolean) {
  const [mosi, miso, sck] = board === 'mega-2560' ? ['D51', 'D50', 'D52'] : ['D11', 'D12', 'D13'];
  const text = (high: string, mark = '') => `
//- sketch.ino
#include <SPI.h>
void setup() {
  pinMode(8, OUTPUT); digitalWrite(8, HIGH);
  pinMode(9, OUTPUT);${high}${mark}
  SPI.begin();
}
void loop() {
  digitalWrite(8, LOW);
  SPI.transfer(1);
  digitalWrite(8, HIGH);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": {
    "store": { "kind": "spi-device", "supply": "5" },
    "meter": { "kind": "spi-device", "supply": "5" }
  },
  "wires": [
    { "from": "D8", "to": "store.select" },
    { "from": "D9", "to": "meter.select" },
    { "from": "${mosi}", "to": "store.mosi" }, { "from": "store.mosi", "to": "meter.mosi" },
    { "from": "${miso}", "to": "store.miso" }, { "from": "store.miso", "to": "meter.miso" },
    { "from": "${sck}", "to": "store.sck" }, { "from": "store.sck", "to": "meter.sck" },
    { "from": "5V", "to": "store.+" }, { "from": "store.+", "to": "meter.+" },
    { "from": "GND", "to": "store.-" }, { "from": "store.-", "to": "meter.-" }
  ]
}
`;
  const high = ' digitalWrite(9, HIGH);';
  if (!wrong) return { about, build: text(high) };
  const mark =
    '\n//        ^ chip-select-idle [ask]: D9, which selects meter by LOW, is made an output and never written HIGH';
  return { about, build: text('', mark), fixed: text(high) };
}
