/**
 * One corner: all quantities of a piece with every toleranced figure at one of its ends. corners.ts decides which
 * corners are worth it.
 */
import { type JunctionPoint, makeJunction } from './diode';
import { portVolts, solveJunctions } from './junctions';
import {
  type Answers,
  answerColumns,
  countedOhms,
  factorise,
  junctionInLinearPart,
  type LinearPart,
  type Term,
} from './linear-part';

/** What a piece does at one set of values. */
export interface Solved {
  /** Volts of the nodes, then amperes of the elements, in the piece's order. */
  readonly quantities: readonly number[];
  /** Volts by junction: the next corner starts from here. */
  readonly junctionVolts: readonly number[];
  /** Where each junction stands on its curve. */
  readonly points: readonly JunctionPoint[];
}

/** Solves a piece at given values of its parameters. `answers` must belong to the same resistances. */
export function solveAt(
  part: LinearPart,
  answers: Answers,
  values: readonly number[],
  start?: readonly number[],
): Solved | undefined {
  const junctions = part.junctions.map((term) => makeJunction(values[term.parameter] ?? 0, term.atAmps));
  const open = junctions.map(() => 0);
  for (const term of part.drives) {
    const value = values[term.parameter] ?? 0;
    portVolts(part, answers, term.column).forEach((volts, at) => {
      open[at] = (open[at] ?? 0) + volts * value;
    });
  }
  const guess = start ?? junctions.map((junction) => junction.volts);
  const settled = solveJunctions(part, answers, junctions, open, guess);
  if (settled === undefined) {
    return undefined;
  }
  const { volts: junctionVolts, points } = settled;
  // What drives each column: the junction's current beyond its share in the linear part, or the source's own figure.
  const drive = points.map((point, at) => point.amps - junctionInLinearPart * (junctionVolts[at] ?? 0));
  for (const term of part.drives) {
    drive[term.column] = values[term.parameter] ?? 0;
  }
  const unknowns = Array.from({ length: part.size }, (_, row) => {
    let sum = 0;
    for (let column = 0; column < drive.length; column += 1) {
      sum += answers.get(row, column) * (drive[column] ?? 0);
    }
    return sum;
  });
  const quantities = unknowns.slice(0, part.nodes.length);
  for (const term of part.terms) {
    quantities.push(elementAmps(term, values, unknowns, points));
  }
  return quantities.every(Number.isFinite) ? { quantities, junctionVolts, points } : undefined;
}

function elementAmps(
  term: Term,
  values: readonly number[],
  unknowns: readonly number[],
  points: readonly JunctionPoint[],
): number {
  const value = values[term.parameter] ?? 0;
  if (term.branch >= 0) {
    return unknowns[term.branch] ?? 0;
  }
  if (term.type === 'diode') {
    return points[term.column]?.amps ?? 0;
  }
  if (term.type === 'current') {
    return value;
  }
  const across = (term.a < 0 ? 0 : (unknowns[term.a] ?? 0)) - (term.b < 0 ? 0 : (unknowns[term.b] ?? 0));
  return across / countedOhms(value);
}

/** Answers at given values, or undefined where the matrix is singular. */
export function answersAt(part: LinearPart, values: readonly number[]): Answers | undefined {
  const lu = factorise(part, values);
  return lu && answerColumns(part, lu);
}
