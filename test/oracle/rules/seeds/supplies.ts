/** Faults of how supplies are joined: apart, reversed, shorted, tied together. */
import { adapter, buttonOn } from '../additions';
import { addPart, addWire, moveEnd, swapEnds } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';
import { ROOMS } from './reset';

const groundsApart: MakeSeeds = ({ hardware }) => {
  const apart = (build: string, part: string, at: readonly number[]): Seed =>
    seed(
      'grounds-apart',
      build,
      `${part} without the common ground`,
      at.map((index): SeedEdit => ({ path: ['wires', index] })),
      [{ part }],
      { says: [part] },
    );
  const joint = (build: string, from: string, to: string): number =>
    hardware(build).wires.findIndex((wire) => wire.from === from && wire.to === to);
  const own = (build: string, part: string, rail: string): Seed =>
    seed(
      'grounds-apart',
      build,
      `${part} on an adapter of its own`,
      [
        ...moveEnd(hardware(build), rail, 'feeder.+'),
        ...moveEnd(hardware(build), 'GND', 'feeder.-', joint(build, `${part}.-`, 'GND')),
        addPart('feeder', {
          kind: 'power-adapter',
          volts: rail === '3V3' ? '3.3 V' : '5 V',
          maxCurrent: '1 A',
          purpose: 'x',
        }),
      ],
      [{ part: 'feeder' }],
      { says: ['feeder'] },
    );
  return [
    apart('lock-gate', 'cells', [joint('lock-gate', 'cells.-', 'GND')]),
    apart('crane', 'feed', [joint('crane', 'driver.-', 'GND')]),
    apart('winch', 'feed', [joint('winch', 'bridge.-', 'GND')]),
    apart('reef-strip', 'feed', [joint('reef-strip', 'reef.-', 'GND')]),
    apart('telegraph', 'feed', [joint('telegraph', 'pointer.-', 'GND')]),
    apart('strongbox', 'feed', [joint('strongbox', 'Q1.source', 'GND')]),
    apart('cannon-deck', 'feed', [joint('cannon-deck', 'driver.-', 'GND')]),
    own('pilot-radio', 'radio', '5V'),
    own('sound-post', 'player', '3V3'),
    own('ticket-reader', 'reader', '5V'),
  ];
};

const reversed: MakeSeeds = ({ hardware }) => {
  const swap = (
    build: string,
    part: string,
    besides: readonly string[] = [],
    ends: readonly [string, string] = ['+', '-'],
  ): Seed =>
    seed(
      'supply-reversed',
      build,
      `plus and minus of ${part} exchanged`,
      swapEnds(hardware(build), `${part}.${ends[0]}`, `${part}.${ends[1]}`),
      [{ part }],
      { says: [part], besides },
    );
  return [
    swap('lock-gate', 'cells', ['capacitor-reversed']),
    swap('reef-strip', 'feed', ['capacitor-reversed']),
    swap('telegraph', 'feed'),
    swap('winch', 'feed'),
    swap('crane', 'feed'),
    swap('strongbox', 'feed'),
    swap('safe-tilt', 'feed'),
    swap('fog-choir', 'eye'),
    swap('ghost-ship', 'guest'),
    swap('greenhouse', 'soil'),
    swap('pilot-radio', 'radio'),
    swap('ticket-reader', 'reader'),
  ];
};

const shorted: MakeSeeds = () => [
  ...ROOMS.map(([build, , ground, rail]) =>
    seed(
      'supply-shorted',
      build,
      'a button between the rails',
      buttonOn(rail, ground),
      [{ part: 'knock' }, { wire: 'knock' }, { wire: rail }],
      { says: ['knock'] },
    ),
  ),
  ...ROOMS.slice(2, 6).map(([build, , ground, rail]) =>
    seed('supply-shorted', build, 'a wire between the rails', addWire({ from: rail, to: ground }), [
      { wire: rail },
      { wire: '5V' },
      { wire: 'GND' },
    ]),
  ),
  ...ROOMS.slice(0, 4).map(([build, , ground, rail]) =>
    seed(
      'supply-shorted',
      build,
      'a button and a resistor between the rails',
      [
        addPart('Rload', { kind: 'resistor', value: '1k', purpose: 'x' }),
        addPart('knock', { kind: 'push-button', purpose: 'x' }),
        addWire({ path: [rail, 'knock', 'Rload', ground] }),
      ],
      [],
      { silent: true },
    ),
  ),
];

const tied: MakeSeeds = () => [
  ...ROOMS.filter(([build]) => !['crane', 'tide-column', 'bell-buoy', 'fog-choir'].includes(build)).map(
    ([build, , ground, rail]) =>
      seed(
        'supplies-tied',
        build,
        'a 5 V adapter on the 5 V rail',
        adapter('feeder', '5 V', rail, ground),
        [{ part: 'feeder' }],
        { says: ['feeder'] },
      ),
  ),
  ...(
    [
      ['lock-gate', 'cells.+', 'cells.-', { kind: 'nimh-battery', cells: 4 }],
      ['reef-strip', 'feed.+', 'reef.-', { kind: 'power-adapter', volts: '5 V', maxCurrent: '1 A' }],
      ['winch', 'feed.+', 'bridge.-', { kind: 'power-adapter', volts: '12 V', maxCurrent: '2 A' }],
      ['cannon-deck', 'feed.+', 'driver.-', { kind: 'power-adapter', volts: '12 V' }],
      ['crane', 'feed.+', 'driver.-', { kind: 'alkaline-battery', cells: 3 }],
      ['telegraph', 'feed.+', 'pointer.-', { kind: 'nimh-battery', cells: 4 }],
    ] as const
  ).map(([build, plus, minus, entry]) =>
    seed(
      'supplies-tied',
      build,
      'a second supply beside the first',
      [
        addPart('second', { ...entry, purpose: 'x' }),
        addWire({ from: 'second.+', to: plus }),
        addWire({ from: 'second.-', to: minus }),
      ],
      [{ part: 'second' }, { part: plus.split('.')[0] ?? '' }],
      { says: ['second'] },
    ),
  ),
];

export const SUPPLY_SEEDS: readonly MakeSeeds[] = [groundsApart, reversed, shorted, tied];
