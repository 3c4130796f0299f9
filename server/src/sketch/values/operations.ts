/** Operators on sets of numbers and on unknown ones. */

import { movePointer } from './arrays';
import type { Machine } from './machine';
import { bool, commonType, compare, promoted, reckon } from './number-types';
import {
  type ArrayValue,
  either,
  type Known,
  known,
  knownSet,
  truth,
  type Unknown,
  unknown,
  type Value,
} from './value';

/** Pairs of values above this are not tried one by one. */
const mostPairs = 1024;

function firstUnknown(a: Value, b: Value): Unknown {
  if (a.kind === 'unknown') return a;
  return b.kind === 'unknown' ? b : unknown('it is not a number');
}

/** `a operator b` for everything but `&&` and `||`. */
export function binary(machine: Machine, operator: string, a: Value, b: Value): Value {
  if (a.kind === 'known' && b.kind === 'known') return ofKnown(machine, operator, a, b);
  const between = betweenPointers(machine, operator, a, b);
  if (between !== undefined) return between;
  if (compare(operator, 0, 0) !== undefined) return either;
  if ((operator === '+' || operator === '-') && (a.kind === 'array' || a.kind === 'pointer')) {
    return movePointer(a, b, operator === '+' ? 1 : -1);
  }
  if (operator === '+' && (b.kind === 'array' || b.kind === 'pointer')) return movePointer(b, a, 1);
  return ofUnknown(operator, a, b);
}

/** Comparison and difference of pointers; undefined where neither is one, or too little is known. */
function betweenPointers(machine: Machine, operator: string, a: Value, b: Value): Value | undefined {
  const [x, y] = [placeIn(a), placeIn(b)];
  if (x !== undefined && y !== undefined && x.array === y.array) {
    if (operator === '-') return known(x.index - y.index, machine.types.int);
    const truthOf = compare(operator, x.index, y.index);
    return truthOf === undefined ? undefined : known(truthOf ? 1 : 0, bool);
  }
  if (operator !== '==' && operator !== '!=') return undefined;
  const same = samePlace(a, b);
  return same === undefined ? undefined : known(same === (operator === '==') ? 1 : 0, bool);
}

function placeIn(value: Value): { readonly array: ArrayValue; readonly index: number } | undefined {
  if (value.kind === 'array') return { array: value, index: 0 };
  if (value.kind !== 'pointer' || value.nullable === true) return undefined;
  const { array, index } = value;
  return array === undefined || index === undefined ? undefined : { array, index };
}

/** Whether two values point to one thing; undefined where that is not known. */
function samePlace(a: Value, b: Value): boolean | undefined {
  if (a.kind === 'known' || b.kind === 'known') {
    const [number, other] = a.kind === 'known' ? [a, b] : [b, a];
    const isReal = other.kind === 'pointer' || other.kind === 'function' || other.kind === 'array';
    return isReal && truth(number) === false && truth(other) === true ? false : undefined;
  }
  if (truth(a) !== true || truth(b) !== true) return undefined;
  if (a.kind === 'function' && b.kind === 'function') {
    const [first] = a.options;
    const [second] = b.options;
    if (first === undefined || second === undefined || a.options.length + b.options.length > 2)
      return undefined;
    return first.item === second.item;
  }
  if (a.kind !== 'pointer' || b.kind !== 'pointer' || a.cells.length !== 1 || b.cells.length !== 1)
    return undefined;
  const [here] = a.cells;
  // One cell may stand for several things where it has no name.
  if (here === b.cells[0]) return here?.definition === undefined ? undefined : true;
  return here?.definition === undefined || b.cells[0]?.definition === undefined ? undefined : false;
}

function ofKnown(machine: Machine, operator: string, a: Known, b: Known): Value {
  const [x] = a.values;
  const [y] = b.values;
  if (x === undefined || y === undefined) return unknown('it has no value');
  const truthOf = compare(operator, x, y);
  if (truthOf !== undefined) {
    if (a.values.length === 1 && b.values.length === 1) return known(truthOf ? 1 : 0, bool);
    if (a.values.length * b.values.length > mostPairs) return either;
    const found = new Set<number>();
    for (const left of a.values)
      for (const right of b.values) found.add(compare(operator, left, right) ? 1 : 0);
    return knownSet(found, bool);
  }
  const int = machine.types.int;
  const shift = operator === '<<' || operator === '>>';
  const type = shift
    ? promoted(a.type.bits < int.bits ? int : a.type, int)
    : commonType(widened(a, int), widened(b, int), int);
  const origins = a.origins.length > 0 ? a.origins : b.origins;
  if (a.values.length === 1 && b.values.length === 1) {
    const value = reckon(operator, x, y, type);
    return value === undefined ? noValue(operator) : { ...known(value, type), origins };
  }
  if (a.values.length * b.values.length > mostPairs)
    return unknown('it takes too many values', undefined, type);
  const found = new Set<number>();
  for (const left of a.values) {
    for (const right of b.values) {
      const value = reckon(operator, left, right, type);
      if (value !== undefined) found.add(value);
    }
  }
  return found.size === 0 ? noValue(operator) : knownSet(found, type, origins);
}

const widened = (value: Known, int: Known['type']) =>
  !value.type.float && value.type.bits < int.bits ? int : value.type;

function noValue(operator: string): Unknown {
  return unknown(
    operator === '/' || operator === '%' ? 'it is divided by zero' : 'it is shifted out of range',
  );
}

/** What still holds where one side is not known: a remainder and a mask have few values. */
function ofUnknown(operator: string, a: Value, b: Value): Value {
  const sure = b.kind === 'known' ? b : a.kind === 'known' ? a : undefined;
  // Values are sorted.
  const least = sure?.values[0];
  const most = sure?.values[sure.values.length - 1];
  if (sure !== undefined && least !== undefined && most !== undefined) {
    if (operator === '%' && sure === b && least > 0 && most <= 64) {
      return knownSet(range(isNatural(a) ? 0 : 1 - most, most - 1), sure.type);
    }
    if (operator === '&' && least >= 0 && most < 64) {
      const cover = coverOf(most);
      return knownSet(
        range(0, most).filter((value) => (value & ~cover) === 0),
        sure.type,
      );
    }
  }
  const { reason, span } = firstUnknown(a, b);
  return unknown(reason, span, undefined, isNatural(a) && isNatural(b) && staysNatural.has(operator));
}

const staysNatural = new Set(['+', '*', '/', '%', '&', '|', '>>']);

/** The lowest mask of ones that holds a number. */
function coverOf(most: number): number {
  let cover = 0;
  while (cover < most) cover = cover * 2 + 1;
  return cover;
}

export function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, index) => from + index);
}

export function isNatural(value: Value): boolean {
  if (value.kind === 'unknown') return value.natural === true;
  return value.kind === 'known' && (value.values[0] ?? -1) >= 0;
}

/** `operator a` for signs and negations. */
export function unary(machine: Machine, operator: string, a: Value): Value {
  if (operator === '!') {
    const is = truth(a);
    return is === undefined ? either : known(is ? 0 : 1, bool);
  }
  if (a.kind !== 'known')
    return a.kind === 'unknown' ? unknown(a.reason, a.span) : unknown('it is not a number');
  if (operator === '+') return a;
  const type = widened(a, machine.types.int);
  const turn = (value: number) =>
    operator === '-' ? reckon('-', 0, value, type) : reckon('-', -1, value, type);
  const found = a.values.map(turn).filter((value) => value !== undefined);
  return knownSet(found, type, a.origins);
}
