/** Figures of the library files that hold for one chip or a family, on the boards of the library. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Board } from '../../../server/src/base/board';
import { levelOnInput } from '../../../server/src/base/level-on-input';
import { forChip } from '../../../server/src/rules/support/chip-data';
import { openTestBench, type TestBench } from '../../fixture/bench';

let bench: TestBench;
beforeAll(async () => {
  bench = await openTestBench();
});

function boardOf(id: string): Board {
  const { build } = bench.analyse({ 'hardware.jsonc': `{ "format": 1, "board": "${id}" }` });
  if (!build) throw new Error(`no board ${id}`);
  return build.board;
}

describe('a figure by chip', () => {
  const timers = { avr: 'timer1', atmega2560: 'timer5', samd: 'tc4' };
  it.each([
    ['nano-v3', 'timer1'],
    ['pro-mini-3v3', 'timer1'],
    ['mega-2560', 'timer5'],
    // Another AVR chip: what holds for the first one need not hold here.
    ['leonardo', undefined],
    ['zero', 'tc4'],
    ['pico', undefined],
  ])('%s', (id, expected) => {
    expect(forChip(boardOf(id), timers)).toBe(expected);
  });

  it('takes the chip before its family', () => {
    const channels = { esp32: 16, 'esp32-s3': 8, 'esp32-c3': 6 };
    const boards = ['esp32-devkitc', 'esp32-s3-devkitc', 'esp32-c3-devkitm'];
    expect(boards.map((id) => forChip(boardOf(id), channels))).toEqual([16, 8, 6]);
  });
});

describe('a level written to an input', () => {
  it.each([
    ['uno-r3', 'switches-pull'],
    ['zero', 'switches-pull'],
    ['pico', 'drives-low'],
    ['esp32-devkitc', 'nothing'],
    ['uno-r4-minima', 'nothing'],
    ['teensy-4-0', 'turns-pull'],
    ['nucleo-f103rb', 'nothing'],
  ])('%s', (id, expected) => {
    expect(levelOnInput(boardOf(id).platform)).toBe(expected);
  });
});
