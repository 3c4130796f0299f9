/** Faults of levels: between low and high, too low, held by a lamp, driven from two sides. */
import { buttonOn, code } from '../additions';
import { addPart, addWire, rewrite } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { BUTTONS } from '../signals-read';
import { type MakeSeeds, seed } from './book';

const AVR = [
  'beacon-and-horn',
  'lock-gate',
  'pump-house',
  'map-drawer',
  'winch',
  'turnstile',
  'safe-tilt',
  'ticket-digit',
  'cannon-deck',
];

const avrButtons = BUTTONS.filter(({ build }) => AVR.includes(build));

const ON_3V3 = [
  ['signal-box', 'VBUS', 'GP9', '9', 'GND'],
  ['greenhouse', 'VBUS', 'GP9', '9', 'soil.-'],
  ['aquarium-moon', 'VBUS', 'GP9', '9', 'GND'],
  ['pressure-gauge', '5V', 'D9', '9', 'low.cathode'],
  ['test-bench', '5V', 'D9', 'D9', 'GND'],
  ['toy-organ', 'VIN', 'D10', '10', 'cc.2b'],
  ['greenhouse', 'VBUS', 'GP20', '20', 'soil.-'],
  ['signal-box', 'VBUS', 'GP20', '20', 'GND'],
] as const;

const driven = (number: string): SeedEdit[] =>
  code({
    setup: `pinMode(${number}, OUTPUT);`,
    loop: `digitalWrite(${number}, HIGH);\n  digitalWrite(${number}, LOW);`,
  });

const driversMeet: MakeSeeds = () => [
  seed(
    'drivers-meet',
    'ghost-ship',
    'the sensor’s pin made an output',
    [
      rewrite('pinMode(presence, INPUT);', 'pinMode(presence, OUTPUT);'),
      ...code({ loop: 'digitalWrite(presence, LOW);' }),
    ],
    [{ line: 'pinMode(presence' }, { line: 'digitalWrite(presence' }, { line: 'digitalRead(presence' }],
    { says: ['D7'] },
  ),
  seed(
    'drivers-meet',
    'depth-sounder',
    'the echo’s pin made an output',
    [
      rewrite('pinMode(echoPin, INPUT);', 'pinMode(echoPin, OUTPUT);'),
      ...code({ loop: 'digitalWrite(echoPin, HIGH);' }),
      { path: ['wires', 3, 'path'], value: ['sounder.echo', 'IO19'] },
      { path: ['wires', 3, 'colours'] },
      { path: ['wires', 4] },
      { path: ['parts', 'Rtop'] },
      { path: ['parts', 'Rlow'] },
    ],
    [{ line: 'pinMode(echoPin' }, { line: 'digitalWrite(echoPin' }, { line: 'pulseIn' }],
    { says: ['IO19'], besides: ['level-too-high'] },
  ),
  ...(
    [
      ['beacon-and-horn', '10', '12', 'D10', 'D12'],
      ['quay-lights', '8', '9', 'D8', 'D9'],
      ['turnstile', '10', '11', 'D10', 'D11'],
      ['signal-box', '10', '11', 'GP10', 'GP11'],
      ['light-tower', '18', '19', 'IO18', 'IO19'],
      ['star-wall', '42', '43', 'D42', 'D43'],
      ['guest-counter', '5', '6', 'D5', 'D6'],
    ] as const
  ).map(([build, first, second, one, other]) =>
    seed(
      'drivers-meet',
      build,
      `${one} and ${other} joined, one high and one low`,
      [
        ...code({
          setup: `pinMode(${first}, OUTPUT);\n  pinMode(${second}, OUTPUT);`,
          loop: `digitalWrite(${first}, HIGH);\n  digitalWrite(${second}, LOW);`,
        }),
        addWire({ from: one, to: other }),
      ],
      [first, second].flatMap((pin) => [{ line: `pinMode(${pin}` }, { line: `digitalWrite(${pin}` }]),
      { says: [one, other] },
    ),
  ),
];

/** Against a pull-up of 20 k to 50 k a pull-down of 33 k leaves the middle. */
const levelBetween: MakeSeeds = ({ hardware }) =>
  avrButtons
    .filter(({ build, pin }) => hardware(build).wires.some(({ path }) => path?.[0] === pin))
    .flatMap((signal): Seed[] => {
      const down = (value: string): SeedEdit[] => [
        addPart('Rdn9', { kind: 'resistor', value, purpose: 'x' }),
        addWire({ path: [`${signal.part}.1`, 'Rdn9', `${signal.part}.2`] }),
      ];
      return [
        seed(
          'level-between',
          signal.build,
          `a pull-down of 33 k beside ${signal.part}’s pull-up`,
          down('33k'),
          [{ line: signal.use }],
          { says: [signal.pin] },
        ),
        seed('level-between', signal.build, `1 M beside ${signal.part}’s pull-up`, down('1M'), [], {
          silent: true,
        }),
      ];
    });

const levelTooLow: MakeSeeds = () => [
  ...ON_3V3.map(([build, rail, pin, number, ground]) =>
    seed(
      'level-too-low',
      build,
      'a digital part at 5 V on a pin of 3.3 V',
      [
        ...driven(number),
        addPart('U9', { kind: 'serial-device', supply: '5', purpose: 'x' }),
        addWire({ from: rail, to: 'U9.+' }),
        addWire({ from: 'U9.-', to: ground }),
        addWire({ from: pin, to: 'U9.rx' }),
      ],
      [{ part: 'U9' }],
      { says: ['U9', pin] },
    ),
  ),
  seed(
    'level-too-low',
    'guest-counter',
    'a sensor of 3.3 V on a chip that asks for 4 V',
    [
      ...code({ setup: 'pinMode(4, INPUT);', loop: 'if (digitalRead(4) == HIGH) return;' }),
      addPart('eye', { kind: 'pir-sensor', purpose: 'x' }),
      ...[
        addWire({ from: '5V', to: 'eye.+' }),
        addWire({ from: 'eye.-', to: 'even.cathode' }),
        addWire({ from: 'D4', to: 'eye.out' }),
      ],
    ],
    [{ line: 'digitalRead(4)' }, { line: 'pinMode(4' }, { part: 'eye' }],
    { says: ['D4'] },
  ),
];

const stripLevel: MakeSeeds = () =>
  ON_3V3.flatMap(([build, rail, pin, number, ground]): Seed[] => {
    const strip = (plus: string): SeedEdit[] => [
      ...driven(number),
      addPart('chain', { kind: 'addressable-strip', count: 3, purpose: 'x' }),
      addPart('Rdata', { kind: 'resistor', value: '330', purpose: 'x' }),
      ...[
        addWire({ from: plus, to: 'chain.+' }),
        addWire({ from: 'chain.-', to: ground }),
        addWire({ path: [pin, 'Rdata', 'chain.data-in'] }),
      ],
    ];
    return [
      seed('strip-level', build, 'three pixels at 5 V on a pin of 3.3 V', strip(rail), [{ part: 'chain' }], {
        says: ['chain', pin],
        besides: build === 'toy-organ' ? ['supply-too-high'] : [],
      }),
    ];
  });

const lampPulls: MakeSeeds = () =>
  (
    [
      ['turnstile', 'tenth.cathode'],
      ['tide-column', 'float.2'],
      ['range-lights', 'front.cathode'],
      ['stage-cue', 'ready.cathode'],
      ['safe-tilt', 'tilt.2'],
      ['bell-buoy', 'Q1.emitter'],
      ['reef-strip', 'knob.2'],
      ['engine-room', 'minus.5'],
      ['lock-gate', 'top.common'],
      ['beacon-and-horn', 'beacon.cathode'],
      ['winch', 'up.2'],
    ] as const
  ).map(([build, ground]) => {
    const edits = [
      ...code({ setup: 'pinMode(13, INPUT_PULLUP);', loop: 'if (digitalRead(13) == LOW) return;' }),
      ...buttonOn('D13', ground),
    ];
    // The Uno has an amplifier in front of its lamp.
    return ['beacon-and-horn', 'winch'].includes(build)
      ? seed('built-in-lamp-pulls', build, 'a button at D13 of an Uno', edits, [], { silent: true })
      : seed(
          'built-in-lamp-pulls',
          build,
          'a button at D13',
          edits,
          [{ line: 'digitalRead(13)' }, { line: 'pinMode(13' }],
          { says: ['D13'] },
        );
  });

export const LEVEL_SEEDS: readonly MakeSeeds[] = [
  driversMeet,
  levelBetween,
  levelTooLow,
  stripLevel,
  lampPulls,
];
