/**
 * Which way each toleranced figure pushes each quantity: the directions in which corners.ts looks for the extremes.
 * All of them come from one factorising of the linearised equations at a point that is solved already.
 */
import { type LuDecomposition, Matrix } from 'ml-matrix';
import type { Solved } from './corner';
import { countedOhms, entryAt, factorise, type LinearPart, stamp, type Term } from './linear-part';

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
  const lu = factorise(
    part,
    values,
    solved.points.map((point) => point.siemens),
  );
  if (lu === undefined) {
    return undefined;
  }
  const changes = changePerParameter(part, values, solved, moving, lu);
  return (quantity) => {
    const size = Math.abs(solved.quantities[quantity] ?? 0);
    const term = part.terms[quantity - part.nodes.length];
    // Rounding is not a direction.
    const least = size * 1e-9 + (term === undefined ? 1e-10 : 1e-14);
    return moving.map((parameter, at) => {
      const range = part.parameters[parameter]?.range;
      const slope =
        term === undefined
          ? entryAt(changes, quantity, at)
          : ampsPerUnit(term, parameter, values, solved, part.nodes.length, (row) =>
              entryAt(changes, row, at),
            );
      const change = slope * (range === undefined ? 0 : range.max - range.min);
      return Math.abs(change) <= least ? 0 : Math.sign(change);
    });
  };
}

/** How an element's current changes per unit of a parameter, given how the unknowns change. */
function ampsPerUnit(
  term: Term,
  parameter: number,
  values: readonly number[],
  solved: Solved,
  nodeCount: number,
  change: (row: number) => number,
): number {
  if (term.branch >= 0) {
    return change(term.branch);
  }
  const own = term.parameter === parameter ? 1 : 0;
  if (term.type === 'current') {
    return own;
  }
  const across = change(term.a) - change(term.b);
  if (term.type === 'diode') {
    const point = solved.points[term.column];
    return across * (point?.siemens ?? 0) + own * (point?.ampsPerForwardVolt ?? 0);
  }
  const amps = solved.quantities[nodeCount + term.order] ?? 0;
  return (across - own * amps) / countedOhms(values[term.parameter] ?? 0);
}

/** How the unknowns change per unit of each moving parameter: a row for each unknown, a column for each parameter. */
function changePerParameter(
  part: LinearPart,
  values: readonly number[],
  solved: Solved,
  moving: readonly number[],
  lu: LuDecomposition,
): Matrix {
  const right = Matrix.zeros(part.size, Math.max(1, moving.length));
  const push = (term: Term, at: number, amps: number): void => {
    stamp(right, term.a, at, -amps);
    stamp(right, term.b, at, amps);
  };
  for (const term of part.terms) {
    const amps = solved.quantities[part.nodes.length + term.order] ?? 0;
    const at = moving.indexOf(term.parameter);
    stamp(right, term.branch, term.innerOhms < 0 ? -1 : moving.indexOf(term.innerOhms), -amps);
    if (at < 0) {
      continue;
    }
    if (term.type === 'source') {
      stamp(right, term.branch, at, 1);
    } else if (term.type === 'current') {
      push(term, at, 1);
    } else if (term.type === 'diode') {
      push(term, at, solved.points[term.column]?.ampsPerForwardVolt ?? 0);
    } else if (term.branch >= 0) {
      stamp(right, term.branch, at, amps);
    } else {
      push(term, at, -amps / countedOhms(values[term.parameter] ?? 0));
    }
  }
  return lu.solve(right);
}
