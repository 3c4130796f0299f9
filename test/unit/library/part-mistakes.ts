/**
 * Wrong builds with the parts of the library, in the notation of part-builds.ts, each with the findings it must give:
 * rule, and the beginning of what it says.
 */
import type { PartBuild } from './part-builds';

export interface Mistake extends PartBuild {
  readonly about: string;
  readonly found: readonly string[];
}

const ohms = (value: string): object => ({ kind: 'resistor', value });
const power = ['5V > x.+', 'x.- > GND'];
const fromPin = ['D7 > x.+', 'x.- > GND'];
const over = (pin: string): string => `pin-over-absolute: ${pin} carries up to`;
const driver = 'load-needs-driver: x takes';
const bare = 'base-resistor-missing: x.base has no resistor towards D7';
const meets = (pin: string): string => `drivers-meet: ${pin} and the output of x drive the same wire`;
const bulb = { bulb: { kind: 'filament-lamp' }, cells: { kind: 'alkaline-battery', cells: 4 } };
const bulbWires = ['cells.+ > x.common', 'x.no > bulb > cells.-'];
const unlimited = (lamp = 'x'): string => `lamp-unlimited: ${lamp} has no resistor in series`;
const reversed = (lamp = 'x'): string => `lamp-reversed: ${lamp} is the wrong way round`;
const floats = (pin: string): string => `floating-input: ${pin} floats while x is open`;
const shorted = (pin: string, level: string, rail: string): string =>
  `output-shorted: ${pin} is an output, and driven ${level} it is shorted to ${rail}`;

/** One part between a pin and ground. */
const alone = (about: string, entry: object, found: readonly string[], uses = ['out 7']): Mistake => ({
  about,
  parts: { x: entry },
  wires: [`D${uses[0]?.split(' ')[1]} > x > GND`],
  uses,
  found,
});

/** A part that is fed from a pin. */
const fed = (
  about: string,
  entry: object,
  wires: readonly string[] = [],
  uses: readonly string[] = [],
): Mistake => ({
  about,
  parts: { x: entry },
  wires: [...fromPin, ...wires],
  uses: ['out 7', ...uses],
  found: [driver],
});

export const mistakes: readonly Mistake[] = [
  {
    about: 'a relay coil on a pin',
    parts: { x: { kind: 'relay' }, ...bulb },
    wires: ['D7 > x.coil-1', 'x.coil-2 > GND', ...bulbWires],
    uses: ['out 7'],
    found: [driver],
  },
  alone('a motor on a pin', { kind: 'dc-motor' }, [driver]),
  alone('a solenoid on a pin', { kind: 'solenoid', volts: '5' }, [driver]),
  alone('a loudspeaker on a pin', { kind: 'speaker' }, [driver], ['tone 8']),
  alone('a magnetic buzzer on a pin', { kind: 'buzzer', type: 'magnetic' }, [driver], ['tone 8']),
  alone('a bulb on a pin', { kind: 'filament-lamp' }, [over('D7')]),
  alone('a diode straight to ground', { kind: 'diode' }, [over('D7')]),
  alone('a Zener diode forwards on a pin', { kind: 'zener-diode', volts: '5.1 V' }, [over('D7')]),
  alone('a fuse to ground on a pin', { kind: 'fuse', current: '1 A' }, [shorted('D7', 'high', 'GND')]),
  {
    about: 'a stepper motor without its drivers',
    parts: { x: { kind: 'stepper-motor' } },
    wires: ['5V > x.common', 'D4 > x.a', 'D5 > x.b', 'D6 > x.c', 'D7 > x.d'],
    uses: ['out 4', 'out 5', 'out 6', 'out 7'],
    found: [driver],
  },
  fed('a servo fed from a pin', { kind: 'servo' }, ['D9 > x.signal'], ['servo 9']),
  fed('a strip fed from a pin', { kind: 'addressable-strip', count: 8 }, ['D6 > x.data-in'], ['out 6']),
  fed('a lamp strip on a pin', { kind: 'led-strip', metres: 1, volts: '5' }),
  {
    about: 'a relay module fed from a pin',
    parts: { x: { kind: 'relay-module' }, ...bulb },
    wires: [...fromPin, 'D6 > x.in', ...bulbWires],
    uses: ['out 7', 'out 6'],
    found: [driver],
  },
  fed('a radio fed from a pin', { kind: 'serial-device' }, ['D0 > x.tx', 'D1 > x.rx'], ['serial']),
  {
    about: 'an npn transistor without a base resistor',
    parts: { x: { kind: 'npn-transistor' }, load: ohms('100') },
    wires: ['D7 > x.base', 'x.emitter > GND', '5V > load > x.collector'],
    uses: ['out 7'],
    found: [bare],
  },
  {
    about: 'a pnp transistor without a base resistor',
    parts: { x: { kind: 'pnp-transistor' }, load: ohms('100') },
    wires: ['D7 > x.base', 'x.emitter > 5V', 'x.collector > load > GND'],
    uses: ['out 7'],
    found: [bare],
  },
  {
    about: 'a three-colour lamp with one resistor left out',
    parts: { x: { kind: 'rgb-led' }, R1: ohms('330'), R2: ohms('330') },
    wires: ['D9 > x.red', 'D10 > R1 > x.green', 'D11 > R2 > x.blue', 'x.common > GND'],
    uses: ['out 9', 'out 10', 'out 11'],
    found: [unlimited('x.red')],
  },
  {
    about: 'a three-colour lamp with common anode, wired as one with common cathode',
    parts: { x: { kind: 'rgb-led', common: 'anode' }, R1: ohms('330') },
    wires: ['D9 > R1 > x.red', 'x.common > GND'],
    uses: ['out 9'],
    found: [reversed('x.red')],
  },
  {
    about: 'a three-colour lamp without any resistor: a finding for each colour',
    parts: { x: { kind: 'rgb-led' } },
    wires: ['D9 > x.red', 'D10 > x.green', 'D11 > x.blue', 'x.common > GND'],
    uses: ['out 9', 'out 10', 'out 11'],
    found: ['x.red', 'x.green', 'x.blue'].map((lamp) => unlimited(lamp)),
  },
  {
    about: 'a digit with a segment without resistor',
    parts: {
      x: { kind: 'seven-segment-display' },
      ...Object.fromEntries([...'bcdefg'].map((s) => [`R${s}`, ohms('470')])),
    },
    wires: [
      'D2 > x.a',
      ...[...'bcdefg'].map((s, index) => `D${3 + index} > R${s} > x.${s}`),
      'x.common > GND',
    ],
    uses: [2, 3, 4, 5, 6, 7, 8].map((pin) => `out ${pin}`),
    found: [unlimited('x.a')],
  },
  {
    about: 'a lamp of a bar the wrong way round',
    parts: { x: { kind: 'led-bar' }, R1: ohms('330') },
    wires: ['D7 > R1 > x.cathode-1', 'x.anode-1 > GND'],
    uses: ['out 7'],
    found: [reversed('x.anode-1')],
  },
  {
    about: 'a lamp of a bar without resistor',
    parts: { x: { kind: 'led-bar' } },
    wires: ['D7 > x.anode-3', 'x.cathode-3 > GND'],
    uses: ['out 7'],
    found: [unlimited('x.anode-3')],
  },
  {
    about: 'the lamp of a button without resistor',
    parts: { x: { kind: 'illuminated-push-button' } },
    wires: ['D2 > x.1', 'x.2 > GND', 'D7 > x.anode', 'x.cathode > GND'],
    uses: ['pull-up 2', 'out 7'],
    found: [unlimited()],
  },
  {
    about: 'an optocoupler without resistor',
    parts: { x: { kind: 'optocoupler' } },
    wires: ['D7 > x.anode', 'x.cathode > GND', 'D2 > x.collector', 'x.emitter > GND'],
    uses: ['out 7', 'pull-up 2'],
    found: [unlimited()],
  },
  {
    about: 'an optocoupler with nothing to pull its output up',
    parts: { x: { kind: 'optocoupler' }, R1: ohms('470') },
    wires: ['D7 > R1 > x.anode', 'x.cathode > GND', 'D2 > x.collector', 'x.emitter > GND'],
    uses: ['out 7', 'in 2'],
    found: [floats('D2')],
  },
  {
    about: 'a fuse in place of the resistor of a lamp',
    parts: { x: { kind: 'led' }, F1: { kind: 'resettable-fuse', current: '0.1 A' } },
    wires: ['D7 > F1 > x > GND'],
    uses: ['out 7'],
    found: [unlimited()],
  },
  {
    about: 'a lamp without resistor behind a connector',
    parts: { x: { kind: 'led' }, J1: { kind: 'connector' } },
    wires: ['D7 > J1.1a', 'J1.1b > x > J1.2b', 'J1.2a > GND'],
    uses: ['out 7'],
    found: [unlimited()],
  },
  {
    about: 'a terminal block that ties an output to ground',
    parts: { x: { kind: 'terminal-block' } },
    wires: ['D7 > x.1a', 'x.1b > GND'],
    uses: ['out 7'],
    found: [shorted('D7', 'high', 'GND')],
  },
  {
    about: 'a splice that joins an output to the supply',
    parts: { x: { kind: 'wire-joint' } },
    wires: ['D7 > x.1', '5V > x.2'],
    uses: ['low 7'],
    found: [shorted('D7', 'low', '5V')],
  },
  {
    about: 'a tact switch wired across legs that are joined inside',
    parts: { x: { kind: 'tact-switch' } },
    wires: ['D2 > x.1a', 'x.1b > GND'],
    uses: ['high 2'],
    found: ['legs-joined: x.1a and x.1b are joined inside x'],
  },
  {
    about: 'a tact switch to ground on an output',
    parts: { x: { kind: 'tact-switch' } },
    wires: ['D2 > x.1b', 'x.2b > GND'],
    uses: ['high 2'],
    found: [`${shorted('D2', 'high', 'GND')} as soon as x closes`],
  },
  {
    about: 'a slide switch between both rails on an output',
    parts: { x: { kind: 'slide-switch' } },
    wires: ['5V > x.1', 'D2 > x.common', 'x.2 > GND'],
    uses: ['high 2'],
    found: [shorted('D2', 'low', '5V')],
  },
  {
    about: 'a slide switch with one throw open on a plain input',
    parts: { x: { kind: 'slide-switch' } },
    wires: ['D2 > x.common', 'x.2 > GND'],
    uses: ['in 2'],
    found: [floats('D2')],
  },
  {
    about: 'a limit switch on a plain input',
    parts: { x: { kind: 'limit-switch' } },
    wires: ['D2 > x.nc', 'x.common > GND'],
    uses: ['in 2'],
    found: [floats('D2')],
  },
  alone('a reed switch on a plain input', { kind: 'reed-switch' }, [floats('D2')], ['in 2']),
  alone('a tilt switch on a plain input', { kind: 'tilt-switch' }, [floats('D2')], ['in 2']),
  {
    about: 'an encoder on plain inputs',
    parts: { x: { kind: 'rotary-encoder' } },
    wires: ['D2 > x.a', 'D3 > x.b', 'x.common > GND'],
    uses: ['in 2', 'in 3'],
    found: [floats('D2'), floats('D3')],
  },
  {
    about: 'a sensor that drives against an output',
    parts: { x: { kind: 'digital-sensor' } },
    wires: [...power, 'D2 > x.out'],
    uses: ['out 2'],
    found: [meets('D2')],
  },
  {
    about: 'the echo of a ranger on an output',
    parts: { x: { kind: 'ultrasonic-ranger' } },
    wires: [...power, 'D3 > x.trigger', 'D4 > x.echo'],
    uses: ['out 3', 'out 4'],
    found: [meets('D4')],
  },
  {
    about: 'the backlight of a display the wrong way round',
    parts: { x: { kind: 'character-lcd' } },
    wires: [...power, 'D7 > x.cathode', 'x.anode > x.-']
      .concat(['x.contrast > x.-', 'x.read-write > x.-', 'x.register-select > x.-', 'x.enable > x.-'])
      .concat([4, 5, 6, 7].map((bit) => `x.d${bit} > x.-`)),
    uses: ['out 7'],
    found: [reversed()],
  },
  {
    about: 'a network of small resistors in front of a lamp',
    parts: {
      x: { kind: 'resistor-network', value: '10', layout: 'isolated' },
      lamp: { kind: 'led', colour: 'red' },
    },
    wires: ['D7 > x.1a', 'x.1b > lamp > GND'],
    uses: ['out 7'],
    found: [over('D7')],
  },
  {
    about: 'a trimmer on an output, turned to its end',
    parts: { x: { kind: 'trimmer', value: '10k' } },
    wires: ['5V > x.1', 'D7 > x.wiper', 'x.2 > GND'],
    uses: ['out 7'],
    found: [over('D7')],
  },
  {
    about: 'a level shifter without its higher supply',
    parts: { x: { kind: 'level-shifter' } },
    wires: ['3V3 > x.lv', 'x.lv-ground > GND', 'SDA > x.hv-1', 'SCL > x.hv-2'],
    uses: ['i2c'],
    found: ['unwired-terminal: x has no wire on x.hv'],
  },
];
