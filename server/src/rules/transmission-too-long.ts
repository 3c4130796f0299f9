/** More bytes are put into one I2C transmission than the core's buffer holds. */

import { defineRule } from './rule';
import { callFacts, coreOf, habitsOf } from './support/habits';

interface Detail {
  readonly bytes: number;
  readonly most: number;
}

export default defineRule<Detail>({
  id: 'transmission-too-long',
  title: 'An I2C transmission has more bytes than the buffer holds.',
  why: 'The rest is dropped without a word: a page of memory is half written, a picture has a dark half.',
  source: 'Wire.h and twi.h of the boards’ cores (BUFFER_LENGTH)',
  severity: 'error',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    const core = coreOf(subject.build.board);
    for (const { name, span, bytes, function: own } of habitsOf(subject, 'transmission')) {
      const most = callFacts(subject.libraries, 'beginTransmission', name)?.bytes?.[core];
      if (most === undefined || bytes <= most) continue;
      yield { identity: `${own} ${bytes}`, span, detail: { bytes, most } };
    }
  },
  message: ({ bytes, most }) =>
    `${bytes} bytes are put into this transmission, and the buffer of this core holds ${most}: the last ${bytes - most} are dropped. Send them in ` +
    'several transmissions.',
  examples: [
    page('a page of 64 bytes and its address', 'uno-r3', 62, true),
    page('one byte too many', 'mega-2560', 31, true),
    page('as much as the buffer holds', 'uno-r3', 30, false),
    page('the page on a core with a larger buffer', 'esp32-devkitc', 62, false),
  ],
});

/** Two bytes of address, then the data. */
function page(about: string, board: string, bytes: number, wrong: boolean) {
  const mark = '\n//^^^^^^^^^^^^^^^^^^^^^^^^^^^^ transmission-too-long: bytes are put into this transmission';
  const esp = board.startsWith('esp');
  return {
    about,
    build: `
//- sketch.ino
#include <Wire.h>
byte page[64];
void setup() { Wire.begin(); }
void loop() {
  Wire.beginTransmission(0x50);${wrong ? mark : ''}
  Wire.write(0);
  Wire.write(0);
  for (int i = 0; i < ${bytes}; i++) {
    Wire.write(page[i]);
  }
  Wire.endTransmission();
}
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "memory": { "kind": "i2c-device", "supply": "${esp ? '3.3' : '5'}", "address": "0x50" } },
  "wires": [
    { "from": "${esp ? 'IO21' : board === 'uno-r3' ? 'A4' : 'D20'}", "to": "memory.sda" },
    { "from": "${esp ? 'IO22' : board === 'uno-r3' ? 'A5' : 'D21'}", "to": "memory.scl" },
    { "from": "${esp ? '3V3' : '5V'}", "to": "memory.+" },
    { "from": "GND", "to": "memory.-" }
  ]
}
`,
  };
}
