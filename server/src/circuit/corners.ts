/**
 * The lowest and highest of every quantity over all tolerances. With few toleranced figures every combination of
 * their ends is solved; with more, each quantity's own worst combination is followed by the signs of its
 * sensitivities, once more from where that led, since a lamp that is dark at the nominal point says nothing there.
 */
import { answersAt, type Solved, solveAt } from './corner';
import type { PortState } from './device';
import { type Answers, type LinearPart, typicalValues } from './linear-part';
import { directionsAt } from './sensitivity';

/** 64 corners at the most; one figure more would double them. */
const EXHAUSTIVE = 6;
/** How often directions are looked at again from the corners they led to. */
const ROUNDS = 3;
/** Corners times unknowns cubed: where the sum is stopped, and says so. */
const WORK = 4e6;

export interface Spread {
  readonly nominal: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly converged: boolean;
  /** False where not every corner that was asked for could be looked at. */
  readonly complete: boolean;
}

/**
 * Explores the tolerances of one piece. Undefined where its nominal point has no solution.
 * @param exhaustive up to this many toleranced figures all combinations are solved
 */
export function exploreCorners(part: LinearPart, exhaustive = EXHAUSTIVE): Spread | undefined {
  const moving = part.parameters.flatMap(({ range }, index) => (range.min < range.max ? [index] : []));
  const explorer = makeExplorer(part, moving);
  const nominal = explorer.visit(moving.map(() => 0));
  if (nominal === undefined) {
    return undefined;
  }
  if (moving.length <= exhaustive) {
    visitAll(part, moving, explorer);
  } else {
    followSigns(part, moving, explorer);
  }
  return explorer.spread(nominal);
}

interface Explorer {
  /** Solves at a vector of -1 (low end), 0 (typical) and 1 (high end), once. */
  visit(vector: readonly number[]): Solved | undefined;
  valuesAt(vector: readonly number[]): readonly number[];
  readonly exhausted: () => boolean;
  spread(nominal: Solved): Spread;
}

function makeExplorer(part: LinearPart, moving: readonly number[]): Explorer {
  const seen = new Map<string, Solved | undefined>();
  const factored = new Map<string, Answers | undefined>();
  const most = Math.max(3, WORK / (part.size + 1) ** 3);
  let start: PortState | undefined;
  let complete = true;
  const valuesAt = (vector: readonly number[]): readonly number[] => {
    const values = typicalValues(part);
    moving.forEach((parameter, at) => {
      const range = part.parameters[parameter]?.range;
      const sign = vector[at] ?? 0;
      if (range !== undefined && sign !== 0) {
        values[parameter] = sign < 0 ? range.min : range.max;
      }
    });
    return values;
  };
  return {
    valuesAt,
    exhausted: () => !complete,
    visit(vector) {
      const key = vector.join();
      if (seen.has(key)) {
        return seen.get(key);
      }
      if (seen.size >= most) {
        complete = false;
        return undefined;
      }
      const values = valuesAt(vector);
      const matrixKey = vector.filter((_, at) => part.parameters[moving[at] ?? -1]?.inMatrix).join();
      const answers = factored.has(matrixKey) ? factored.get(matrixKey) : answersAt(part, values);
      factored.set(matrixKey, answers);
      const solved = answers && solveAt(part, answers, values, start);
      start = solved?.state ?? start;
      seen.set(key, solved);
      return solved;
    },
    spread(nominal) {
      const points = [...seen.values()];
      const low = nominal.quantities.slice();
      const high = nominal.quantities.slice();
      for (const point of points) {
        point?.quantities.forEach((quantity, index) => {
          low[index] = Math.min(low[index] ?? quantity, quantity);
          high[index] = Math.max(high[index] ?? quantity, quantity);
        });
      }
      const converged = !points.includes(undefined);
      return { nominal: nominal.quantities, low, high, converged, complete };
    },
  };
}

/** Every combination of ends, those that need a new factorising in the outer places. */
function visitAll(part: LinearPart, moving: readonly number[], explorer: Explorer): void {
  const order = moving
    .map((parameter, at) => ({ at, inMatrix: part.parameters[parameter]?.inMatrix === true }))
    .sort((a, b) => Number(a.inMatrix) - Number(b.inMatrix));
  for (let combination = 0; combination < 2 ** moving.length; combination += 1) {
    const vector = moving.map(() => -1);
    order.forEach(({ at }, bit) => {
      // Neighbours differ in one place only (Gray's code), so each start is close to its answer.
      vector[at] = ((combination ^ (combination >> 1)) >> bit) & 1 ? 1 : -1;
    });
    explorer.visit(vector);
  }
}

function followSigns(part: LinearPart, moving: readonly number[], explorer: Explorer): void {
  const nominal = moving.map(() => 0);
  const count = part.nodes.length + part.terms.length;
  const targets = Array.from(
    { length: count * 2 },
    (_, index): Target => ({
      quantity: index >> 1,
      sign: index & 1 ? -1 : 1,
      vector: nominal,
    }),
  );
  let open = targets;
  for (let round = 0; round < ROUNDS && open.length > 0 && !explorer.exhausted(); round += 1) {
    const directions = new Map<string, ReturnType<typeof directionsAt>>();
    const wishes = open.flatMap((target) => {
      const key = target.vector.join();
      const solved = explorer.visit(target.vector);
      if (solved === undefined) {
        return [];
      }
      if (!directions.has(key)) {
        directions.set(key, directionsAt(part, explorer.valuesAt(target.vector), solved, moving));
      }
      const wish = (directions.get(key)?.(target.quantity) ?? []).map((sign) => sign * target.sign);
      const met = wish.every((sign, at) => sign === 0 || sign === target.vector[at]);
      return met ? [] : [{ target, wish }];
    });
    open = shareCorners(wishes, nominal);
    for (const target of open) {
      explorer.visit(target.vector);
    }
  }
}

interface Target {
  readonly quantity: number;
  readonly sign: number;
  readonly vector: readonly number[];
}

/**
 * Puts targets whose wishes do not contradict each other into one corner: what makes no difference to one of them may
 * stand as another wants it. Of a hundred lamps on one rail, all are brightest at once.
 */
function shareCorners(
  wishes: readonly { readonly target: Target; readonly wish: readonly number[] }[],
  nominal: readonly number[],
): Target[] {
  const corners: number[][] = [];
  const placed = wishes.map(({ target, wish }) => {
    // Where nobody has a wish, the corner stays where the target came from.
    let corner = corners.find((one) => one.every((sign, at) => sign === 0 || !wish[at] || sign === wish[at]));
    if (corner === undefined) {
      corner = [...nominal];
      corners.push(corner);
    }
    for (let at = 0; at < wish.length; at += 1) {
      corner[at] = wish[at] || (corner[at] ?? 0);
    }
    return { target, corner };
  });
  return placed.map(({ target, corner }) => ({
    ...target,
    vector: corner.map((sign, at) => sign || (target.vector[at] ?? 0)),
  }));
}
