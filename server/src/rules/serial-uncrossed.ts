/** Both ends of a serial wire send, or both listen. */

import { defineRule } from './rule';
import type { Subject } from './subject';
import { busEnds, serialDirection } from './support/bus-wiring';
import { draftManifest } from './support/draft';
import { setEnd } from './support/manifest-edits';
import { listWords, wiresRelated } from './support/views';

interface Detail {
  readonly part: string;
  readonly ends: readonly { readonly terminal: string; readonly pin: string; readonly sends: boolean }[];
}

export default defineRule<Detail>({
  id: 'serial-uncrossed',
  title: 'A serial line joins two outputs or two inputs.',
  why: 'Nothing arrives, and where both ends send, two outputs drive against each other.',
  source: 'common practice: TX of one side goes to RX of the other',
  severity: 'error',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    const wrong = busEnds(subject).filter(({ bus, line, pin }) => {
      const direction = bus === 'uart' ? serialDirection(pin) : undefined;
      return (line === 'tx' && direction === 'sends') || (line === 'rx' && direction === 'receives');
    });
    for (const part of new Set(wrong.map((end) => end.part))) {
      const own = wrong.filter((end) => end.part === part);
      const [place, ...related] = own.flatMap(({ pin }) => wiresRelated(pin.wires, pin.pin.id));
      const opened = own.flatMap(({ pin }) =>
        pin.uses
          .filter((use) => use.modes !== undefined)
          .slice(0, 1)
          .map((use) => ({ message: `${use.call} takes ${pin.pin.id} here`, span: use.span })),
      );
      yield {
        identity: part.id,
        span: place?.span ?? part.span,
        related: [...related, ...opened],
        detail: {
          part: part.id,
          ends: own.map(({ terminal, line, pin }) => ({ terminal, pin: pin.pin.id, sends: line === 'tx' })),
        },
      };
    }
  },
  message: ({ part, ends }) => {
    const words = ends.map(
      ({ terminal, pin, sends }) => `${part}.${terminal} and ${pin} both ${sends ? 'send' : 'listen'}`,
    );
    return `${listWords(words)}: cross the lines, so that what sends goes to what listens.`;
  },
  fixes({ part, ends }, subject) {
    const [one, other] = ends;
    if (!one || !other || ends.length !== 2) return [];
    const steps = [...moves(subject, one.pin, other.pin), ...moves(subject, other.pin, one.pin)];
    if (steps.length !== 2) return [];
    const title = `Cross the lines of ${part}: ${one.terminal} to ${other.pin}, ${other.terminal} to ${one.pin}`;
    return [{ title, trust: 'ask', edits: draftManifest(subject, steps) }];
  },
  examples: [
    radioOn('a radio on the second port, TX to TX', 'mega-2560', 'Serial1.begin(9600);', 'D18', 'D19', true),
    radioOn('a port made in software, its lines swapped', 'uno-r3', 'radio.begin(9600);', 'D9', 'D8', true),
    radioOn('a port made in software, its lines crossed', 'uno-r3', 'radio.begin(9600);', 'D8', 'D9', false),
    radioOn('the second port, crossed', 'mega-2560', 'Serial1.begin(9600);', 'D19', 'D18', false),
  ],
});

/** Ends every wire of a pin on another. */
function moves(subject: Subject, from: string, to: string) {
  return subject.build.wires.flatMap((wire) =>
    ([0, 1] as const).flatMap((index) => {
      const end = wire.ends[index];
      return end.kind === 'pin' && end.pin === from ? [setEnd(wire, index, to)] : [];
    }),
  );
}

function radioOn(about: string, board: string, begin: string, tx: string, rx: string, wrong: boolean) {
  const soft = begin.startsWith('radio') ? '#include <SoftwareSerial.h>\nSoftwareSerial radio(8, 9);\n' : '';
  const text = (sends: string, listens: string, mark = '') => `
//- sketch.ino
${soft}void setup() { ${begin} }
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "link": { "kind": "serial-device", "supply": "5" } },
  "wires": [
    { "from": "${sends}", "to": "link.tx" },${mark}
    { "from": "${listens}", "to": "link.rx" },
    { "from": "5V", "to": "link.+" },
    { "from": "GND", "to": "link.-" }
  ]
}
`;
  if (!wrong) return { about, build: text(tx, rx) };
  const mark = `\n//             ${'^'.repeat(tx.length)} serial-uncrossed [ask]: link.tx and ${tx} both send`;
  return { about, build: text(tx, rx, mark), fixed: text(rx, tx) };
}
