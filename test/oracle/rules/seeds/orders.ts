/** Faults of order and sharing: arguments, modes, selects, lines of the console. */
import { buttonOn, code, lampOn } from '../additions';
import { addPart, addWire, rewrite, swapEnds } from '../mutate';
import type { Seed } from '../seed';
import type { Signal } from '../signals';
import { BUTTONS } from '../signals-read';
import { type MakeSeeds, seed } from './book';

const selectIdle: MakeSeeds = () =>
  (['CLOCK_SELECT', 'STORE_SELECT', 'PANEL_SELECT'] as const).flatMap((name, index) => {
    const rest = ['CLOCK_SELECT', 'STORE_SELECT', 'PANEL_SELECT'].filter((one) => one !== name);
    const part = ['clock', 'store', 'panel'][index] ?? '';
    return ['', `\n  digitalWrite(${name}, LOW);`, `\n  digitalWrite(${name}, 0);`].map((low) =>
      seed(
        'chip-select-idle',
        'night-watch',
        `${part} is never let go${low === '' ? '' : ', and written low'}`,
        [
          rewrite('{ CLOCK_SELECT, STORE_SELECT, PANEL_SELECT };', `{ ${rest.join(', ')} };`),
          ...code({ setup: `pinMode(${name}, OUTPUT);${low}` }),
        ],
        [{ line: `pinMode(${name}` }, { line: `digitalWrite(${name}` }],
        { says: [part] },
      ),
    );
  });

const consoleLoaded: MakeSeeds = () =>
  (
    [
      ['beacon-and-horn', 'beacon.cathode', 'D0', 'D1'],
      ['quay-lights', 'stop.cathode', 'D0', 'D1'],
      ['turnstile', 'tenth.cathode', 'D0', 'D1'],
      ['winch', 'up.2', 'D0', 'D1'],
      ['range-lights', 'front.cathode', 'D0', 'D1'],
      ['crane', 'stick.-', 'D0', 'D1'],
    ] as const
  ).flatMap(([build, ground, rx, tx], index): Seed[] => [
    seed(
      'console-pin-loaded',
      build,
      'a button on RX',
      [...code({ setup: 'Serial.begin(9600);' }), ...buttonOn(rx, ground)],
      [{ wire: rx }],
      { says: ['knock', rx] },
    ),
    ...(index < 3
      ? [
          seed(
            'console-pin-loaded',
            build,
            'a lamp on TX',
            [...code({ setup: 'Serial.begin(115200);' }), ...lampOn(tx, ground)],
            [{ wire: tx }],
            { says: [tx] },
          ),
        ]
      : []),
  ]);

const disturbed: MakeSeeds = () =>
  ['light-tower', 'harbour-radio'].flatMap((build) =>
    ['36', '39'].flatMap((number) =>
      ['FALLING', 'RISING'].map((edge) =>
        seed(
          'interrupt-disturbed',
          build,
          `a handler on IO${number}, ${edge}`,
          [
            ...code({
              top: 'volatile bool rung = false;\nvoid IRAM_ATTR ring() { rung = true; }',
              setup: `pinMode(${number}, INPUT);\n  attachInterrupt(digitalPinToInterrupt(${number}), ring, ${edge});`,
            }),
            addPart('knock', { kind: 'push-button', purpose: 'x' }),
            addPart('Rup', { kind: 'resistor', value: '10k', purpose: 'x' }),
            addWire({ path: [build === 'light-tower' ? 'eye.1' : '3V3', 'Rup', `IO${number}`] }),
            addWire({ path: ['Rup.2', 'knock', build === 'light-tower' ? 'lantern.cathode' : 'Q1.emitter'] }),
          ],
          [{ line: 'attachInterrupt(' }],
          { says: [`IO${number}`] },
        ),
      ),
    ),
  );

const crossed: MakeSeeds = ({ hardware }) => {
  const fog = hardware('fog-choir');
  const mast = hardware('weather-mast');
  const lcd = (pins: string): Seed =>
    seed(
      'library-pins-crossed',
      'weather-mast',
      `lcd(${pins})`,
      rewrite('lcd(12, 11, 5, 4, 3, 2)', `lcd(${pins})`),
      [{ line: 'lcd(' }],
      { says: ['screen'] },
    );
  return [
    seed(
      'library-pins-crossed',
      'fog-choir',
      'echo before trigger',
      rewrite('ping(TRIGGER, ECHO, 120)', 'ping(ECHO, TRIGGER, 120)'),
      [{ line: 'ping(' }],
      { says: ['eye'] },
    ),
    seed(
      'library-pins-crossed',
      'fog-choir',
      'the numbers exchanged',
      [rewrite('TRIGGER 12', 'TRIGGER 13'), rewrite('ECHO 13', 'ECHO 12')],
      [{ line: 'ping(' }],
      { says: ['eye'] },
    ),
    seed(
      'library-pins-crossed',
      'fog-choir',
      'the wires exchanged',
      swapEnds(fog, 'D12', 'D13'),
      [{ line: 'ping(' }],
      { says: ['eye'] },
    ),
    ...[
      lcd('11, 12, 5, 4, 3, 2'),
      lcd('12, 11, 2, 3, 4, 5'),
      lcd('12, 11, 4, 5, 3, 2'),
      lcd('12, 11, 5, 4, 2, 3'),
    ],
    seed(
      'library-pins-crossed',
      'weather-mast',
      'the wires of d4 and d7 exchanged',
      swapEnds(mast, 'D5', 'D2'),
      [{ line: 'lcd(' }],
      { says: ['screen'] },
    ),
    seed(
      'library-pins-crossed',
      'weather-mast',
      'the wires of enable and select exchanged',
      swapEnds(mast, 'D12', 'D11'),
      [{ line: 'lcd(' }],
      { says: ['screen'] },
    ),
  ];
};

const early = ({ mode = '' }: Signal): string => /\((\w+)/.exec(mode)?.[1] ?? '';

const modeLate: MakeSeeds = () =>
  BUTTONS.filter(({ part }) => part !== 'beam').map((signal) =>
    seed(
      'mode-late',
      signal.build,
      `${signal.part} read before its pull-up is on`,
      code({ setup: `if (digitalRead(${early(signal)}) == LOW) delay(1);` }),
      [{ line: `if (digitalRead(${early(signal)}) == LOW) delay(1)` }],
      { says: [signal.pin] },
    ),
  );

export const ORDER_SEEDS: readonly MakeSeeds[] = [selectIdle, consoleLoaded, disturbed, crossed, modeLate];
