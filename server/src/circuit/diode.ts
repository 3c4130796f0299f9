/**
 * The junction behind every diode and lamp. Parts are sold with one point of their curve (forward volts at a test
 * current), so the curve through that point is all the model has, and all it claims.
 * Source: Shockley's equation. The ideality 2 is common practice for lamps, whose data sheets' curves it follows
 * within a tenth of a volt between a twentieth of the test current and the test current (from memory).
 */

/** Volts: k T / q at 300.15 K (27 degC), with the exact constants of the SI (2019). */
export const THERMAL_VOLTS = (1.380649e-23 * 300.15) / 1.602176634e-19;

/** Ideality of every junction, without unit. */
export const IDEALITY = 2;

/** Siemens in parallel with every junction, so that a blocked one still has a slope. */
export const MIN_SIEMENS = 1e-12;

/** Volts by which the current grows e-fold. */
export const SLOPE_VOLTS = IDEALITY * THERMAL_VOLTS;

/** One junction with its figures worked out. */
export interface Junction {
  /** Volts forward at which `scaleAmps` flow. */
  readonly volts: number;
  /**
   * Amperes of the exponential at `volts`. Counting from this point and not from zero volts keeps a junction of
   * 3.6 V in range, whose saturation current is 1e-32 A.
   */
  readonly scaleAmps: number;
  /** Saturation current, amperes; 0 where it is too small for a number. */
  readonly saturationAmps: number;
  /** Volts above which the exponential is steep enough to need limited steps. */
  readonly criticalVolts: number;
}

/** A junction through one point of its curve: `volts` forward at `atAmps`, both above zero. */
export function makeJunction(volts: number, atAmps: number): Junction {
  const decay = Math.exp(-volts / SLOPE_VOLTS);
  const scaleAmps = Math.max(atAmps - MIN_SIEMENS * volts, atAmps * 1e-6) / (1 - decay);
  return {
    volts,
    scaleAmps,
    saturationAmps: scaleAmps * decay,
    criticalVolts: volts + SLOPE_VOLTS * Math.log(SLOPE_VOLTS / (Math.SQRT2 * scaleAmps)),
  };
}

/** Where a junction stands on its curve. */
export interface JunctionPoint {
  /** Amperes from anode to cathode. */
  readonly amps: number;
  /** Slope of the curve, siemens. */
  readonly siemens: number;
  /** Amperes that a forward figure higher by a volt would take away, at the same volts across. */
  readonly ampsPerForwardVolt: number;
}

/** The curve at `volts` across. Past half a billion times the test current it goes on straight: it never overflows. */
export function junctionAt(junction: Junction, volts: number): JunctionPoint {
  const power = (volts - junction.volts) / SLOPE_VOLTS;
  const bounded = Math.min(power, 20);
  const exponential = junction.scaleAmps * Math.exp(bounded);
  const forward = exponential * (1 + power - bounded) - junction.saturationAmps;
  return {
    amps: forward + MIN_SIEMENS * volts,
    siemens: exponential / SLOPE_VOLTS + MIN_SIEMENS,
    ampsPerForwardVolt: -forward / SLOPE_VOLTS,
  };
}

/**
 * Bounds one Newton step of a junction from `from` towards `to`. Below the critical voltage a step upwards stops
 * there; above it, it goes no further than the logarithm of what the straight line promised.
 */
export function limitStep(junction: Junction, from: number, to: number): number {
  const critical = Math.max(junction.criticalVolts, 0);
  if (to <= critical || to - from <= 2 * SLOPE_VOLTS) {
    return to;
  }
  return from < critical ? critical : from + SLOPE_VOLTS * Math.log1p((to - from) / SLOPE_VOLTS);
}
