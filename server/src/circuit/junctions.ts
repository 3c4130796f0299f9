/**
 * The non-linear part: the voltages of all junctions at once, by Newton's method on as many unknowns as there are
 * junctions. It always stops: each attempt has a bounded number of steps, and what fails is tried once more by
 * raising the sources from zero in a bounded number of stages.
 */
import { LuDecomposition, Matrix } from 'ml-matrix';
import { type Junction, type JunctionPoint, junctionAt, limitStep } from './diode';
import { type Answers, entryAt, junctionInLinearPart, type LinearPart } from './linear-part';

const STEPS = 60;
const STAGES = 64;
/**
 * Stop: the last step moved no junction's current by more than this share (or the least amperes), and its volts by no
 * more than the least volts. Newton's error is squared with each step, in units of the e-fold voltage, so what is
 * left after such a step is below a billionth.
 */
const SHARE = 1e-5;
const LEAST_AMPS = 1e-14;
const LEAST_VOLTS = 1e-5;

export interface Settled {
  readonly volts: readonly number[];
  readonly points: readonly JunctionPoint[];
}

/** The linear network as the junctions see it: `volts = open - resistance * amps`, at their own ports. */
interface Ports {
  readonly open: readonly number[];
  readonly resistance: readonly (readonly number[])[];
}

/**
 * Solves for the volts across all junctions.
 * @param open volts across each port with no junction current at all
 * @param start first guess, volts by junction
 * @returns volts and place on the curve by junction, or undefined where the stop criterion was never met
 */
export function solveJunctions(
  part: LinearPart,
  answers: Answers,
  junctions: readonly Junction[],
  open: readonly number[],
  start: readonly number[],
): Settled | undefined {
  if (junctions.length === 0) {
    return { volts: [], points: [] };
  }
  const ports = { open, resistance: portResistance(part, answers) };
  const direct = newton(ports, junctions, start);
  return direct ?? raiseSources(ports, junctions);
}

/** Volts across the port of each junction that column `column` of the answers makes. */
export function portVolts(part: LinearPart, answers: Answers, column: number): readonly number[] {
  return part.junctions.map((term) => entryAt(answers, term.a, column) - entryAt(answers, term.b, column));
}

function portResistance(part: LinearPart, answers: Answers): readonly (readonly number[])[] {
  const columns = part.junctions.map((term) => portVolts(part, answers, term.column));
  return columns.map((_, row) => columns.map((column) => -(column[row] ?? 0)));
}

function newton(ports: Ports, junctions: readonly Junction[], start: readonly number[]): Settled | undefined {
  const volts = [...start];
  const points = junctions.map((junction, at) => junctionAt(junction, volts[at] ?? 0));
  for (let step = 0; step < STEPS; step += 1) {
    const move = newtonMove(ports, points, volts);
    if (move === undefined) {
      return undefined;
    }
    let settled = true;
    junctions.forEach((junction, at) => {
      const change = move[at] ?? 0;
      const wanted = (volts[at] ?? 0) + change;
      const to = limitStep(junction, volts[at] ?? 0, wanted);
      const point = junctionAt(junction, to);
      const enough = Math.max(SHARE * Math.abs(point.amps), LEAST_AMPS);
      const still = Math.abs(point.siemens * change) <= enough && Math.abs(change) <= LEAST_VOLTS;
      settled &&= to === wanted && still;
      volts[at] = to;
      points[at] = point;
    });
    if (settled) {
      return volts.every(Number.isFinite) ? { volts, points } : undefined;
    }
  }
  return undefined;
}

/** How far Newton's method moves each junction, volts; undefined where the slopes leave it without a direction. */
function newtonMove(
  ports: Ports,
  points: readonly JunctionPoint[],
  volts: readonly number[],
): readonly number[] | undefined {
  // The linear part counts every junction as a plain conductance already; only what is beyond it is left.
  const errors = volts.map((value, row) => {
    let error = (ports.open[row] ?? 0) - value;
    points.forEach((point, column) => {
      const beyond = point.amps - junctionInLinearPart * (volts[column] ?? 0);
      error -= (ports.resistance[row]?.[column] ?? 0) * beyond;
    });
    return error;
  });
  const slope = (row: number, column: number): number =>
    (row === column ? 1 : 0) +
    (ports.resistance[row]?.[column] ?? 0) * ((points[column]?.siemens ?? 0) - junctionInLinearPart);
  if (points.length === 1) {
    return slope(0, 0) === 0 ? undefined : [(errors[0] ?? 0) / slope(0, 0)];
  }
  const lu = new LuDecomposition(points.map((_, row) => points.map((__, column) => slope(row, column))));
  return lu.isSingular() ? undefined : lu.solve(Matrix.columnVector(errors)).to1DArray();
}

/** Raises the sources from nothing, where all junctions stand at zero volts, in stages that adapt to what converges. */
function raiseSources(ports: Ports, junctions: readonly Junction[]): Settled | undefined {
  let reached = 0;
  let stride = 1 / 8;
  let volts: readonly number[] = junctions.map(() => 0);
  for (let stage = 0; stage < STAGES; stage += 1) {
    const target = Math.min(1, reached + stride);
    const next = newton({ ...ports, open: ports.open.map((value) => value * target) }, junctions, volts);
    if (next === undefined) {
      stride /= 4;
    } else {
      volts = next.volts;
      reached = target;
      stride *= 2;
      if (reached === 1) {
        return next;
      }
    }
  }
  return undefined;
}
