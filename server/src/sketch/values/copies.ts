/** Copies of objects: what assigning one, passing it by value, and starting another from it makes. */
import { cellsOf } from './arrays';
import type { ArrayValue, Cell, ObjectValue, Value } from './value';
import { newCell } from './value';

type Join = (a: Value, b: Value) => Value;

const mostJoined = 64;

/** A copy that shares nothing. */
export function copyObject(object: ObjectValue): ObjectValue {
  const fields = new Map<string, Cell>();
  for (const [name, cell] of object.fields) fields.set(name, copyCell(cell));
  return { ...object, fields };
}

function copyCell(cell: Cell): Cell {
  const copy = newCell(copied(cell.value), cell.type, cell.definition);
  copy.shared = cell.shared;
  return copy;
}

function copied(value: Value): Value {
  if (value.kind === 'object') return copyObject(value);
  return value.kind === 'array' ? copyArray(value) : value;
}

/** A table that nobody looked into yet is still the plain numbers. */
function copyArray(array: ArrayValue): ArrayValue {
  if (array.all !== undefined) return { ...array, all: copyCell(array.all) };
  if (array.packed !== undefined && array.cells === undefined) return { ...array };
  return { ...array, cells: cellsOf(array).map(copyCell) };
}

/** An object that may be either of two of one class: each field may be as in either. Undefined where there is no such. */
export function joinObjects(a: ObjectValue, b: ObjectValue, join: Join, depth = 0): ObjectValue | undefined {
  if (a.model === undefined || a.model !== b.model || depth > 3 || a.types !== b.types) return undefined;
  if (a.given !== undefined || b.given !== undefined) return undefined;
  const fields = new Map<string, Cell>();
  for (const [name, cell] of a.fields) {
    const other = b.fields.get(name);
    if (other === undefined) return undefined;
    const one = joinFields(cell.value, other.value, join, depth);
    if (one === undefined) return undefined;
    const made = newCell(one, cell.type, cell.definition);
    made.shared = cell.shared;
    fields.set(name, made);
  }
  return { ...a, fields };
}

function joinFields(a: Value, b: Value, join: Join, depth: number): Value | undefined {
  if (a.kind === 'object' && b.kind === 'object') return joinObjects(a, b, join, depth + 1);
  // Arrays are joined as pointers to either, which is not what a copy holds.
  if (a.kind === 'array' && b.kind === 'array') return joinArrays(a, b, join, depth + 1);
  if (a.kind === 'array' || b.kind === 'array') return undefined;
  return join(a, b);
}

function joinArrays(a: ArrayValue, b: ArrayValue, join: Join, depth: number): ArrayValue | undefined {
  if (a.length !== b.length || a.length > mostJoined || a.all !== undefined || b.all !== undefined)
    return undefined;
  const others = cellsOf(b);
  const cells: Cell[] = [];
  for (const [index, cell] of cellsOf(a).entries()) {
    const other = others[index];
    const one = other === undefined ? undefined : joinFields(cell.value, other.value, join, depth);
    if (one === undefined) return undefined;
    cells.push(newCell(one, cell.type, cell.definition));
  }
  return { ...a, packed: undefined, cells };
}

/** Whether two objects hold the same. */
export function sameObjects(a: ObjectValue, b: ObjectValue, same: (a: Value, b: Value) => boolean): boolean {
  if (a.model === undefined || a.model !== b.model || a.fields.size !== b.fields.size) return false;
  for (const [name, cell] of a.fields) {
    const other = b.fields.get(name);
    if (other === undefined || !same(cell.value, other.value)) return false;
  }
  return true;
}
