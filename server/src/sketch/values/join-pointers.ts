/** A pointer that may be one of two: to either thing, and, where it is moved on, anywhere in what they point into. */
import { cellsOf, entryCells } from './arrays';
import { type ArrayValue, type Cell, known, maximumValues, type Pointer } from './value';

const indexType = { name: 'int', bits: 16, signed: true, float: false };

/** Undefined where that is too much. */
export function joinPointers(a: ArrayValue | Pointer, b: ArrayValue | Pointer): Pointer | undefined {
  const cells = [...new Set([...heads(a), ...heads(b)])];
  const reach = [...new Set([...reachOf(a), ...reachOf(b)])];
  if (cells.length > maximumValues || reach.length > 4 * maximumValues) return undefined;
  const nullable = isNullable(a) || isNullable(b);
  return {
    kind: 'pointer',
    cells,
    ...(isInside(a) || isInside(b) ? { reach } : {}),
    ...(nullable ? { nullable: true as const } : {}),
  };
}

function heads(value: ArrayValue | Pointer): readonly Cell[] {
  return value.kind === 'array' ? entryCells(value, known(0, indexType)) : value.cells;
}

/** All that a pointer can get to by being moved. */
function reachOf(value: ArrayValue | Pointer): readonly Cell[] {
  if (value.kind === 'array') return cellsOf(value);
  return value.reach ?? (value.array === undefined ? value.cells : cellsOf(value.array));
}

/** Whether it points into something that it can be moved in. */
const isInside = (value: ArrayValue | Pointer) =>
  value.kind === 'array' || value.array !== undefined || value.reach !== undefined;

const isNullable = (value: ArrayValue | Pointer) => value.kind === 'pointer' && value.nullable === true;
