/**
 * One corner: all quantities of a piece with every toleranced figure at one of its ends. corners.ts decides which
 * corners are worth it.
 */
import type { PortState } from './device';
import { addPortVolts, solveJunctions } from './junctions';
import {
  type Answers,
  answerColumns,
  countedOhms,
  devicesAt,
  factorise,
  type LinearPart,
  portInLinearPart,
  type Term,
} from './linear-part';

/** What a piece does at one set of values. */
export interface Solved {
  /** Volts of the nodes, then amperes of the elements, in the piece's order. */
  readonly quantities: Float64Array;
  /** Where each port stands on its curve: the next corner starts from here. */
  readonly state: PortState;
}

/** Solves a piece at given values of its parameters. `answers` must belong to the same resistances. */
export function solveAt(
  part: LinearPart,
  answers: Answers,
  values: readonly number[],
  start?: PortState,
): Solved | undefined {
  const open = new Float64Array(part.ports.length);
  for (const term of part.drives) {
    addPortVolts(part, answers, term.column, values[term.parameter] ?? 0, open);
  }
  const state = solveJunctions(part, answers, devicesAt(part, values), open, start?.volts);
  if (state === undefined) {
    return undefined;
  }
  // What drives each column: the port's current beyond its share in the linear part, or the source's own figure.
  const drive = new Float64Array(answers.columns);
  for (let port = 0; port < part.ports.length; port += 1) {
    drive[port] = (state.amps[port] ?? 0) - portInLinearPart * (state.volts[port] ?? 0);
  }
  for (const term of part.drives) {
    drive[term.column] = values[term.parameter] ?? 0;
  }
  const unknowns = new Float64Array(part.size);
  for (let row = 0; row < part.size; row += 1) {
    let sum = 0;
    for (let column = 0; column < drive.length; column += 1) {
      sum += answers.get(row, column) * (drive[column] ?? 0);
    }
    unknowns[row] = sum;
  }
  return solvedFrom(part, values, unknowns, state);
}

/** All quantities from the unknowns; undefined where one of them is no number. */
export function solvedFrom(
  part: LinearPart,
  values: readonly number[],
  unknowns: Float64Array,
  state: PortState,
): Solved | undefined {
  const quantities = new Float64Array(part.nodes.length + part.terms.length);
  quantities.set(unknowns.subarray(0, part.nodes.length));
  part.terms.forEach((term, at) => {
    quantities[part.nodes.length + at] = elementAmps(term, values, unknowns, state);
  });
  return quantities.every(Number.isFinite) ? { quantities, state } : undefined;
}

function elementAmps(
  term: Term,
  values: readonly number[],
  unknowns: Float64Array,
  state: PortState,
): number {
  const value = values[term.parameter] ?? 0;
  if (term.branch >= 0) {
    return unknowns[term.branch] ?? 0;
  }
  if (term.ownPort >= 0) {
    return term.ownSign * (state.amps[term.ownPort] ?? 0);
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
