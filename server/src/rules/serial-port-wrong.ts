/** A serial part hangs on a port of the chip, and the sketch speaks to the USB socket. */

import { defineRule } from './rule';
import { wrongPorts } from './support/bus-wiring';
import { listWords, wiresRelated } from './support/views';

interface Detail {
  readonly part: string;
  readonly port: string;
  readonly pins: readonly string[];
}

export default defineRule<Detail>({
  id: 'serial-port-wrong',
  title: 'A serial part is wired to a port that the sketch never opens.',
  why: 'On boards whose chip talks USB itself, Serial is the USB socket and has no pins: the part hears nothing.',
  source: 'HardwareSerial.h, USBAPI.h and the variants of the boards’ cores',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const { part, port, use, pins } of wrongPorts(subject)) {
      const [place, ...related] = pins.flatMap((pin) => wiresRelated(pin.wires, pin.pin.id));
      yield {
        identity: part.id,
        span: place?.span ?? part.span,
        related: [...related, { message: 'the USB port is opened here', span: use.callSpan }],
        detail: { part: part.id, port, pins: pins.map((pin) => pin.pin.id) },
      };
    }
  },
  message: ({ part, port, pins }) =>
    `${part} is on ${listWords(pins)}, which is ${port} on this board, and the sketch opens Serial alone, the USB ` +
    `socket. Open ${port} and speak to that.`,
  examples: [
    gpsOn('a receiver on the pins of Serial1, and Serial opened', 'leonardo', 'D0', 'D1', 'Serial', true),
    gpsOn('the same on another chip that talks USB itself', 'zero', 'D0', 'D1', 'Serial', true),
    gpsOn('Serial1 opened', 'leonardo', 'D0', 'D1', 'Serial1', false),
    gpsOn('a board whose Serial is on these pins', 'uno-r3', 'D0', 'D1', 'Serial', false),
  ],
});

function gpsOn(about: string, board: string, rx: string, tx: string, port: string, wrong: boolean) {
  const mark = `\n//             ${'^'.repeat(rx.length)} serial-port-wrong: which is Serial1 on this board`;
  const supply = board === 'zero' ? '3V3' : '5V';
  return {
    about,
    build: `
//- sketch.ino
void setup() { ${port}.begin(9600); }
void loop() { if (${port}.available()) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "gps": { "kind": "serial-device", "supply": "${board === 'zero' ? '3.3' : '5'}" } },
  "wires": [
    { "from": "${rx}", "to": "gps.tx" },${wrong ? mark : ''}
    { "from": "${tx}", "to": "gps.rx" },
    { "from": "${supply}", "to": "gps.+" },
    { "from": "GND", "to": "gps.-" }
  ]
}
`,
  };
}
