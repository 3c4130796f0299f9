/** `sizeof`, as far as a sketch uses it: of arrays, their entries, numbers and number types. */
import type { Expression } from '../form/ast';
import { cellsOf } from './arrays';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { spanAt } from './model';
import { packLength } from './packs';
import { basesOf } from './places';
import { bytesOf, resolveType } from './types';
import { type ArrayValue, known, unknown, type Value } from './value';

export function sizeOf(machine: Machine, expression: Extract<Expression, { kind: 'size' }>): Value {
  const bytes = bytesIn(machine, expression);
  if (bytes === undefined) return unknown('the size is not known', spanAt(machine.site, expression));
  return known(bytes, machine.types.unsigned);
}

function bytesIn(machine: Machine, expression: Extract<Expression, { kind: 'size' }>): number | undefined {
  const { type, operand } = expression;
  if (type !== undefined) {
    const resolved = resolveType(machine, type, machine.site);
    return resolved.pointers > 0 ? machine.types.unsigned.bits / 8 : bytesOf(resolved.number);
  }
  if (operand === undefined) return undefined;
  if (operand.kind === 'text') return operand.length + 1;
  // `sizeof...(rest)` reads like `sizeof (rest)`.
  const members = operand.kind === 'name' ? packLength(machine, operand.name) : undefined;
  if (members !== undefined) return members;
  if (operand.kind === 'name' && machine.types.named(operand.name) !== undefined) {
    return bytesOf(machine.types.named(operand.name));
  }
  const wasQuiet = machine.quiet;
  // What stands in sizeof is never run: its uses do not happen, its writes are taken back.
  machine.quiet = true;
  const { mark } = machine.state;
  const [base] = basesOf(machine, operand);
  const value = base?.kind === 'array' ? base : evaluate(machine, operand);
  machine.state.undo(mark);
  machine.quiet = wasQuiet;
  if (value.kind === 'array') return arrayBytes(value);
  if (value.kind === 'known' || value.kind === 'unknown') return bytesOf(value.type);
  return value.kind === 'object' ? objectBytes : undefined;
}

/** Objects have no known size; any size divides an array of them rightly, as long as it is always the same. */
const objectBytes = 8;

function arrayBytes(array: ArrayValue): number | undefined {
  if (array.entryBytes !== undefined) return array.length * array.entryBytes;
  if (array.packed !== undefined) return undefined;
  const first = cellsOf(array)[0]?.value;
  if (first?.kind === 'array') {
    const inner = arrayBytes(first);
    return inner === undefined ? undefined : inner * array.length;
  }
  return first?.kind === 'object' ? array.length * objectBytes : undefined;
}
