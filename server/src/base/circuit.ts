/** The boundary types around circuit/: a network of primitives goes in, operating points come out. All units SI. */
import type { Range } from './range';

/** Primitive elements. Node names are free strings; the ground node's name is given by the network. */
export type Element =
  | {
      readonly type: 'resistor';
      readonly id: string;
      readonly a: string;
      readonly b: string;
      readonly ohms: Range;
    }
  | {
      /** A voltage from `minus` up to `plus` behind a series resistance (0 ohm: an ideal source). */
      readonly type: 'source';
      readonly id: string;
      readonly plus: string;
      readonly minus: string;
      readonly volts: Range;
      readonly ohms: Range;
    }
  | {
      /** A current that flows through the element from `from` to `to`. */
      readonly type: 'current';
      readonly id: string;
      readonly from: string;
      readonly to: string;
      readonly amps: Range;
    }
  | {
      /** A junction given by its forward voltage at a test current; blocks in reverse (leakage below 1 microampere). */
      readonly type: 'diode';
      readonly id: string;
      readonly anode: string;
      readonly cathode: string;
      readonly volts: Range;
      readonly atAmps: number;
    };

/** A connected piece of the build in one state of its switches and pins. */
export interface Network {
  readonly ground: string;
  readonly elements: readonly Element[];
}

/** Voltages of all nodes against ground and currents of all elements at the tolerance corners. */
export interface OperatingPoint {
  /** Volts by node. */
  readonly nodes: Readonly<Record<string, Range>>;
  /**
   * Amperes by element id. Positive is: through a resistor from `a` to `b`; out of a source's `plus`; through a diode
   * from anode to cathode; through a current element from `from` to `to`.
   */
  readonly amps: Readonly<Record<string, Range>>;
  /** True where the solver met its stop criterion at every corner; where false the figures must not be used. */
  readonly converged: boolean;
  /** Said in words where something was bounded, left out or singular (a node nothing ties down). */
  readonly notes: readonly string[];
}
