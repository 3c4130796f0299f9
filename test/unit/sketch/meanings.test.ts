/** What a use says beyond its pin: the interrupt line that was counted, the terminal that a library means it for. */
import { describe, expect, it } from 'vitest';
import type { PinUse } from '../../../server/src/base/pin-use';
import type { LibraryFacts } from '../../../server/src/base/platform';
import { libraries } from './platform';
import { read } from './reading';

const ranger: LibraryFacts = {
  id: 'ranger',
  functions: [{ name: 'listen', action: 'read', pin: 0, terminals: ['echo'] }],
  classes: [
    {
      name: 'Ranger',
      constructors: [
        { name: 'Ranger', action: 'device', pin: 0, terminals: ['trigger'], arguments: { max: 2 } },
        { name: 'Ranger', action: 'device', pin: 1, terminals: ['echo'], arguments: { max: 2 } },
        { name: 'Ranger', action: 'device', pinsFrom: 0, terminals: ['a', 'b'], arguments: { min: 3 } },
      ],
      methods: [{ name: 'ping', action: 'transfer', pinsOf: 'Ranger' }],
    },
  ],
};

const handler = 'const int button = 1;\nvoid f() {}\n';

/** Lines of the interrupts, pins where they were given as such. */
async function lines(argument: string): Promise<string> {
  const { uses } = await read(
    `${handler}void setup() { attachInterrupt(${argument}, f, RISING); }\nvoid loop() {}`,
  );
  const use = uses.find((one) => one.action === 'interrupt');
  const pins = use?.pins.kind === 'known' ? use.pins.values.join(',') : '?';
  return `pin ${pins}, line ${use?.lines?.join(',') ?? '-'}`;
}

describe('the number of an interrupt', () => {
  it.each([
    ['0', 'pin 2, line 0'],
    ['button', 'pin 3, line 1'],
    ['7', 'pin ?, line 7'],
    ['digitalPinToInterrupt(2)', 'pin 2, line -'],
    ['digitalPinToInterrupt(button + 2)', 'pin 3, line -'],
  ])('%s', async (argument, expected) => {
    expect(await lines(argument)).toBe(expected);
  });
});

const meant = ({ pins, terminal }: PinUse) =>
  `${pins.kind === 'known' ? pins.values.join(',') : '?'} ${terminal ?? '-'}`;

describe('the terminal of a part', () => {
  it.each([
    ['Ranger r(7, 8);', '', ['7 trigger', '8 echo']],
    ['Ranger r(4, 5, 6);', '', ['4 a', '5 b', '6 -']],
    ['Ranger r(7, 8);', 'r.ping();', ['7 trigger', '8 echo', '7,8 -']],
    ['', 'listen(9); digitalRead(9);', ['9 echo', '9 -']],
  ])('%s %s', async (globals, body, expected) => {
    const { uses } = await read(`${globals}\nvoid setup() { ${body} }\nvoid loop() {}`, [
      ...libraries,
      ranger,
    ]);
    expect(uses.map(meant)).toEqual(expected);
  });
});
