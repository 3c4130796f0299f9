/** Faults of the reset line. */
import { addPart, addWire, moveEnd } from '../mutate';
import { type MakeSeeds, seed } from './book';

/** Builds with a free reset pin, and a ground that a second wire can share. */
const ROOMS: readonly (readonly [build: string, reset: string, ground: string, rail: string])[] = [
  ['beacon-and-horn', 'RST', 'beacon.cathode', '5V'],
  ['quay-lights', 'RST', 'stop.cathode', '5V'],
  ['tide-column', 'RST', 'float.2', 'float.1'],
  ['weather-mast', 'RST', 'minus.6', 'plus.6'],
  ['bell-buoy', 'RST', 'Q1.emitter', 'striker.coil-1'],
  ['crane', 'RST', 'stick.-', 'stick.+'],
  ['turnstile', 'RST', 'tenth.cathode', '5V'],
  ['range-lights', 'RST', 'front.cathode', '5V'],
  ['fog-choir', 'RST', 'eye.-', 'eye.+'],
  ['boiler-watch', 'RST', 'drum.-', 'drum.+'],
];
const button = { kind: 'push-button', purpose: 'starts again' };

const held: MakeSeeds = () =>
  ROOMS.map(([build, reset, ground]) =>
    seed(
      'reset-held',
      build,
      'the reset pin wired to ground',
      addWire({ from: reset, to: ground }),
      { wire: reset },
      { says: [reset] },
    ),
  );

const latched: MakeSeeds = () =>
  ROOMS.map(([build, reset, ground], index) =>
    seed(
      'reset-latched',
      build,
      'a switch that stays where it is put',
      [
        addPart(
          'again',
          index % 2 === 0 ? { kind: 'toggle-switch', purpose: 'x' } : { ...button, action: 'latching' },
        ),
        addWire({ path: [reset, 'again', ground] }),
      ],
      { part: 'again' },
      { says: ['again'] },
    ),
  );

const notGrounded: MakeSeeds = (book) => [
  ...ROOMS.map(([build, reset, , rail]) =>
    seed(
      'reset-not-grounded',
      build,
      'a button from reset to the upper rail',
      [addPart('again', button), addWire({ path: [reset, 'again', rail] })],
      { part: 'again' },
      { says: ['again'] },
    ),
  ),
  seed(
    'reset-not-grounded',
    'engine-room',
    'the button’s far leg on the lamp’s pin run',
    moveEnd(book.hardware('engine-room'), 'minus.2', 'plus.4'),
    { part: 'restart' },
    // The lamp shares that leg, and now has both ends at the upper rail.
    { says: ['restart'], besides: ['lamp-reversed'] },
  ),
  // Reset counts below 0.1 of the supply: 0.5 V against 10 k to 5 V. A resistor of 4k7 leaves 1.6 V, one of 470 0.2 V.
  ...(['4k7', '2k2'] as const).map((value) =>
    seed(
      'reset-not-grounded',
      'beacon-and-horn',
      `a button behind ${value}`,
      [
        addPart('again', button),
        addPart('Rser', { kind: 'resistor', value, purpose: 'x' }),
        addWire({ path: ['RST', 'again', 'Rser', 'beacon.cathode'] }),
      ],
      { part: 'again' },
      { says: ['again'] },
    ),
  ),
  seed(
    'reset-not-grounded',
    'beacon-and-horn',
    'a button behind 220 ohm still resets',
    [
      addPart('again', button),
      addPart('Rser', { kind: 'resistor', value: '220', purpose: 'x' }),
      addWire({ path: ['RST', 'again', 'Rser', 'beacon.cathode'] }),
    ],
    [],
    { silent: true },
  ),
];

export const RESET_SEEDS: readonly MakeSeeds[] = [held, latched, notGrounded];

export { ROOMS };
