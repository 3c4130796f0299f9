/** Faults of how much current a supply, a regulator or a fuse carries. */
import { adapter, bulbBetween } from '../additions';
import { addPart, addWire, type Hardware, moveEnd, set } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';
import { ROOMS } from './reset';

const over: MakeSeeds = () => {
  const at = (
    build: string,
    parts: readonly string[],
    edits: SeedEdit | readonly SeedEdit[],
    about: string,
    says: string,
  ): Seed =>
    seed(
      'supply-over',
      build,
      about,
      edits,
      parts.map((part) => ({ part })),
      { says: [says], besides: ['regulator-hot'] },
    );
  return [
    at('reef-strip', ['reef'], set('reef', 'count', 144), '144 pixels on 2 A', 'feed'),
    at('reef-strip', ['reef'], set('feed', 'maxCurrent', '0.2 A'), 'twelve pixels on 200 mA', 'feed'),
    at('telegraph', ['pointer'], set('feed', 'maxCurrent', '80 mA'), 'a servo on 80 mA', 'feed'),
    at('crane', ['driver', 'jib'], set('feed', 'maxCurrent', '50 mA'), 'a stepper on 50 mA', 'feed'),
    at('winch', ['bridge', 'drum'], set('feed', 'maxCurrent', '0.1 A'), 'a motor on 100 mA', 'feed'),
    at('strongbox', ['bolt', 'Q1'], set('feed', 'maxCurrent', '0.1 A'), 'a bolt on 100 mA', 'feed'),
    at(
      'beacon-and-horn',
      ['bulb'],
      bulbBetween('5V', 'beacon.cathode', '8 ohm'),
      'a bulb of 8 ohm on the board',
      '5V',
    ),
    at(
      'turnstile',
      ['bulb'],
      bulbBetween('5V', 'tenth.cathode', '7 ohm'),
      'a bulb of 7 ohm on the board',
      '5V',
    ),
    at(
      'quay-lights',
      ['bulb'],
      bulbBetween('3V3', 'stop.cathode', '40 ohm'),
      'a bulb on the 3.3 V pin',
      '3V3',
    ),
    at('scoreboard', ['bulb'], bulbBetween('3V3', 'p4.cathode', '30 ohm'), 'a bulb on the 3.3 V pin', '3V3'),
    seed(
      'supply-over',
      'beacon-and-horn',
      'a bulb of 60 ohm on the board',
      bulbBetween('5V', 'beacon.cathode', '60 ohm'),
      [],
      { silent: true },
    ),
    seed('supply-over', 'reef-strip', 'the strip as it is on 1 A', set('feed', 'maxCurrent', '1 A'), [], {
      silent: true,
    }),
  ];
};

/** A regulator of one's own between an adapter and a bulb. */
function regulated(volts: string, type: string, ground: string, hotOhms: string): SeedEdit[] {
  return [
    addPart('reg', { kind: 'voltage-regulator', volts: '5', type, purpose: 'x' }),
    ...adapter('feeder', volts, 'reg.in', 'reg.-'),
    addWire({ from: 'reg.-', to: ground }),
    ...bulbBetween('reg.out', 'reg.-', hotOhms),
  ];
}

const regulators: MakeSeeds = () =>
  ROOMS.slice(0, 9).flatMap(([build, , ground], index): Seed[] => [
    seed(
      'regulator-hot',
      build,
      '12 V and 500 mA in a small regulator',
      regulated('12 V', 'standard', ground, '10 ohm'),
      [{ part: 'reg' }],
      { says: ['reg'], besides: ['supply-over'] },
    ),
    seed(
      'regulator-starved',
      build,
      '5 V from 6 V',
      regulated(index % 2 === 0 ? '6 V' : '5.5 V', 'standard', ground, '60 ohm'),
      [{ part: 'reg' }],
      { says: ['reg'] },
    ),
    ...(index < 3
      ? [
          seed('regulator-hot', build, '9 V and 83 mA', regulated('9 V', 'standard', ground, '60 ohm'), [], {
            silent: true,
          }),
          seed(
            'regulator-starved',
            build,
            '5 V from 9 V',
            regulated('9 V', 'standard', ground, '60 ohm'),
            [],
            { silent: true },
          ),
        ]
      : []),
  ]);

/** A fuse in the plus line of the build's own supply. */
function fused(hardware: Hardware, supply: string, current: string): SeedEdit[] {
  const end = `${supply}.+`;
  return [
    ...moveEnd(hardware, end, 'F1.2'),
    addPart('F1', { kind: 'fuse', current, purpose: 'x' }),
    addWire({ from: end, to: 'F1.1' }),
  ];
}

const fuses: MakeSeeds = ({ hardware }) =>
  (
    [
      ['reef-strip', 'feed', '0.1 A', '5 A', '1.5 A'],
      ['telegraph', 'feed', '0.05 A', '5 A', '1.5 A'],
      ['crane', 'feed', '0.05 A', '10 A', '1 A'],
      ['winch', 'feed', '0.2 A', '4 A', '1.5 A'],
      ['strongbox', 'feed', '0.1 A', '3 A', '1.8 A'],
      ['cannon-deck', 'feed', '0.2 A', '3 A', '1.8 A'],
      ['lock-gate', 'cells', '50 mA', '', '1.5 A'],
      ['reef-strip', 'feed', '0.2 A', '2.5 A', '1 A'],
      ['cannon-deck', 'feed', '0.1 A', '2.5 A', '1 A'],
      ['map-drawer', 'cells', '10 mA', '', '1 A'],
      ['pump-house', 'cells', '0.25 A', '', '2 A'],
    ] as const
  ).flatMap(([build, supply, small, large, right]): Seed[] => [
    seed(
      'fuse-too-small',
      build,
      `a fuse of ${small}`,
      fused(hardware(build), supply, small),
      [{ part: 'F1' }],
      { says: ['F1'] },
    ),
    ...(large === ''
      ? []
      : [
          seed(
            'fuse-too-large',
            build,
            `a fuse of ${large}`,
            fused(hardware(build), supply, large),
            [{ part: 'F1' }],
            { says: ['F1'] },
          ),
        ]),
    seed('fuse-too-small', build, `a fuse of ${right}`, fused(hardware(build), supply, right), [], {
      silent: true,
    }),
    ...(large === ''
      ? []
      : [
          seed('fuse-too-large', build, `a fuse of ${right}`, fused(hardware(build), supply, right), [], {
            silent: true,
          }),
        ]),
  ]);

export const BUDGET_SEEDS: readonly MakeSeeds[] = [over, regulators, fuses];
