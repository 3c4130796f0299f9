/**
 * The elements whose current is no straight line, seen through their ports: a diode has one, a transistor two. Each
 * says what flows and how steeply at given volts, and how far a step of Newton's method may go.
 * Sources: Ebers and Moll, "Large-signal behavior of junction transistors", 1954, in the transport form, and Shichman
 * and Hodges, "Modeling and simulation of insulated-gate field-effect transistor switching circuits", 1968 (both from
 * memory). Neither has an Early effect, a body effect or a temperature here.
 */
import type { CoreElement } from './core';
import {
  exponentialAmps,
  exponentialSiemens,
  type Junction,
  limitStep,
  MIN_SIEMENS,
  makeJunction,
  THERMAL_VOLTS,
} from './diode';

/** Current gain of a bipolar transistor with collector and emitter exchanged (small ones have 2 to 6, from memory). */
export const REVERSE_GAIN = 4;

export type DeviceElement = Extract<CoreElement, { type: 'diode' | 'bipolar' | 'field-effect' }>;

/** All ports of a piece. A device's ports are neighbours. */
export interface PortState {
  readonly volts: Float64Array;
  /** Amperes into each port's first node and out of its second. */
  readonly amps: Float64Array;
  /** For each port, siemens by the volts of its device's first port, then by those of its second. */
  readonly siemens: Float64Array;
}

/** One device at one set of its figures. */
export interface Device {
  /** Number of its first port. */
  readonly port: number;
  readonly ports: 1 | 2;
  /** Volts to begin with. */
  guess(volts: Float64Array): void;
  /** Works out amperes and slopes from the volts. */
  evaluate(state: PortState): void;
  /** Shortens a step where the curve would not bear it; true where it did. */
  limit(volts: Float64Array, move: Float64Array): boolean;
}

export function makePortState(ports: number): PortState {
  return {
    volts: new Float64Array(ports),
    amps: new Float64Array(ports),
    siemens: new Float64Array(2 * ports),
  };
}

export function portsOf(element: CoreElement): 0 | 1 | 2 {
  if (element.type === 'diode') {
    return 1;
  }
  return element.type === 'bipolar' || element.type === 'field-effect' ? 2 : 0;
}

/** The device of an element with its two toleranced figures at given values; what they are, compilePiece says. */
export function makeDevice(element: DeviceElement, port: number, first: number, second: number): Device {
  switch (element.type) {
    case 'diode': {
      const forward = makeJunction(first, element.atAmps);
      return element.breakdownVolts === undefined
        ? makeDiode(port, forward)
        : makeDiode(port, forward, makeJunction(second, element.breakdownAmps ?? element.atAmps));
    }
    case 'bipolar':
      return makeBipolar(port, makeJunction(first, element.atAmps, THERMAL_VOLTS), second);
    case 'field-effect':
      return makeFieldEffect(port, first, 1 / (second * (element.fullVolts - first)));
  }
}

function makeDiode(port: number, forward: Junction, reverse?: Junction): Device {
  return {
    port,
    ports: 1,
    guess(volts) {
      volts[port] = forward.volts;
    },
    evaluate({ volts, amps, siemens }) {
      const across = volts[port] ?? 0;
      amps[port] = exponentialAmps(forward, across) + MIN_SIEMENS * across;
      siemens[2 * port] = exponentialSiemens(forward, across) + MIN_SIEMENS;
      if (reverse !== undefined) {
        // A breakdown is a junction the other way round that begins at the breakdown voltage.
        amps[port] = (amps[port] ?? 0) - exponentialAmps(reverse, -across);
        siemens[2 * port] = (siemens[2 * port] ?? 0) + exponentialSiemens(reverse, -across);
      }
    },
    limit(volts, move) {
      const from = volts[port] ?? 0;
      const wanted = from + (move[port] ?? 0);
      let to = limitStep(forward, from, wanted);
      if (reverse !== undefined) {
        to = -limitStep(reverse, -from, -to);
      }
      return shorten(move, port, from, to, wanted);
    },
  };
}

/** Ports: base to emitter, base to collector; a p one's are turned round. `junction` is the collector current's. */
function makeBipolar(port: number, junction: Junction, gain: number): Device {
  return {
    port,
    ports: 2,
    guess(volts) {
      volts[port] = junction.volts;
      volts[port + 1] = 0;
    },
    evaluate({ volts, amps, siemens }) {
      const [emitter, collector] = [volts[port] ?? 0, volts[port + 1] ?? 0];
      const forward = exponentialAmps(junction, emitter);
      const reverse = exponentialAmps(junction, collector);
      const through = forward - reverse;
      amps[port] = through + forward / gain + MIN_SIEMENS * emitter;
      amps[port + 1] = reverse / REVERSE_GAIN - through + MIN_SIEMENS * collector;
      const forwardSlope = exponentialSiemens(junction, emitter);
      const reverseSlope = exponentialSiemens(junction, collector);
      siemens[2 * port] = forwardSlope * (1 + 1 / gain) + MIN_SIEMENS;
      siemens[2 * port + 1] = -reverseSlope;
      siemens[2 * port + 2] = -forwardSlope;
      siemens[2 * port + 3] = reverseSlope * (1 + 1 / REVERSE_GAIN) + MIN_SIEMENS;
    },
    limit(volts, move) {
      let limited = false;
      for (const at of [port, port + 1]) {
        const from = volts[at] ?? 0;
        const wanted = from + (move[at] ?? 0);
        limited = shorten(move, at, from, limitStep(junction, from, wanted), wanted) || limited;
      }
      return limited;
    },
  };
}

/** Ports: gate to source, drain to source; a p one's are turned round. */
function makeFieldEffect(port: number, threshold: number, siemensPerVolt: number): Device {
  return {
    port,
    ports: 2,
    guess(volts) {
      volts[port] = threshold;
      volts[port + 1] = 0;
    },
    evaluate({ volts, amps, siemens }) {
      const [gate, drain] = [volts[port] ?? 0, volts[port + 1] ?? 0];
      // With the drain below the source the two change their parts.
      const turned = drain < 0;
      const across = Math.abs(drain);
      const over = Math.max(0, (turned ? gate - drain : gate) - threshold);
      const linear = across < over;
      const channel = siemensPerVolt * (linear ? (over - across / 2) * across : (over * over) / 2);
      const byGate = siemensPerVolt * (linear ? across : over);
      const byDrain = linear ? siemensPerVolt * (over - across) : 0;
      amps[port] = MIN_SIEMENS * gate;
      amps[port + 1] = (turned ? -channel : channel) + MIN_SIEMENS * drain;
      siemens[2 * port] = MIN_SIEMENS;
      siemens[2 * port + 1] = 0;
      siemens[2 * port + 2] = turned ? -byGate : byGate;
      siemens[2 * port + 3] = (turned ? byGate + byDrain : byDrain) + MIN_SIEMENS;
    },
    limit(volts, move) {
      let limited = false;
      for (const at of [port, port + 1]) {
        const from = volts[at] ?? 0;
        const wanted = from + (move[at] ?? 0);
        // The curve is a parabola, so the straight line misleads by a factor and not by an exponential.
        const reach = Math.max(1, Math.abs(from - threshold));
        limited =
          shorten(move, at, from, Math.max(from - reach, Math.min(from + reach, wanted)), wanted) || limited;
      }
      return limited;
    },
  };
}

function shorten(move: Float64Array, port: number, from: number, to: number, wanted: number): boolean {
  if (to === wanted) {
    return false;
  }
  move[port] = to - from;
  return true;
}
