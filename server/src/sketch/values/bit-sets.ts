/**
 * What each bit of a register becomes, as far as the text of an expression tells: `PORTD = (PORTD & 0x0F) | x` keeps
 * four bits whatever x is. Each bit is a set of four outcomes.
 */
import type { Expression } from '../form/ast';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { outcome } from './outcomes';
import { placeCells } from './places';
import { type Cell, single, type Unknown, type Value } from './value';

export interface BitSets {
  readonly bits: readonly number[];
  /** The first part that is not known. */
  readonly hidden: Unknown | undefined;
}

type Pair = (a: number, b: number) => number;

const { zero, one, same, flip } = outcome;

/** Single outcomes under an operator; then for sets of them. */
function table(pair: Pair): readonly (readonly number[])[] {
  const all = [zero, one, same, flip];
  return Array.from({ length: 16 }, (_, a) =>
    Array.from({ length: 16 }, (__, b) => {
      let found = 0;
      for (const x of all) for (const y of all) if ((a & x) !== 0 && (b & y) !== 0) found |= pair(x, y);
      return found;
    }),
  );
}

const tables: Readonly<Record<string, readonly (readonly number[])[]>> = {
  '|': table((a, b) => (a === one || b === one ? one : a === zero ? b : b === zero || a === b ? a : one)),
  '&': table((a, b) => (a === zero || b === zero ? zero : a === one ? b : b === one || a === b ? a : zero)),
  '^': table((a, b) => {
    if (a === zero) return b;
    if (b === zero) return a;
    if (a === b) return zero;
    if (a === one) return b === same ? flip : same;
    if (b === one) return a === same ? flip : same;
    return one;
  }),
};

const inverse = [0, 2, 1, 3, 8, 10, 9, 11, 4, 6, 5, 7, 12, 14, 13, 15];

export function combine(
  operator: string,
  a: readonly number[],
  b: readonly number[],
): readonly number[] | undefined {
  const rows = tables[operator];
  return rows === undefined ? undefined : a.map((bit, at) => rows[bit]?.[b[at] ?? 0] ?? zero | one);
}

export function isBitwise(operator: string): boolean {
  return Object.hasOwn(tables, operator);
}

/** The bits of a plain value. */
export function bitsOfValue(value: Value, width: number): readonly number[] {
  const bits = new Array<number>(width).fill(0);
  if (value.kind !== 'known') return bits.fill(zero | one);
  for (const number of value.values) {
    for (let at = 0; at < width; at += 1) {
      bits[at] = (bits[at] ?? 0) | (Math.floor(number / 2 ** at) % 2 === 0 ? zero : one);
    }
  }
  return bits;
}

/** The bits of an expression, with the register's own old bits kept apart. */
export function bitsOf(machine: Machine, expression: Expression, cell: Cell, width: number): BitSets {
  switch (expression.kind) {
    case 'name': {
      const cells = placeCells(machine, expression);
      if (cells?.length === 1 && cells[0] === cell)
        return { bits: new Array<number>(width).fill(same), hidden: undefined };
      break;
    }
    case 'unary': {
      if (expression.operator === '*') {
        const cells = placeCells(machine, expression);
        if (cells?.length === 1 && cells[0] === cell)
          return { bits: new Array<number>(width).fill(same), hidden: undefined };
      }
      if (expression.operator !== '~') break;
      const inner = bitsOf(machine, expression.operand, cell, width);
      return { ...inner, bits: inner.bits.map((bit) => inverse[bit] ?? zero | one) };
    }
    case 'cast':
      return bitsOf(machine, expression.operand, cell, width);
    case 'binary': {
      const { operator, left, right } = expression;
      if (isBitwise(operator)) {
        const a = bitsOf(machine, left, cell, width);
        const b = bitsOf(machine, right, cell, width);
        return { bits: combine(operator, a.bits, b.bits) ?? [], hidden: a.hidden ?? b.hidden };
      }
      if (operator !== '<<' || left.kind === 'number') break;
      const a = bitsOf(machine, left, cell, width);
      const by = single(evaluate(machine, right));
      if (by === undefined) return { bits: new Array<number>(width).fill(zero | one), hidden: a.hidden };
      // The old bit of a neighbour is not this one's own.
      const moved = a.bits.map((bit) => ((bit & (same | flip)) === 0 ? bit : zero | one));
      return { ...a, bits: moved.map((_, at) => (at < by ? zero : (moved[at - by] ?? zero))) };
    }
    default:
  }
  const value = evaluate(machine, expression);
  const hidden = value.kind === 'unknown' ? value : undefined;
  return { bits: bitsOfValue(value, width), hidden };
}
