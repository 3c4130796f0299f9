/** Faults that stand in the sketch’s habits: what loops, times and registers do. */
import { adapter, code, lampOn } from '../additions';
import { rewrite } from '../mutate';
import type { SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';

/** Boards whose USB socket is the console, each with a supply of its own for the board. */
const SOCKETS: readonly (readonly [string, readonly SeedEdit[]])[] = [
  ['telegraph', adapter('feeder', '9 V', 'VIN', 'pointer.-')],
  ['scoreboard', adapter('feeder', '9 V', 'VIN', 'p4.cathode')],
  ['ticket-reader', adapter('feeder', '9 V', 'VIN', 'reader.-')],
  ['ghost-ship', adapter('feeder', '7.5 V', 'VIN', 'guest.-')],
];

const serialAwaited: MakeSeeds = () => [
  ...SOCKETS.flatMap(([build, fed]) =>
    ['while (!Serial);', 'while (!Serial) {\n    delay(1);\n  }'].map((wait) =>
      seed(
        'serial-awaited',
        build,
        wait.split('\n')[0] ?? wait,
        [...code({ setup: `Serial.begin(9600);\n  ${wait}` }), ...fed],
        [{ line: 'while (!Serial)' }],
      ),
    ),
  ),
  ...(['telegraph', 'ghost-ship'] as const).map((build) =>
    seed(
      'serial-awaited',
      build,
      'no longer than two seconds',
      code({ setup: 'Serial.begin(9600);\n  while (!Serial && millis() < 2000);' }),
      [],
      { silent: true },
    ),
  ),
  // Without a supply of its own the board hangs on a computer, which is there.
  ...(['scoreboard', 'ticket-reader', 'ghost-ship'] as const).map((build) =>
    seed(
      'serial-awaited',
      build,
      'a board that only USB feeds',
      code({ setup: 'Serial.begin(9600);\n  while (!Serial);' }),
      [],
      { silent: true },
    ),
  ),
];

const jump: MakeSeeds = () =>
  (
    [
      ['beacon-and-horn', 'asm volatile("jmp 0");'],
      ['quay-lights', 'asm volatile ("  jmp 0");'],
      ['turnstile', '__asm__ __volatile__ ("jmp 0x0000");'],
      ['winch', 'asm volatile("jmp 0x0000");'],
    ] as const
  )
    .map(([build, text]) =>
      seed('restart-by-jump', build, text, code({ loop: `if (millis() > 86400000UL) ${text}` }), [
        { line: 'jmp' },
      ]),
    )
    .concat(
      (['beacon-and-horn', 'tide-column', 'engine-room', 'crane'] as const).map((build) =>
        seed(
          'restart-by-jump',
          build,
          'a call through a null pointer',
          code({ top: 'void (*restart)() = 0;', loop: 'if (millis() > 86400000UL) restart();' }),
          [{ line: 'restart()' }, { line: 'restart' }],
        ),
      ),
    );

const timerZero: MakeSeeds = () => [
  ...(
    [
      ['beacon-and-horn', 'TCCR0B = (TCCR0B & 0b11111000) | 0x01;'],
      ['quay-lights', 'TCCR0B = TCCR0B & B11111000 | B00000010;'],
      ['quay-lights', 'TCCR0B = TCCR0B & 0b11111000 | 0b00000010;'],
      ['turnstile', 'TCCR0B = 0x01;'],
      ['winch', 'TCCR0B |= 4;'],
      ['range-lights', 'TCCR0B &= ~1;'],
      ['tide-column', 'TCCR0B = _BV(CS00);'],
      ['engine-room', 'TCCR0B = (TCCR0B & 0xF8) | 0x05;'],
      ['star-wall', 'TCCR0B = 0x02;'],
      ['telegraph', 'TCCR0B = _BV(CS01);'],
    ] as const
  ).map(([build, text]) =>
    seed(
      'timer-zero-changed',
      build,
      text,
      code({
        setup: text,
        ...(build === 'quay-lights' || build === 'beacon-and-horn' ? {} : { loop: 'delay(1);' }),
      }),
      [{ line: 'TCCR0B' }],
    ),
  ),
  // The bit is set already: the core divides by 64.
  seed(
    'timer-zero-changed',
    'winch',
    'TCCR0B |= 1;',
    code({ setup: 'TCCR0B |= 1;', loop: 'delay(1);' }),
    [],
    {
      silent: true,
    },
  ),
];

const narrow: MakeSeeds = () => [
  ...(
    [
      ['turnstile', 'int'],
      ['winch', 'unsigned int'],
      ['range-lights', 'short'],
      ['star-wall', 'uint16_t'],
      ['tide-column', 'int'],
      ['engine-room', 'int16_t'],
    ] as const
  ).map(([build, type]) =>
    seed(
      'time-narrow',
      build,
      `millis() in a ${type}`,
      code({
        top: `${type} lastBlink = 0;`,
        loop: 'if (millis() - lastBlink > 500) {\n    lastBlink = millis();\n  }',
      }),
      [{ line: 'lastBlink' }],
    ),
  ),
  seed(
    'time-narrow',
    'beacon-and-horn',
    'the flash’s time in an int',
    rewrite('unsigned long lastFlash = 0;', 'int lastFlash = 0;'),
    [{ line: 'lastFlash' }],
  ),
  seed(
    'time-narrow',
    'quay-lights',
    'the phase’s time in a word',
    rewrite('unsigned long since = 0;', 'unsigned int since = 0;'),
    [{ line: 'since' }],
  ),
  seed(
    'time-narrow',
    'log-book',
    'the last entry’s time in an int',
    rewrite('unsigned long last = 0;', 'int last = 0;'),
    [{ line: 'last' }],
  ),
];

const store: MakeSeeds = () => [
  ...(
    [
      'beacon-and-horn',
      'quay-lights',
      'turnstile',
      'winch',
      'tide-column',
      'engine-room',
      'star-wall',
      'range-lights',
    ] as const
  ).map((build, index) => {
    const call =
      index % 2 === 0 ? 'EEPROM.write(0, millis() / 1000);' : 'EEPROM.write(3, 42 + (millis() & 1));';
    return seed('store-in-loop', build, call, code({ top: '#include <EEPROM.h>', loop: call }), [
      { line: 'EEPROM.write(' },
    ]);
  }),
  seed(
    'store-in-loop',
    'winch',
    'once in setup',
    code({ top: '#include <EEPROM.h>', setup: 'EEPROM.write(0, 1);' }),
    [],
    { silent: true },
  ),
];

const foreign: MakeSeeds = () => [
  ...(
    [
      ['signal-box', 'PORTB |= 1;'],
      ['signal-box', 'DDRD = 0xFF;'],
      ['guest-counter', 'PORTD |= _BV(4);'],
      ['light-tower', 'TCCR1B = 1;'],
      ['pressure-gauge', 'DDRB |= 4;'],
      ['dock-bell', 'PORTB = 0;'],
      ['porthole', 'TCCR2A = 0;'],
      ['test-bench', 'PORTC &= 1;'],
    ] as const
  ).map(([build, text]) => seed('foreign-register', build, text, code({ setup: text }), [{ line: text }])),
  seed(
    'foreign-register',
    'toy-organ',
    'a register that this core imitates',
    code({ setup: 'TCCR2A = 0;' }),
    [],
    { silent: true },
  ),
];

const pwmRange: MakeSeeds = () => [
  ...(
    [
      ['engine-room', 'analogWrite(fan, reading > 512 ? 255 : reading / 2);', 'analogWrite(fan, 1023);'],
      ['engine-room', 'analogWrite(fan, reading > 512 ? 255 : reading / 2);', 'analogWrite(fan, 300);'],
      ['weather-mast', 'analogRead(LIGHT) < 300 ? 180 : 0', 'analogRead(LIGHT) < 300 ? 1000 : 0'],
      ['weather-mast', 'analogRead(LIGHT) < 300 ? 180 : 0', '512'],
      [
        'ghost-ship',
        'for (byte pin : glow) analogWrite(pin, 0);',
        'for (byte pin : glow) analogWrite(pin, 256);',
      ],
      ['aquarium-moon', 'analogRead(kKnobPin) >> 2', '1023'],
      ['aquarium-moon', 'analogRead(kKnobPin) >> 2', 'analogRead(kKnobPin) > 400 ? 900 : 10'],
    ] as const
  ).map(([build, find, put]) =>
    seed('pwm-over-range', build, put, rewrite(find, put), [{ line: 'analogWrite(' }], {
      besides: ['idle-wire'],
    }),
  ),
  seed(
    'pwm-over-range',
    'beacon-and-horn',
    'a second lamp at 1000',
    [
      ...code({ setup: 'pinMode(5, OUTPUT);', loop: 'analogWrite(5, 1000);' }),
      ...lampOn('D5', 'beacon.cathode'),
    ],
    [{ line: 'analogWrite(5' }],
  ),
  seed(
    'pwm-over-range',
    'beacon-and-horn',
    'a second lamp at 255',
    [
      ...code({ setup: 'pinMode(5, OUTPUT);', loop: 'analogWrite(5, 255);' }),
      ...lampOn('D5', 'beacon.cathode'),
    ],
    [],
    { silent: true },
  ),
];

export const HABIT_SEEDS: readonly MakeSeeds[] = [
  serialAwaited,
  jump,
  timerZero,
  narrow,
  store,
  foreign,
  pwmRange,
];
