/** Figures from options: with their units, as ranges where tolerances matter, and out of a drawer. */
import type { Board } from '../../base/build';
import { preferredSeries, preferredValues } from '../../base/preferred-series';
import { parseQuantity, parseTolerance, type Unit } from '../../base/quantity';
import { exactly, type Range } from '../../base/range';
import { type Given, optionOf, Refusal } from '../spec';

/** Reads options of one sizing. @throws Refusal where a figure is none or is missing. */
export interface Figures {
  /** The board that `--board` names, where it does. */
  readonly board?: Board;
  has(name: string): boolean;
  /** A figure that has to be there, or the one that a board gives. */
  need(name: string, unit: Unit, fromBoard?: (board: Board) => number | undefined): number;
  may(name: string, unit: Unit): number | undefined;
  /** `4.5..5.5 V` or one figure. */
  range(name: string, unit: Unit, fromBoard?: (board: Board) => Range | undefined): Range;
  /** A bare number above zero. */
  number(name: string): number | undefined;
  share(name: string): number | undefined;
  word(name: string): string | undefined;
  /** Ohms that can be had, and their relative tolerance. */
  readonly stock: readonly number[];
  readonly tolerance: number;
}

/** What is in the drawer where nobody says. */
export const STOCK = 'E12';
export const TOLERANCE = '5%';
/** Powers of ten of the first and the last value of a series, ohms. */
const [LOWEST, HIGHEST] = [0, 7];

export function readFigures(given: Given, board: Board | undefined): Figures {
  const refuse = (name: string, why: string): never => {
    throw new Refusal(`--${name}: ${why}.`);
  };
  const word = (name: string) => optionOf(given, name);
  const read = (name: string, text: string, unit: Unit): number => {
    const quantity = parseQuantity(text, unit);
    return quantity.ok ? quantity.value : refuse(name, quantity.why);
  };
  const missing = (name: string, couldBeBoard: boolean): never => {
    throw new Refusal(`Say --${name}${couldBeBoard ? ', or --board for the figure of a board' : ''}.`);
  };
  const share = (name: string): number | undefined => {
    const text = word(name);
    const tolerance = text === undefined ? undefined : parseTolerance(text);
    return tolerance === undefined ? undefined : tolerance.ok ? tolerance.value : refuse(name, tolerance.why);
  };
  return {
    ...(board === undefined ? {} : { board }),
    has: (name) => given.options[name] !== undefined,
    need(name, unit, fromBoard) {
      const text = word(name);
      const known = board && fromBoard?.(board);
      return text === undefined ? (known ?? missing(name, fromBoard !== undefined)) : read(name, text, unit);
    },
    may(name, unit) {
      const text = word(name);
      return text === undefined ? undefined : read(name, text, unit);
    },
    range(name, unit, fromBoard) {
      const text = word(name);
      if (text === undefined) {
        return (board && fromBoard?.(board)) ?? missing(name, fromBoard !== undefined);
      }
      const [low = '', high] = text.split('..');
      if (high === undefined) {
        return exactly(read(name, text, unit));
      }
      const max = read(name, high, unit);
      // The unit may stand behind the second figure alone.
      const bare = /^[\s\d.+-]+$/.test(low) ? low.trim() + high.replace(/^[\s\d.+-]+/, '') : low;
      const min = read(name, bare, unit);
      return min <= max
        ? { min, typ: (min + max) / 2, max }
        : refuse(name, `the first figure of "${text}" is the larger one`);
    },
    number(name) {
      const text = word(name);
      const value = Number(text);
      return text === undefined
        ? undefined
        : Number.isFinite(value) && text.trim() !== ''
          ? value
          : refuse(name, `"${text}" is not a number`);
    },
    share,
    word,
    stock: readStock(word('stock') ?? STOCK),
    tolerance: share('tolerance') ?? 0.05,
  };
}

function readStock(text: string): readonly number[] {
  const series = preferredSeries.find((name) => name === text.trim().toUpperCase());
  if (series !== undefined) {
    return preferredValues(series, LOWEST, HIGHEST);
  }
  return text.split(',').map((each) => {
    const ohms = parseQuantity(each, 'ohm');
    if (!ohms.ok) {
      const names = preferredSeries.join(', ');
      throw new Refusal(`--stock: ${ohms.why}; or name a series (${names}) or values between commas.`);
    }
    return ohms.value;
  });
}
