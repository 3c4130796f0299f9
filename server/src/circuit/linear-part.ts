/**
 * The equations of a piece of network by modified nodal analysis: one row for each node's currents, and one for each
 * element whose current is an unknown of its own. Junctions enter as plain conductances plus a current that the
 * caller finds (junctions.ts): so one factorising serves every voltage, current and forward drop at the same
 * resistances, and the non-linear sum is only as large as the number of junctions.
 * Source: Ho, Ruehli, Brennan, "The modified nodal approach to network analysis", 1975 (method, from memory).
 */
import { LuDecomposition, Matrix } from 'ml-matrix';
import type { Range } from '../base/range';
import { endsOf, LEAST_OHMS, type Piece } from './check-network';

/** Below this a resistor's current is an unknown of its own, since its conductance would drown the others. Ohms. */
const LOW_OHMS = 0.01;
/** The conductance that stands for a junction in the linear part, halfway (by ratio) from blocking to conducting. */
const JUNCTION_SIEMENS = 1e-6;
/** The tie of a group that floats, siemens. It is the group's only way to ground, so nothing flows through it. */
const TIE_SIEMENS = 1e-3;

/** One figure of one element that a corner may move. */
export interface Parameter {
  readonly range: Range;
  /** True where it stands in the matrix: a change needs a new factorising. */
  readonly inMatrix: boolean;
}

/** One element with its place in the equations. Nodes are row numbers, -1 for ground. */
export interface Term {
  readonly type: 'resistor' | 'source' | 'current' | 'diode';
  /** Its number within the piece. */
  readonly order: number;
  readonly a: number;
  readonly b: number;
  /** Row of its own current; -1 where it has none. */
  readonly branch: number;
  /** Column among the driven ones: junctions first, then sources and currents; -1 for resistors. */
  readonly column: number;
  /** Number of its parameter: ohms, volts, amps or forward volts. */
  readonly parameter: number;
  /** Number of a source's resistance. */
  readonly innerOhms: number;
  /** Test current of a junction. */
  readonly atAmps: number;
}

export interface LinearPart {
  readonly nodes: readonly string[];
  readonly size: number;
  readonly terms: readonly Term[];
  /** The junctions among the terms; their column is their index. */
  readonly junctions: readonly Term[];
  /** The sources and currents among the terms. */
  readonly drives: readonly Term[];
  readonly parameters: readonly Parameter[];
  readonly ties: readonly number[];
}

/** The answers to a unit of each column at one set of resistances. */
export type Answers = Matrix;

/** One entry; 0 for ground, which has no row. */
export function entryAt(matrix: Matrix, row: number, column: number): number {
  return row < 0 ? 0 : matrix.get(row, column);
}

export function compilePiece(piece: Piece): LinearPart {
  const rowOf = new Map(piece.nodes.map((node, row) => [node, row]));
  const parameters: Parameter[] = [];
  const add = (range: Range, inMatrix: boolean): number => parameters.push({ range, inMatrix }) - 1;
  let size = piece.nodes.length;
  const junctionCount = piece.elements.filter((element) => element.type === 'diode').length;
  let junction = 0;
  let drive = junctionCount;
  const terms = piece.elements.map((element, order): Term => {
    const [a, b] = endsOf(element);
    const common = {
      type: element.type,
      order,
      a: rowOf.get(a) ?? -1,
      b: rowOf.get(b) ?? -1,
      innerOhms: -1,
      atAmps: 0,
    };
    if (element.type === 'resistor') {
      const branch = element.ohms.min < LOW_OHMS ? size++ : -1;
      return { ...common, branch, column: -1, parameter: add(element.ohms, true) };
    }
    if (element.type === 'source') {
      const inner = { parameter: add(element.volts, false), innerOhms: add(element.ohms, true) };
      return { ...common, branch: size++, column: drive++, ...inner };
    }
    if (element.type === 'current') {
      return { ...common, branch: -1, column: drive++, parameter: add(element.amps, false) };
    }
    const parameter = add(element.volts, false);
    return { ...common, branch: -1, column: junction++, parameter, atAmps: element.atAmps };
  });
  return {
    nodes: piece.nodes,
    size,
    terms,
    junctions: terms.filter((term) => term.type === 'diode'),
    drives: terms.filter((term) => term.type === 'source' || term.type === 'current'),
    parameters,
    ties: piece.ties.map((node) => rowOf.get(node) ?? -1).filter((row) => row >= 0),
  };
}

/** A resistance as it is counted, ohms. */
export function countedOhms(ohms: number): number {
  return Math.max(ohms, LEAST_OHMS);
}

/** Adds to an entry; a row or column of ground has none. */
export function stamp(matrix: Matrix, row: number, column: number, value: number): void {
  if (row >= 0 && column >= 0) {
    matrix.set(row, column, matrix.get(row, column) + value);
  }
}

/** Factorises at the given parameter values; undefined where the matrix is singular. */
export function factorise(
  part: LinearPart,
  values: readonly number[],
  junctionSiemens?: readonly number[],
): LuDecomposition | undefined {
  const matrix = Matrix.zeros(part.size, part.size);
  const conduct = (a: number, b: number, siemens: number): void => {
    stamp(matrix, a, a, siemens);
    stamp(matrix, b, b, siemens);
    stamp(matrix, a, b, -siemens);
    stamp(matrix, b, a, -siemens);
  };
  for (const term of part.terms) {
    const value = values[term.parameter] ?? 0;
    if (term.type === 'diode') {
      conduct(term.a, term.b, junctionSiemens?.[term.column] ?? JUNCTION_SIEMENS);
    } else if (term.type === 'resistor' && term.branch < 0) {
      conduct(term.a, term.b, 1 / countedOhms(value));
    } else if (term.branch >= 0) {
      // Through a resistor the current leaves node a, out of a source it enters node a: hence the two signs.
      const sign = term.type === 'resistor' ? 1 : -1;
      stamp(matrix, term.a, term.branch, sign);
      stamp(matrix, term.b, term.branch, -sign);
      stamp(matrix, term.branch, term.a, 1);
      stamp(matrix, term.branch, term.b, -1);
      // An ideal source keeps its 0 ohm: check-network.ts has made sure that nothing sets itself against it.
      const ohms = term.type === 'resistor' ? countedOhms(value) : (values[term.innerOhms] ?? 0);
      stamp(matrix, term.branch, term.branch, -sign * ohms);
    }
  }
  for (const row of part.ties) {
    stamp(matrix, row, row, TIE_SIEMENS);
  }
  const lu = new LuDecomposition(matrix);
  return lu.isSingular() ? undefined : lu;
}

/** The answers to a unit of current through each junction, of volts of each source, of amps of each current. */
export function answerColumns(part: LinearPart, lu: LuDecomposition): Answers {
  const columns = Matrix.zeros(part.size, Math.max(1, part.junctions.length + part.drives.length));
  for (const term of [...part.junctions, ...part.drives]) {
    if (term.type === 'source') {
      columns.set(term.branch, term.column, 1);
    } else {
      // A current from a to b leaves node a and enters node b.
      stamp(columns, term.a, term.column, -1);
      stamp(columns, term.b, term.column, 1);
    }
  }
  return lu.solve(columns);
}

/** Conductance of every junction in the linear part, siemens. */
export const junctionInLinearPart = JUNCTION_SIEMENS;
