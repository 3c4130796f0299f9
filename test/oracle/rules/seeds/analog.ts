/** Faults of analog inputs: a weak source beside another channel, a reference that is fed and not chosen. */
import { code } from '../additions';
import { addPart, addWire } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';

/** Builds that measure already, with a further channel and both rails within reach. */
const METERED = [
  ['tide-column', 'A5', 'float.1', 'float.2'],
  ['weather-mast', 'A3', 'plus.6', 'minus.6'],
  ['crane', 'A10', 'stick.+', 'stick.-'],
  ['reef-strip', 'A5', 'knob.1', 'knob.2'],
  ['log-book', 'A5', 'plus.4', 'card.-'],
  ['engine-room', 'A3', 'plus.5', 'minus.5'],
] as const;

const weak: MakeSeeds = () =>
  METERED.flatMap(([build, pin, plus, minus]): Seed[] => {
    const second = code({ loop: `if (analogRead(${pin}) > 1000) return;` });
    const dial = (value: string): SeedEdit[] => [
      ...second,
      addPart('dial', { kind: 'potentiometer', value, purpose: 'x' }),
      ...[
        addWire({ from: plus, to: 'dial.1' }),
        addWire({ from: pin, to: 'dial.wiper' }),
        addWire({ from: 'dial.2', to: minus }),
      ],
    ];
    const divider = (value: string): SeedEdit[] => [
      ...second,
      addPart('Rup', { kind: 'resistor', value, purpose: 'x' }),
      addPart('Rdn', { kind: 'resistor', value, purpose: 'x' }),
      addWire({ path: [plus, 'Rup', 'Rdn', minus] }),
      addWire({ from: pin, to: 'Rup.2' }),
    ];
    return [
      seed(
        'adc-source-weak',
        build,
        'a knob of 100 k on a second channel',
        dial('100k'),
        [{ line: `analogRead(${pin})` }],
        { says: [pin] },
      ),
      seed(
        'adc-source-weak',
        build,
        'a divider of twice 47 k on a second channel',
        divider('47k'),
        [{ line: `analogRead(${pin})` }],
        { says: [pin] },
      ),
      seed('adc-source-weak', build, 'a knob of 33 k on a second channel', dial('33k'), [], { silent: true }),
      seed('adc-source-weak', build, 'a divider of twice 18 k on a second channel', divider('18k'), [], {
        silent: true,
      }),
    ];
  });

const fed: MakeSeeds = () => [
  ...METERED.flatMap(([build, , plus]): Seed[] => [
    seed('aref-fed', build, '3.3 V on AREF', addWire({ from: '3V3', to: 'AREF' }), [{ wire: 'AREF' }], {
      says: ['AREF', '3V3'],
    }),
    seed(
      'aref-fed',
      build,
      'the upper rail on AREF',
      addWire({ from: plus, to: 'AREF' }),
      [{ wire: 'AREF' }],
      { says: ['AREF'] },
    ),
    seed(
      'aref-fed',
      build,
      '3.3 V on AREF, and chosen',
      [addWire({ from: '3V3', to: 'AREF' }), ...code({ setup: 'analogReference(EXTERNAL);' })],
      [],
      { silent: true },
    ),
  ]),
];

export const ANALOG_SEEDS: readonly MakeSeeds[] = [weak, fed];
