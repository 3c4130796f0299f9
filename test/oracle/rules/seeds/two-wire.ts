/** Faults of what is said on a two-wire bus: too much at once, addresses with a bit too many. */
import { code } from '../additions';
import { rewrite } from '../mutate';
import { type MakeSeeds, seed } from './book';

const wireFull: MakeSeeds = () => [
  ...(['tide-clock', 'greenhouse'] as const).flatMap((build) => {
    const at = build === 'tide-clock' ? 'CLOCK_CHIP' : 'soilAddress';
    return [33, 40, 64, 100].map((count) =>
      seed(
        'wire-buffer-full',
        build,
        `${count} bytes at once`,
        code({
          loop: `Wire.beginTransmission(${at});\n  for (int i = 0; i < ${build === 'greenhouse' ? count * 8 : count}; i++) Wire.write(i);\n  Wire.endTransmission();`,
        }),
        [{ line: 'Wire.write(i)' }, { line: 'for (int i = 0' }],
      ),
    );
  }),
  seed(
    'wire-buffer-full',
    'tide-clock',
    '32 bytes at once',
    code({
      loop: 'Wire.beginTransmission(CLOCK_CHIP);\n  for (int i = 0; i < 32; i++) Wire.write(i);\n  Wire.endTransmission();',
    }),
    [],
    { silent: true },
  ),
];

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
