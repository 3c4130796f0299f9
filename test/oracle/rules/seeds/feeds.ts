/** Faults of how much a supply gives to a part or to the board. */
import { adapter } from '../additions';
import { moveEnd, set } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';
import { ROOMS } from './reset';

/** A supply's volts changed, or the rail a part is fed from. */
const change = (
  rule: string,
  build: string,
  part: string,
  edits: SeedEdit | readonly SeedEdit[],
  about: string,
  more: { besides?: readonly string[]; silent?: true } = {},
): Seed =>
  seed(rule, build, about, edits, more.silent ? [] : [{ part }], {
    ...(more.silent ? {} : { says: [part] }),
    ...more,
  });

const tooHigh: MakeSeeds = ({ hardware }) => [
  change('supply-too-high', 'reef-strip', 'reef', set('feed', 'volts', '12 V'), '12 V for the strip', {
    besides: ['capacitor-over-voltage', 'strip-level', 'level-too-low'],
  }),
  change(
    'supply-too-high',
    'reef-strip',
    'reef',
    set('feed', 'volts', '5.1 V'),
    '5.1 V and 5 % for the strip',
    { besides: ['strip-level', 'level-too-low'] },
  ),
  change('supply-too-high', 'telegraph', 'pointer', set('feed', 'volts', '9 V'), '9 V for the servo', {
    besides: ['level-too-low'],
  }),
  change('supply-too-high', 'lock-gate', 'gate', set('cells', 'cells', 6), 'six cells for the servo', {
    besides: ['level-too-low'],
  }),
  change('supply-too-high', 'tide-clock', 'clock', set('clock', 'supply', '3.3'), 'a 3.3 V clock on 5 V', {
    besides: ['level-too-high', 'level-too-low'],
  }),
  change('supply-too-high', 'log-book', 'card', set('card', 'supply', '3.3'), 'a 3.3 V card slot on 5 V', {
    besides: ['level-too-high', 'level-too-low'],
  }),
  change('supply-too-high', 'pilot-radio', 'radio', set('radio', 'supply', '3.3'), 'a 3.3 V radio on 5 V', {
    besides: ['level-too-high', 'level-too-low'],
  }),
  change(
    'supply-too-high',
    'ticket-reader',
    'reader',
    set('reader', 'supply', '3.3'),
    'a 3.3 V reader on 5 V',
    { besides: ['level-too-high', 'level-too-low'] },
  ),
  change(
    'supply-too-high',
    'pump-house',
    'module',
    moveEnd(hardware('pump-house'), '5V', 'cells.+').concat(set('cells', 'cells', 8)),
    'the module on the pump’s twelve volts',
    { besides: ['grounds-apart', 'level-too-low'] },
  ),
  change(
    'supply-too-high',
    'reef-strip',
    'reef',
    set('feed', 'volts', '5.04 V'),
    '5.04 V and 5 % for the strip, which takes 5.3 V',
    { silent: true },
  ),
];

const tooLow: MakeSeeds = ({ hardware }) => [
  change('supply-too-low', 'ferry-board', 'screen', set('screen', 'supply', '5'), 'a 5 V display on 3.3 V'),
  change('supply-too-low', 'greenhouse', 'soil', set('soil', 'supply', '5'), 'a 5 V sensor on 3.3 V'),
  change('supply-too-low', 'sound-post', 'player', set('player', 'supply', '5'), 'a 5 V player on 3.3 V'),
  change(
    'supply-too-low',
    'depth-sounder',
    'sounder',
    moveEnd(hardware('depth-sounder'), '5V', '3V3'),
    'the ranger on 3.3 V',
    { besides: ['level-too-low'] },
  ),
  change(
    'supply-too-low',
    'fog-choir',
    'eye',
    moveEnd(hardware('fog-choir'), '5V', '3V3'),
    'the ranger on 3.3 V',
  ),
  change(
    'supply-too-low',
    'weather-mast',
    'screen',
    moveEnd(hardware('weather-mast'), '5V', '3V3'),
    'the display on 3.3 V',
    { besides: ['level-too-high'] },
  ),
  change('supply-too-low', 'lock-gate', 'gate', set('cells', 'cells', 2), 'two cells for the servo', {
    besides: ['level-too-high'],
  }),
  change('supply-too-low', 'telegraph', 'pointer', set('feed', 'volts', '3 V'), '3 V for the servo', {
    besides: ['level-too-high'],
  }),
  change('supply-too-low', 'winch', 'bridge', set('feed', 'volts', '3 V'), '3 V for the bridge', {
    besides: ['level-too-high'],
  }),
  change('supply-too-low', 'telegraph', 'pointer', set('feed', 'volts', '5.2 V'), '5.2 V for the servo', {
    silent: true,
  }),
];

const fedTooHigh: MakeSeeds = () => [
  change(
    'board-fed-too-high',
    'safe-tilt',
    'feed',
    {
      path: ['parts', 'feed'],
      value: { kind: 'power-adapter', volts: '24 V', maxCurrent: '1 A', purpose: 'x' },
    },
    '24 V on RAW',
    { besides: ['regulator-hot'] },
  ),
  change('board-fed-too-high', 'map-drawer', 'cells', set('cells', 'cells', 16), 'sixteen cells on RAW', {
    besides: ['regulator-hot'],
  }),
  ...ROOMS.filter(([build]) => !['crane', 'tide-column', 'bell-buoy', 'fog-choir'].includes(build)).map(
    ([build, , ground, rail]) =>
      change(
        'board-fed-too-high',
        build,
        'feeder',
        adapter('feeder', '9 V', rail, ground),
        '9 V on the 5 V rail',
        { besides: ['supply-too-high', 'supply-over', 'level-too-high'] },
      ),
  ),
  ...(
    [
      ['beacon-and-horn', 'VIN', 'beacon.cathode', '24 V', false],
      ['turnstile', 'VIN', 'tenth.cathode', '30 V', false],
      ['signal-box', 'VSYS', 'GND', '9 V', false],
      ['beacon-and-horn', 'VIN', 'beacon.cathode', '9 V', true],
      ['signal-box', 'VSYS', 'GND', '4.5 V', true],
    ] as const
  ).map(([build, pin, ground, volts, right]) =>
    change(
      'board-fed-too-high',
      build,
      'feeder',
      adapter('feeder', volts, pin, ground),
      `${volts} on ${pin}`,
      right ? { silent: true } : { besides: ['regulator-hot'] },
    ),
  ),
];

const fedTooLow: MakeSeeds = () => [
  change(
    'board-fed-too-low',
    'safe-tilt',
    'feed',
    { path: ['parts', 'feed'], value: { kind: 'coin-cell', purpose: 'x' } },
    'a coin cell on RAW',
    { besides: ['supply-over', 'regulator-starved'] },
  ),
  change('board-fed-too-low', 'map-drawer', 'cells', set('cells', 'cells', 2), 'two cells on RAW', {
    besides: ['regulator-starved', 'gate-not-full'],
  }),
  ...(
    [
      ['beacon-and-horn', 'VIN', 'beacon.cathode', '5 V'],
      ['quay-lights', 'VIN', 'stop.cathode', '4.5 V'],
      ['turnstile', 'VIN', 'tenth.cathode', '5 V'],
      ['range-lights', 'VIN', 'front.cathode', '6 V'],
      ['tide-column', 'VIN', 'float.2', '5 V'],
      ['fog-choir', 'VIN', 'eye.-', '3.3 V'],
      ['crane', 'VIN', 'stick.-', '5 V'],
      ['scoreboard', 'VIN', 'p4.cathode', '5 V'],
      ['beacon-and-horn', 'VIN', 'beacon.cathode', '9 V'],
      ['crane', 'VIN', 'stick.-', '7.5 V'],
    ] as const
  ).map(([build, pin, ground, volts]) =>
    change(
      'board-fed-too-low',
      build,
      'feeder',
      adapter('feeder', volts, pin, ground),
      `${volts} on ${pin}`,
      ['9 V', '7.5 V'].includes(volts)
        ? { silent: true }
        : { besides: ['regulator-starved', 'supply-too-low'] },
    ),
  ),
];

export const FEED_SEEDS: readonly MakeSeeds[] = [tooHigh, tooLow, fedTooHigh, fedTooLow];
