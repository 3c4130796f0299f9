import { addPart, addWire, set, swapEnds } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';
import { ROOMS } from './reset';

const bare = (...parts: readonly string[]): SeedEdit[] => parts.map((part) => set(part, 'pullUps', false));

const pullUpMissing: MakeSeeds = ({ hardware }) => {
  const boiler = hardware('boiler-watch');
  const oneWire = (
    build: string,
    ground: string,
    rail: string,
    pin: string,
    number: string,
    kind: string,
  ): Seed =>
    seed(
      'bus-pull-up-missing',
      build,
      `a ${kind} without its resistor`,
      [
        {
          find: 'void setup() {',
          put:
            kind === 'one-wire-sensor'
              ? `#include <OneWire.h>\nOneWire thread(${number});\n\nvoid setup() {`
              : 'void setup() {',
        },
        { find: 'void loop() {', put: 'void loop() {\n  thread.reset();' },
        addPart('probe', { kind, purpose: 'x' }),
        ...[
          addWire({ from: rail, to: 'probe.+' }),
          addWire({ from: 'probe.-', to: ground }),
          addWire({ from: pin, to: 'probe.data' }),
        ],
      ],
      [{ line: 'thread(' }, { line: 'thread.reset' }],
      { says: [pin] },
    );
  return [
    seed(
      'bus-pull-up-missing',
      'tide-clock',
      'bare chips alone on the bus',
      bare('screen', 'clock'),
      [{ line: 'Wire.begin' }, { line: 'screen(' }],
      { says: ['A4'] },
    ),
    seed(
      'bus-pull-up-missing',
      'greenhouse',
      'a bare chip alone on the bus',
      bare('soil'),
      [{ line: 'Wire.begin' }],
      { says: ['GP4'] },
    ),
    seed(
      'bus-pull-up-missing',
      'ferry-board',
      'a bare display alone on the bus',
      bare('screen'),
      [{ line: 'screen' }, { line: 'U8G2' }],
      { says: ['D2'] },
    ),
    seed(
      'bus-pull-up-missing',
      'boiler-watch',
      'the bus without its resistor',
      [
        ...boiler.wires.flatMap(({ path }, index) =>
          path?.includes('Rpull') ? [{ path: ['wires', index] }] : [],
        ),
        { path: ['parts', 'Rpull'] },
      ],
      [{ line: 'wire(BUS)' }, { line: 'boiler' }],
      { says: ['D10'] },
    ),
    oneWire('fog-choir', 'eye.-', 'eye.+', 'D4', '4', 'one-wire-sensor'),
    oneWire('tide-clock', 'screen.-', 'screen.+', 'D8', '8', 'one-wire-sensor'),
    oneWire('weather-mast', 'minus.6', 'plus.6', 'D9', '9', 'one-wire-sensor'),
    oneWire('pilot-radio', 'radio.-', 'radio.+', 'D4', '4', 'one-wire-sensor'),
    oneWire('crane', 'stick.-', 'stick.+', 'D40', '40', 'one-wire-sensor'),
    seed('bus-pull-up-missing', 'tide-clock', 'one of two brings the resistors', bare('clock'), [], {
      silent: true,
    }),
  ];
};

/** Each module brings 10 k where nothing is said; 5 V over 1.6 k are the 3 mA that a device can sink. */
const pullUpStrong: MakeSeeds = () => {
  const strong = (build: string, part: string, value: string, right = false): Seed =>
    seed(
      'bus-pull-up-strong',
      build,
      `pull-ups of ${value} on ${part}`,
      set(part, 'pullUpOhms', value),
      [{ line: 'Wire.begin' }, { line: 'screen' }],
      right ? { silent: true } : {},
    );
  return [
    ...(['680 ohm', '1 kohm', '1.2 kohm', '470 ohm'] as const).map((value) =>
      strong('tide-clock', 'clock', value),
    ),
    ...(['680 ohm', '470 ohm', '1 kohm'] as const).map((value) => strong('greenhouse', 'soil', value)),
    ...(['820 ohm', '330 ohm'] as const).map((value) => strong('ferry-board', 'screen', value)),
    strong('tide-clock', 'clock', '4.7 kohm', true),
    strong('greenhouse', 'soil', '2.2 kohm', true),
  ];
};

const capacitors: MakeSeeds = ({ hardware }) => [
  ...ROOMS.flatMap(([build, , ground, rail], index): Seed[] => {
    const can = (plus: string, minus: string, volts: string): SeedEdit[] => [
      addPart(
        'C7',
        index % 2 === 0
          ? { kind: 'electrolytic-capacitor', value: '100 uF', volts, purpose: 'x' }
          : { kind: 'capacitor', value: '10 uF', polarised: true, volts, purpose: 'x' },
      ),
      ...[addWire({ from: 'C7.+', to: plus }), addWire({ from: 'C7.-', to: minus })],
    ];
    return [
      seed('capacitor-reversed', build, 'plus at ground', can(ground, rail, '16 V'), [{ part: 'C7' }], {
        says: ['C7'],
      }),
      seed(
        'capacitor-over-voltage',
        build,
        'one for 4 V on 5 V',
        can(rail, ground, '4 V'),
        [{ part: 'C7' }],
        { says: ['C7'] },
      ),
      ...(index < 4
        ? [
            seed('capacitor-over-voltage', build, 'one for 6.3 V on 5 V', can(rail, ground, '6.3 V'), [], {
              silent: true,
            }),
            seed('capacitor-reversed', build, 'plus at the rail', can(rail, ground, '16 V'), [], {
              silent: true,
            }),
          ]
        : []),
    ];
  }),
  ...(['lock-gate', 'reef-strip'] as const).map((build) =>
    seed(
      'capacitor-reversed',
      build,
      'the store turned',
      swapEnds(hardware(build), 'store.+', 'store.-'),
      [{ part: 'store' }],
      { says: ['store'] },
    ),
  ),
  seed(
    'capacitor-over-voltage',
    'reef-strip',
    'the store for 4 V',
    set('store', 'volts', '4 V'),
    [{ part: 'store' }],
    { says: ['store'] },
  ),
];

export const PULL_SEEDS: readonly MakeSeeds[] = [pullUpMissing, pullUpStrong, capacitors];
