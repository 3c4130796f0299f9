/** Buttons on two legs that are one piece of metal. */
import { code } from '../additions';
import { addPart, addWire, moveEnd } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';
import { FREE, type Room } from './rooms';

const key = ({ pin, number, ground }: Room, near: string, far: string): SeedEdit[] => [
  addPart('knock', { kind: 'tact-switch', purpose: 'x' }),
  addWire({ from: pin, to: `knock.${near}` }),
  addWire({ from: `knock.${far}`, to: ground }),
  ...code({
    setup: `pinMode(${number}, INPUT_PULLUP);`,
    loop: `if (digitalRead(${number}) == LOW) delay(1);`,
  }),
];

const JOINED = [
  ['1a', '1b'],
  ['1b', '1a'],
  ['2a', '2b'],
  ['2b', '2a'],
] as const;

const joined: MakeSeeds = ({ hardware }) => [
  ...FREE.map((room, index) => {
    const [near, far] = JOINED[index % JOINED.length] ?? JOINED[0];
    return seed(
      'legs-joined',
      room.build,
      `a key on ${near} and ${far}`,
      key(room, near, far),
      [{ wire: `knock.${far}` }, { wire: `knock.${near}` }],
      { says: ['knock'] },
    );
  }),
  ...(
    [
      ['porthole', 'key', 'key.2a', 'key.1b'],
      ['porthole', 'key', 'key.1a', 'key.2b'],
      ['quay-lights', 'call', 'call.2b', 'call.1b'],
      ['quay-lights', 'call', 'call.1a', 'call.2a'],
    ] as const
  ).map(([build, part, from, to]) =>
    seed(
      'legs-joined',
      build,
      `${from} taken to ${to}`,
      moveEnd(hardware(build), from, to),
      [
        { wire: to },
        { wire: from.endsWith('2a') || from.endsWith('2b') ? `${part}.1a` : `${part}.2a` },
        { wire: `${part}.2b` },
      ],
      { says: [part] },
    ),
  ),
  ...FREE.slice(0, 4).map((room, index): Seed => {
    const near = ['1a', '1b', '2a', '2b'][index] ?? '1a';
    const far = ['2b', '2a', '1a', '1a'][index] ?? '2b';
    return seed('legs-joined', room.build, `a key on ${near} and ${far}`, key(room, near, far), [], {
      silent: true,
    });
  }),
];

export const LEG_SEEDS: readonly MakeSeeds[] = [joined];
