/** Faults of what feeds: too weak a source, no reservoir, too small a battery, a diode in the feed turned round. */
import { adapter, code } from '../additions';
import { addPart, addWire, moveEnd } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';
import { FREE, type Room, stripOnPack } from './rooms';

/** Boards with a radio; their makers ask for 500 mA. */
const RADIOS = [
  ['depth-sounder', '5V', 'sounder.-', '5 V'],
  ['harbour-radio', '5V', 'Q1.emitter', '5 V'],
  ['porthole', '5V', 'left.cathode', '5 V'],
  ['porthole', '3V3', 'left.cathode', '3.3 V'],
  ['mooring-post', '5V', 'GND', '5 V'],
  ['mooring-post', '3V3', 'GND', '3.3 V'],
  ['light-tower', '5V', 'Reye.2', '5 V'],
  ['dock-bell', 'VIN', 'GND', '5 V'],
] as const;

const weak: MakeSeeds = () =>
  RADIOS.flatMap(([build, pin, ground, volts], index): Seed[] => [
    seed(
      'supply-weak',
      build,
      `a source of little current on ${pin}`,
      adapter('feeder', volts, pin, ground, ['300 mA', '480 mA', '0.2 A', '450 mA'][index % 4]),
      [{ part: 'feeder' }],
      { says: ['feeder', pin], besides: ['supply-over', 'position-shared'] },
    ),
    ...(index % 2 === 0
      ? [
          seed(
            'supply-weak',
            build,
            `500 mA on ${pin}`,
            adapter('feeder', volts, pin, ground, '500 mA'),
            [],
            { silent: true, besides: ['position-shared'] },
          ),
        ]
      : []),
  ]);

/** A small servo, moved by its library, or eight pixels: either takes its current in jumps. */
const jumping = ({ pin, number, ground, rail }: Room, strip: boolean): SeedEdit[] => [
  ...(strip
    ? [
        addPart('parade', { kind: 'addressable-strip', count: 4, purpose: 'x' }),
        addPart('Rparade', { kind: 'resistor', value: '330', purpose: 'x' }),
        addWire({ path: [pin, 'Rparade', 'parade.data-in'] }),
        ...code({
          setup: `pinMode(${number}, OUTPUT);`,
          loop: `digitalWrite(${number}, HIGH);\n  digitalWrite(${number}, LOW);`,
        }),
      ]
    : [
        addPart('parade', { kind: 'servo', current: '100 mA', purpose: 'x' }),
        addWire({ from: pin, to: 'parade.signal' }),
        ...code({
          top: '#include <Servo.h>\nServo parade;',
          setup: `parade.attach(${number});`,
          loop: 'parade.write(90);',
        }),
      ]),
  addWire({ from: rail, to: 'parade.+' }),
  addWire({ from: 'parade.-', to: ground }),
];

const reservoir = (entry: object): SeedEdit[] => [
  addPart('Cparade', { purpose: 'x', ...entry }),
  addWire({ path: ['parade.+', 'Cparade', 'parade.-'] }),
];

const missing: MakeSeeds = () => [
  ...FREE.flatMap((room, index): Seed[] => [
    seed(
      'reservoir-missing',
      room.build,
      index % 2 === 0 ? 'a servo on the rail' : 'a strip on the rail',
      jumping(room, index % 2 === 1),
      [{ part: 'parade' }],
      { says: ['parade'], besides: ['timer-shared'] },
    ),
    ...(index < 4
      ? [
          seed(
            'reservoir-missing',
            room.build,
            'with 470 µF beside it',
            [
              ...jumping(room, index % 2 === 1),
              ...reservoir({ kind: 'electrolytic-capacitor', value: '470 uF', volts: '16 V' }),
            ],
            [],
            { silent: true, besides: ['timer-shared'] },
          ),
        ]
      : []),
  ]),
  ...FREE.slice(1, 2).map((room) =>
    seed(
      'reservoir-missing',
      room.build,
      'with 100 nF beside it, which is no reservoir',
      [...jumping(room, true), ...reservoir({ kind: 'capacitor', value: '100 nF' })],
      [{ part: 'parade' }],
      { says: ['parade'] },
    ),
  ),
];

const wish = (runTime: string): SeedEdit => ({ path: ['policy'], value: { runTime } });

/** A strip that takes 800 mA at its most: 2 Ah last 2.5 h, 4 Ah 5 h, 10 Ah 12.5 h. */
const LASTS = [
  ['2000 mAh', '2.6 h', '2.4 h'],
  ['4 Ah', '5.2 h', '4.8 h'],
  ['10 Ah', '13 h', '12 h'],
  ['800 mAh', '65 min', '55 min'],
] as const;

const short: MakeSeeds = () => [
  ...FREE.flatMap(({ build }, index): Seed[] => {
    const [capacity, over, inside] = LASTS[index % LASTS.length] ?? LASTS[0];
    return [
      seed(
        'run-time-short',
        build,
        `${over} of ${capacity}`,
        [wish(over), ...stripOnPack(capacity)],
        [{ part: 'paradePack' }],
        { says: ['paradePack'] },
      ),
      seed(
        'run-time-short',
        build,
        `${inside} of ${capacity}`,
        [wish(inside), ...stripOnPack(capacity)],
        [],
        {
          silent: true,
        },
      ),
    ];
  }),
  // Siren of 15 mA and two pull-ups on 550 mAh: about 36 h.
  seed('run-time-short', 'safe-tilt', '40 h on a nine-volt block', wish('40 h'), [{ part: 'feed' }], {
    says: ['feed'],
  }),
  seed('run-time-short', 'safe-tilt', '32 h on a nine-volt block', wish('32 h'), [], { silent: true }),
  seed('run-time-short', 'range-lights', 'no wish', stripOnPack('200 mAh'), [], { silent: true }),
];

/** The strip's feed through a diode, either way round. */
const guarded = (ring: 'supply' | 'load', kind: string): SeedEdit[] => [
  addPart('guard', { kind, purpose: 'x' }),
  addPart('paradePack', { kind: 'battery', volts: '12', spread: '10%', purpose: 'x' }),
  addPart('parade', { kind: 'led-strip', metres: 1, purpose: 'x' }),
  addWire({ from: 'paradePack.+', to: ring === 'supply' ? 'guard.cathode' : 'guard.anode' }),
  addWire({ from: ring === 'supply' ? 'guard.anode' : 'guard.cathode', to: 'parade.+' }),
  addWire({ from: 'parade.-', to: 'paradePack.-' }),
];

/** The same in the strip's way back. */
const behind = (ring: 'supply' | 'load', kind: string): SeedEdit[] => [
  addPart('guard', { kind, purpose: 'x' }),
  addPart('paradePack', { kind: 'battery', volts: '12', spread: '10%', purpose: 'x' }),
  addPart('parade', { kind: 'led-strip', metres: 1, purpose: 'x' }),
  addWire({ from: 'paradePack.+', to: 'parade.+' }),
  addWire({ from: 'parade.-', to: ring === 'supply' ? 'guard.anode' : 'guard.cathode' }),
  addWire({ from: ring === 'supply' ? 'guard.cathode' : 'guard.anode', to: 'paradePack.-' }),
];

const turned: MakeSeeds = ({ hardware }) => [
  ...FREE.flatMap(({ build }, index): Seed[] => {
    const kind = index % 2 === 0 ? 'diode' : 'schottky-diode';
    const edits = index % 4 < 2 ? guarded('supply', kind) : behind('load', kind);
    return [
      seed('series-diode-reversed', build, `a ${kind} in the strip’s feed`, edits, [{ part: 'guard' }], {
        says: ['guard'],
      }),
      ...(index % 2 === 0
        ? [
            seed(
              'series-diode-reversed',
              build,
              'the right way round',
              index % 4 < 2 ? guarded('load', kind) : behind('supply', kind),
              [],
              { silent: true },
            ),
          ]
        : []),
    ];
  }),
  ...(['supply', 'load'] as const).map((ring) =>
    seed(
      'series-diode-reversed',
      'safe-tilt',
      `a diode in the board’s feed, its ring towards the ${ring === 'supply' ? 'block' : 'board'}`,
      [
        ...moveEnd(hardware('safe-tilt'), 'RAW', ring === 'supply' ? 'guard.cathode' : 'guard.anode'),
        addPart('guard', { kind: 'diode', purpose: 'x' }),
        addWire({ from: ring === 'supply' ? 'guard.anode' : 'guard.cathode', to: 'RAW' }),
      ],
      ring === 'supply' ? [{ part: 'guard' }] : [],
      ring === 'supply' ? { says: ['guard'] } : { silent: true },
    ),
  ),
];

export const STORE_SEEDS: readonly MakeSeeds[] = [weak, missing, short, turned];
