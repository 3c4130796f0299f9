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
  /** Volts by which the current grows e-fold. */
  readonly slopeVolts: number;
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
export function makeJunction(volts: number, atAmps: number, slopeVolts = SLOPE_VOLTS): Junction {
  const decay = Math.exp(-volts / slopeVolts);
  const scaleAmps = Math.max(atAmps - MIN_SIEMENS * volts, atAmps * 1e-6) / (1 - decay);
  return {
    volts,
    slopeVolts,
    scaleAmps,
    saturationAmps: scaleAmps * decay,
    criticalVolts: volts + slopeVolts * Math.log(slopeVolts / (Math.SQRT2 * scaleAmps)),
  };
}

/** Where the curve goes on straight: past half a billion times the test current it must not overflow. */
const LARGEST_POWER = 20;

/** Amperes of the exponential alone at `volts` across. */
export function exponentialAmps(junction: Junction, volts: number): number {
  const power = (volts - junction.volts) / junction.slopeVolts;
  const bounded = Math.min(power, LARGEST_POWER);
  return junction.scaleAmps * Math.exp(bounded) * (1 + power - bounded) - junction.saturationAmps;
}

/** Slope of the exponential alone, siemens. */
export function exponentialSiemens(junction: Junction, volts: number): number {
  const power = Math.min((volts - junction.volts) / junction.slopeVolts, LARGEST_POWER);
  return (junction.scaleAmps * Math.exp(power)) / junction.slopeVolts;
}

/**
 * Bounds one Newton step of a junction from `from` towards `to`. Below the critical voltage a step upwards stops
 * there; above it, it goes no further than the logarithm of what the straight line promised.
 */
export function limitStep(junction: Junction, from: number, to: number): number {
  const critical = Math.max(junction.criticalVolts, 0);
  if (to <= critical || to - from <= 2 * junction.slopeVolts) {
    return to;
  }
  return from < critical
    ? critical
    : from + junction.slopeVolts * Math.log1p((to - from) / junction.slopeVolts);
}
