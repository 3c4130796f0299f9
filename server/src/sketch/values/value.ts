/** Making, joining and comparing what the analysis knows of values. */
import type { Span } from '../../base/span';
import { joinObjects, sameObjects } from './copies';
import { joinPointers } from './join-pointers';
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
  // One shape for all: they are made at every turn.
  return { kind: 'unknown', reason, span, type, natural, pin: undefined };
}

/** Sorted, without doubles. */
function sortedSet(values: Iterable<number>): readonly number[] {
  if (Array.isArray(values) && values.length <= 2) {
    const [a, b] = values as readonly number[];
    if (a === undefined || b === undefined) return values;
    if (a < b) return values;
    return a > b ? [b, a] : [a];
  }
  if (Array.isArray(values) && isSorted(values)) return values;
  return [...new Set(values)].sort((a, b) => a - b);
}

function isSorted(values: readonly number[]): boolean {
  for (let at = 1; at < values.length; at += 1) if ((values[at - 1] ?? 0) >= (values[at] ?? 0)) return false;
  return true;
}

/** A set of numbers; unknown where there are too many. */
export function knownSet(
  values: Iterable<number>,
  type: NumberType,
  origins: readonly Definition[] = none,
  direct = 0,
): Known | Unknown {
  const sorted = sortedSet(values);
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
  // An object is no truth by itself: its class may say so or so.
  if (value.kind === 'object') return undefined;
  if (value.kind !== 'known') return 'nullable' in value ? undefined : true;
  const zero = value.values.includes(0);
  if (zero && value.values.length === 1) return false;
  return zero ? undefined : true;
}

/** The number a value certainly is. */
export function single(value: Value): number | undefined {
  return value.kind === 'known' && value.values.length === 1 ? value.values[0] : undefined;
}

export function sameOrigins(a: readonly Definition[], b: readonly Definition[]): boolean {
  return a === b || sameList(a, b);
}

function sameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let at = 0; at < a.length; at += 1) if (a[at] !== b[at]) return false;
  return true;
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
    return a.type === b.type && sameList(a.values, b.values) && sameOrigins(a.origins, b.origins);
  }
  if (a.kind === 'unknown' && b.kind === 'unknown') return a.type === b.type && a.unset === b.unset;
  if (a.kind === 'pointer' && b.kind === 'pointer') {
    if (a.array !== b.array || a.index !== b.index || a.nullable !== b.nullable) return false;
    if (a.reach?.length !== b.reach?.length) return false;
    return sameList(a.cells, b.cells);
  }
  if (a.kind === 'states' && b.kind === 'states') {
    return sameList(a.together, b.together);
  }
  if (a.kind === 'object' && b.kind === 'object') return sameObjects(a, b, same);
  if (a.kind === 'function' && b.kind === 'function') {
    return (
      a.nullable === b.nullable &&
      a.options.length === b.options.length &&
      a.options.every((one, i) => one.item === b.options[i]?.item)
    );
  }
  return false;
}

/** Two sorted lists as one. */
function merged(a: readonly string[], b: readonly string[]): readonly string[] {
  const all: string[] = [];
  let at = 0;
  for (const one of a) {
    for (let other = b[at]; other !== undefined && other <= one; other = b[at]) {
      if (other !== one) all.push(other);
      at += 1;
    }
    all.push(one);
  }
  for (; at < b.length; at += 1) all.push(b[at] ?? '');
  return all;
}

function holdsAll(a: readonly number[], b: readonly number[]): boolean {
  if (b.length > a.length) return false;
  for (const one of b) if (!a.includes(one)) return false;
  return true;
}

/** What holds where either value may. */
export function join(a: Value, b: Value): Value {
  if (a === b || same(a, b)) return a;
  if (a.kind === 'unknown') return a.unset === true ? b : a;
  if (b.kind === 'unknown') return b.unset === true ? a : b;
  if (a.kind === 'known' && b.kind === 'known') {
    const origins = joinOrigins(a.origins, b.origins);
    const direct = a.direct > 0 && b.direct > 0 ? origins.length : Math.max(a.direct, b.direct);
    if (origins === a.origins && direct === a.direct && holdsAll(a.values, b.values)) return a;
    return knownSet([...a.values, ...b.values], a.type, origins, direct);
  }
  if ((a.kind === 'pointer' || a.kind === 'array') && (b.kind === 'pointer' || b.kind === 'array')) {
    const either = joinPointers(a, b);
    if (either !== undefined) return either;
  }
  if (a.kind === 'function' && b.kind === 'function') {
    const options = [...a.options];
    for (const one of b.options) if (!options.some((other) => other.item === one.item)) options.push(one);
    const nullable = a.nullable ?? b.nullable;
    if (options.length <= 8) return { kind: 'function', options, ...(nullable && { nullable }) };
  }
  if (a.kind === 'object' && b.kind === 'object') {
    const either = joinObjects(a, b, join);
    if (either !== undefined) return either;
  }
  if (a.kind === 'states' && b.kind === 'states') {
    const together = merged(a.together, b.together);
    return together.length > 2048 ? unknown('too much goes together') : { kind: 'states', together };
  }
  // A null pointer beside a real one: what is done is done with the real one.
  if (a.kind === 'known') return orNull(b);
  if (b.kind === 'known') return orNull(a);
  return unknown('it is one of several things');
}

function fits(values: readonly number[], type: NumberType): boolean {
  for (const one of values) if (wrap(one, type) !== one) return false;
  return true;
}

function orNull(value: Value): Value {
  return value.kind === 'pointer' || value.kind === 'function' ? { ...value, nullable: true } : value;
}

/** The value after it went into a place of a type. */
export function convert(value: Value, type: NumberType | undefined): Value {
  if (type === undefined) return value;
  if (value.kind === 'unknown') {
    if (value.type === type) return value;
    if (type === bool) return either;
    const natural = value.natural || (!type.signed && !type.float);
    return unknown(value.reason, value.span, type, natural);
  }
  if (value.kind !== 'known' || value.type === type) return value;
  if (fits(value.values, type)) {
    const { kind, values, origins, direct } = value;
    return value.pin === undefined && value.renumbered === undefined
      ? { kind, values, type, origins, direct }
      : { ...value, type };
  }
  const values = value.values.map((one) => wrap(one, type));
  return knownSet(values, type, value.origins, 0);
}
