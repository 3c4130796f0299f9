/** Faults of contacts, of levels above 3.3 V, and of what hangs on the reset line. */
import { code, knobOn } from '../additions';
import { addPart, addWire, bridge, moveEnd, set } from '../mutate';
import type { Seed } from '../seed';
import { type MakeSeeds, seed } from './book';
import { ROOMS } from './reset';

const contactOver: MakeSeeds = () => [
  ...ROOMS.map(([build, , ground, rail]) =>
    seed(
      'contact-over',
      build,
      'a bulb of 100 mA on a push-button',
      [
        addPart('knock', { kind: 'push-button', purpose: 'x' }),
        addPart('bulb', { kind: 'filament-lamp', hotOhms: '48 ohm', purpose: 'x' }),
        addWire({ path: [rail, 'knock', 'bulb', ground] }),
      ],
      [{ part: 'knock' }],
      { says: ['knock'] },
    ),
  ),
  ...ROOMS.slice(0, 4).map(([build, , ground, rail]) =>
    seed(
      'contact-over',
      build,
      'a bulb of 100 mA on a toggle switch',
      [
        addPart('knock', { kind: 'toggle-switch', purpose: 'x' }),
        addPart('bulb', { kind: 'filament-lamp', hotOhms: '48 ohm', purpose: 'x' }),
        addWire({ path: [rail, 'knock', 'bulb', ground] }),
      ],
      [],
      { silent: true },
    ),
  ),
];

const levelTooHigh: MakeSeeds = ({ hardware }) => {
  const depth = hardware('depth-sounder');
  const dial = (build: string, pin: string, number: string, rail: string, ground: string): Seed =>
    seed(
      'level-too-high',
      build,
      `a knob from ${rail} on ${pin}`,
      [...code({ loop: `if (analogRead(${number}) > 900) return;` }), ...knobOn(pin, rail, ground)],
      [{ line: `analogRead(${number})` }, { wire: pin }],
      { says: [pin] },
    );
  return [
    seed(
      'level-too-high',
      'depth-sounder',
      'the echo without its divider',
      [
        ...bridge(depth, 'Rtop').slice(0, 2),
        { path: ['parts', 'Rtop'] },
        { path: ['wires', depth.wires.findIndex(({ path }) => path?.includes('Rlow'))] },
        { path: ['parts', 'Rlow'] },
      ],
      [{ line: 'pulseIn(' }, { line: 'pinMode(echoPin' }, { wire: 'IO19' }],
      { says: ['IO19'] },
    ),
    seed(
      'level-too-high',
      'depth-sounder',
      'a divider that leaves 4.1 V',
      [set('Rtop', 'value', '680')],
      [{ line: 'pulseIn(' }, { line: 'pinMode(echoPin' }, { wire: 'IO19' }],
      { says: ['IO19'] },
    ),
    seed(
      'level-too-high',
      'light-tower',
      'the eye fed from 5 V',
      [{ path: ['wires', 2, 'path', 0], value: '5V' }, set('Reye', 'value', '100k')],
      [{ line: 'analogRead(dusk)' }, { wire: 'IO34' }],
      { says: ['IO34'] },
    ),
    seed(
      'level-too-high',
      'pressure-gauge',
      'the bellows fed from 5 V',
      moveEnd(hardware('pressure-gauge'), '3V3', '5V'),
      [{ line: 'analogRead(bellows)' }, { wire: 'A1' }],
      { says: ['A1'] },
    ),
    seed(
      'level-too-high',
      'aquarium-moon',
      'the knob fed from VBUS',
      moveEnd(hardware('aquarium-moon'), '3V3', 'VBUS'),
      [{ line: 'analogRead(kKnobPin)' }, { wire: 'GP26' }],
      { says: ['GP26'] },
    ),
    dial('test-bench', 'A0', 'A0', '5V', 'GND'),
    dial('signal-box', 'GP27', '27', 'VBUS', 'GND'),
    dial('light-tower', 'IO33', '33', '5V', 'lantern.cathode'),
    dial('greenhouse', 'GP26', '26', 'VBUS', 'soil.-'),
    seed(
      'level-too-high',
      'depth-sounder',
      'another divider: 3.3 V at the most',
      [set('Rtop', 'value', '1k8'), set('Rlow', 'value', '3k3')],
      [],
      { silent: true },
    ),
  ];
};

const resetCapacitor: MakeSeeds = () =>
  ROOMS.flatMap(([build, reset, ground], index): Seed[] => [
    seed(
      'reset-capacitor',
      build,
      'a large capacitor on the reset line',
      [
        addPart(
          'C9',
          index % 2 === 0
            ? { kind: 'electrolytic-capacitor', value: '10 uF', volts: '16 V', purpose: 'x' }
            : { kind: 'capacitor', value: ['470n', '1u', '220n'][index % 3], purpose: 'x' },
        ),
        ...(index % 2 === 0
          ? [addWire({ from: reset, to: 'C9.+' }), addWire({ from: 'C9.-', to: ground })]
          : [addWire({ path: [reset, 'C9', ground] })]),
      ],
      [{ part: 'C9' }],
      { says: ['C9', reset] },
    ),
    ...(index < 3
      ? [
          seed(
            'reset-capacitor',
            build,
            '1 nF on the reset line',
            [
              addPart('C9', { kind: 'capacitor', value: '1n', purpose: 'x' }),
              addWire({ path: [reset, 'C9', ground] }),
            ],
            [],
            { silent: true },
          ),
        ]
      : []),
  ]);

const resetDriven: MakeSeeds = () =>
  (
    [
      ['beacon-and-horn', '12', 'D12'],
      ['quay-lights', '9', 'D9'],
      ['tide-column', '12', 'D12'],
      ['crane', '40', 'D40'],
      ['turnstile', '4', 'D4'],
      ['range-lights', '12', 'D12'],
      ['fog-choir', '4', 'D4'],
      ['boiler-watch', '12', 'D12'],
      ['scoreboard', '12', 'D12'],
    ] as const
  ).map(([build, number, pin], index) =>
    seed(
      'reset-driven-by-pin',
      build,
      `${pin} joined to reset`,
      [
        ...code(
          index % 2 === 0
            ? {
                setup: `pinMode(${number}, OUTPUT);`,
                loop: `if (millis() > 3600000UL) digitalWrite(${number}, LOW);`,
              }
            : {
                setup: `digitalWrite(${number}, HIGH);\n  pinMode(${number}, OUTPUT);`,
                loop: `if (millis() > 3600000UL) digitalWrite(${number}, LOW);`,
              },
        ),
        addWire({ from: pin, to: 'RST' }),
      ],
      [{ line: `pinMode(${number}` }, { line: `digitalWrite(${number}` }],
      { says: [pin, 'RST'] },
    ),
  );

export const LOAD_SEEDS: readonly MakeSeeds[] = [contactOver, levelTooHigh, resetCapacitor, resetDriven];
