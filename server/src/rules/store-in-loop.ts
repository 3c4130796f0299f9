/** Every round of loop writes one cell of the memory that keeps its content, and wears it out. */

import { defineRule } from './rule';
import { callFacts, coreOf, habitsOf } from './support/habits';
import { seconds } from './support/time-words';
import { pathRelated } from './support/views';

interface Detail {
  readonly cycles: number;
  /** Seconds that a round lasts at least. */
  readonly round: number;
  readonly name?: { readonly file: string; readonly start: number; readonly end: number };
}

export default defineRule<Detail>({
  id: 'store-in-loop',
  title: 'Every round of loop writes the same cell of the EEPROM.',
  why: 'A cell stands a limited number of writes: it is worn out within minutes to weeks and loses what it keeps.',
  source:
    'ATmega328P datasheet 8271H, features: 100,000 write cycles; EEPROM.h of the core for AVR: write writes always',
  severity: 'warning',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    const cycles = callFacts(subject.libraries, 'write', 'EEPROM')?.cycles?.[coreOf(subject.build.board)];
    const { uses, damaged } = subject.facts;
    // Where loop waits for something or sleeps, a round may last for days.
    const rests = habitsOf(subject, 'wait-loop').length > 0 || uses.some(({ action }) => action === 'sleep');
    if (cycles === undefined || damaged || rests) return;
    const use = uses.find(
      ({ call, phase, certain, value }) =>
        call === 'EEPROM.write' &&
        phase === 'loop' &&
        certain &&
        value?.kind === 'known' &&
        value.values.length === 1,
    );
    if (!use) return;
    let round = 0;
    for (const { call, phase, certain, value } of uses) {
      if (call === 'delay' && phase === 'loop' && certain && value?.kind === 'known')
        round += Math.min(...value.values) / 1000;
    }
    const { file, start, end } = use.callSpan;
    const at = (subject.texts[file] ?? '').slice(start, end).indexOf('.write');
    const name = at < 0 ? undefined : { file, start: start + at + 1, end: start + at + 6 };
    yield {
      identity: 'EEPROM',
      span: use.callSpan,
      related: pathRelated(use),
      detail: { cycles, round, ...(name && { name }) },
    };
  },
  message: ({ cycles, round }) =>
    `Each round of loop writes this cell, which stands ${cycles.toLocaleString('en-GB')} writes: ` +
    (round > 0 ? `at ${seconds(round)} a round that is ${seconds(cycles * round)}. ` : 'that is minutes. ') +
    'Write only what has changed: EEPROM.update.',
  fixes: ({ name }) =>
    name === undefined
      ? []
      : [{ title: 'Write only what has changed', trust: 'ask', edits: [{ ...name, text: 'update' }] }],
  examples: [
    keep(
      'a cell written in every round',
      'uno-r3',
      'EEPROM.write(0, rounds);',
      'delay(1000);',
      'that is 27.8 hours',
    ),
    keep('the same without a pause', 'mega-2560', 'EEPROM.write(0, rounds);', '', 'that is minutes'),
    keep('only what has changed', 'uno-r3', 'EEPROM.update(0, rounds);', 'delay(1000);'),
    keep('under a condition', 'nano-v3', 'if (rounds == 0) EEPROM.write(0, rounds);', 'delay(1000);'),
  ],
});

function keep(about: string, board: string, line: string, pause: string, wrong?: string) {
  const text = (own: string, mark = '') => `
//- sketch.ino board:${board}
#include <EEPROM.h>
byte rounds = 0;
void setup() { EEPROM.read(0); }
void loop() {
     rounds++;
     ${own}${mark}
     ${pause}
}
`;
  if (wrong === undefined) return { about, build: text(line) };
  const mark = `\n//   ${'^'.repeat(line.length - 1)} store-in-loop [ask]: ${wrong}`;
  return { about, build: text(line, mark), fixed: text(line.replace('write', 'update')) };
}
