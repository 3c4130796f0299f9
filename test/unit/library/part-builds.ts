/**
 * A right build for every kind of part on an Uno, in a short notation: the part under test is `x`, a wire is its ends
 * with `>` in between, a use is what the sketch does to a pin. The checker has to be silent on all of them.
 */
export interface PartBuild {
  /** `x` and the parts it needs. */
  readonly parts: Readonly<Record<string, object>>;
  readonly wires: readonly string[];
  /** `out 7`, `low 7`, `in 2`, `pull-up 2`, `analog A0`, `pwm 3`, `tone 8`, `servo 9`. */
  readonly uses?: readonly string[];
}

const ohms = (value: string): object => ({ kind: 'resistor', value });
const power = ['5V > x.+', 'x.- > GND'];
const motor = { kind: 'dc-motor', resistance: '10 ohm' };
const pack = { kind: 'power-adapter', volts: '12 V', maxCurrent: '2 A' };
const packWires = ['pack.- > GND'];
/** What a relay switches: a bulb on a pack that shares no wire with the board. */
const bulb = { bulb: { kind: 'filament-lamp' }, cells: { kind: 'alkaline-battery', cells: 4 } };
const bulbWires = ['cells.+ > x.common', 'x.no > bulb > cells.-'];
const three = ['red', 'green', 'blue'];
const segments = ['a', 'b', 'c', 'd', 'e', 'f', 'g'];
const each = <T>(names: readonly string[], make: (name: string, index: number) => T): Record<string, T> =>
  Object.fromEntries(names.map((name, index) => [`R${name}`, make(name, index)]));

/** By kind; a key with a space behind the kind is a second build of it. */
export const rightBuilds: Readonly<Record<string, PartBuild>> = {
  resistor: { parts: { x: ohms('1k') }, wires: ['D7 > x > GND'], uses: ['out 7'] },
  'resistor-network': {
    parts: { x: { kind: 'resistor-network', value: '10k' }, call: { kind: 'push-button' } },
    wires: ['5V > x.common', 'D2 > x.1', 'x.1 > call > GND'],
    uses: ['in 2'],
  },
  'resistor-network isolated': {
    parts: { x: { kind: 'resistor-network', value: '330', layout: 'isolated' }, lamp: { kind: 'led' } },
    wires: ['D7 > x.1a', 'x.1b > lamp > GND'],
    uses: ['out 7'],
  },
  potentiometer: {
    parts: { x: { kind: 'potentiometer', value: '10k' } },
    wires: ['5V > x.1', 'x.wiper > A0', 'x.2 > GND'],
    uses: ['analog A0'],
  },
  trimmer: {
    parts: { x: { kind: 'trimmer', value: '10k' } },
    wires: ['5V > x.1', 'x.wiper > A0', 'x.2 > GND'],
    uses: ['analog A0'],
  },
  photoresistor: {
    parts: { x: { kind: 'photoresistor' }, R1: ohms('10k') },
    wires: ['5V > x > R1 > GND', 'x.2 > A0'],
    uses: ['analog A0'],
  },
  thermistor: {
    parts: { x: { kind: 'thermistor' }, R1: ohms('10k') },
    wires: ['5V > x > R1 > GND', 'x.2 > A0'],
    uses: ['analog A0'],
  },
  capacitor: { parts: { x: { kind: 'capacitor', value: '100n' } }, wires: ['5V > x > GND'] },
  'electrolytic-capacitor': {
    parts: { x: { kind: 'electrolytic-capacitor', value: '470 uF', volts: '16 V' } },
    wires: power,
  },
  diode: {
    parts: {
      x: { kind: 'diode' },
      block: { kind: 'power-adapter', volts: '5 V', maxCurrent: '3 A' },
      bolt: { kind: 'solenoid', volts: '5' },
      Q1: { kind: 'n-mosfet' },
      R1: ohms('10k'),
    },
    wires: ['D7 > Q1.gate', 'Q1.gate > R1 > GND', 'Q1.source > GND', 'block.+ > bolt > Q1.drain'].concat([
      'Q1.drain > x.anode',
      'x.cathode > bolt.1',
      'block.- > GND',
    ]),
    uses: ['out 7'],
  },
  'schottky-diode': {
    parts: { x: { kind: 'schottky-diode' }, pack: { kind: 'nine-volt-battery' } },
    wires: ['pack.+ > x.anode', 'x.cathode > VIN', 'pack.- > GND'],
  },
  'zener-diode': {
    parts: { x: { kind: 'zener-diode', volts: '4.7 V' }, R1: ohms('1k'), pack },
    wires: ['pack.+ > R1', 'R1.2 > x.cathode', 'x.cathode > A0', 'x.anode > GND', ...packWires],
    uses: ['analog A0'],
  },
  led: { parts: { x: { kind: 'led' }, R1: ohms('330') }, wires: ['D7 > R1 > x > GND'], uses: ['out 7'] },
  'rgb-led': {
    parts: { x: { kind: 'rgb-led' }, ...each(three, () => ohms('330')) },
    wires: [...three.map((name, index) => `D${9 + index} > R${name} > x.${name}`), 'x.common > GND'],
    uses: ['pwm 9', 'pwm 10', 'pwm 11'],
  },
  'rgb-led anode': {
    parts: { x: { kind: 'rgb-led', common: 'anode' }, ...each(three, () => ohms('330')) },
    wires: [...three.map((name, index) => `D${9 + index} > R${name} > x.${name}`), 'x.common > 5V'],
    uses: ['pwm 9', 'pwm 10', 'pwm 11'],
  },
  'seven-segment-display': {
    parts: { x: { kind: 'seven-segment-display' }, ...each(segments, () => ohms('470')) },
    wires: [...segments.map((name, index) => `D${2 + index} > R${name} > x.${name}`), 'x.common-2 > GND'],
    uses: segments.map((_, index) => `out ${2 + index}`),
  },
  'led-bar': {
    parts: { x: { kind: 'led-bar' }, R1: ohms('330'), R2: ohms('330') },
    wires: ['D4 > R1 > x.anode-1', 'x.cathode-1 > GND', 'D5 > R2 > x.anode-2', 'x.cathode-2 > GND'],
    uses: ['out 4', 'out 5'],
  },
  'addressable-strip': {
    parts: {
      x: { kind: 'addressable-strip', count: 8 },
      R1: ohms('330'),
      C1: { kind: 'electrolytic-capacitor', value: '470 uF', volts: '10 V' },
    },
    wires: [...power, 'x.+ > C1 > x.-', 'D6 > R1', 'R1.2 > x.data-in'],
    uses: ['out 6'],
  },
  'led-strip': {
    parts: { x: { kind: 'led-strip', metres: 1 }, Q1: { kind: 'n-mosfet' }, R1: ohms('10k'), pack },
    wires: [
      'D6 > Q1.gate',
      'Q1.gate > R1 > GND',
      'Q1.source > GND',
      'pack.+ > x.+',
      'x.- > Q1.drain',
      ...packWires,
    ],
    uses: ['out 6'],
  },
  'filament-lamp': {
    parts: { x: { kind: 'filament-lamp' }, Q1: { kind: 'n-mosfet' }, R1: ohms('10k') },
    wires: ['D6 > Q1.gate', 'Q1.gate > R1 > GND', 'Q1.source > GND', '5V > x > Q1.drain'],
    uses: ['out 6'],
  },
  'push-button': { parts: { x: { kind: 'push-button' } }, wires: ['D2 > x > GND'], uses: ['pull-up 2'] },
  'illuminated-push-button': {
    parts: { x: { kind: 'illuminated-push-button' }, R1: ohms('330') },
    wires: ['D2 > x.1', 'x.2 > GND', 'D7 > R1 > x.anode', 'x.cathode > GND'],
    uses: ['pull-up 2', 'out 7'],
  },
  'tact-switch': {
    parts: { x: { kind: 'tact-switch' } },
    wires: ['D2 > x.1b', 'x.2a > GND'],
    uses: ['pull-up 2'],
  },
  'toggle-switch': { parts: { x: { kind: 'toggle-switch' } }, wires: ['D2 > x > GND'], uses: ['pull-up 2'] },
  'slide-switch': {
    parts: { x: { kind: 'slide-switch' } },
    wires: ['5V > x.1', 'D2 > x.common', 'x.2 > GND'],
    uses: ['in 2'],
  },
  'rotary-encoder': {
    parts: { x: { kind: 'rotary-encoder' } },
    wires: ['D2 > x.a', 'D3 > x.b', 'x.common > GND'],
    uses: ['pull-up 2', 'pull-up 3'],
  },
  'keypad-matrix': {
    parts: { x: { kind: 'keypad-matrix', size: '4x3' } },
    wires: [1, 2, 3, 4]
      .map((row) => `D${1 + row} > x.row-${row}`)
      .concat([1, 2, 3].map((c) => `D${5 + c} > x.column-${c}`)),
    uses: [2, 3, 4, 5].map((pin) => `pull-up ${pin}`).concat([6, 7, 8].map((pin) => `scan ${pin}`)),
  },
  'reed-switch': { parts: { x: { kind: 'reed-switch' } }, wires: ['D2 > x > GND'], uses: ['pull-up 2'] },
  'tilt-switch': { parts: { x: { kind: 'tilt-switch' } }, wires: ['D2 > x > GND'], uses: ['pull-up 2'] },
  'limit-switch': {
    parts: { x: { kind: 'limit-switch' } },
    wires: ['D2 > x.nc', 'x.common > GND'],
    uses: ['pull-up 2'],
  },
  buzzer: { parts: { x: { kind: 'buzzer' } }, wires: ['D8 > x > GND'], uses: ['tone 8'] },
  speaker: {
    parts: { x: { kind: 'speaker' }, R1: ohms('330') },
    wires: ['D8 > R1 > x > GND'],
    uses: ['tone 8'],
  },
  'npn-transistor': {
    parts: { x: { kind: 'npn-transistor' }, R1: ohms('1k'), load: ohms('100') },
    wires: ['D7 > R1', 'R1.2 > x.base', 'x.emitter > GND', '5V > load > x.collector'],
    uses: ['out 7'],
  },
  'pnp-transistor': {
    parts: { x: { kind: 'pnp-transistor' }, R1: ohms('1k'), load: ohms('100') },
    wires: ['D7 > R1', 'R1.2 > x.base', 'x.emitter > 5V', 'x.collector > load > GND'],
    uses: ['out 7'],
  },
  'n-mosfet': {
    parts: { x: { kind: 'n-mosfet' }, R1: ohms('10k'), load: ohms('150') },
    wires: ['D7 > x.gate', 'x.gate > R1 > GND', 'x.source > GND', '5V > load > x.drain'],
    uses: ['out 7'],
  },
  'p-mosfet': {
    parts: { x: { kind: 'p-mosfet', type: 'ao3401' }, R1: ohms('10k'), load: ohms('150') },
    wires: ['D7 > x.gate', 'x.gate > R1 > x.source', 'x.source > 5V', 'x.drain > load > GND'],
    uses: ['out 7'],
  },
  'darlington-array': {
    parts: {
      x: { kind: 'darlington-array' },
      bolt: { kind: 'solenoid', volts: '5' },
      block: { kind: 'power-adapter', volts: '5 V', maxCurrent: '3 A' },
    },
    wires: ['D7 > x.in-1', 'x.- > GND', 'block.+ > bolt > x.out-1', 'x.common > bolt.1', 'block.- > GND'],
    uses: ['out 7'],
  },
  'h-bridge': {
    parts: { x: { kind: 'h-bridge' }, motor, pack },
    wires: [
      'pack.+ > x.+',
      'pack.- > x.-',
      'x.- > GND',
      'D4 > x.in-1',
      'D5 > x.in-2',
      'x.out-1 > motor > x.out-2',
    ],
    uses: ['out 4', 'out 5'],
  },
  relay: {
    parts: {
      x: { kind: 'relay' },
      flyback: { kind: 'diode' },
      Q1: { kind: 'npn-transistor' },
      R1: ohms('1k'),
      ...bulb,
    },
    wires: [
      ...['D7 > R1', 'R1.2 > Q1.base', 'Q1.emitter > GND', '5V > x.coil-1', 'x.coil-2 > Q1.collector'],
      ...['Q1.collector > flyback.anode', 'flyback.cathode > x.coil-1', ...bulbWires],
    ],
    uses: ['out 7'],
  },
  'relay-module': {
    parts: { x: { kind: 'relay-module' }, ...bulb },
    wires: [...power, 'D7 > x.in', ...bulbWires],
    uses: ['out 7'],
  },
  'relay-module high': {
    parts: { x: { kind: 'relay-module', trigger: 'high' }, ...bulb },
    wires: [...power, 'D7 > x.in', ...bulbWires],
    uses: ['out 7'],
  },
  'dc-motor': {
    parts: { x: motor, flyback: { kind: 'diode' }, Q1: { kind: 'n-mosfet' }, R1: ohms('10k') },
    wires: ['D6 > Q1.gate', 'Q1.gate > R1 > GND', 'Q1.source > GND', '5V > x > Q1.drain'].concat([
      'Q1.drain > flyback.anode',
      'flyback.cathode > x.1',
    ]),
    uses: ['pwm 6'],
  },
};
