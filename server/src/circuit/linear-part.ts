/**
 * The equations of a piece of network by modified nodal analysis: one row for each node's currents, and one for each
 * element whose current is an unknown of its own. Diodes and transistors enter by their ports, as plain conductances
 * plus a current that the caller finds (junctions.ts): so one factorising serves every voltage, current and forward
 * drop at the same resistances, and the non-linear sum is only as large as the number of ports.
 * Source: Ho, Ruehli, Brennan, "The modified nodal approach to network analysis", 1975 (method, from memory).
 */
import { LuDecomposition, Matrix } from 'ml-matrix';
import type { Range } from '../base/range';
import { LEAST_OHMS, type Piece } from './check-network';
import { type CoreElement, nodesOf } from './core';
import { type Device, type DeviceElement, makeDevice, portsOf } from './device';

/** Below this a resistor's current is an unknown of its own, since its conductance would drown the others. Ohms. */
const LOW_OHMS = 0.01;
/** The conductance that stands for a port in the linear part, halfway (by ratio) from blocking to conducting. */
const PORT_SIEMENS = 1e-6;
/** The tie of a group that floats, siemens. It is the group's only way to ground, so nothing flows through it. */
const TIE_SIEMENS = 1e-3;

/** One figure of one element that a corner may move. */
export interface Parameter {
  readonly range: Range;
  /** True where it stands in the matrix: a change needs a new factorising. */
  readonly inMatrix: boolean;
}

/** Two nodes by row number, -1 for ground. */
export interface Port {
  readonly a: number;
  readonly b: number;
}

/** One element with its place in the equations. */
export interface Term extends Port {
  readonly type: CoreElement['type'];
  /** Its number within the piece. */
  readonly order: number;
  /** Row of its own current; -1 where it has none. */
  readonly branch: number;
  /** Column among the driven ones: ports first, then sources and currents; -1 for resistors. */
  readonly column: number;
  /** Number of its parameter: ohms, volts, amps, forward or threshold volts. */
  readonly parameter: number;
  /** Number of its other one: a source's ohms, a breakdown's volts, a gain, a channel's ohms; -1 for none. */
  readonly second: number;
  /** The element of a device; its own current is that of port `ownPort` times `ownSign`. */
  readonly device?: DeviceElement;
  readonly ownPort: number;
  readonly ownSign: 1 | -1;
}

export interface LinearPart {
  readonly nodes: readonly string[];
  readonly size: number;
  readonly terms: readonly Term[];
  /** The ports of all devices; their column is their index. */
  readonly ports: readonly Port[];
  /** The terms that are diodes and transistors. */
  readonly devices: readonly Term[];
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
  const row = (node: string | undefined): number => rowOf.get(node ?? '') ?? -1;
  const parameters: Parameter[] = [];
  const add = (range: Range, inMatrix: boolean): number => parameters.push({ range, inMatrix }) - 1;
  const ports: Port[] = [];
  let size = piece.nodes.length;
  let drive = piece.elements.reduce((sum, element) => sum + portsOf(element), 0);
  const terms = piece.elements.map((element, order): Term => {
    const [first, last] = nodesOf(element);
    const [a, b] = [row(first), row(last)];
    const common = { type: element.type, order, a, b, branch: -1, column: -1, second: -1 };
    const own = { ownPort: -1, ownSign: 1 } as const;
    switch (element.type) {
      case 'resistor': {
        const branch = element.ohms.min < LOW_OHMS ? size++ : -1;
        return { ...common, ...own, branch, parameter: add(element.ohms, true) };
      }
      case 'source': {
        const figures = { parameter: add(element.volts, false), second: add(element.ohms, true) };
        return { ...common, ...own, branch: size++, column: drive++, ...figures };
      }
      case 'current':
        return { ...common, ...own, column: drive++, parameter: add(element.amps, false) };
      case 'diode': {
        const column = ports.push({ a, b }) - 1;
        const figures = {
          parameter: add(element.volts, false),
          second: element.breakdownVolts === undefined ? -1 : add(element.breakdownVolts, false),
        };
        return { ...common, device: element, column, ...figures, ownPort: column, ownSign: 1 };
      }
      case 'bipolar': {
        const [base, collector, emitter] = [row(element.base), row(element.collector), row(element.emitter)];
        const turned = element.channel === 'p';
        const column = ports.push(turn({ a: base, b: emitter }, turned)) - 1;
        ports.push(turn({ a: base, b: collector }, turned));
        const figures = { parameter: add(element.volts, false), second: add(element.gain, false) };
        const sign = turned ? 1 : -1;
        return { ...common, device: element, column, ...figures, ownPort: column + 1, ownSign: sign };
      }
      default: {
        const [gate, drain, source] = [row(element.gate), row(element.drain), row(element.source)];
        const turned = element.channel === 'p';
        const column = ports.push(turn({ a: gate, b: source }, turned)) - 1;
        ports.push(turn({ a: drain, b: source }, turned));
        const figures = { parameter: add(element.volts, false), second: add(element.ohms, false) };
        const sign = turned ? -1 : 1;
        return { ...common, device: element, column, ...figures, ownPort: column + 1, ownSign: sign };
      }
    }
  });
  return {
    nodes: piece.nodes,
    size,
    terms,
    ports,
    devices: terms.filter((term) => term.device !== undefined),
    drives: terms.filter((term) => term.type === 'source' || term.type === 'current'),
    parameters,
    ties: piece.ties.map(row).filter((at) => at >= 0),
  };
}

function turn({ a, b }: Port, turned: boolean): Port {
  return turned ? { a: b, b: a } : { a, b };
}

/** All parameters at their typical figures. */
export function typicalValues(part: LinearPart): number[] {
  return part.parameters.map(({ range }) => range.typ);
}

/** The devices at given parameter values. */
export function devicesAt(part: LinearPart, values: readonly number[]): readonly Device[] {
  const devices: Device[] = [];
  for (const { device, column, parameter, second } of part.devices) {
    if (device) devices.push(makeDevice(device, column, values[parameter] ?? 0, values[second] ?? 0));
  }
  return devices;
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

/** Takes one entry of the equations: they are the same for a full and for a sparse matrix. */
export type Stamp = (row: number, column: number, value: number) => void;

/** Stamps all that does not depend on the ports; rows and columns of ground are left out by `add`. */
export function stampLinear(part: LinearPart, values: readonly number[], add: Stamp): void {
  for (const term of part.terms) {
    const value = values[term.parameter] ?? 0;
    if (term.type === 'resistor' && term.branch < 0) {
      stampConductance(term, 1 / countedOhms(value), add);
    } else if (term.branch >= 0) {
      // Through a resistor the current leaves node a, out of a source it enters node a: hence the two signs.
      const sign = term.type === 'resistor' ? 1 : -1;
      add(term.a, term.branch, sign);
      add(term.b, term.branch, -sign);
      add(term.branch, term.a, 1);
      add(term.branch, term.b, -1);
      // An ideal source keeps its 0 ohm: check-network.ts has made sure that nothing sets itself against it.
      const ohms = term.type === 'resistor' ? countedOhms(value) : (values[term.second] ?? 0);
      add(term.branch, term.branch, -sign * ohms);
    }
  }
  for (const at of part.ties) {
    add(at, at, TIE_SIEMENS);
  }
}

/** A conductance between the nodes of `into` that is driven by the volts between the nodes of `by`. */
export function stampConductance(into: Port, siemens: number, add: Stamp, by: Port = into): void {
  add(into.a, by.a, siemens);
  add(into.b, by.b, siemens);
  add(into.a, by.b, -siemens);
  add(into.b, by.a, -siemens);
}

/** Stamps the slopes of all devices at a point of their curves. */
export function stampSlopes(part: LinearPart, siemens: Float64Array, add: Stamp): void {
  for (const { column, device } of part.devices) {
    const first = part.ports[column];
    const second = part.ports[column + 1];
    if (first === undefined || device === undefined) {
      continue;
    }
    stampConductance(first, siemens[2 * column] ?? 0, add);
    if (device.type !== 'diode' && second !== undefined) {
      stampConductance(first, siemens[2 * column + 1] ?? 0, add, second);
      stampConductance(second, siemens[2 * column + 2] ?? 0, add, first);
      stampConductance(second, siemens[2 * column + 3] ?? 0, add);
    }
  }
}

/** Factorises with a fixed conductance at every port; undefined where the matrix is singular. */
export function factorise(part: LinearPart, values: readonly number[]): LuDecomposition | undefined {
  return factoriseWith(part, values, (add) => {
    for (const port of part.ports) {
      stampConductance(port, PORT_SIEMENS, add);
    }
  });
}

/** Factorises with the slopes that the devices have at a solved point. */
export function factoriseSlopes(
  part: LinearPart,
  values: readonly number[],
  siemens: Float64Array,
): LuDecomposition | undefined {
  return factoriseWith(part, values, (add) => stampSlopes(part, siemens, add));
}

function factoriseWith(
  part: LinearPart,
  values: readonly number[],
  rest: (add: Stamp) => void,
): LuDecomposition | undefined {
  const matrix = Matrix.zeros(part.size, part.size);
  const add: Stamp = (row, column, value) => stamp(matrix, row, column, value);
  stampLinear(part, values, add);
  rest(add);
  const lu = new LuDecomposition(matrix);
  return lu.isSingular() ? undefined : lu;
}

/** The answers to a unit of current through each port, of volts of each source, of amps of each current. */
export function answerColumns(part: LinearPart, lu: LuDecomposition): Answers {
  const columns = Matrix.zeros(part.size, Math.max(1, part.ports.length + part.drives.length));
  part.ports.forEach((port, column) => {
    pushCurrent(columns, port, column);
  });
  for (const term of part.drives) {
    if (term.type === 'source') {
      columns.set(term.branch, term.column, 1);
    } else {
      pushCurrent(columns, term, term.column);
    }
  }
  return lu.solve(columns);
}

/** A current from a to b leaves node a and enters node b. */
function pushCurrent(columns: Matrix, { a, b }: Port, column: number): void {
  stamp(columns, a, column, -1);
  stamp(columns, b, column, 1);
}

/** Conductance of every port in the linear part, siemens. */
export const portInLinearPart = PORT_SIEMENS;
