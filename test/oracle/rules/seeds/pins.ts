/** Faults of pin numbers, modes and calls. */
import { addWire, dropMode, moveEnd, renumber, rewrite, setMode } from '../mutate';
import type { Seed } from '../seed';
import { DRIVES, LAMPS, type Signal } from '../signals';
import { BUTTONS, METERS } from '../signals-read';
import { type MakeSeeds, seed } from './book';

const at = ({ use, file }: Signal) => ({ line: use, ...(file !== undefined && { file }) });
const modeAt = ({ mode = '', file }: Signal) => ({ line: mode.trim(), ...(file !== undefined && { file }) });
const inBuild = (signals: readonly Signal[], build: string, part: string): Signal => {
  const found = signals.find((signal) => signal.build === build && signal.part === part);
  if (!found) throw new Error(`no signal for ${part} of ${build}`);
  return found;
};

const analogOnly: MakeSeeds = ({ hardware }) => {
  const cases: [Signal, string][] = [
    [inBuild(LAMPS, 'turnstile', 'tenth'), 'A6'],
    [inBuild(LAMPS, 'log-book', 'ok'), 'A7'],
    [inBuild(LAMPS, 'engine-room', 'restart'), 'A6'],
    [inBuild(LAMPS, 'stage-cue', 'curtain'), 'A7'],
    [inBuild(DRIVES, 'bell-buoy', 'Q1'), 'A6'],
    [inBuild(DRIVES, 'map-drawer', 'Q1'), 'A7'],
    [inBuild(DRIVES, 'safe-tilt', 'siren'), 'A6'],
    [inBuild(BUTTONS, 'lock-gate', 'open'), 'A7'],
    [inBuild(BUTTONS, 'map-drawer', 'drawer'), 'A6'],
    [inBuild(BUTTONS, 'safe-tilt', 'key'), 'A7'],
  ];
  return cases.map(([signal, to]) =>
    seed(
      'analog-only-pin',
      signal.build,
      `${signal.part} moved to ${to} in code and wiring`,
      [renumber(signal, to), ...moveEnd(hardware(signal.build), signal.pin, to)],
      [at(signal), modeAt(signal)],
      // A button there has no pull-up either, and that is a truth of its own.
      { says: [to], besides: signal.use.startsWith('digitalRead') ? ['floating-input'] : [] },
    ),
  );
};

const noAdc: MakeSeeds = ({ hardware }) => {
  const cases: [Signal, string, string][] = [
    [inBuild(METERS, 'tide-column', 'float'), '9', 'D9'],
    [inBuild(METERS, 'weather-mast', 'eye'), '8', 'D8'],
    [inBuild(METERS, 'crane', 'stick'), '40', 'D40'],
    [inBuild(METERS, 'reef-strip', 'knob'), '12', 'D12'],
    [inBuild(METERS, 'aquarium-moon', 'knob'), '22', 'GP22'],
    [inBuild(METERS, 'light-tower', 'eye'), '18', 'IO18'],
    [inBuild(METERS, 'pressure-gauge', 'bellows'), '10', 'D10'],
    [inBuild(METERS, 'engine-room', 'heat'), '12', 'D12'],
  ];
  return cases.map(([signal, number, pin]) =>
    seed(
      'no-adc',
      signal.build,
      `${signal.part} measured at ${pin}`,
      [renumber(signal, number), ...moveEnd(hardware(signal.build), signal.pin, pin)],
      at(signal),
      { says: [pin] },
    ),
  );
};

/** analogWrite where a pin can only switch. */
const noPwm: MakeSeeds = ({ hardware }) => {
  const dim = (build: string, part: string, find: string, put: string): Seed => {
    const signal = inBuild([...LAMPS, ...DRIVES], build, part);
    return seed(
      'no-pwm',
      build,
      `${part} dimmed with analogWrite`,
      rewrite(find, put),
      { line: 'analogWrite(' },
      { says: [signal.pin] },
    );
  };
  const away = (
    build: string,
    signalPin: string,
    pin: string,
    find: string,
    put: string,
    line: string,
  ): Seed =>
    seed(
      'no-pwm',
      build,
      `moved from ${signalPin} to ${pin}`,
      [rewrite(find, put), ...moveEnd(hardware(build), signalPin, pin)],
      { line },
      { says: [pin] },
    );
  return [
    dim(
      'beacon-and-horn',
      'beacon',
      'digitalWrite(beaconPin, lit ? HIGH : LOW)',
      'analogWrite(beaconPin, lit ? 90 : 0)',
    ),
    dim('log-book', 'ok', 'digitalWrite(okLamp, ready ? HIGH : LOW)', 'analogWrite(okLamp, ready ? 60 : 0)'),
    dim('boiler-watch', 'alarm', 'digitalWrite(ALARM_LAMP, hot)', 'analogWrite(ALARM_LAMP, hot * 100)'),
    dim('stage-cue', 'ready', 'digitalWrite(READY_OUT, HIGH)', 'analogWrite(READY_OUT, 128)'),
    dim('engine-room', 'restart', 'digitalWrite(runLamp, HIGH)', 'analogWrite(runLamp, 40)'),
    dim('stage-cue', 'curtain', 'digitalWrite(CURTAIN, HIGH)', 'analogWrite(CURTAIN, 128)'),
    away('weather-mast', 'D6', 'D8', 'DUSK_LAMP 6', 'DUSK_LAMP 8', 'analogWrite(DUSK_LAMP'),
    away('engine-room', 'D6', 'D4', 'fan = 6;', 'fan = 4;', 'analogWrite(fan'),
    away('ghost-ship', 'D11', 'D4', '{ 9, 10, 11 }', '{ 9, 10, 4 }', 'analogWrite(pin'),
    away('ghost-ship', 'D9', 'D12', '{ 9, 10, 11 }', '{ 12, 10, 11 }', 'analogWrite(pin'),
  ];
};

const noSuchPin: MakeSeeds = () => {
  const cases: [Signal, string][] = [
    [inBuild(LAMPS, 'beacon-and-horn', 'beacon'), '20'],
    [inBuild(LAMPS, 'turnstile', 'tenth'), '66'],
    [inBuild(LAMPS, 'light-tower', 'lantern'), '24'],
    [inBuild(LAMPS, 'mooring-post', 'lamp'), '23'],
    [inBuild(LAMPS, 'greenhouse', 'dry'), '30'],
    [inBuild(LAMPS, 'guest-counter', 'even'), '88'],
    [inBuild(DRIVES, 'bell-buoy', 'Q1'), '22'],
    [inBuild(DRIVES, 'strongbox', 'Q1'), '70'],
    [inBuild(BUTTONS, 'quay-lights', 'call'), '33'],
    [inBuild(BUTTONS, 'cannon-deck', 'fuse'), '100'],
  ];
  return cases.map(([signal, number]) =>
    seed(
      'no-such-pin',
      signal.build,
      `${signal.part} at ${number}`,
      renumber(signal, number),
      [at(signal), modeAt(signal)],
      {
        says: [number],
        besides: ['idle-wire'],
      },
    ),
  );
};

const modeMissing: MakeSeeds = () =>
  [...LAMPS, ...DRIVES].map((signal) =>
    seed(
      'mode-missing',
      signal.build,
      `the mode of ${signal.part} is not set`,
      dropMode(signal),
      [at(signal), { line: signal.use, file: 'bolt.ino' }],
      {
        says: [signal.pin],
      },
    ),
  );

/** The code speaks of a pin, and the part hangs on none. */
const unwiredPin: MakeSeeds = ({ hardware }) => [
  ...LAMPS.filter(({ build }) =>
    ['beacon-and-horn', 'turnstile', 'boiler-watch', 'light-tower', 'greenhouse'].includes(build),
  ).map((signal) => {
    const parts = hardware(signal.build);
    const wire = parts.wires.findIndex(({ path }) => path?.[0] === signal.pin);
    const resistor = parts.wires[wire]?.path?.[1] ?? '';
    return seed(
      'unwired-pin',
      signal.build,
      `${signal.part} left out of the wiring`,
      [
        ...moveEnd(parts, `${signal.part}.cathode`, 'GND'),
        { path: ['wires', wire] },
        { path: ['parts', resistor] },
        { path: ['parts', signal.part] },
      ],
      modeAt(signal),
      { says: [signal.pin] },
    );
  }),
  ...(
    [
      [inBuild(LAMPS, 'signal-box', 'danger'), '9', 'GP9'],
      [inBuild(LAMPS, 'test-bench', 'pass'), 'D9', 'D9'],
      [inBuild(BUTTONS, 'winch', 'up'), '5', 'D5'],
      [inBuild(BUTTONS, 'porthole', 'key'), '15', 'IO15'],
      [inBuild(DRIVES, 'strongbox', 'Q1'), '41', 'D41'],
    ] as const
  ).map(([signal, number, pin]) =>
    seed(
      'unwired-pin',
      signal.build,
      `${signal.part} is on ${signal.pin}, the code says ${pin}`,
      renumber(signal, number),
      modeAt(signal),
      { says: [pin], besides: ['idle-wire'] },
    ),
  ),
];

/** A wire ends on a pin that the code does not know. */
const idleWire: MakeSeeds = ({ hardware }) => {
  const cases: [Signal, string][] = [
    [inBuild(LAMPS, 'beacon-and-horn', 'beacon'), 'D6'],
    [inBuild(LAMPS, 'mooring-post', 'lamp'), 'IO7'],
    [inBuild(LAMPS, 'greenhouse', 'dry'), 'GP11'],
    [inBuild(BUTTONS, 'quay-lights', 'call'), 'D2'],
    [inBuild(BUTTONS, 'map-drawer', 'drawer'), 'D4'],
    [inBuild(BUTTONS, 'guest-counter', 'count'), 'D3'],
    [inBuild(METERS, 'aquarium-moon', 'knob'), 'GP27'],
    [inBuild(METERS, 'tide-column', 'float'), 'A2'],
    [inBuild(METERS, 'reef-strip', 'knob'), 'A0'],
  ];
  return [
    ...cases.map(([signal, pin]) =>
      seed(
        'idle-wire',
        signal.build,
        `${signal.part} soldered to ${pin} instead of ${signal.pin}`,
        moveEnd(hardware(signal.build), signal.pin, pin),
        { wire: pin },
        { says: [pin], besides: ['unwired-pin'] },
      ),
    ),
    seed(
      'idle-wire',
      'dock-bell',
      'a second key that the code leaves out',
      addWire({ path: ['D1', 'second', 'GND@digital.14'] }),
      { wire: 'D1' },
      { says: ['D1'] },
    ),
  ].map((one) =>
    one.build === 'dock-bell'
      ? { ...one, edits: [{ path: ['parts', 'second'], value: { kind: 'push-button' } }, ...one.edits] }
      : one,
  );
};

const floatingInput: MakeSeeds = () => {
  // The Zero, the Pico and the ESP boards float just as well; the Nucleo's and Bounce's ways are other rules' affair.
  return BUTTONS.map((signal) =>
    seed(
      'floating-input',
      signal.build,
      `${signal.part} without its pull-up`,
      setMode(signal, 'INPUT_PULLUP', 'INPUT'),
      [at(signal), modeAt(signal)],
      { says: [signal.pin] },
    ),
  );
};

/** A button to ground on a pin that drives HIGH. */
const outputShorted: MakeSeeds = () =>
  BUTTONS.filter(({ build, part }) => build !== 'crane' && part !== 'beam').map((signal) =>
    seed(
      'output-shorted',
      signal.build,
      `${signal.part} on an output that is HIGH`,
      rewrite(
        signal.mode ?? '',
        `${(signal.mode ?? '').replace('INPUT_PULLUP', 'OUTPUT')}  digitalWrite(${/\((\w+)/.exec(signal.mode ?? '')?.[1]}, HIGH);\n`,
      ),
      { line: (signal.mode ?? '').trim().replace('INPUT_PULLUP', 'OUTPUT') },
      { says: [signal.pin] },
    ),
  );

export const PIN_SEEDS: readonly MakeSeeds[] = [
  ...[analogOnly, noAdc, noPwm, noSuchPin, modeMissing, unwiredPin, idleWire, floatingInput, outputShorted],
];
