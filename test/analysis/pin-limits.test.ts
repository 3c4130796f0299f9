/** What one pin may carry: the board's figure, its own, the policy's, or that of the strength the sketch chose. */
import { beforeAll, describe, expect, it } from 'vitest';
import { openTestBench, type TestBench } from '../fixture/bench';

let bench: TestBench;
beforeAll(async () => {
  bench = await openTestBench();
});

function limit(board: string, pin: string, setup: string, policy?: string): string {
  const files = {
    'sketch.ino': `void setup() { ${setup} }\nvoid loop() {}\n`,
    'hardware.jsonc': JSON.stringify({
      format: 1,
      board,
      ...(policy === undefined ? {} : { policy: { pinCurrent: policy } }),
      parts: { R1: { kind: 'resistor', value: '4k7' } },
      wires: [{ path: [pin, 'R1', 'GND'] }],
    }),
  };
  const found = bench
    .analyse(files)
    .workings()
    ?.pins.find((one) => one.pin === pin);
  if (!found) throw new Error(`${pin} is not there`);
  return `${found.limit.amps * 1e3} mA: ${found.limit.text}`;
}

describe.each([
  [
    'the board’s working figure',
    'nano-v3',
    'D7',
    'pinMode(7, OUTPUT);',
    undefined,
    '20 mA: 20 mA, the board',
  ],
  [
    'plain OUTPUT where strengths can be chosen',
    'pico',
    'GP7',
    'pinMode(7, OUTPUT);',
    undefined,
    '4 mA: 4.0 mA, the board',
  ],
  [
    'a chosen strength',
    'pico',
    'GP7',
    'pinMode(7, OUTPUT_12MA);',
    undefined,
    '12 mA: 12 mA, that of OUTPUT_12MA',
  ],
  [
    'a weaker strength than plain OUTPUT',
    'pico',
    'GP7',
    'pinMode(7, OUTPUT_2MA);',
    undefined,
    '2 mA: 2.0 mA, that of OUTPUT_2MA',
  ],
  [
    'plain OUTPUT beside a weaker strength',
    'pico',
    'GP7',
    'pinMode(7, OUTPUT_2MA); pinMode(7, OUTPUT);',
    undefined,
    '4 mA: 4.0 mA, the board',
  ],
  [
    'the strongest of several',
    'pico',
    'GP7',
    'pinMode(7, OUTPUT_2MA); pinMode(7, OUTPUT_8MA);',
    undefined,
    '8 mA: 8.0 mA, that of OUTPUT_8MA',
  ],
  [
    'a pin that is weaker than its neighbours',
    'nucleo-f103rb',
    'PC13',
    'pinMode(PC13, OUTPUT);',
    undefined,
    '3 mA: 3.0 mA, that of PC13 alone',
  ],
  ['a policy in figures', 'nano-v3', 'D7', 'pinMode(7, OUTPUT);', '12 mA', '12 mA: 12 mA, by the manifest'],
  [
    'a policy that no weak pin follows',
    'nucleo-f103rb',
    'PC13',
    'pinMode(PC13, OUTPUT);',
    '12 mA',
    '3 mA: 3.0 mA, that of PC13 alone',
  ],
  ['the policy of the limit', 'nano-v3', 'D7', 'pinMode(7, OUTPUT);', 'absolute', '40 mA: 40 mA, the board'],
])('%s', (_about, board, pin, setup, policy, wanted) => {
  it('is what the pin may carry', () => {
    expect(limit(board, pin, setup, policy)).toContain(wanted);
  });
});
