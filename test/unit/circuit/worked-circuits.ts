/** Circuits that textbooks work through, each with where it stands; worked-examples.test.ts holds the printed figures. */
import { exactly } from '../../../server/src/base/range';
import { resistor, solve, source } from './elements';

export const kuphaldt = 'Kuphaldt, Lessons in Electric Circuits, vol. I, network theorems';
export const millman = () =>
  solve(source('b1', 'x', 'GND', 28, 4), source('b3', 'x', 'GND', 7, 1), resistor('r2', 'x', 'GND', 2));

export const sadiku = 'Alexander and Sadiku, Fundamentals of Electric Circuits, transistor of fig. 3.41';
export const fixedBias = () =>
  solve(
    source('in', 'i', 'GND', 4),
    resistor('rb', 'i', 'b', 20e3),
    source('vcc', 'p', 'GND', 6),
    resistor('rc', 'p', 'c', 100),
    {
      type: 'transistor',
      id: 'q',
      collector: 'c',
      emitter: 'GND',
      control: 'b',
      channel: 'n',
      volts: exactly(0.7),
      atAmps: 8.25e-3,
      ohms: exactly(0),
      gain: exactly(50),
    },
  );

export const hambley = 'Hambley, Electrical Engineering, example 12.7, four-resistor bias';
export const fourResistors = (gain: number) =>
  solve(
    source('vcc', 'p', 'GND', 15),
    resistor('r1', 'p', 'b', 10e3),
    resistor('r2', 'b', 'GND', 5e3),
    resistor('rc', 'p', 'c', 1e3),
    resistor('re', 'e', 'GND', 1e3),
    {
      type: 'transistor',
      id: 'q',
      collector: 'c',
      emitter: 'e',
      control: 'b',
      channel: 'n',
      volts: exactly(0.7),
      atAmps: 4.2e-3,
      ohms: exactly(0),
      gain: exactly(gain),
    },
  );

export const jaeger = 'Jaeger and Blalock, Microelectronic Circuit Design, solutions 4.123';
/** Kp 40 microampere per square volt, threshold -0.75 V, 75 kohm to -15 V; the gate at the drain or at -15 V. */
export const pChannel = (control: string) =>
  solve(source('v', 'GND', 'n', 15), resistor('r', 'd', 'n', 75e3), {
    type: 'transistor',
    id: 'q',
    collector: 'd',
    emitter: 'GND',
    control,
    channel: 'p',
    volts: exactly(0.75),
    ohms: exactly(1 / (4e-5 * (10 - 0.75))),
    fullVolts: 10,
  });

export const neamen =
  'Neamen, enhancement transistor with Kn 5 mA/V2, threshold 2 V, gate at 5 V, by the formulas there';
export const nChannel = (drain: number) =>
  solve(source('g', 'g', 'GND', 5), source('d', 'd', 'GND', drain), {
    type: 'transistor',
    id: 'q',
    collector: 'd',
    emitter: 'GND',
    control: 'g',
    channel: 'n',
    volts: exactly(2),
    // Neamen's Kn is half of the channel's siemens per volt.
    ohms: exactly(1 / (2 * 5e-3 * (5 - 2))),
    fullVolts: 5,
  });

export const knott = 'Knott, electronics notes, Zener diode: 12 V, 100 ohm, 6 V, load 50 mA';
export const zener = (load: number) =>
  solve(
    source('v', 'p', 'GND', 12),
    resistor('r', 'p', 'z', 100),
    {
      type: 'diode',
      id: 'z',
      anode: 'GND',
      cathode: 'z',
      volts: exactly(0.8),
      atAmps: 0.1,
      breakdownVolts: exactly(6),
      breakdownAmps: load > 0 ? 0.01 : 0.06,
    },
    { type: 'current', id: 'load', from: 'z', to: 'GND', amps: exactly(load) },
  );
