/** Faults of what interrupt handlers do, and of what they share with loop(). */
import { code } from '../additions';
import type { Seed } from '../seed';
import { type MakeSeeds, seed } from './book';

/** Builds with room for a handler, and a pin that has a line. */
const HANDLED = [
  ['beacon-and-horn', 'quayButton'],
  ['quay-lights', 'CALL_PIN'],
  ['lock-gate', 'openButton'],
  ['pump-house', 'FLOAT_REED'],
  ['map-drawer', 'DRAWER'],
  ['winch', 'UP'],
  ['signal-box', 'LEVER'],
  ['guest-counter', 'countKey'],
] as const;

const handler = (body: string, pin: string, top = '', attributes = ''): ReturnType<typeof code> =>
  code({
    top: `${top}${top === '' ? '' : '\n'}void ${attributes}knocked() {\n  ${body}\n}`,
    setup: `attachInterrupt(digitalPinToInterrupt(${pin}), knocked, FALLING);`,
  });

const interruptWaits: MakeSeeds = () =>
  HANDLED.map(([build, pin], index) => {
    const body =
      [
        'delay(20);',
        'Serial.println(1);',
        'delay(5);',
        'pulseIn(5, HIGH);',
        'delay(100);',
        'Serial.print("knock");',
        'delay(50);',
        'delay(1);',
      ][index] ?? 'delay(1);';
    const serial = body.startsWith('Serial');
    return seed(
      'interrupt-waits',
      build,
      `${body} in a handler`,
      [...handler(body, pin), ...(serial ? code({ setup: 'Serial.begin(9600);' }) : [])],
      [{ line: body }],
      { besides: ['unwired-pin'] },
    );
  });

const notVolatile: MakeSeeds = () =>
  HANDLED.map(([build, pin], index) => {
    const type = ['bool', 'byte', 'uint8_t', 'boolean', 'char', 'bool', 'int', 'bool'][index] ?? 'bool';
    return seed(
      'shared-not-volatile',
      build,
      `a ${type} that a handler sets and loop asks`,
      [
        ...handler('rung = 1;', pin, `${type} rung = 0;`),
        ...code({ loop: 'if (rung) {\n    rung = 0;\n    delay(1);\n  }' }),
      ],
      [{ line: 'rung' }],
      { says: ['rung'], besides: ['shared-torn'] },
    );
  });

const torn: MakeSeeds = () =>
  (
    [
      ['beacon-and-horn', 'quayButton', 'unsigned int'],
      ['quay-lights', 'CALL_PIN', 'unsigned long'],
      ['lock-gate', 'openButton', 'uint16_t'],
      ['pump-house', 'FLOAT_REED', 'int'],
      ['map-drawer', 'DRAWER', 'long'],
      ['winch', 'UP', 'uint32_t'],
      ['beacon-and-horn', 'quayButton', 'int'],
      ['quay-lights', 'CALL_PIN', 'int16_t'],
    ] as const
  ).flatMap(([build, pin, type]): Seed[] => [
    seed(
      'shared-torn',
      build,
      `a ${type} read while the handler may write it`,
      [
        ...handler('knocks++;', pin, `volatile ${type} knocks = 0;`),
        ...code({ loop: 'if (knocks > 300) return;' }),
      ],
      [{ line: 'knocks > 300' }, { line: `volatile ${type} knocks` }],
      { says: ['knocks'], besides: ['bounce-counted'] },
    ),
    seed(
      'shared-torn',
      build,
      `a ${type} read with interrupts off`,
      [
        ...handler('knocks++;', pin, `volatile ${type} knocks = 0;`),
        ...code({
          loop: `noInterrupts();\n  ${type} copy = knocks;\n  interrupts();\n  if (copy > 300) return;`,
        }),
      ],
      [],
      { silent: true, besides: ['bounce-counted'] },
    ),
  ]);

const notInRam: MakeSeeds = () =>
  (
    [
      ['light-tower', 'TEST_KEY'],
      ['porthole', 'key'],
      ['mooring-post', 'BOAT'],
      ['dock-bell', 'bellButton'],
    ] as const
  ).flatMap(([build, pin]): Seed[] => [
    seed(
      'handler-not-in-ram',
      build,
      'a handler in flash',
      handler('rung = true;', pin, 'volatile bool rung = false;'),
      [{ line: 'knocked' }],
      { says: ['knocked'] },
    ),
    seed(
      'handler-not-in-ram',
      build,
      'a handler that counts, in flash',
      handler('rung++;', pin, 'volatile uint8_t rung = 0;'),
      [{ line: 'knocked' }],
      { says: ['knocked'], besides: ['bounce-counted'] },
    ),
    seed(
      'handler-not-in-ram',
      build,
      'a handler in RAM',
      handler('rung = true;', pin, 'volatile bool rung = false;', 'IRAM_ATTR '),
      [],
      { silent: true },
    ),
  ]);

const bounce: MakeSeeds = () =>
  (
    [
      ['quay-lights', 'CALL_PIN'],
      ['pump-house', 'FLOAT_REED'],
      ['winch', 'UP'],
      ['winch', 'DOWN'],
      ['range-lights', ''],
      ['beacon-and-horn', 'quayButton'],
      ['tide-clock', 'setKey'],
      ['map-drawer', 'DRAWER'],
      ['lock-gate', 'openButton'],
    ] as const
  )
    .filter(([, pin]) => pin !== '')
    .map(([build, pin]) =>
      seed(
        'bounce-counted',
        build,
        `${pin} counted in a handler`,
        [
          ...handler('if (knocks < 200) knocks++;', pin, 'volatile uint8_t knocks = 0;'),
          ...code({ loop: 'if (knocks > 9) return;' }),
        ],
        [{ line: 'knocks++' }, { line: 'attachInterrupt' }],
        { besides: ['no-interrupt'] },
      ),
    );

export const HANDLER_SEEDS: readonly MakeSeeds[] = [interruptWaits, notVolatile, torn, notInRam, bounce];
