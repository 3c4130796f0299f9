import { moveEnd, rewrite, set, swapEnds } from '../mutate';
import type { Seed } from '../seed';
import { type MakeSeeds, seed } from './book';

const SERIAL = [
  ['chart-room', 'receiver', 'RATE = 9600;', 'RATE = #;', 'Serial1.begin('],
  ['pilot-radio', 'radio', 'radio.begin(19200)', 'radio.begin(#)', 'radio.begin('],
  ['sound-post', 'player', 'PLAYER_BAUD 9600', 'PLAYER_BAUD #', 'Serial2.begin('],
  ['ticket-reader', 'reader', 'kBaud = 9600;', 'kBaud = #;', 'Serial1.begin('],
] as const;

const baud: MakeSeeds = () =>
  SERIAL.flatMap(([build, part, find, put, line]) => [
    ...['115200', '4800'].map((rate) =>
      seed(
        'baud-mismatch',
        build,
        `opened at ${rate}`,
        rewrite(find, put.replace('#', rate)),
        { line },
        { says: [part, rate] },
      ),
    ),
    seed(
      'baud-mismatch',
      build,
      'the module talks at 57600',
      set(part, 'baud', 57600),
      [{ line }, { part }],
      { says: [part, '57600'] },
    ),
  ]);

const uncrossed: MakeSeeds = ({ hardware }) => {
  const ends = (build: string, part: string, rx: string, tx: string): Seed[] => {
    const own = hardware(build);
    const other = swapEnds(own, `${part}.tx`, `${part}.rx`);
    return [
      seed('serial-uncrossed', build, 'TX to TX and RX to RX', other, [{ wire: rx }, { wire: tx }], {
        says: [part],
      }),
      seed(
        'serial-uncrossed',
        build,
        'the board’s ends exchanged',
        swapEnds(own, rx, tx),
        [{ wire: rx }, { wire: tx }],
        { says: [part] },
      ),
    ];
  };
  return [
    ...ends('chart-room', 'receiver', 'D19', 'D18'),
    ...ends('pilot-radio', 'radio', 'D10', 'D11'),
    ...ends('sound-post', 'player', 'IO16', 'IO17'),
    ...ends('ticket-reader', 'reader', 'D0', 'D1'),
    seed(
      'serial-uncrossed',
      'pilot-radio',
      'the numbers exchanged in the sketch',
      [rewrite('RADIO_RX 10', 'RADIO_RX 11'), rewrite('RADIO_TX 11\n', 'RADIO_TX 10\n')],
      [{ wire: 'D10' }, { wire: 'D11' }],
      { says: ['radio'] },
    ),
    seed(
      'serial-uncrossed',
      'pilot-radio',
      'the arguments exchanged',
      rewrite('radio(RADIO_RX, RADIO_TX)', 'radio(RADIO_TX, RADIO_RX)'),
      [{ wire: 'D10' }, { wire: 'D11' }],
      { says: ['radio'] },
    ),
  ];
};

const portWrong: MakeSeeds = ({ hardware }) => {
  const reader = hardware('ticket-reader');
  const only: Seed['edits'] = [
    { find: 'Serial1', put: 'Serial', all: true },
    rewrite('  Serial.begin(9600);\n', ''),
  ];
  return [
    seed(
      'serial-port-wrong',
      'ticket-reader',
      'Serial for the pins 0 and 1',
      only,
      [{ wire: 'D0' }, { wire: 'D1' }, { part: 'reader' }],
      { says: ['reader'] },
    ),
    ...(
      [
        ['micro', 'D0', 'D1'],
        ['zero', 'D0', 'D1'],
        ['uno-r4-minima', 'D0', 'D1'],
        ['pico', 'GP1', 'GP0'],
        ['teensy-4-0', 'D0', 'D1'],
        ['pico-w', 'GP1', 'GP0'],
      ] as const
    ).map(([board, rx, tx]) =>
      seed(
        'serial-port-wrong',
        'ticket-reader',
        `the same on ${board}`,
        [
          ...only,
          { path: ['board'], value: board },
          ...moveEnd(reader, 'D0', rx),
          ...moveEnd(reader, 'D1', tx),
          ...(board.startsWith('pico') || board === 'zero' || board === 'teensy-4-0'
            ? [...moveEnd(reader, '5V', '3V3'), set('reader', 'supply', '3.3-5'), set('Rgate', 'value', '1k')]
            : [set('Rgate', 'value', '1k')]),
          ...(board.startsWith('pico') ? moveEnd(reader, 'D8', 'GP8') : []),
        ],
        [{ wire: rx }, { wire: tx }, { part: 'reader' }],
        { says: ['reader'], besides: ['lamp-dim'] },
      ),
    ),
    seed(
      'serial-port-wrong',
      'ticket-reader',
      'Serial1 never opened',
      [rewrite('  Serial1.begin(kBaud);\n', ''), { find: 'Serial1.', put: 'Serial.', all: true }],
      [{ wire: 'D0' }, { wire: 'D1' }, { part: 'reader' }],
      { says: ['reader'] },
    ),
  ];
};

const softSerial: MakeSeeds = ({ hardware }) => {
  const own = hardware('pilot-radio');
  return (
    [
      ['mega-2560', '2'],
      ['mega-2560', '7'],
      ['mega-2560', '22'],
      ['mega-2560', '19'],
      ['leonardo', '2'],
      ['leonardo', '4'],
      ['leonardo', '12'],
      ['micro', '7'],
      ['micro', '3'],
    ] as const
  ).map(([board, number]) =>
    seed(
      'software-serial-pin',
      'pilot-radio',
      `listens at ${number} of ${board}`,
      [
        { path: ['board'], value: board },
        rewrite('RADIO_RX 10', `RADIO_RX ${number}`),
        ...moveEnd(own, 'D10', `D${number}`),
      ],
      { line: 'radio(' },
      { says: [`D${number}`] },
    ),
  );
};

export const SERIAL_SEEDS: readonly MakeSeeds[] = [baud, uncrossed, portWrong, softSerial];
