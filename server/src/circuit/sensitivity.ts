/**
 * How much each toleranced figure moves each quantity: the directions in which corners.ts looks for the extremes, and
 * the reach that large-piece.ts gives a piece that is too large for corners. All of it comes from one factorising of
 * the linearised equations at a point that is solved already.
 */
import { type LuDecomposition, Matrix } from 'ml-matrix';
import type { Solved } from './corner';
import { makeDevice, makePortState, type PortState } from './device';
import { countedOhms, entryAt, factoriseSlopes, type LinearPart, type Port, type Term } from './linear-part';

/**
 * Share of a quantity by which a figure's whole tolerance must move it to have a direction. With few figures every hint
 * is followed, for what is small at one point can be large at another; with many, what a neighbour does by way of a
 * common rail would give every quantity a corner of its own.
 */
const LEAST_SHARE = 1e-9;
const LEAST_SHARE_OF_MANY = 1e-5;
const MANY = 16;

/** Adds amperes that leave a row: a node's, or for the row of a branch its volts. */
type Push = (row: number, value: number) => void;

/**
 * The directions at one solved point: for a quantity (counted as in `Solved`), a sign for each of the `moving`
 * parameters, 0 where the parameter makes no difference worth the name. Undefined where the equations are singular.
 */
export function directionsAt(
  part: LinearPart,
  values: readonly number[],
  solved: Solved,
  moving: readonly number[],
): ((quantity: number) => readonly number[]) | undefined {
  const lu = factoriseSlopes(part, values, solved.state.siemens);
  if (lu === undefined) {
    return undefined;
  }
  const causes = causesOf(part, values, solved, moving);
  const changes = changePerParameter(part, causes, lu);
  return (quantity) => {
    const size = Math.abs(solved.quantities[quantity] ?? 0);
    const term = part.terms[quantity - part.nodes.length];
    // Rounding is not a direction.
    const least =
      size * (moving.length > MANY ? LEAST_SHARE_OF_MANY : LEAST_SHARE) +
      (term === undefined ? 1e-10 : 1e-14);
    return moving.map((parameter, at) => {
      const range = part.parameters[parameter]?.range;
      const change = (row: number): number => entryAt(changes, row, at);
      const slope =
        term === undefined ? change(quantity) : ampsPerUnit(part, term, values, solved, causes[at], change);
      const moved = slope * (range === undefined ? 0 : range.max - range.min);
      return Math.abs(moved) <= least ? 0 : Math.sign(moved);
    });
  };
}

/** What a unit more of one parameter does where it stands, before the network answers. */
export interface Cause {
  readonly term: Term;
  /** Puts it on the right side of the linearised equations. */
  readonly push: (push: Push) => void;
  /** Amperes that the element's own current grows by at unchanged volts, for elements without a row of their own. */
  readonly ownAmps: number;
}

/** The causes behind parameters, in their order. */
export function causesOf(
  part: LinearPart,
  values: readonly number[],
  solved: Solved,
  moving: readonly number[],
): readonly (Cause | undefined)[] {
  const terms = new Map<number, Term>();
  for (const term of part.terms) {
    terms.set(term.parameter, term);
    if (term.second >= 0) terms.set(term.second, term);
  }
  const scratch = makePortState(part.ports.length);
  scratch.volts.set(solved.state.volts);
  return moving.map((parameter) => {
    const term = terms.get(parameter);
    return term && causeOf(part, values, solved, term, parameter, scratch);
  });
}

function causeOf(
  part: LinearPart,
  values: readonly number[],
  solved: Solved,
  term: Term,
  parameter: number,
  scratch: PortState,
): Cause {
  const amps = solved.quantities[part.nodes.length + term.order] ?? 0;
  const value = values[parameter] ?? 0;
  switch (term.type) {
    case 'source': {
      const volts = term.parameter === parameter ? 1 : -amps;
      return { term, push: (push) => push(term.branch, volts), ownAmps: 0 };
    }
    case 'current':
      return { term, push: (push) => pushThrough(push, term, 1), ownAmps: 1 };
    case 'resistor': {
      if (term.branch >= 0) {
        return { term, push: (push) => push(term.branch, amps), ownAmps: 0 };
      }
      const through = -amps / countedOhms(value);
      return { term, push: (push) => pushThrough(push, term, through), ownAmps: through };
    }
    default: {
      const changes = deviceChanges(term, values, parameter, scratch);
      const own = changes[term.ownPort - term.column] ?? 0;
      const push = (to: Push): void => {
        changes.forEach((change, at) => {
          const port = part.ports[term.column + at];
          if (port !== undefined) pushThrough(to, port, change);
        });
      };
      return { term, push, ownAmps: term.ownSign * own };
    }
  }
}

function pushThrough(push: Push, { a, b }: Port, amps: number): void {
  push(a, -amps);
  push(b, amps);
}

/**
 * How a device's port currents change per unit of one of its figures, at unchanged volts, by central differences.
 * @param scratch a state at the solved volts, whose amperes and slopes are overwritten
 */
function deviceChanges(
  term: Term,
  values: readonly number[],
  parameter: number,
  scratch: PortState,
): readonly number[] {
  const { device, column } = term;
  const [first, second] = [values[term.parameter] ?? 0, values[term.second] ?? 0];
  const isFirst = parameter === term.parameter;
  const step = Math.abs(isFirst ? first : second) * 1e-6;
  if (device === undefined || step === 0) {
    return [];
  }
  const amps = (moved: number): readonly number[] => {
    const altered = isFirst ? ([first + moved, second] as const) : ([first, second + moved] as const);
    makeDevice(device, column, ...altered).evaluate(scratch);
    return device.type === 'diode'
      ? [scratch.amps[column] ?? 0]
      : [scratch.amps[column] ?? 0, scratch.amps[column + 1] ?? 0];
  };
  const below = amps(-step);
  return amps(step).map((value, at) => (value - (below[at] ?? 0)) / (2 * step));
}

/** How an element's current changes per unit of a parameter, given how the unknowns change. */
function ampsPerUnit(
  part: LinearPart,
  term: Term,
  values: readonly number[],
  solved: Solved,
  cause: Cause | undefined,
  change: (row: number) => number,
): number {
  if (term.branch >= 0) {
    return change(term.branch);
  }
  const own = cause?.term === term ? cause.ownAmps : 0;
  if (term.type === 'current') {
    return own;
  }
  if (term.ownPort < 0) {
    return own + (change(term.a) - change(term.b)) / countedOhms(values[term.parameter] ?? 0);
  }
  const across = (port: number): number => {
    const { a, b } = part.ports[port] ?? { a: -1, b: -1 };
    return change(a) - change(b);
  };
  const { siemens } = solved.state;
  const at = term.ownPort;
  const second = term.device?.type === 'diode' ? 0 : (siemens[2 * at + 1] ?? 0) * across(term.column + 1);
  return own + term.ownSign * ((siemens[2 * at] ?? 0) * across(term.column) + second);
}

/** How the unknowns change per unit of each cause: a row for each unknown, a column for each cause. */
function changePerParameter(
  part: LinearPart,
  causes: readonly (Cause | undefined)[],
  lu: LuDecomposition,
): Matrix {
  const right = Matrix.zeros(part.size, Math.max(1, causes.length));
  causes.forEach((cause, at) => {
    cause?.push((row, value) => {
      if (row >= 0) right.set(row, at, right.get(row, at) + value);
    });
  });
  return lu.solve(right);
}
