/** The second half of the right builds: drivers of motors, sensors, displays, supplies and what passes a wire on. */
import type { PartBuild } from './part-builds';

const ohms = (value: string): object => ({ kind: 'resistor', value });
const power = ['5V > x.+', 'x.- > GND'];
const pack = { kind: 'power-adapter', volts: '12 V', maxCurrent: '2 A' };
const windings = ['a', 'b', 'c', 'd'];
const signals = [4, 5, 6, 7];
const feed = (entry: object): PartBuild => ({ parts: { x: entry }, wires: ['x.+ > VIN', 'x.- > GND'] });

export const moreRightBuilds: Readonly<Record<string, PartBuild>> = {
  'stepper-motor': {
    parts: { x: { kind: 'stepper-motor' }, U1: { kind: 'stepper-board' } },
    wires: [
      ...['5V > U1.+', 'U1.- > GND', 'U1.common > x.common'],
      ...windings.flatMap((name, index) => [`U1.${name} > x.${name}`, `D${4 + index} > U1.in-${index + 1}`]),
    ],
    uses: signals.map((pin) => `out ${pin}`),
  },
  'stepper-board': {
    parts: { x: { kind: 'stepper-board' } },
    wires: [...power, ...signals.map((pin) => `D${pin} > x.in-${pin - 3}`)],
    uses: signals.map((pin) => `out ${pin}`),
  },
  'stepper-driver': {
    parts: { x: { kind: 'stepper-driver' }, motor: { kind: 'stepper-motor', type: 'bipolar' }, pack },
    wires: [
      ...['pack.+ > x.+', 'pack.- > x.-', 'x.logic > 5V', 'x.logic-ground > GND', 'x.sleep > x.reset'],
      ...['a1', 'a2', 'b1', 'b2'].map((name) => `x.${name} > motor.${name}`),
      ...['D4 > x.step', 'D5 > x.direction'],
    ],
    uses: ['out 4', 'out 5'],
  },
  servo: {
    parts: { x: { kind: 'servo' }, cells: { kind: 'nimh-battery', cells: 4 } },
    wires: ['cells.+ > x.+', 'cells.- > x.-', 'x.- > GND', 'D9 > x.signal'],
    uses: ['servo 9'],
  },
  solenoid: {
    parts: {
      x: { kind: 'solenoid' },
      flyback: { kind: 'diode' },
      Q1: { kind: 'n-mosfet' },
      R1: ohms('10k'),
      pack,
    },
    wires: [
      ...['D6 > Q1.gate', 'Q1.gate > R1 > GND', 'Q1.source > GND', 'pack.+ > x > Q1.drain'],
      ...['Q1.drain > flyback > pack.+', 'pack.- > GND'],
    ],
    uses: ['out 6'],
  },
  optocoupler: {
    parts: { x: { kind: 'optocoupler' }, R1: ohms('470') },
    wires: ['D7 > R1 > x.anode', 'x.cathode > GND', 'D2 > x.collector', 'x.emitter > GND'],
    uses: ['out 7', 'pull-up 2'],
  },
  'analog-sensor': {
    parts: { x: { kind: 'analog-sensor' } },
    wires: [...power, 'A0 > x.out'],
    uses: ['analog A0'],
  },
  'digital-sensor': {
    parts: { x: { kind: 'digital-sensor' } },
    wires: [...power, 'D2 > x.out'],
    uses: ['in 2'],
  },
  'open-collector-sensor': {
    parts: { x: { kind: 'open-collector-sensor' } },
    wires: [...power, 'D2 > x.out'],
    uses: ['pull-up 2'],
  },
  'i2c-device': {
    parts: { x: { kind: 'i2c-device' } },
    wires: [...power, 'SDA > x.sda', 'SCL > x.scl'],
    uses: ['i2c'],
  },
  'spi-device': {
    parts: { x: { kind: 'spi-device' } },
    wires: [...power, 'D13 > x.sck', 'D11 > x.mosi', 'D12 > x.miso', 'D10 > x.select'],
    uses: ['spi', 'out 10'],
  },
  'serial-device': {
    parts: { x: { kind: 'serial-device' } },
    wires: [...power, 'D0 > x.tx', 'D1 > x.rx'],
    uses: ['serial'],
  },
  'one-wire-sensor': {
    parts: { x: { kind: 'one-wire-sensor' }, R1: ohms('4k7') },
    wires: [...power, 'D2 > x.data', 'x.+ > R1 > x.data'],
    uses: ['in 2'],
  },
  'temperature-humidity-sensor': {
    parts: { x: { kind: 'temperature-humidity-sensor' } },
    wires: [...power, 'D2 > x.data'],
    uses: ['in 2'],
  },
  'ultrasonic-ranger': {
    parts: { x: { kind: 'ultrasonic-ranger' } },
    wires: [...power, 'D3 > x.trigger', 'D4 > x.echo'],
    uses: ['out 3', 'in 4'],
  },
  'pir-sensor': { parts: { x: { kind: 'pir-sensor' } }, wires: [...power, 'D2 > x.out'], uses: ['in 2'] },
  'infrared-receiver': {
    parts: { x: { kind: 'infrared-receiver' } },
    wires: [...power, 'D2 > x.out'],
    uses: ['in 2'],
  },
  joystick: {
    parts: { x: { kind: 'joystick' } },
    wires: [...power, 'A0 > x.x', 'A1 > x.y', 'D2 > x.switch'],
    uses: ['analog A0', 'analog A1', 'pull-up 2'],
  },
  'character-lcd': {
    parts: { x: { kind: 'character-lcd' }, contrast: { kind: 'trimmer', value: '10k' } },
    wires: [
      ...power,
      ...['x.+ > contrast.1', 'contrast.wiper > x.contrast', 'contrast.2 > x.-', 'x.read-write > x.-'],
      ...['D12 > x.register-select', 'D11 > x.enable', 'D5 > x.d4', 'D4 > x.d5', 'D3 > x.d6', 'D2 > x.d7'],
      ...['x.+ > x.anode', 'x.cathode > x.-'],
    ],
    uses: [2, 3, 4, 5, 11, 12].map((pin) => `out ${pin}`),
  },
  'i2c-display': {
    parts: { x: { kind: 'i2c-display' } },
    wires: [...power, 'SDA > x.sda', 'SCL > x.scl'],
    uses: ['i2c'],
  },
  'spi-display': {
    parts: { x: { kind: 'spi-display' } },
    wires: [...power, 'D13 > x.sck', 'D11 > x.mosi', 'D10 > x.select', 'D9 > x.data-command', 'D8 > x.reset'],
    uses: ['spi', 'out 8', 'out 9', 'out 10'],
  },
  'level-shifter': {
    parts: { x: { kind: 'level-shifter' }, U1: { kind: 'i2c-device', supply: '3.3' } },
    wires: [
      ...['5V > x.hv', '3V3 > x.lv', 'x.hv-ground > GND', 'SDA > x.hv-1', 'SCL > x.hv-2'],
      ...['x.lv-1 > U1.sda', 'x.lv-2 > U1.scl', 'x.lv > U1.+', 'U1.- > x.lv-ground'],
    ],
    uses: ['i2c'],
  },
  'shift-register': {
    parts: { x: { kind: 'shift-register' }, R1: ohms('470'), lamp: { kind: 'led' } },
    wires: [
      ...[...power, 'D4 > x.data', 'D5 > x.shift-clock', 'D6 > x.latch'],
      ...['x.output-enable > GND', 'x.clear > x.+', 'x.q0 > R1 > lamp > GND'],
    ],
    uses: ['out 4', 'out 5', 'out 6'],
  },
  'voltage-regulator': {
    parts: { x: { kind: 'voltage-regulator', maxCurrent: '1.5 A' }, pack, motor: { kind: 'servo' } },
    wires: [
      'pack.+ > x.in',
      'x.- > GND',
      'pack.- > GND',
      'x.out > motor.+',
      'motor.- > GND',
      'D9 > motor.signal',
    ],
    uses: ['servo 9'],
  },
  'step-down-module': {
    parts: { x: { kind: 'step-down-module', volts: '5 V' }, pack, motor: { kind: 'servo' } },
    wires: [
      'pack.+ > x.in+',
      'pack.- > x.in-',
      'x.out+ > motor.+',
      'motor.- > x.out-',
      'x.in- > GND',
      'D9 > motor.signal',
    ],
    uses: ['servo 9'],
  },
  battery: feed({ kind: 'battery', volts: '9' }),
  'alkaline-battery': feed({ kind: 'alkaline-battery', cells: 6 }),
  'nimh-battery': feed({ kind: 'nimh-battery', cells: 7 }),
  'lithium-battery': feed({ kind: 'lithium-battery', cells: 2, capacity: '2000 mAh' }),
  'lithium-iron-battery': feed({ kind: 'lithium-iron-battery', cells: 3 }),
  'lead-acid-battery': feed({ kind: 'lead-acid-battery', cells: 4 }),
  'coin-cell': {
    parts: {
      x: { kind: 'coin-cell' },
      lamp: { kind: 'led', colour: 'red' },
      R1: ohms('470'),
      on: { kind: 'slide-switch' },
    },
    wires: ['x.+ > on.common', 'on.2 > R1 > lamp > x.-'],
  },
  'nine-volt-battery': feed({ kind: 'nine-volt-battery' }),
  'power-adapter': feed({ kind: 'power-adapter', volts: '9 V', maxCurrent: '1 A' }),
  'usb-power': {
    parts: {
      x: { kind: 'usb-power', port: 'charger' },
      strip: { kind: 'addressable-strip', count: 20 },
      R1: ohms('330'),
    },
    wires: ['x.+ > strip.+', 'strip.- > x.-', 'x.- > GND', 'D6 > R1 > strip.data-in'],
    uses: ['out 6'],
  },
  fuse: {
    parts: { x: { kind: 'fuse', current: '1 A' }, pack },
    wires: ['pack.+ > x > VIN', 'pack.- > GND'],
  },
  'resettable-fuse': {
    parts: { x: { kind: 'resettable-fuse', current: '0.5 A' }, pack },
    wires: ['pack.+ > x > VIN', 'pack.- > GND'],
  },
  connector: {
    parts: { x: { kind: 'connector' }, R1: ohms('330'), lamp: { kind: 'led' } },
    wires: ['D7 > R1 > x.1a', 'x.1b > lamp > x.2b', 'x.2a > GND'],
    uses: ['out 7'],
  },
  'terminal-block': {
    parts: { x: { kind: 'terminal-block', ways: '3' }, call: { kind: 'push-button' } },
    wires: ['D2 > x.1a', 'x.1b > call > x.3b', 'x.3a > GND'],
    uses: ['pull-up 2'],
  },
  'wire-joint': {
    parts: { x: { kind: 'wire-joint' }, call: { kind: 'push-button' }, bell: { kind: 'push-button' } },
    wires: ['GND > x.1', 'x.2 > call > D2', 'x.3 > bell > D3'],
    uses: ['pull-up 2', 'pull-up 3'],
  },
};
