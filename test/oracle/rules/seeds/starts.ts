/** Faults of what a load does at the start of the sketch, and of moments that lie ahead of a clock. */
import { code } from '../additions';
import { addPart, addWire, rewrite } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';
import { FREE, type Room } from './rooms';

/** A relay module that acts when low, with a lamp of its own supply behind its contact. */
const relay = ({ pin, ground, rail }: Room): SeedEdit[] => [
  addPart('parade', { kind: 'relay-module', volts: '5', trigger: 'low', purpose: 'x' }),
  addPart('pack', { kind: 'battery', volts: '6', purpose: 'x' }),
  addPart('bulb', { kind: 'filament-lamp', hotOhms: '60 ohm', purpose: 'x' }),
  addWire({ from: pin, to: 'parade.in' }),
  addWire({ from: rail, to: 'parade.+' }),
  addWire({ from: 'parade.-', to: ground }),
  addWire({ path: ['pack.+', 'bulb', 'parade.common'] }),
  addWire({ from: 'parade.no', to: 'pack.-' }),
];

const worked = (number: string): string =>
  `if (millis() > 60000UL) digitalWrite(${number}, LOW);\n  else digitalWrite(${number}, HIGH);`;

const pulsed: MakeSeeds = () => [
  ...FREE.map((room, index) => {
    const wait = ['delay(500);', 'delay(50);', 'delay(2000);', 'delayMicroseconds(9000);'][index % 4] ?? '';
    const { build, number, pin } = room;
    return seed(
      'load-pulsed-at-start',
      build,
      `${pin} low for ${wait}`,
      [
        ...code({
          setup: `pinMode(${number}, OUTPUT);\n  ${wait}\n  digitalWrite(${number}, HIGH);`,
          loop: worked(number),
        }),
        ...relay(room),
      ],
      [{ line: `pinMode(${number}, OUTPUT)` }],
      { says: ['parade', pin] },
    );
  }),
  ...FREE.slice(0, 4).map((room, index) =>
    seed(
      'load-pulsed-at-start',
      room.build,
      index % 2 === 0 ? 'high before it is an output' : 'high directly after',
      [
        ...code({
          setup:
            index % 2 === 0
              ? `digitalWrite(${room.number}, HIGH);\n  pinMode(${room.number}, OUTPUT);\n  delay(500);`
              : `pinMode(${room.number}, OUTPUT);\n  digitalWrite(${room.number}, HIGH);\n  delay(500);`,
          loop: worked(room.number),
        }),
        ...relay(room),
      ],
      [],
      { silent: true },
    ),
  ),
  seed(
    'load-pulsed-at-start',
    'pump-house',
    'the mode first, and a wait before the level',
    rewrite(
      'setPump(Pump::Off);          // first the level, then the mode: the pump stays off\n  pinMode(PUMP_RELAY, OUTPUT);',
      'pinMode(PUMP_RELAY, OUTPUT);\n  delay(300);\n  setPump(Pump::Off);',
    ),
    [{ line: 'pinMode(PUMP_RELAY, OUTPUT)' }],
    { says: ['module', 'D8'] },
  ),
  seed(
    'load-pulsed-at-start',
    'sluice',
    'a transistor at the upper rail, and a wait before it is off',
    rewrite(
      'digitalWrite(lampPin, HIGH);   // off first: the switch at the upper rail is on at LOW\n  pinMode(lampPin, OUTPUT);',
      'pinMode(lampPin, OUTPUT);\n  delay(1000);\n  digitalWrite(lampPin, HIGH);',
    ),
    [{ line: 'pinMode(lampPin, OUTPUT)' }],
    { says: ['Q1', 'D11'] },
  ),
];

const BLINKS = [
  ['millis() > due', 'due = millis() + 500;'],
  ['millis() >= due', 'due = millis() + 1000;'],
  ['due < millis()', 'due = millis() + 250;'],
  ['micros() > due', 'due = micros() + 5000;'],
  ['due <= millis()', 'due = 500 + millis();'],
  ['micros() >= due', 'due = micros() + 100UL;'],
  ['millis() > due', 'due = millis() + 60000UL;'],
  ['millis() >= due', 'due = millis() + 2 * 500;'],
] as const;

const blink = (test: string, set: string): SeedEdit[] =>
  code({ top: 'unsigned long due = 0;', loop: `if (${test}) {\n    ${set}\n  }` });

const compared: MakeSeeds = () =>
  FREE.flatMap(({ build }, index): Seed[] => {
    const [test, set] = BLINKS[index] ?? BLINKS[0];
    return [
      seed('time-compared', build, `${test}, ${set}`, blink(test, set), [{ line: `if (${test})` }], {
        says: ['due'],
      }),
      seed(
        'time-compared',
        build,
        'by a difference',
        index % 2 === 0
          ? blink('millis() - due >= 500', 'due = millis();')
          : blink('(long)(millis() - due) >= 0', 'due = millis() + 500;'),
        [],
        { silent: true },
      ),
    ];
  });

export const START_SEEDS: readonly MakeSeeds[] = [pulsed, compared];
