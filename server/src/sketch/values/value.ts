/** Making, joining and comparing what the analysis knows of values. */
import type { Span } from '../../base/span';
import { bool, type NumberType, wrap } from './number-types';
import type { Cell, Definition, Known, Unknown, Value } from './value-types';

export type * from './value-types';

let cells = 0;

/** The number of the newest cell. */
export function newestCell(): number {
  return cells;
}

export function newCell(value: Value, type?: NumberType, definition?: Definition): Cell {
  cells += 1;
  return {
    value,
    type,
    definition,
    serial: cells,
    written: false,
    shared: false,
    read: undefined,
    readOf: undefined,
  };
}

/** More values than this are as good as unknown. */
export const maximumValues = 64;
const maximumOrigins = 8;
const none: readonly Definition[] = [];

/** Small numbers come again and again: each is made once for each type. */
const small = new Map<NumberType, (Known | undefined)[]>();

export function known(value: number, type: NumberType): Known {
  if (value >= 0 && value < 256 && Number.isInteger(value)) {
    let made = small.get(type);
    if (made === undefined) {
      made = [];
      small.set(type, made);
    }
    const old = made[value];
    if (old !== undefined) return old;
    const one: Known = { kind: 'known', values: [value + 0], type, origins: none, direct: 0 };
    made[value] = one;
    return one;
  }
  return { kind: 'known', values: [value], type, origins: none, direct: 0 };
}

export function unknown(reason: string, span?: Span, type?: NumberType, natural = false): Unknown {
  return {
    kind: 'unknown',
    reason,
    ...(span === undefined ? {} : { span }),
    ...(type === undefined ? {} : { type }),
    ...(natural ? { natural } : {}),
  };
}

/** A set of numbers; unknown where there are too many. */
export function knownSet(
  values: Iterable<number>,
  type: NumberType,
  origins: readonly Definition[] = none,
  direct = 0,
): Known | Unknown {
  const sorted = [...new Set(values)].sort((a, b) => a - b);
  if (sorted.length > maximumValues)
    return unknown(`it takes more than ${maximumValues} values`, undefined, type);
  return { kind: 'known', values: sorted, type, origins, direct };
}

/** Either truth value. */
export const either: Known = { kind: 'known', values: [0, 1], type: bool, origins: none, direct: 0 };

/** An unknown of a type; a truth value has only two. */
export function unknownOf(type: NumberType | undefined, reason: string, span?: Span): Known | Unknown {
  if (type === bool) return either;
  return unknown(reason, span, type, type !== undefined && !type.signed && !type.float);
}

/** True, false, or undefined where it may be both. */
export function truth(value: Value): boolean | undefined {
  if (value.kind === 'unknown') return undefined;
  // `while (millis` is half typed: the name of a library's function is not its value.
  if (value.kind === 'function' && value.options.some(({ library }) => library !== undefined))
    return undefined;
  if (value.kind !== 'known') return true;
  const zero = value.values.includes(0);
  if (zero && value.values.length === 1) return false;
  return zero ? undefined : true;
}

/** The number a value certainly is. */
export function single(value: Value): number | undefined {
  return value.kind === 'known' && value.values.length === 1 ? value.values[0] : undefined;
}

export function sameOrigins(a: readonly Definition[], b: readonly Definition[]): boolean {
  return a === b || (a.length === b.length && a.every((one, index) => one === b[index]));
}

export function joinOrigins(a: readonly Definition[], b: readonly Definition[]): readonly Definition[] {
  if (b.length === 0 || sameOrigins(a, b)) return a;
  if (a.length === 0) return b;
  return [...new Set([...a, ...b])].slice(0, maximumOrigins);
}

/** The number as it is read through a name. */
export function readThrough(value: Known, definition: Definition): Known {
  if (value.origins.includes(definition)) return value;
  const origins = [definition, ...value.origins].slice(0, maximumOrigins);
  return { ...value, origins, direct: Math.min(value.direct + 1, origins.length) };
}

/** True where nothing is lost by keeping `a` in the place of `b`. */
export function same(a: Value, b: Value): boolean {
  if (a === b) return true;
  if (a.kind === 'known' && b.kind === 'known') {
    return (
      a.type === b.type &&
      a.values.length === b.values.length &&
      a.values.every((value, index) => value === b.values[index]) &&
      sameOrigins(a.origins, b.origins)
    );
  }
  if (a.kind === 'unknown' && b.kind === 'unknown') return a.type === b.type;
  if (a.kind === 'pointer' && b.kind === 'pointer') {
    return (
      a.array === b.array &&
      a.index === b.index &&
      a.cells.length === b.cells.length &&
      a.cells.every((cell, index) => cell === b.cells[index])
    );
  }
  if (a.kind === 'states' && b.kind === 'states') {
    return a.together.length === b.together.length && a.together.every((one, at) => one === b.together[at]);
  }
  if (a.kind === 'function' && b.kind === 'function') {
    return (
      a.options.length === b.options.length && a.options.every((one, i) => one.item === b.options[i]?.item)
    );
  }
  return false;
}

/** What holds where either value may. */
export function join(a: Value, b: Value): Value {
  if (a === b || same(a, b)) return a;
  if (a.kind === 'unknown') return a;
  if (b.kind === 'unknown') return b;
  if (a.kind === 'known' && b.kind === 'known') {
    const origins = joinOrigins(a.origins, b.origins);
    const direct = a.direct > 0 && b.direct > 0 ? origins.length : Math.max(a.direct, b.direct);
    return knownSet([...a.values, ...b.values], a.type, origins, direct);
  }
  if (a.kind === 'pointer' && b.kind === 'pointer') {
    const cells = [...new Set([...a.cells, ...b.cells])];
    if (cells.length <= maximumValues) return { kind: 'pointer', cells };
  }
  if (a.kind === 'function' && b.kind === 'function') {
    const options = [...a.options];
    for (const one of b.options) if (!options.some((other) => other.item === one.item)) options.push(one);
    if (options.length <= 8) return { kind: 'function', options };
  }
  if (a.kind === 'states' && b.kind === 'states') {
    const together = [...new Set([...a.together, ...b.together])].sort();
    return together.length > 256 ? unknown('too much goes together') : { kind: 'states', together };
  }
  // A null pointer beside a real one: what is done is done with the real one.
  if (a.kind === 'known') return b;
  if (b.kind === 'known') return a;
  return unknown('it is one of several things');
}

/** The value after it went into a place of a type. */
export function convert(value: Value, type: NumberType | undefined): Value {
  if (type === undefined) return value;
  if (value.kind === 'unknown') {
    if (value.type === type) return value;
    const turned = unknownOf(type, value.reason, value.span);
    return turned.kind === 'unknown' && value.natural ? { ...turned, natural: true } : turned;
  }
  if (value.kind !== 'known' || value.type === type) return value;
  const exact = value.values.every((one) => wrap(one, type) === one);
  if (exact) return { ...value, type };
  const values = value.values.map((one) => wrap(one, type));
  return knownSet(values, type, value.origins, 0);
}
