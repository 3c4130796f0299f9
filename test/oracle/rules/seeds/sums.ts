/** Faults of sums: too much together, too many, too dim, too bright. */
import { code, lampOn } from '../additions';
import { addPart, addWire, set } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';
import { lampRuns, names } from './lamps';
import { ROOMS } from './reset';

/** Resistors from many pins to one rail, all driven at once. */
function loads(numbers: readonly string[], far: string, ohms: string, level: 'HIGH' | 'LOW'): SeedEdit[] {
  return [
    ...code({
      top: `const uint8_t bank[] = { ${numbers.join(', ')} };`,
      setup: `for (uint8_t pin : bank) {\n    pinMode(pin, OUTPUT);\n    digitalWrite(pin, ${level});\n  }`,
    }),
    ...numbers.flatMap((number, index) => [
      addPart(`Rb${index}`, { kind: 'resistor', value: ohms, power: '1 W', purpose: 'x' }),
      addWire({ path: [/^A/.test(number) ? number : `D${number}`, `Rb${index}`, far] }),
    ]),
  ];
}

const range = (from: number, to: number, ...without: readonly number[]): string[] =>
  Array.from({ length: to - from + 1 }, (_, index) => from + index)
    .filter((number) => !without.includes(number))
    .map(String);

/** A port group of the ATmega328P takes 100 mA to ground and gives 150 mA: 5 V over 270 + 25 ohm are 17 mA a pin. */
const groupOver: MakeSeeds = () =>
  (
    [
      ['turnstile', range(5, 12, 6), 'plus', 'LOW'],
      ['fog-choir', range(5, 11, 9), 'eye.+', 'LOW'],
      ['boiler-watch', range(5, 12, 7, 10), 'drum.+', 'LOW'],
      ['pilot-radio', ['5', '7', '8', '9', '12', '13'], 'radio.+', 'LOW'],
      ['tide-clock', range(5, 12), 'screen.+', 'LOW'],
      ['bell-buoy', range(5, 11), 'striker.coil-1', 'LOW'],
      ['beacon-and-horn', [...range(3, 6), '9', '10', '11', '12', '13'], 'plus', 'LOW'],
      ['winch', ['3', '5', '6', '7', '9', '10', '11', '13'], 'plus', 'LOW'],
    ] as const
  ).flatMap(([build, numbers, far, level]): Seed[] => {
    const rail: SeedEdit[] =
      far === 'plus'
        ? [
            addPart('plus', { kind: 'wire-joint', style: 'breadboard', purpose: 'x' }),
            addWire({ from: '5V', to: 'plus.1' }),
          ]
        : [];
    const end = far === 'plus' ? 'plus.2' : far;
    const enough = ['fog-choir', 'boiler-watch', 'pilot-radio', 'bell-buoy'].includes(build) ? '240' : '270';
    const places = ['pinMode(pin, OUTPUT)', 'digitalWrite(pin, LOW)'].map((line) => ({ line }));
    return [
      seed(
        'group-over',
        build,
        `${numbers.length} pins that take 17 mA each to ground`,
        [...rail, ...loads(numbers, end, enough, level)],
        places,
        { besides: ['total-over', 'pin-over-recommended', 'resistor-too-hot'] },
      ),
      seed(
        'group-over',
        build,
        `${numbers.length} pins that take 5 mA each to ground`,
        [...rail, ...loads(numbers, end, '1k', level)],
        [],
        { silent: true },
      ),
    ];
  });

/** 200 mA is the ATmega’s total, 60 mA that of the R4’s chip. */
const totalOver: MakeSeeds = () =>
  (
    [
      ['turnstile', [...range(3, 12, 6), 'A0', 'A1', 'A2', 'A3'], 'tenth.cathode', '240', 'HIGH'],
      ['fog-choir', [...range(2, 11, 9), 'A0', 'A1', 'A2', 'A3'], 'eye.-', '240', 'HIGH'],
      ['bell-buoy', [...range(2, 11), 'A0', 'A1', 'A2'], 'Q1.emitter', '240', 'HIGH'],
      ['tide-clock', [...range(2, 12, 4), 'A0', 'A1', 'A2', 'A3'], 'screen.-', '240', 'HIGH'],
      [
        'winch',
        ['3', '5', '6', '7', '9', '10', '11', '13', 'A0', 'A1', 'A2', 'A3', 'A4'],
        'up.2',
        '240',
        'HIGH',
      ],
      [
        'range-lights',
        [...range(2, 12, 4, 8, 9), 'A0', 'A1', 'A2', 'A3', 'A4'],
        'front.cathode',
        '240',
        'HIGH',
      ],
      [
        'guest-counter',
        [...range(3, 12, 8), 'A0', 'A1', 'A2', 'A3', 'A4', '0', '1'],
        'even.cathode',
        '1k1',
        'HIGH',
      ],
      ['star-wall', range(37, 49), 's8.cathode', '240', 'HIGH'],
    ] as const
  ).flatMap(([build, numbers, far, ohms, level]): Seed[] => [
    seed(
      'total-over',
      build,
      `${numbers.length} pins at once`,
      loads(numbers, far, ohms, level),
      ['pinMode(pin, OUTPUT)', 'digitalWrite(pin, HIGH)'].map((line) => ({ line })),
      { besides: ['group-over', 'pin-over-recommended'] },
    ),
    seed(
      'total-over',
      build,
      `${numbers.length} pins at once with ten times the ohms`,
      loads(numbers, far, ohms === '1k1' ? '10k' : '2k4', level),
      [],
      { silent: true },
    ),
  ]);

const lampDim: MakeSeeds = (book) =>
  lampRuns(names(book), book.hardware).flatMap(({ build, resistor, lamp }): Seed[] => [
    seed('lamp-dim', build, `${lamp} behind 100 k`, set(resistor, 'value', '100k'), [{ part: lamp }], {
      says: [lamp],
    }),
  ]);

const lampOver: MakeSeeds = () => [
  ...ROOMS.map(([build, , ground, rail]) =>
    seed(
      'lamp-over-current',
      build,
      'a lamp on the rail behind 68 ohm',
      lampOn(rail, ground, '68'),
      [{ part: 'extra' }],
      { says: ['extra'] },
    ),
  ),
  ...ROOMS.slice(0, 5).map(([build, , ground, rail]) =>
    seed('lamp-over-current', build, 'a lamp on the rail behind 220 ohm', lampOn(rail, ground, '220'), [], {
      silent: true,
    }),
  ),
  ...(
    [
      ['winch', 'feed.+', 'bridge.-'],
      ['strongbox', 'feed.+', 'Q1.source'],
      ['cannon-deck', 'feed.+', 'driver.-'],
    ] as const
  ).map(([build, plus, minus]) =>
    seed(
      'lamp-over-current',
      build,
      'a lamp on 12 V behind 220 ohm',
      lampOn(plus, minus, '220'),
      [{ part: 'extra' }],
      { says: ['extra'], besides: ['resistor-too-hot'] },
    ),
  ),
  seed(
    'lamp-over-current',
    'stage-cue',
    'the cue’s lamp behind 82 ohm',
    set('Rcue', 'value', '82'),
    [{ part: 'cue' }],
    { says: ['cue'], besides: ['contact-over', 'resistor-too-hot', 'supply-over'] },
  ),
];

const tooMany: MakeSeeds = () => {
  const dimmed = (build: string, numbers: readonly string[]): Seed =>
    seed(
      'outputs-too-many',
      build,
      `${numbers.length} pins dimmed`,
      code({
        top: `const uint8_t bank[] = { ${numbers.join(', ')} };`,
        setup: 'for (uint8_t pin : bank) analogWrite(pin, 40);',
      }),
      [{ line: 'analogWrite(pin' }],
      { besides: ['unwired-pin', 'pin-taken', 'pin-in-two-roles'] },
    );
  const servos = (build: string, numbers: readonly string[]): Seed =>
    seed(
      'outputs-too-many',
      build,
      `${numbers.length} servos`,
      code({
        top: `#include <Servo.h>\nconst uint8_t bank[] = { ${numbers.join(', ')} };\nServo arms[${numbers.length}];`,
        setup: `for (uint8_t i = 0; i < ${numbers.length}; i++) arms[i].attach(bank[i]);`,
      }),
      [{ line: '.attach(bank' }],
      { besides: ['unwired-pin', 'timer-shared'] },
    );
  return [
    dimmed('mooring-post', ['0', '1', '4', '5', '7', '10', '2']),
    dimmed('mooring-post', ['0', '1', '4', '5', '7', '10', '2', '20']),
    dimmed('porthole', range(8, 18)),
    dimmed('light-tower', [
      '2',
      '5',
      '12',
      '13',
      '14',
      '15',
      '16',
      '17',
      '18',
      '19',
      '21',
      '22',
      '25',
      '26',
      '27',
      '32',
      '33',
    ]),
    servos('turnstile', [...range(3, 12, 6), 'A0', 'A1', 'A2', 'A3', 'A4']),
    servos('beacon-and-horn', [...range(3, 6), ...range(9, 13), 'A0', 'A1', 'A2', 'A3']),
    servos('quay-lights', [...range(7, 13), 'A0', 'A1', 'A2', 'A3', 'A4', 'A5', '2']),
    servos('range-lights', [...range(2, 12, 4, 8, 9), 'A0', 'A1', 'A2', 'A3', 'A4']),
  ];
};

export const SUM_SEEDS: readonly MakeSeeds[] = [groupOver, totalOver, lampDim, lampOver, tooMany];
