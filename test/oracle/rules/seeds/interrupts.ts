/** Faults of interrupt lines and of pull-ups that are switched by a level. */
import { code } from '../additions';
import { rewrite } from '../mutate';
import type { Signal } from '../signals';
import { BUTTONS } from '../signals-read';
import { type MakeSeeds, seed } from './book';

const ring = 'volatile bool rung = false;\nvoid ring() { rung = true; }';

const armed = (argument: string) =>
  code({ top: ring, setup: `attachInterrupt(${argument}, ring, FALLING);` });

const signalOf = (build: string, part: string): Signal => {
  const found = BUTTONS.find((one) => one.build === build && one.part === part);
  if (!found) throw new Error(`no signal for ${part} of ${build}`);
  return found;
};

const nameOf = ({ use }: Signal): string => /\((\w+)/.exec(use)?.[1] ?? '';

const noInterrupt: MakeSeeds = () => [
  ...(
    [
      ['winch', 'down'],
      ['safe-tilt', 'tilt'],
      ['safe-tilt', 'key'],
      ['tide-clock', 'setKey'],
      ['crane', 'home'],
      ['ticket-digit', 'clerk'],
      ['cannon-deck', 'fuse'],
    ] as const
  ).map(([build, part]) => {
    const signal = signalOf(build, part);
    return seed(
      'no-interrupt',
      build,
      `a handler for ${part}`,
      armed(`digitalPinToInterrupt(${nameOf(signal)})`),
      { line: 'attachInterrupt(' },
      { says: [signal.pin] },
    );
  }),
  seed(
    'no-interrupt',
    'sluice',
    'a handler for up',
    armed('digitalPinToInterrupt(upPin)'),
    { line: 'attachInterrupt(' },
    { says: ['D5'] },
  ),
  ...(
    [
      ['beacon-and-horn', 'quay'],
      ['quay-lights', 'call'],
      ['signal-box', 'lever'],
      ['light-tower', 'test'],
      ['dock-bell', 'ring'],
    ] as const
  ).map(([build, part]) =>
    seed(
      'no-interrupt',
      build,
      `a handler for ${part}, which has a line`,
      armed(`digitalPinToInterrupt(${nameOf(signalOf(build, part))})`),
      [],
      { silent: true, besides: ['handler-not-in-ram'] },
    ),
  ),
];

const lineMistaken: MakeSeeds = () => [
  ...(
    [
      ['beacon-and-horn', 'quay'],
      ['quay-lights', 'call'],
      ['lock-gate', 'open'],
      ['pump-house', 'float'],
      ['map-drawer', 'drawer'],
      ['winch', 'up'],
    ] as const
  ).flatMap(([build, part]) => {
    const signal = signalOf(build, part);
    return [nameOf(signal), signal.number].map((argument) =>
      seed(
        'interrupt-line-mistaken',
        build,
        `attachInterrupt(${argument}) for ${part}`,
        armed(argument),
        { line: 'attachInterrupt(' },
        { says: [signal.pin] },
      ),
    );
  }),
  seed(
    'interrupt-line-mistaken',
    'turnstile',
    'the pin instead of its line',
    rewrite('digitalPinToInterrupt(beamPin)', 'beamPin'),
    { line: 'attachInterrupt(' },
    { says: ['D2'] },
  ),
  seed(
    'interrupt-line-mistaken',
    'turnstile',
    'the line itself',
    rewrite('digitalPinToInterrupt(beamPin)', '0'),
    [],
    { silent: true },
  ),
];

const isAvr = ({ build }: Signal): boolean =>
  ![
    'signal-box',
    'light-tower',
    'porthole',
    'mooring-post',
    'dock-bell',
    'guest-counter',
    'test-bench',
  ].includes(build);

const pullUpLost: MakeSeeds = () =>
  BUTTONS.filter(isAvr).map((signal) =>
    seed(
      'pull-up-lost',
      signal.build,
      `LOW written to ${signal.part}`,
      {
        find: signal.mode ?? '',
        put: `${signal.mode}  digitalWrite(${/\((\w+)/.exec(signal.mode ?? '')?.[1]}, LOW);\n`,
      },
      [{ line: 'LOW);' }],
      { says: [signal.pin] },
    ),
  );

const levelOnInput: MakeSeeds = () => [
  ...BUTTONS.filter((signal) => !isAvr(signal)).flatMap((signal) =>
    ['HIGH', 'true'].map((level) =>
      seed(
        'level-on-input',
        signal.build,
        `the old way to pull ${signal.part} up, with ${level}`,
        {
          find: signal.mode ?? '',
          put: `${signal.mode?.replace('INPUT_PULLUP', 'INPUT')}  digitalWrite(${/\((\w+)/.exec(signal.mode ?? '')?.[1]}, ${level});\n`,
        },
        [{ line: `, ${level});` }],
        { says: [signal.pin], besides: ['floating-input'] },
      ),
    ),
  ),
  seed(
    'level-on-input',
    'toy-organ',
    'the old way for four keys, which this core knows',
    rewrite(
      'pinMode(key.pin, INPUT_PULLUP);',
      '{\n    pinMode(key.pin, INPUT);\n    digitalWrite(key.pin, HIGH);\n  }',
    ),
    [],
    { silent: true },
  ),
  ...BUTTONS.filter(isAvr)
    .slice(0, 4)
    .map((signal) =>
      seed(
        'level-on-input',
        signal.build,
        `the old way to pull ${signal.part} up, where it works`,
        {
          find: signal.mode ?? '',
          put: `${signal.mode?.replace('INPUT_PULLUP', 'INPUT')}  digitalWrite(${/\((\w+)/.exec(signal.mode ?? '')?.[1]}, HIGH);\n`,
        },
        [],
        { silent: true },
      ),
    ),
];

/** The Zero has one line for D3 and A2 and so on; the R4 for D0 and A1. */
const lineShared: MakeSeeds = () =>
  (
    [
      ['pressure-gauge', 'low.cathode', '3', 'A2', 'D3', 'A2'],
      ['pressure-gauge', 'low.cathode', '8', 'SDA', 'D8', 'SDA'],
      ['pressure-gauge', 'low.cathode', '10', 'A5', 'D10', 'A5'],
      ['pressure-gauge', 'low.cathode', '7', 'A4', 'D7', 'A4'],
      ['pressure-gauge', 'low.cathode', '9', 'SCL', 'D9', 'SCL'],
      ['guest-counter', 'even.cathode', '3', 'A4', 'D3', 'A4'],
      ['guest-counter', 'even.cathode', '0', 'A1', 'D0', 'A1'],
      ['guest-counter', 'even.cathode', 'A3', 'A5', 'A3', 'A5'],
    ] as const
  ).map(([build, ground, first, second, one, other]) =>
    seed(
      'interrupt-line-shared',
      build,
      `handlers on ${one} and ${other}`,
      [
        ...code({
          top: `${ring}\nvolatile bool struck = false;\nvoid strike() { struck = true; }`,
          setup: [first, second]
            .map(
              (pin, index) =>
                `pinMode(${pin}, INPUT_PULLUP);\n  attachInterrupt(digitalPinToInterrupt(${pin}), ${index === 0 ? 'ring' : 'strike'}, FALLING);`,
            )
            .join('\n  '),
        }),
        { path: ['parts', 'k1'], value: { kind: 'push-button', purpose: 'x' } },
        { path: ['parts', 'k2'], value: { kind: 'push-button', purpose: 'x' } },
        { path: ['wires', 0], value: { path: [one, 'k1', ground] }, insert: true },
        { path: ['wires', 0], value: { path: [other, 'k2', ground] }, insert: true },
      ],
      { line: 'attachInterrupt(' },
      { says: [one] },
    ),
  );

export const INTERRUPT_SEEDS: readonly MakeSeeds[] = [
  noInterrupt,
  lineMistaken,
  pullUpLost,
  levelOnInput,
  lineShared,
];
