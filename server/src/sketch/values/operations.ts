/** Operators on sets of numbers and on unknown ones. */

import { movePointer } from './arrays';
import type { Machine } from './machine';
import { bool, commonType, compare, promoted, reckon } from './number-types';
import { either, type Known, known, knownSet, truth, type Unknown, unknown, type Value } from './value';

/** Pairs of values above this are not tried one by one. */
const mostPairs = 1024;

function firstUnknown(a: Value, b: Value): Unknown {
  if (a.kind === 'unknown') return a;
  return b.kind === 'unknown' ? b : unknown('it is not a number');
}

/** `a operator b` for everything but `&&` and `||`. */
export function binary(machine: Machine, operator: string, a: Value, b: Value): Value {
  if (a.kind === 'known' && b.kind === 'known') return ofKnown(machine, operator, a, b);
  if (compare(operator, 0, 0) !== undefined) return either;
  if ((operator === '+' || operator === '-') && (a.kind === 'array' || a.kind === 'pointer')) {
    return movePointer(a, b, operator === '+' ? 1 : -1);
  }
  if (operator === '+' && (b.kind === 'array' || b.kind === 'pointer')) return movePointer(b, a, 1);
  return ofUnknown(operator, a, b);
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
  const source = firstUnknown(a, b);
  const natural = isNatural(a) && isNatural(b);
  const most =
    b.kind === 'known' ? Math.max(...b.values) : a.kind === 'known' ? Math.max(...a.values) : undefined;
  const least =
    b.kind === 'known' ? Math.min(...b.values) : a.kind === 'known' ? Math.min(...a.values) : undefined;
  if (
    operator === '%' &&
    b.kind === 'known' &&
    least !== undefined &&
    most !== undefined &&
    least > 0 &&
    most <= 64
  ) {
    const low = isNatural(a) ? 0 : 1 - most;
    return knownSet(range(low, most - 1), b.type);
  }
  if (operator === '&' && most !== undefined && least !== undefined && least >= 0 && most < 64) {
    const type = b.kind === 'known' ? b.type : a.kind === 'known' ? a.type : bool;
    return knownSet(
      range(0, most).filter((value) => (value & ~coverOf(most)) === 0),
      type,
    );
  }
  const stays = natural && ['+', '*', '/', '%', '&', '|', '>>'].includes(operator);
  return { ...unknown(source.reason, source.span), ...(stays ? { natural: true } : {}) };
}

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
