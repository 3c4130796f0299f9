/** Faults of gates that float or open by half, of heat in resistors, and of volts the wrong way round. */
import { bulbBetween, code } from '../additions';
import { addPart, addWire, set } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';
import { lampRuns, names } from './lamps';
import { ROOMS } from './reset';

/** Pins that the rooms have free. */
const FREE: Readonly<Record<string, readonly [number: string, pin: string]>> = {
  'beacon-and-horn': ['12', 'D12'],
  'quay-lights': ['9', 'D9'],
  'tide-column': ['12', 'D12'],
  'weather-mast': ['9', 'D9'],
  'bell-buoy': ['4', 'D4'],
  crane: ['40', 'D40'],
  turnstile: ['4', 'D4'],
  'range-lights': ['12', 'D12'],
  'fog-choir': ['4', 'D4'],
  'boiler-watch': ['12', 'D12'],
};

/** A bulb behind a field-effect transistor, with or without a resistor that holds its gate. */
function switched(
  pin: string,
  number: string,
  plus: string,
  minus: string,
  type: string,
  held: boolean,
): SeedEdit[] {
  return [
    ...code({
      setup: `pinMode(${number}, OUTPUT);`,
      loop: `digitalWrite(${number}, millis() % 2000 < 1000);`,
    }),
    addPart('Q9', { kind: 'n-mosfet', type, purpose: 'x' }),
    addWire({ from: pin, to: 'Q9.gate' }),
    addWire({ from: 'Q9.source', to: minus }),
    ...bulbBetween(plus, 'Q9.drain', '30 ohm'),
    ...(held
      ? [
          addPart('Rgate', { kind: 'resistor', value: '10k', purpose: 'x' }),
          addWire({ path: ['Q9.gate', 'Rgate', 'Q9.source'] }),
        ]
      : []),
  ];
}

const floatingControl: MakeSeeds = () =>
  ROOMS.flatMap(([build, , ground, rail], index): Seed[] => {
    const [number = '', pin = ''] = FREE[build] ?? [];
    return [
      seed(
        'floating-control',
        build,
        'a bare gate before a bulb',
        switched(pin, number, rail, ground, 'irlz44n', false),
        [{ part: 'Q9' }],
        { says: ['Q9', pin] },
      ),
      ...(index < 4
        ? [
            seed(
              'floating-control',
              build,
              'a gate that is held',
              switched(pin, number, rail, ground, 'irlz44n', true),
              [],
              { silent: true },
            ),
          ]
        : []),
    ];
  });

const ON_3V3 = [
  ['signal-box', 'GP9', '9', 'VBUS', 'GND'],
  ['aquarium-moon', 'GP9', '9', 'VBUS', 'GND'],
  ['greenhouse', 'GP9', '9', 'VBUS', 'soil.-'],
  ['light-tower', 'IO18', '18', '5V', 'lantern.cathode'],
  ['pressure-gauge', 'D9', '9', '5V', 'low.cathode'],
  ['test-bench', 'D9', 'D9', '5V', 'GND'],
  ['mooring-post', 'IO7', '7', '5V', 'GND'],
] as const;

/** What needs ten volts at its gate begins to conduct between 2 V and 4 V. */
const gateNotFull: MakeSeeds = () => [
  ...ON_3V3.flatMap(([build, pin, number, plus, minus], index): Seed[] => [
    seed(
      'gate-not-full',
      build,
      'a transistor for ten volts on 3.3 V',
      switched(pin, number, plus, minus, index % 2 === 0 ? 'irf520' : 'irfz44n', true),
      [{ part: 'Q9' }],
      { says: ['Q9', pin] },
    ),
    seed(
      'gate-not-full',
      build,
      'a transistor for logic levels on 3.3 V',
      switched(pin, number, plus, minus, 'ao3400a', true),
      [],
      { silent: true },
    ),
  ]),
  seed(
    'gate-not-full',
    'map-drawer',
    'the lamp’s transistor an IRF520',
    set('Q1', 'type', 'irf520'),
    [{ part: 'Q1' }],
    { says: ['Q1', 'D5'] },
  ),
  seed(
    'gate-not-full',
    'map-drawer',
    'the lamp’s transistor an IRFZ44N',
    set('Q1', 'type', 'irfz44n'),
    [{ part: 'Q1' }],
    { says: ['Q1', 'D5'] },
  ),
];

/** 5 V over 91 ohm are 0.27 W, over 110 ohm 0.23 W. */
const tooHot: MakeSeeds = () =>
  ROOMS.flatMap(([build, , ground, rail], index): Seed[] => {
    const load = (value: string, power: string): SeedEdit[] => [
      addPart('Rload', { kind: 'resistor', value, power, purpose: 'x' }),
      addWire({ path: [rail, 'Rload', ground] }),
    ];
    return [
      seed(
        'resistor-too-hot',
        build,
        index % 2 === 0 ? '91 ohm of 250 mW at 5 V' : '47 ohm of 500 mW at 5 V',
        load(index % 2 === 0 ? '91' : '47', index % 2 === 0 ? '0.25 W' : '0.5 W'),
        [{ part: 'Rload' }],
        { says: ['Rload'] },
      ),
      seed('resistor-too-hot', build, '110 ohm of 250 mW at 5 V', load('110', '0.25 W'), [], {
        silent: true,
      }),
    ];
  });

const parallel: MakeSeeds = (book) =>
  lampRuns(names(book), book.hardware).map(({ build, lamp }, index) =>
    seed(
      'lamps-parallel',
      build,
      `a second lamp beside ${lamp}`,
      [
        addPart('second', { kind: 'led', colour: index % 3 === 0 ? 'blue' : 'red', purpose: 'x' }),
        addWire({ from: `${lamp}.anode`, to: 'second.anode' }),
        addWire({ from: `${lamp}.cathode`, to: 'second.cathode' }),
      ],
      [{ part: lamp }, { part: 'second' }],
      { says: [lamp, 'second'], besides: ['lamp-dim'] },
    ),
  );

const reverse: MakeSeeds = () => {
  const stands = (build: string, diode: string, volts: string, right = false): Seed =>
    seed(
      'reverse-voltage',
      build,
      `a diode that stands ${volts}`,
      set(diode, 'maxReverseVolts', volts),
      [{ part: diode }],
      right ? { silent: true } : { says: [diode] },
    );
  const across = (build: string, plus: string, minus: string, volts: string, right = false): Seed =>
    seed(
      'reverse-voltage',
      build,
      `a diode for ${volts} against the supply`,
      [
        addPart('D9x', { kind: 'diode', maxReverseVolts: volts, purpose: 'x' }),
        addWire({ from: 'D9x.cathode', to: plus }),
        addWire({ from: 'D9x.anode', to: minus }),
      ],
      [{ part: 'D9x' }],
      right ? { silent: true } : { says: ['D9x'] },
    );
  const pair = (first: string, second: string): Seed =>
    seed(
      'reverse-voltage',
      'winch',
      `a ${first} and a ${second} lamp the opposite ways round on 12 V`,
      [
        addPart('pay', { kind: 'led', colour: first, purpose: 'x' }),
        addPart('haul', { kind: 'led', colour: second, maxReverseVolts: '1.5 V', purpose: 'x' }),
        addPart('Rpair', { kind: 'resistor', value: '1k', purpose: 'x' }),
        addWire({ path: ['bridge.out-1', 'Rpair', 'pay', 'bridge.out-2'] }),
        addWire({ from: 'Rpair.2', to: 'haul.cathode' }),
        addWire({ from: 'haul.anode', to: 'bridge.out-2' }),
      ],
      [{ part: 'haul' }],
      { says: ['haul'] },
    );
  return [
    ...[
      stands('strongbox', 'surge', '6 V'),
      stands('harbour-radio', 'surge', '3 V'),
      seed(
        'reverse-voltage',
        'engine-room',
        'a diode that stands 3 V',
        { path: ['parts', 'surge'], value: { kind: 'diode', maxReverseVolts: '3 V', purpose: 'x' } },
        [{ part: 'surge' }],
        { says: ['surge'] },
      ),
      stands('bell-buoy', 'flyback', '3 V'),
    ],
    ...[
      across('winch', 'feed.+', 'bridge.-', '6 V'),
      across('crane', 'feed.+', 'driver.-', '3 V'),
      across('reef-strip', 'feed.+', 'reef.-', '3 V'),
    ],
    ...[pair('red', 'green'), pair('green', 'red')],
    ...[
      stands('strongbox', 'surge', '20 V', true),
      across('winch', 'feed.+', 'bridge.-', '20 V', true),
      across('crane', 'feed.+', 'driver.-', '6 V', true),
    ],
  ];
};

export const GATE_SEEDS: readonly MakeSeeds[] = [floatingControl, gateNotFull, tooHot, parallel, reverse];
