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
      /** Reverse volts at which a Zener diode conducts, at `breakdownAmps` (5 mA where absent). Absent: it blocks. */
      readonly breakdownVolts?: Range;
      readonly breakdownAmps?: number;
    }
  | {
      /** A winding: its resistance, and what it takes to move the switches it operates. */
      readonly type: 'coil';
      readonly id: string;
      readonly a: string;
      readonly b: string;
      readonly ohms: Range;
      /**
       * Volts across the winding, either way, at its typical resistance: below `min` no switch moves, above `max`
       * every one has moved.
       */
      readonly operateVolts?: Range;
    }
  | {
      /** A contact. One that a coil operates changes over while the coil holds it. */
      readonly type: 'switch';
      readonly id: string;
      readonly a: string;
      readonly b: string;
      /** Resistance of the closed contact. */
      readonly ohms: Range;
      /** State by itself, or as a hand has put it. */
      readonly closed: boolean;
      /** Id of the coil, or of the diode of an optocoupler, that moves it. */
      readonly operatedBy?: string;
    }
  | {
      /** Bipolar where it has a gain, field-effect where it has none. */
      readonly type: 'transistor';
      readonly id: string;
      /** Collector or drain. */
      readonly collector: string;
      /** Emitter or source. */
      readonly emitter: string;
      /** Base or gate. */
      readonly control: string;
      /** n: conducts when the control lies above the emitter or source; p: when below. */
      readonly channel: 'n' | 'p';
      /** Base-emitter volts at `atAmps` of collector current, or the gate's threshold; above zero for both channels. */
      readonly volts: Range;
      /** Collector current of a bipolar one's `volts`; 10 mA where absent. */
      readonly atAmps?: number;
      /** Resistance when it conducts fully: in the collector's lead, or of the channel at `fullVolts`. */
      readonly ohms: Range;
      /** Gate volts at which a field-effect one's `ohms` were measured; twice the highest threshold where absent. */
      readonly fullVolts?: number;
      /** Current gain of a bipolar one. */
      readonly gain?: Range;
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
   * from anode to cathode; through a current element from `from` to `to`; through coil and switch from `a` to `b`;
   * through a transistor from collector to emitter (negative through a p one that conducts). A bipolar transistor's
   * base current, positive into the base, stands under its id with `:control` behind.
   */
  readonly amps: Readonly<Record<string, Range>>;
  /** True where the solver met its stop criterion at every corner; where false the figures must not be used. */
  readonly converged: boolean;
  /** Said in words where something was bounded, left out or singular (a node nothing ties down). */
  readonly notes: readonly string[];
}
