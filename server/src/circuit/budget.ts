/**
 * What is drawn against what may be drawn: of a pin, a port group, a chip, a regulator, a USB socket. One function, for
 * the sum is the same everywhere; who may draw how much stands in board and part data.
 */
import { formatQuantity } from '../base/quantity';
import type { Range } from '../base/range';
import { figure, plus, type Sum, sumOf } from './sum';

export interface Draw {
  /** What draws, in words. */
  readonly name: string;
  /** Amperes; what flows the other way counts as nothing drawn. */
  readonly amps: Range;
}

export interface Budget {
  /** Amperes in all. */
  readonly used: Range;
  readonly limit: number;
  /** Amperes left at the worst corner; negative where overdrawn. */
  readonly left: number;
  /** The worst corner over the limit; infinite where the limit is nothing and something is drawn. */
  readonly share: number;
  /** usually: at the typical figures already; at worst: at some corner; never. */
  readonly exceeded: 'never' | 'at worst' | 'usually';
  /** Names by what they draw at the worst corner, the most first. */
  readonly largest: readonly string[];
  /** The worst corner's sum; of many draws the largest are shown and the rest is put together. */
  readonly sum: Sum;
}

/** Draws that are shown one by one. */
const SHOWN = 6;

/** Sums draws up against a limit in amperes. Draws that are no numbers make the budget as bad as can be. */
export function budgetOf(draws: readonly Draw[], limit: number): Budget {
  const drawn = draws
    .map(({ name, amps }) => ({
      name,
      min: drawnAmps(amps.min, 0),
      typ: drawnAmps(amps.typ, Number.POSITIVE_INFINITY),
      max: drawnAmps(amps.max, Number.POSITIVE_INFINITY),
    }))
    .sort((a, b) => b.max - a.max);
  const total = (key: 'min' | 'typ' | 'max'): number => drawn.reduce((sum, draw) => sum + draw[key], 0);
  const used = { min: total('min'), typ: total('typ'), max: total('max') };
  const allowed = Number.isFinite(limit) ? Math.max(0, limit) : 0;
  // A figure that sums up to its limit by rounding alone does not pass it.
  const over = (amps: number): boolean => amps > allowed * (1 + 1e-9);
  const shown = drawn.length > SHOWN + 1 ? drawn.slice(0, SHOWN) : drawn;
  const rest = drawn.slice(shown.length).reduce((sum, draw) => sum + draw.max, 0);
  const pieces = [...shown.map((draw) => figure(draw.max, 'A')), ...(rest > 0 ? [figure(rest, 'A')] : [])];
  return {
    used,
    limit: allowed,
    left: allowed - used.max,
    share: used.max === 0 ? 0 : used.max / allowed,
    exceeded: over(used.typ) ? 'usually' : over(used.max) ? 'at worst' : 'never',
    largest: drawn.map(({ name }) => name),
    sum: sumOf(pieces.length === 0 ? figure(0, 'A') : plus(...pieces), 'A'),
  };
}

function drawnAmps(amps: number, otherwise: number): number {
  return Number.isNaN(amps) ? otherwise : Math.max(0, amps);
}

/**
 * What a USB port gives, amperes, by what the device may ask for.
 * Source: USB 2.0 specification, section 7.2.1 (one unit load 100 mA, five after configuration); USB 3.2 (900 mA);
 * USB Type-C specification (1.5 A and 3 A by resistor); all from memory.
 */
export const USB_AMPS = {
  'before configuration': 0.1,
  'USB 2.0': 0.5,
  'USB 3.2': 0.9,
  'Type-C 1.5 A': 1.5,
  'Type-C 3 A': 3,
} as const;

/** "120 mA of 500 mA" for one line of a table. */
export function budgetWords({ used, limit }: Budget): string {
  return `${formatQuantity(used.max, 'A')} of ${formatQuantity(limit, 'A')}`;
}
