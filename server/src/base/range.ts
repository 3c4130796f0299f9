/** A figure with its tolerance. Plain SI units; the field that holds it names the unit. */

/** The lowest, the usual and the highest value; `min <= typ <= max`. */
export interface Range {
  readonly min: number;
  readonly typ: number;
  readonly max: number;
}

/** A range without tolerance. */
export function exactly(value: number): Range {
  return { min: value, typ: value, max: value };
}

/** `typ` with a relative tolerance on both sides: `within(470, 0.05)`. */
export function within(typ: number, tolerance: number): Range {
  const spread = Math.abs(typ) * tolerance;
  return { min: typ - spread, typ, max: typ + spread };
}

/** The greatest distance from zero anywhere in the range. */
export function worst(range: Range): number {
  return Math.max(Math.abs(range.min), Math.abs(range.max));
}
