/** Short spellings of elements for tests; a number stands for a figure without tolerance. */
import type { Element, OperatingPoint } from '../../../server/src/base/circuit';
import { exactly, type Range } from '../../../server/src/base/range';
import { solveNetwork } from '../../../server/src/circuit';

const fixed = (value: number | Range): Range => (typeof value === 'number' ? exactly(value) : value);
export const resistor = (id: string, a: string, b: string, ohms: number | Range): Element => ({
  type: 'resistor',
  id,
  a,
  b,
  ohms: fixed(ohms),
});
export const source = (
  id: string,
  plus: string,
  minus: string,
  volts: number | Range,
  ohms: number | Range = 0,
): Element => ({
  type: 'source',
  id,
  plus,
  minus,
  volts: fixed(volts),
  ohms: fixed(ohms),
});
export const current = (id: string, from: string, to: string, amps: number | Range): Element => ({
  type: 'current',
  id,
  from,
  to,
  amps: fixed(amps),
});
export const diode = (
  id: string,
  anode: string,
  cathode: string,
  volts: number | Range,
  atAmps = 0.02,
): Element => ({
  type: 'diode',
  id,
  anode,
  cathode,
  volts: fixed(volts),
  atAmps,
});

/** Solves elements against the node GND. */
export const solve = (...elements: Element[]): OperatingPoint => solveNetwork({ ground: 'GND', elements });
