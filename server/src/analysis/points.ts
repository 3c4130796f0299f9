/**
 * Operating points of a region in every state its pins and switches can be in together. Solved points are kept by
 * the network they belong to, so a keystroke that changes no drive and no wire solves nothing.
 */
import type { Element, Network, OperatingPoint } from '../base/circuit';
import { exactly, type Range } from '../base/range';
import type { Region, StatePoint } from '../rules/subject';
import { buildNetwork, type NetworkContext } from './network';
import { statesOf } from './states';

/** States times elements up to which every state is solved at all its tolerance corners. */
const fullWork = 320;

export type Solve = (network: Network) => OperatingPoint;

export interface PointContext extends NetworkContext {
  readonly solve: Solve;
}

/**
 * Solves a region in its states. In a large one every state is solved at its typical figures, and only those in which
 * some pin or part carries most also at the tolerance corners. Figures that did not converge are left out.
 */
export function solveRegion(region: Region, context: PointContext): StatePoint[] {
  const { states } = statesOf(region, context.pin, context.moments);
  const networks = states.map((state) => buildNetwork(region, state, context));
  const large = states.length * region.elements.length > fullWork;
  const points = networks.map((network) => context.solve(large ? typicalOf(network) : network));
  if (large) {
    for (const index of mostLoaded(points, cornerStates(region))) {
      const network = networks[index];
      if (network) points[index] = context.solve(network);
    }
  }
  return states.flatMap((state, index) => {
    const point = points[index];
    return point?.converged ? [{ ...state, point }] : [];
  });
}

/** True where the region has more states than are looked at. */
export function exceedsLimit(region: Region, context: NetworkContext): boolean {
  return !statesOf(region, context.pin, context.moments).all;
}

/** How many states of a large region are solved at the corners: the sum grows with the cube of its size. */
function cornerStates({ elements }: Region): number {
  return Math.max(2, Math.min(24, Math.floor(4000 / elements.length ** 2)));
}

/** For each element the state in which it carries most, either way: pins before parts, no more than `count`. */
function mostLoaded(points: readonly OperatingPoint[], count: number): readonly number[] {
  const most = new Map<string, { readonly amps: number; readonly index: number }>();
  points.forEach((point, index) => {
    for (const [id, { typ }] of Object.entries(point.amps)) {
      const key = `${id}${typ < 0 ? '-' : '+'}`;
      const amps = Math.abs(typ);
      if (amps > (most.get(key)?.amps ?? 1e-6)) most.set(key, { amps, index });
    }
  });
  const ranked = [...most.entries()].sort(([a, x], [b, y]) => {
    const pins = Number(b.startsWith('pin:')) - Number(a.startsWith('pin:'));
    return pins || y.amps - x.amps;
  });
  return [...new Set(ranked.map(([, { index }]) => index))].slice(0, count);
}

/** The network without its tolerances. */
function typicalOf({ ground, elements }: Network): Network {
  return { ground, elements: elements.map(typicalElement) };
}

function typicalElement(element: Element): Element {
  const typical = (range: Range) => exactly(range.typ);
  switch (element.type) {
    case 'resistor':
    case 'coil':
    case 'switch':
      return { ...element, ohms: typical(element.ohms) };
    case 'transistor': {
      const { volts, ohms, gain } = element;
      const gainOnly = gain === undefined ? {} : { gain: typical(gain) };
      return { ...element, volts: typical(volts), ohms: typical(ohms), ...gainOnly };
    }
    case 'source':
      return { ...element, volts: typical(element.volts), ohms: typical(element.ohms) };
    case 'current':
      return { ...element, amps: typical(element.amps) };
    case 'diode':
      return { ...element, volts: typical(element.volts) };
  }
}

/** Keeps solved points by their network, the oldest dropped first. */
export function rememberPoints(solve: Solve, capacity = 4096): Solve {
  const kept = new Map<string, OperatingPoint>();
  return (network) => {
    const key = JSON.stringify(network);
    const known = kept.get(key);
    if (known) return known;
    const point = solve(network);
    kept.set(key, point);
    if (kept.size > capacity) {
      const oldest = kept.keys().next().value;
      if (oldest !== undefined) kept.delete(oldest);
    }
    return point;
  };
}
