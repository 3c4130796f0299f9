/** Faults that stand in the sketch’s habits: what loops, times and registers do. */
import { code, lampOn } from '../additions';
import { rewrite } from '../mutate';
import { type MakeSeeds, seed } from './book';

const serialAwaited: MakeSeeds = () => [
  ...(['telegraph', 'scoreboard', 'ticket-reader', 'ghost-ship'] as const).flatMap((build) =>
    ['while (!Serial);', 'while (!Serial) {\n    delay(1);\n  }'].map((wait) =>
      seed(
        'serial-awaited',
        build,
        wait.split('\n')[0] ?? wait,
        code({ setup: `Serial.begin(9600);\n  ${wait}` }),
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

const watchdog: MakeSeeds = () =>
  (
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
    const time = ['WDTO_15MS', 'WDTO_30MS', 'WDTO_250MS', 'WDTO_1S'][index % 4] ?? 'WDTO_15MS';
    return seed(
      'watchdog-left-on',
      build,
      `restarts by the watchdog, ${time}`,
      code({
        top: '#include <avr/wdt.h>',
        loop: `if (millis() > 86400000UL) {\n    wdt_enable(${time});\n    while (true) {}\n  }`,
      }),
      [{ line: 'wdt_enable(' }],
    );
  });

const timerZero: MakeSeeds = () =>
  (
    [
      ['beacon-and-horn', 'TCCR0B = (TCCR0B & 0b11111000) | 0x01;'],
      ['quay-lights', 'TCCR0B = TCCR0B & B11111000 | B00000010;'],
      ['turnstile', 'TCCR0B = 0x01;'],
      ['winch', 'TCCR0B |= 1;'],
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
  );

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

const unheard: MakeSeeds = () =>
  (
    [
      ['beacon-and-horn', 'delay(8000);', 'quay'],
      ['winch', 'delay(5000);', 'up'],
      ['guest-counter', 'delay(6000);', 'count'],
      ['quay-lights', 'delay(10000);', 'call'],
      ['ticket-digit', 'delay(7000);', 'clerk'],
      ['cannon-deck', 'delay(9000);', 'fuse'],
      ['tide-clock', 'delay(30000);', 'setKey'],
      ['lock-gate', 'delay(4000);\n  delay(4000);', 'open'],
    ] as const
  ).map(([build, wait, part]) =>
    seed(
      'button-unheard',
      build,
      `${wait.split('\n')[0]} beside ${part}`,
      code({ loop: wait }),
      [{ line: wait.split('\n')[0] ?? '' }, { line: 'digitalRead' }, { line: 'delay' }],
      { says: [part] },
    ),
  );

const foreign: MakeSeeds = () =>
  (
    [
      ['signal-box', 'PORTB |= 1;'],
      ['signal-box', 'DDRD = 0xFF;'],
      ['guest-counter', 'PORTD |= _BV(4);'],
      ['light-tower', 'TCCR1B = 1;'],
      ['pressure-gauge', 'DDRB |= 4;'],
      ['dock-bell', 'PORTB = 0;'],
      ['toy-organ', 'TCCR2A = 0;'],
      ['test-bench', 'PORTC &= 1;'],
    ] as const
  ).map(([build, text]) => seed('foreign-register', build, text, code({ setup: text }), [{ line: text }]));

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
    seed('pwm-range', build, put, rewrite(find, put), [{ line: 'analogWrite(' }], { besides: ['idle-wire'] }),
  ),
  seed(
    'pwm-range',
    'beacon-and-horn',
    'a second lamp at 1000',
    [
      ...code({ setup: 'pinMode(5, OUTPUT);', loop: 'analogWrite(5, 1000);' }),
      ...lampOn('D5', 'beacon.cathode'),
    ],
    [{ line: 'analogWrite(5' }],
  ),
  seed(
    'pwm-range',
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
  watchdog,
  timerZero,
  narrow,
  store,
  unheard,
  foreign,
  pwmRange,
];
