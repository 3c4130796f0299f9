/** Faults of pins that are not what they look like: taken, input only, without a pull, boot pins, printed numbers. */
import { buttonOn, code, knobOn, lampOn } from '../additions';
import { addPart, addWire, moveEnd, renumber, rewrite } from '../mutate';
import type { Seed } from '../seed';
import { DRIVES, LAMPS, type Signal } from '../signals';
import { BUTTONS } from '../signals-read';
import { type MakeSeeds, seed } from './book';

const signalOf = (build: string, part: string): Signal => {
  const found = [...LAMPS, ...BUTTONS, ...DRIVES].find((one) => one.build === build && one.part === part);
  if (!found) throw new Error(`no signal for ${part} of ${build}`);
  return found;
};
const lines = (signal: Signal) => [{ line: signal.use }, { line: (signal.mode ?? signal.use).trim() }];

const moved =
  (
    rule: string,
    cases: readonly (readonly [build: string, part: string, number: string])[],
    besides: readonly string[] = [],
  ): MakeSeeds =>
  ({ hardware }) =>
    cases.map(([build, part, number]) => {
      const signal = signalOf(build, part);
      return seed(
        rule,
        build,
        `${part} moved to IO${number} in code and wiring`,
        [renumber(signal, number), ...moveEnd(hardware(build), signal.pin, `IO${number}`)],
        lines(signal),
        { says: [`IO${number}`], besides },
      );
    });

const taken = moved('pin-taken', [
  ['light-tower', 'lantern', '6'],
  ['light-tower', 'lantern', '7'],
  ['light-tower', 'test', '8'],
  ['light-tower', 'test', '11'],
  ['harbour-radio', 'Q1', '9'],
  ['harbour-radio', 'Q1', '10'],
  ['depth-sounder', 'shallow', '6'],
  ['depth-sounder', 'shallow', '11'],
]);

const inputOnly = moved('input-only-driven', [
  ['light-tower', 'lantern', '35'],
  ['light-tower', 'lantern', '36'],
  ['light-tower', 'lantern', '39'],
  ['harbour-radio', 'Q1', '34'],
  ['harbour-radio', 'Q1', '35'],
  ['harbour-radio', 'Q1', '39'],
  ['depth-sounder', 'shallow', '34'],
  ['depth-sounder', 'shallow', '36'],
]);

const noPull: MakeSeeds = ({ hardware }) => [
  ...(['35', '36', '39'] as const).map((number) => {
    const signal = signalOf('light-tower', 'test');
    return seed(
      'no-pull',
      'light-tower',
      `test moved to IO${number}`,
      [renumber(signal, number), ...moveEnd(hardware('light-tower'), 'IO4', `IO${number}`)],
      lines(signal),
      { says: [`IO${number}`] },
    );
  }),
  ...(
    [
      ['harbour-radio', '34', 'Q1.emitter'],
      ['harbour-radio', '36', 'Q1.emitter'],
      ['depth-sounder', '34', 'sounder.-'],
      ['depth-sounder', '39', 'sounder.-'],
    ] as const
  ).map(([build, number, ground]) =>
    seed(
      'no-pull',
      build,
      `a button on IO${number}`,
      [
        ...code({
          setup: `pinMode(${number}, INPUT_PULLUP);`,
          loop: `if (digitalRead(${number}) == LOW) return;`,
        }),
        ...buttonOn(`IO${number}`, ground),
      ],
      { line: 'INPUT_PULLUP);' },
      { says: [`IO${number}`] },
    ),
  ),
  seed(
    'no-pull',
    'dock-bell',
    'the bell’s button on D0',
    [rewrite('bellButton = D5;', 'bellButton = D0;'), ...moveEnd(hardware('dock-bell'), 'D5', 'D0')],
    { line: 'pinMode(bellButton' },
    { says: ['D0'] },
  ),
];

const adcRadio: MakeSeeds = () => [
  ...(['4', '13', '14', '26', '27'] as const).map((number) =>
    seed(
      'adc-with-radio',
      'harbour-radio',
      `a knob at IO${number} beside the radio`,
      [
        ...code({ loop: `int dial = analogRead(${number});\n  if (dial > 2000) return;` }),
        ...knobOn(`IO${number}`, '3V3', 'GND'),
      ],
      { line: 'analogRead(' },
      { says: [`IO${number}`] },
    ),
  ),
  ...(['32', '33', '35'] as const).map((number) =>
    seed(
      'adc-with-radio',
      'harbour-radio',
      `a knob at IO${number} beside the radio`,
      [
        ...code({ loop: `int dial = analogRead(${number});\n  if (dial > 2000) return;` }),
        ...knobOn(`IO${number}`, '3V3', 'GND'),
      ],
      [],
      { silent: true },
    ),
  ),
  ...(['13', '14', '25', '27'] as const).map((number) =>
    seed(
      'adc-with-radio',
      'light-tower',
      `the eye at IO${number} and the radio on`,
      [
        ...code({ top: '#include <WiFi.h>', setup: 'WiFi.begin("harbour", "lantern");' }),
        rewrite('#define DUSK 34', `#define DUSK ${number}`),
        { path: ['wires', 3, 'from'], value: `IO${number}` },
      ],
      { line: 'analogRead(dusk' },
      { says: [`IO${number}`] },
    ),
  ),
];

/** Numbers as they are printed, on a board whose core counts otherwise. */
const printed: MakeSeeds = () => [
  seed(
    'pin-number-printed',
    'dock-bell',
    'the button as 5',
    rewrite('bellButton = D5;', 'bellButton = 5;'),
    [{ line: 'pinMode(bellButton' }, { line: 'digitalRead(bellButton' }],
    { says: ['5'], besides: ['idle-wire'] },
  ),
  seed(
    'pin-number-printed',
    'dock-bell',
    'the lamp as 6',
    rewrite('bellLamp = D6;', 'bellLamp = 6;'),
    [{ line: 'pinMode(bellLamp' }, { line: 'digitalWrite(bellLamp' }],
    { says: ['6'], besides: ['idle-wire'] },
  ),
  seed(
    'pin-number-printed',
    'dock-bell',
    'the bell as 7',
    rewrite('bell = D7;', 'bell = 7;'),
    [{ line: 'tone(bell' }],
    { says: ['7'], besides: ['idle-wire'] },
  ),
  ...(['1', '0', '8', '3', '4'] as const).map((number) =>
    seed(
      'pin-number-printed',
      number === '1' || number === '4' ? 'dock-bell' : 'ferry-board',
      `a lamp on D${number}, the sketch says ${number}`,
      [
        ...code({
          setup: `pinMode(${number}, OUTPUT);`,
          loop: `digitalWrite(${number}, HIGH);\n  digitalWrite(${number}, LOW);`,
        }),
        // Towards the supply, so that no boot pin is pulled the wrong way by D3; by D8 towards ground.
        ...lampOn(`D${number}`, number === '8' ? 'GND' : 'GND@analog.14', '330'),
      ],
      [{ line: `pinMode(${number}` }, { line: `digitalWrite(${number}` }],
      { says: [number], besides: ['idle-wire', 'boot-strap-loaded', 'pin-taken', 'load-on-at-start'] },
    ),
  ),
];

const bootStrap: MakeSeeds = () => {
  const pull = (build: string, pin: string, far: string, value: string, right = false): Seed =>
    seed(
      'boot-strap-loaded',
      build,
      `${pin} to ${far} through ${value}`,
      [addPart('Rboot', { kind: 'resistor', value, purpose: 'x' }), addWire({ path: [pin, 'Rboot', far] })],
      { wire: pin },
      right ? { silent: true, besides: ['idle-wire'] } : { says: [pin], besides: ['idle-wire'] },
    );
  return [
    pull('light-tower', 'IO12', 'eye.1', '4k7'),
    pull('depth-sounder', 'IO12', '3V3', '10k'),
    pull('harbour-radio', 'IO12', '3V3', '1k'),
    pull('harbour-radio', 'IO0', 'Q1.emitter', '1k'),
    pull('depth-sounder', 'IO0', 'sounder.-', '470'),
    pull('mooring-post', 'IO9', 'GND', '1k'),
    pull('dock-bell', 'D3', 'GND', '1k'),
    pull('dock-bell', 'D8', '3V3', '1k'),
    pull('ferry-board', 'D3', 'screen.-', '470'),
    pull('porthole', 'IO0', 'GND', '470'),
    pull('light-tower', 'IO12', 'Reye.2', '10k', true),
    pull('harbour-radio', 'IO0', '3V3', '10k', true),
    pull('dock-bell', 'D3', '3V3', '10k', true),
    pull('dock-bell', 'D8', 'GND', '10k', true),
  ];
};

const neverSeen: MakeSeeds = ({ hardware }) => {
  const toRail = (build: string, part: string, rail: string): Seed => {
    const signal = signalOf(build, part);
    const index = hardware(build).wires.findIndex(({ path }) => path?.[0] === signal.pin);
    const wire = hardware(build).wires[index];
    if (!wire?.path) throw new Error(`${part} of ${build} is in no path`);
    return seed(
      'button-never-seen',
      build,
      `${part} to ${rail} with the pin's pull-up`,
      { path: ['wires', index, 'path', wire.path.length - 1], value: rail },
      lines(signal),
      { says: [signal.pin] },
    );
  };
  return [
    toRail('beacon-and-horn', 'quay', '5V'),
    toRail('pump-house', 'float', 'module.+'),
    toRail('winch', 'down', '5V'),
    toRail('turnstile', 'beam', '5V'),
    toRail('signal-box', 'lever', '3V3'),
    toRail('light-tower', 'test', 'eye.1'),
    toRail('mooring-post', 'boat', '3V3'),
    toRail('dock-bell', 'ring', '3V3'),
    toRail('guest-counter', 'count', '5V'),
    toRail('ticket-digit', 'clerk', '5V'),
    toRail('cannon-deck', 'fuse', '5V'),
  ];
};

const lampData: MakeSeeds = () =>
  (['48', 'rgb', 'RGB'] as const).flatMap((name) =>
    (['digitalWrite(#, HIGH);', 'digitalWrite(#, LOW);', 'analogWrite(#, 90);'] as const).map((call) =>
      seed(
        'lamp-needs-data',
        'porthole',
        `${call.replace('#', name)} for the lamp on the board`,
        code({
          ...(name === 'rgb' && { top: 'const uint8_t rgb = 48;' }),
          ...(name === 'RGB' && { top: '#define RGB 48' }),
          setup: `pinMode(${name}, OUTPUT);`,
          loop: call.replace('#', name),
        }),
        { line: call.replace('#', name) },
        { says: ['IO48'] },
      ),
    ),
  );

const deepSleep: MakeSeeds = () =>
  ['dock-bell', 'ferry-board'].flatMap((build): Seed[] => [
    ...['10e6', '30000000UL', '60 * 1000000UL', '5ULL * 1000 * 1000'].map((time) =>
      seed(
        'deep-sleep-unwoken',
        build,
        `sleeps for ${time}`,
        code({ loop: `ESP.deepSleep(${time});` }),
        { line: 'deepSleep' },
        { says: ['D0', 'RST'] },
      ),
    ),
    seed(
      'deep-sleep-unwoken',
      build,
      'sleeps, and is woken',
      [...code({ loop: 'ESP.deepSleep(10e6);' }), addWire({ from: 'D0', to: 'RST' })],
      [],
      { silent: true },
    ),
  ]);

export const CHIP_SEEDS: readonly MakeSeeds[] = [
  ...[taken, inputOnly, noPull, adcRadio, printed, bootStrap, neverSeen, lampData, deepSleep],
];
