/** Faults of I2C and SPI. */
import { buttonOn, code, lampOn } from '../additions';
import { addPart, addWire, moveEnd, rewrite, set, swapEnds } from '../mutate';
import type { Seed } from '../seed';
import { type MakeSeeds, seed } from './book';

const busPins: MakeSeeds = ({ hardware }) => {
  const tide = hardware('tide-clock');
  const log = hardware('log-book');
  const watch = hardware('night-watch');
  return [
    seed(
      'bus-pins-wrong',
      'tide-clock',
      'SDA and SCL exchanged',
      swapEnds(tide, 'SDA', 'SCL'),
      [{ wire: 'SDA' }, { wire: 'SCL' }],
      { says: ['screen'] },
    ),
    seed(
      'bus-pins-wrong',
      'tide-clock',
      'the bus on A2 and A3',
      [...moveEnd(tide, 'SDA', 'A2'), ...moveEnd(tide, 'SCL', 'A3')],
      [{ wire: 'A2' }, { wire: 'A3' }],
      { says: ['screen'], besides: ['idle-wire'] },
    ),
    seed(
      'bus-pins-wrong',
      'tide-clock',
      'the wiring of an Uno on a Mega',
      [{ path: ['board'], value: 'mega-2560' }, ...moveEnd(tide, 'SDA', 'A4'), ...moveEnd(tide, 'SCL', 'A5')],
      [{ wire: 'A4' }, { wire: 'A5' }],
      { says: ['screen', 'A4'], besides: ['idle-wire'] },
    ),
    seed(
      'bus-pins-wrong',
      'tide-clock',
      'the wiring of an Uno on a Leonardo',
      [{ path: ['board'], value: 'leonardo' }, ...moveEnd(tide, 'SDA', 'A4'), ...moveEnd(tide, 'SCL', 'A5')],
      [{ wire: 'A4' }, { wire: 'A5' }],
      { says: ['screen', 'A5'], besides: ['idle-wire'] },
    ),
    seed(
      'bus-pins-wrong',
      'ferry-board',
      'SDA and SCL exchanged',
      swapEnds(hardware('ferry-board'), 'D1', 'D2'),
      [{ wire: 'D1' }, { wire: 'D2' }],
      { says: ['screen'] },
    ),
    seed(
      'bus-pins-wrong',
      'greenhouse',
      'SDA and SCL exchanged',
      swapEnds(hardware('greenhouse'), 'GP4', 'GP5'),
      [{ wire: 'GP4' }, { wire: 'GP5' }],
      { says: ['soil'] },
    ),
    seed(
      'bus-pins-wrong',
      'log-book',
      'MOSI and MISO exchanged',
      swapEnds(log, 'D11', 'D12'),
      [{ wire: 'D11' }, { wire: 'D12' }],
      { says: ['card'] },
    ),
    seed(
      'bus-pins-wrong',
      'log-book',
      'the clock on D9',
      moveEnd(log, 'D13', 'D9'),
      { wire: 'D9' },
      { says: ['card', 'D9'], besides: ['idle-wire'] },
    ),
    seed(
      'bus-pins-wrong',
      'night-watch',
      'the SPI pins of an Uno on a Mega',
      [...moveEnd(watch, 'D52', 'D13'), ...moveEnd(watch, 'D51', 'D11'), ...moveEnd(watch, 'D50', 'D12')],
      [{ wire: 'D13' }, { wire: 'D11' }, { wire: 'D12' }],
      { says: ['clock'], besides: ['idle-wire'] },
    ),
  ];
};

const addressMistaken: MakeSeeds = () => {
  const inCode = (build: string, find: string, put: string, line: string, address: string): Seed =>
    seed(
      'bus-address-mistaken',
      build,
      `"${put}" in the sketch`,
      rewrite(find, put),
      [{ line }, { line: put }],
      { says: [address] },
    );
  const onPaper = (build: string, part: string, address: string, line: string): Seed =>
    seed(
      'bus-address-mistaken',
      build,
      `${part} declared at ${address}`,
      set(part, 'address', address),
      [{ part }, { line }],
      {},
    );
  return [
    inCode('tide-clock', 'CLOCK_CHIP = 0x68;', 'CLOCK_CHIP = 0x57;', 'beginTransmission(', '0x57'),
    inCode('tide-clock', 'CLOCK_CHIP = 0x68;', 'CLOCK_CHIP = 0x69;', 'beginTransmission(', '0x69'),
    inCode('tide-clock', 'screen(0x27, 16, 2)', 'screen(0x3F, 16, 2)', 'screen(', '0x3F'),
    onPaper('tide-clock', 'clock', '0x6F', 'beginTransmission('),
    onPaper('tide-clock', 'screen', '0x3F', 'screen('),
    inCode('greenhouse', 'soilAddress = 0x36;', 'soilAddress = 0x37;', 'beginTransmission(', '0x37'),
    inCode('greenhouse', 'soilAddress = 0x36;', 'soilAddress = 54 + 20;', 'beginTransmission(', '0x4A'),
    onPaper('greenhouse', 'soil', '0x20', 'beginTransmission('),
    onPaper('greenhouse', 'soil', '0x39', 'beginTransmission('),
  ];
};

const addressShared: MakeSeeds = () => {
  const second = (build: string, first: string, kind: string, address: string, right = false): Seed =>
    seed(
      'bus-address-shared',
      build,
      `a second device at ${address}`,
      [
        addPart('twin', { kind, supply: '3.3-5', address, pullUps: false, purpose: 'x' }),
        ...['+', '-', 'sda', 'scl'].map((end) => addWire({ from: `${first}.${end}`, to: `twin.${end}` })),
      ],
      [{ part: 'twin' }, { part: first }],
      right ? { silent: true } : { says: ['twin'] },
    );
  return [
    seed(
      'bus-address-shared',
      'tide-clock',
      'both at 0x27',
      set('clock', 'address', '0x27'),
      [{ part: 'clock' }, { part: 'screen' }],
      { says: ['clock', 'screen'], besides: ['bus-address-mistaken'] },
    ),
    seed(
      'bus-address-shared',
      'tide-clock',
      'both at 0x68',
      set('screen', 'address', '0x68'),
      [{ part: 'clock' }, { part: 'screen' }],
      { says: ['clock', 'screen'], besides: ['bus-address-mistaken'] },
    ),
    second('tide-clock', 'screen', 'i2c-device', '0x27'),
    second('tide-clock', 'clock', 'i2c-display', '0x68'),
    second('greenhouse', 'soil', 'i2c-device', '0x36'),
    second('greenhouse', 'soil', 'i2c-display', '0x36'),
    second('ferry-board', 'screen', 'i2c-display', '0x3C'),
    second('ferry-board', 'screen', 'i2c-device', '0x3C'),
    second('tide-clock', 'screen', 'i2c-device', '0x50', true),
    second('greenhouse', 'soil', 'i2c-device', '0x37', true),
  ];
};

/** A pin of an open bus that is used otherwise as well. */
const twoRoles: MakeSeeds = () => {
  const both = (
    build: string,
    about: string,
    edits: Seed['edits'],
    line: string,
    says: string,
    besides: readonly string[] = [],
  ): Seed => seed('pin-in-two-roles', build, about, edits, { line }, { says: [says], besides });
  const lamp = (number: string): Seed['edits'] =>
    code({
      setup: `pinMode(${number}, OUTPUT);`,
      loop: `digitalWrite(${number}, HIGH);\n  digitalWrite(${number}, LOW);`,
    });
  return [
    both(
      'tide-clock',
      'A4 read beside the bus',
      code({ loop: 'if (analogRead(A4) > 700) return;' }),
      'analogRead(A4)',
      'A4',
    ),
    both(
      'tide-clock',
      'A5 read beside the bus',
      code({ loop: 'if (analogRead(A5) > 700) return;' }),
      'analogRead(A5)',
      'A5',
    ),
    both('tide-clock', 'A5 driven beside the bus', lamp('A5'), '(A5', 'A5'),
    both('greenhouse', 'GP4 driven beside the bus', lamp('4'), '(4', 'GP4'),
    both('log-book', 'D12 as a lamp', lamp('12'), '(12', 'D12', ['pin-over-absolute', 'drivers-meet']),
    both('log-book', 'D13 as a lamp', lamp('LED_BUILTIN'), '(LED_BUILTIN', 'D13'),
    both('night-watch', 'D51 as a lamp', lamp('51'), '(51', 'D51'),
    both('scoreboard', 'nothing on 0: a Leonardo’s Serial is elsewhere', [], '', ''),
    both('ticket-reader', 'D1 driven beside the port', lamp('1'), '(1', 'D1'),
    both('chart-room', 'D18 driven beside the port', lamp('18'), '(18', 'D18'),
  ].filter(({ edits }) => edits.length > 0);
};

const selectInput: MakeSeeds = ({ hardware }) => {
  const log = hardware('log-book');
  const moved = [rewrite('cardSelect = 10;', 'cardSelect = 9;'), ...moveEnd(log, 'D10', 'D9')];
  const door = (mode: string, at: 'setup' | 'loop'): Seed =>
    seed(
      'slave-select-input',
      'log-book',
      `${mode} for a door at D10 in ${at}`,
      [
        ...moved,
        ...(at === 'loop'
          ? code({ loop: `pinMode(10, ${mode});\n  if (digitalRead(10) == LOW) return;` })
          : [
              rewrite(
                '  digitalWrite(okLamp, ready ? HIGH : LOW);\n',
                `  digitalWrite(okLamp, ready ? HIGH : LOW);\n  pinMode(10, ${mode});\n`,
              ),
              ...code({ loop: 'if (digitalRead(10) == LOW) return;' }),
            ]),
        ...buttonOn('D10', 'card.-'),
        ...(mode === 'INPUT'
          ? [
              addPart('Rup', { kind: 'resistor', value: '10k', purpose: 'x' }),
              addWire({ path: ['knock.1', 'Rup', 'plus.4'] }),
            ]
          : []),
      ],
      { line: `pinMode(10, ${mode})` },
      { says: ['D10'], besides: ['output-shorted'] },
    );
  const mega = (mode: string, at: 'setup' | 'loop', number: string): Seed =>
    seed(
      'slave-select-input',
      'night-watch',
      `${mode} for a door at D53 in ${at}, written ${number}`,
      [
        ...(at === 'loop'
          ? code({ loop: `pinMode(${number}, ${mode});\n  if (digitalRead(${number}) == LOW) return;` })
          : [
              rewrite('  SPI.begin();\n', `  SPI.begin();\n  pinMode(${number}, ${mode});\n`),
              ...code({ loop: `if (digitalRead(${number}) == LOW) return;` }),
            ]),
        ...buttonOn('D53', 'clock.-'),
      ],
      { line: `pinMode(${number}, ${mode})` },
      // SPI.begin makes the pin an output first, and the door shorts it at that moment: a truth of its own.
      { says: ['D53'], besides: ['output-shorted'] },
    );
  return [
    ...[
      door('INPUT_PULLUP', 'setup'),
      door('INPUT_PULLUP', 'loop'),
      door('INPUT', 'setup'),
      door('INPUT', 'loop'),
    ],
    ...[
      mega('INPUT_PULLUP', 'setup', '53'),
      mega('INPUT_PULLUP', 'loop', '53'),
      mega('INPUT_PULLUP', 'setup', 'SS'),
      mega('INPUT_PULLUP', 'loop', 'PIN_SPI_SS'),
    ],
    seed(
      'slave-select-input',
      'night-watch',
      'a lamp at D53',
      [
        ...code({ setup: 'pinMode(53, OUTPUT);', loop: 'digitalWrite(53, HIGH);' }),
        ...lampOn('D53', 'clock.-'),
      ],
      [],
      { silent: true },
    ),
  ];
};

export const BUS_SEEDS: readonly MakeSeeds[] = [
  busPins,
  addressMistaken,
  addressShared,
  twoRoles,
  selectInput,
];
