/**
 * Pieces too large for corners. The equations stay sparse, Newton's method works on all of them at once, and the reach
 * of the tolerances is the sum of what each figure does by itself, by the slopes at the typical point: the first-order
 * worst case. It is exact where quantities follow figures in a straight line, and near where they nearly do.
 */
import { type Solved, solvedFrom } from './corner';
import type { Spread } from './corners';
import { type Device, makePortState, type PortState } from './device';
import { takeStep } from './junctions';
import {
  countedOhms,
  devicesAt,
  type LinearPart,
  type Port,
  type Stamp,
  stampLinear,
  stampSlopes,
  typicalValues,
} from './linear-part';
import { causesOf } from './sensitivity';
import { addSparse, factoriseSparse, makeSparseRows, type SparseLu } from './sparse-lu';

const STEPS = 100;
const STAGES = 40;
/** Steps of all stages together times unknowns: some seconds, however stubborn the network. */
const MOST_WORK = 6e5;
/**
 * Quantities times toleranced figures up to which reaches are worked out, some seconds' worth; beyond it the typical
 * figures stand for all three.
 */
const MOST_REACHES = 4e8;

interface LargePoint {
  readonly solved: Solved;
  readonly lu: SparseLu;
}

/** Solves a large piece; undefined where its typical point has no solution. Its spread is never complete. */
export function spreadLarge(part: LinearPart): Spread | undefined {
  const values = typicalValues(part);
  const point = solvePoint(part, values);
  if (point === undefined) {
    return undefined;
  }
  const nominal = point.solved.quantities;
  const [low, high] = [nominal.slice(), nominal.slice()];
  const moving = part.parameters.flatMap(({ range }, at) => (range.min < range.max ? [at] : []));
  if (moving.length * nominal.length > MOST_REACHES) {
    return { nominal, low, high, converged: true, complete: false };
  }
  addReaches(part, values, point, moving, low, high);
  return { nominal, low, high, converged: true, complete: moving.length === 0 };
}

/**
 * How every quantity follows from the unknowns, as two differences of two unknowns each with their weights. The row
 * behind the last is ground's and holds 0. A table, since it is read for every figure that has a tolerance.
 */
interface Readings {
  readonly rows: Int32Array;
  readonly weights: Float64Array;
}

function readingsOf(part: LinearPart, values: readonly number[], { siemens }: PortState): Readings {
  const count = part.nodes.length + part.terms.length;
  const ground = part.size;
  const rows = new Int32Array(4 * count).fill(ground);
  const weights = new Float64Array(2 * count);
  const read = (at: number, place: 0 | 1, { a, b }: Port, weight: number): void => {
    rows[4 * at + 2 * place] = a < 0 ? ground : a;
    rows[4 * at + 2 * place + 1] = b < 0 ? ground : b;
    weights[2 * at + place] = weight;
  };
  const whole = (row: number): Port => ({ a: row, b: -1 });
  part.nodes.forEach((_, at) => {
    read(at, 0, whole(at), 1);
  });
  for (const term of part.terms) {
    const at = part.nodes.length + term.order;
    const first = part.ports[term.column];
    const second = part.ports[term.column + 1];
    if (term.branch >= 0) {
      read(at, 0, whole(term.branch), 1);
    } else if (term.device !== undefined && first !== undefined) {
      read(at, 0, first, term.ownSign * (siemens[2 * term.ownPort] ?? 0));
      if (term.device.type !== 'diode' && second !== undefined) {
        read(at, 1, second, term.ownSign * (siemens[2 * term.ownPort + 1] ?? 0));
      }
    } else if (term.type === 'resistor') {
      read(at, 0, term, 1 / countedOhms(values[term.parameter] ?? 0));
    }
  }
  return { rows, weights };
}

/** Widens the ends of all quantities by what each moving figure does on its way to its own two ends. */
function addReaches(
  part: LinearPart,
  values: readonly number[],
  { solved, lu }: LargePoint,
  moving: readonly number[],
  low: Float64Array,
  high: Float64Array,
): void {
  const { rows, weights } = readingsOf(part, values, solved.state);
  const right = new Float64Array(part.size);
  const changes = new Float64Array(part.size + 1);
  const causes = causesOf(part, values, solved, moving);
  moving.forEach((parameter, index) => {
    const cause = causes[index];
    const range = part.parameters[parameter]?.range;
    if (cause === undefined || range === undefined) {
      return;
    }
    right.fill(0);
    cause.push((row, value) => {
      if (row >= 0) right[row] = (right[row] ?? 0) + value;
    });
    changes.set(lu.solve(right));
    const own = part.nodes.length + cause.term.order;
    const [down, up] = [range.min - range.typ, range.max - range.typ];
    for (let at = 0; at < low.length; at += 1) {
      const first = (changes[rows[4 * at] ?? 0] ?? 0) - (changes[rows[4 * at + 1] ?? 0] ?? 0);
      const second = (changes[rows[4 * at + 2] ?? 0] ?? 0) - (changes[rows[4 * at + 3] ?? 0] ?? 0);
      let slope = first * (weights[2 * at] ?? 0) + second * (weights[2 * at + 1] ?? 0);
      if (at === own) slope += cause.ownAmps;
      low[at] = (low[at] ?? 0) + (slope < 0 ? slope * up : slope * down);
      high[at] = (high[at] ?? 0) + (slope < 0 ? slope * down : slope * up);
    }
  });
}

function solvePoint(part: LinearPart, values: readonly number[]): LargePoint | undefined {
  const devices = devicesAt(part, values);
  const state = makePortState(part.ports.length);
  for (const device of devices) {
    device.guess(state.volts);
  }
  const budget = { steps: Math.max(STEPS, MOST_WORK / part.size) };
  return newton(part, values, devices, state, 1, budget) ?? raiseSources(part, values, devices, budget);
}

/** One right side for all steps but the devices' share; sources and currents at a share of their figures. */
function drivenSide(part: LinearPart, values: readonly number[], share: number): Float64Array {
  const right = new Float64Array(part.size);
  for (const term of part.drives) {
    const value = (values[term.parameter] ?? 0) * share;
    if (term.type === 'source') {
      right[term.branch] = value;
    } else {
      if (term.a >= 0) right[term.a] = (right[term.a] ?? 0) - value;
      if (term.b >= 0) right[term.b] = (right[term.b] ?? 0) + value;
    }
  }
  return right;
}

function newton(
  part: LinearPart,
  values: readonly number[],
  devices: readonly Device[],
  state: PortState,
  share: number,
  budget: { steps: number },
): LargePoint | undefined {
  const driven = drivenSide(part, values, share);
  for (const device of devices) {
    device.evaluate(state);
  }
  const move = new Float64Array(part.ports.length);
  for (let step = 0; step < STEPS && budget.steps > 0; step += 1) {
    budget.steps -= 1;
    const lu = factoriseAt(part, values, state);
    if (lu === undefined) {
      return undefined;
    }
    const unknowns = lu.solve(rightSide(part, driven, state));
    part.ports.forEach(({ a, b }, port) => {
      const across = (a < 0 ? 0 : (unknowns[a] ?? 0)) - (b < 0 ? 0 : (unknowns[b] ?? 0));
      move[port] = across - (state.volts[port] ?? 0);
    });
    if (takeStep(devices, state, move)) {
      const solved = solvedFrom(part, scaled(part, values, share), unknowns, state);
      return solved && { solved, lu };
    }
  }
  return undefined;
}

/** The values with the currents at their share, for the amperes that elements tell of themselves. */
function scaled(part: LinearPart, values: readonly number[], share: number): readonly number[] {
  if (share === 1) {
    return values;
  }
  const altered = [...values];
  for (const term of part.drives) {
    altered[term.parameter] = (values[term.parameter] ?? 0) * share;
  }
  return altered;
}

function factoriseAt(part: LinearPart, values: readonly number[], state: PortState): SparseLu | undefined {
  const rows = makeSparseRows(part.size);
  const add: Stamp = (row, column, value) => addSparse(rows, row, column, value);
  stampLinear(part, values, add);
  stampSlopes(part, state.siemens, add);
  return factoriseSparse(rows);
}

/** The right side with what each device's tangent carries at zero volts. */
function rightSide(
  part: LinearPart,
  driven: Float64Array,
  { volts, amps, siemens }: PortState,
): Float64Array {
  const right = driven.slice();
  for (const { column, device } of part.devices) {
    const last = device?.type === 'diode' ? column : column + 1;
    for (let port = column; port <= last; port += 1) {
      const { a, b } = part.ports[port] ?? { a: -1, b: -1 };
      let rest = (amps[port] ?? 0) - (siemens[2 * port] ?? 0) * (volts[column] ?? 0);
      if (last > column) {
        rest -= (siemens[2 * port + 1] ?? 0) * (volts[column + 1] ?? 0);
      }
      if (a >= 0) right[a] = (right[a] ?? 0) - rest;
      if (b >= 0) right[b] = (right[b] ?? 0) + rest;
    }
  }
  return right;
}

function raiseSources(
  part: LinearPart,
  values: readonly number[],
  devices: readonly Device[],
  budget: { steps: number },
): LargePoint | undefined {
  let reached = 0;
  let stride = 1 / 8;
  const kept = new Float64Array(part.ports.length);
  const state = makePortState(part.ports.length);
  for (let stage = 0; stage < STAGES; stage += 1) {
    const target = Math.min(1, reached + stride);
    state.volts.set(kept);
    const point = newton(part, values, devices, state, target, budget);
    if (point === undefined) {
      stride /= 4;
    } else {
      kept.set(state.volts);
      reached = target;
      stride *= 2;
      if (reached === 1) {
        return point;
      }
    }
  }
  return undefined;
}
