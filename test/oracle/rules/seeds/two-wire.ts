/** Faults of what is said on a two-wire bus: too much at once, addresses with a bit too many. */
import { code } from '../additions';
import { rewrite } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';

/** A display at 0x3C is there already; the sketch speaks to it by hand. */
const WIRED = [
  ['tide-clock', 'CLOCK_CHIP', [33, 40, 64, 100], 32],
  ['ferry-board', '0x3C', [129, 150, 200], 128],
  // The core of this chip has a buffer of 256 bytes (Wire.h of the core, from memory).
  ['greenhouse', 'soilAddress', [257], 256],
] as const;

const sent = (address: string, count: number): SeedEdit[] =>
  code({
    top: '#include <Wire.h>',
    loop: `Wire.beginTransmission(${address});\n  for (int i = 0; i < ${count}; i++) Wire.write(i);\n  Wire.endTransmission();`,
  });

const wireFull: MakeSeeds = () =>
  WIRED.flatMap(([build, address, over, most]): Seed[] => [
    ...over.map((count) =>
      seed('transmission-too-long', build, `${count} bytes at once`, sent(address, count), [
        { line: `beginTransmission(${address})` },
        { line: 'Wire.write(i)' },
        { line: 'for (int i = 0' },
      ]),
    ),
    seed('transmission-too-long', build, `${most} bytes at once`, sent(address, most), [], { silent: true }),
  ]);

const eightBit: MakeSeeds = () =>
  (
    [
      ['tide-clock', 'CLOCK_CHIP = 0x68;', 'CLOCK_CHIP = 0xD0;'],
      ['tide-clock', 'CLOCK_CHIP = 0x68;', 'CLOCK_CHIP = 0x68 << 1;'],
      ['tide-clock', 'CLOCK_CHIP = 0x68;', 'CLOCK_CHIP = 208;'],
      ['tide-clock', 'CLOCK_CHIP = 0x68;', 'CLOCK_CHIP = 0b11010000;'],
      ['greenhouse', 'soilAddress = 0x36;', 'soilAddress = 0x6C;'],
      ['greenhouse', 'soilAddress = 0x36;', 'soilAddress = 0x36 << 1;'],
      ['greenhouse', 'soilAddress = 0x36;', 'soilAddress = 108;'],
      ['greenhouse', 'soilAddress = 0x36;', 'soilAddress = 0x36 * 2;'],
    ] as const
  ).map(([build, find, put]) =>
    seed('bus-address-eight-bit', build, put, rewrite(find, put), [
      { line: 'beginTransmission(' },
      { line: 'requestFrom(' },
      { line: put },
    ]),
  );

export const TWO_WIRE_SEEDS: readonly MakeSeeds[] = [wireFull, eightBit];
