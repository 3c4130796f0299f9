/** The sketch opens a port at another rate than the module on it talks at. */

import { defineRule } from './rule';
import { busEnds } from './support/bus-wiring';

interface Detail {
  readonly part: string;
  readonly baud: number;
  readonly opened: number;
  readonly call: string;
  readonly place?: { readonly file: string; readonly start: number; readonly end: number };
}

export default defineRule<Detail>({
  id: 'baud-mismatch',
  title: 'A serial port is opened at another rate than its part talks at.',
  why: 'Every character arrives as another one: the sketch waits for a word that never comes.',
  source: 'common practice; the rate is that of the part’s own papers',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const told = new Set<string>();
    for (const { part, bus, pin } of busEnds(subject)) {
      const baud = Number(part.parameters.baud ?? Number.NaN);
      if (bus !== 'uart' || !Number.isFinite(baud) || told.has(part.id)) continue;
      const begins = pin.uses.filter((use) => /\.begin$/.test(use.call) && use.value !== undefined);
      // A sketch that tries several rates in turn finds the right one by itself.
      const rates = begins.flatMap(({ value }) => (value?.kind === 'known' ? value.values : [Number.NaN]));
      const [opened] = rates;
      const [use] = begins;
      if (!use || opened === undefined || rates.some((rate) => rate !== opened) || opened === baud) continue;
      told.add(part.id);
      yield {
        identity: part.id,
        span: use.valueSpan ?? use.callSpan,
        related: [{ message: `${part.id} talks at ${baud}`, span: part.valueSpans.baud ?? part.span }],
        detail: {
          part: part.id,
          baud,
          opened,
          call: use.call,
          ...(use.valueSpan && { place: use.valueSpan }),
        },
      };
    }
  },
  message: ({ part, baud, opened, call }) =>
    `${call} opens the port of ${part} at ${opened} bits per second, and ${part} talks at ${baud}.`,
  fixes({ part, baud, opened, place }, subject) {
    const written = place && subject.texts[place.file]?.slice(place.start, place.end);
    // A constant may stand for the rate elsewhere too; only a plain number is rewritten.
    if (!place || Number(written) !== opened) return [];
    const edits = [{ ...place, text: `${baud}` }];
    return [{ title: `Open the port of ${part} at ${baud}`, trust: 'ask', edits }];
  },
  examples: [
    gpsAt('a receiver at 9600 on a port made in software', 'uno-r3', 'gps', '4800', '9600', true),
    gpsAt('the same on a port of the chip', 'mega-2560', 'Serial1', '115200', '9600', true),
    gpsAt('both at 9600', 'uno-r3', 'gps', '9600', '9600', false),
    gpsAt('a receiver whose rate nobody said', 'mega-2560', 'Serial1', '115200', '', false),
  ],
});

function gpsAt(about: string, board: string, port: string, rate: string, baud: string, wrong: boolean) {
  const soft = port === 'gps';
  const text = (written: string, mark = '') => `
//- sketch.ino
${soft ? '#include <SoftwareSerial.h>\nSoftwareSerial gps(8, 9);\n' : ''}void setup() {
  ${port}.begin(${written});${mark}
}
void loop() { if (${port}.available()) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "receiver": { "kind": "serial-device", "supply": "5"${baud === '' ? '' : `, "baud": ${baud}`} } },
  "wires": [
    { "from": "${soft ? 'D8' : 'D19'}", "to": "receiver.tx" },
    { "from": "${soft ? 'D9' : 'D18'}", "to": "receiver.rx" },
    { "from": "5V", "to": "receiver.+" },
    { "from": "GND", "to": "receiver.-" }
  ]
}
`;
  if (!wrong) return { about, build: text(rate) };
  const dent = ' '.repeat(port.length + 7);
  const mark = `\n//${dent}${'^'.repeat(rate.length)} baud-mismatch [ask]: at ${rate} bits per second, and receiver talks at ${baud}`;
  return { about, build: text(rate, mark), fixed: text(baud) };
}
