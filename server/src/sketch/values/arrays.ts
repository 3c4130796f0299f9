/** Arrays and pointers: entries by index, and moving along. */

import type { ArrayValue, Cell, Pointer, Value } from './value';
import { joinOrigins, known, knownSet, newCell, readThrough, single, unknown } from './value';

/** Entries beyond this are one cell together. */
export const longArray = 1024;

/** Most entries that an unknown index is taken to reach one by one. */
const mostReached = 64;

/** The cells of an array, made when they are first asked for. */
export function cellsOf(array: ArrayValue): readonly Cell[] {
  if (array.all !== undefined) return [array.all];
  if (array.cells === undefined) {
    const { packed, entryType, definition } = array;
    array.cells = (packed ?? []).map((value) =>
      newCell(
        entryType === undefined ? unknown('it is part of a table') : known(value, entryType),
        entryType,
        definition,
      ),
    );
  }
  return array.cells;
}

/** Which entries an index may mean; undefined where it lies outside for certain. */
function indicesOf(length: number, index: Value): readonly number[] | 'any' | undefined {
  if (index.kind !== 'known') return 'any';
  const inside = index.values.filter((value) => value >= 0 && value < length);
  return inside.length === 0 ? undefined : inside;
}

/** Cells that `array[index]` may be. Empty where the index lies outside. */
export function entryCells(array: ArrayValue, index: Value): readonly Cell[] {
  if (array.all !== undefined) return [array.all];
  const indices = indicesOf(array.length, index);
  if (indices === undefined) return [];
  const cells = cellsOf(array);
  return indices === 'any' ? cells : indices.map((one) => cells[one]).filter((cell) => cell !== undefined);
}

/** The value of an entry of a table of plain numbers, without making cells; undefined where it is no such table. */
export function packedEntry(array: ArrayValue, index: Value): Value | undefined {
  const { packed, cells, entryType, definition } = array;
  if (packed === undefined || cells !== undefined || entryType === undefined) return undefined;
  const indices = indicesOf(array.length, index);
  if (indices === undefined) return outside(array, index);
  const values = indices === 'any' ? packed : indices.map((one) => packed[one] ?? 0);
  const value = knownSet(values, entryType);
  if (value.kind !== 'known') return value;
  return definition === undefined ? value : readThrough({ ...value, direct: 0, origins: [] }, definition);
}

export function outside(array: ArrayValue, index: Value): Value {
  const at = single(index);
  const name = array.definition === undefined ? 'the array' : `\`${array.definition.name}\``;
  return unknown(`the index ${at === undefined ? '' : `${at} `}lies outside ${name}`);
}

/** `pointer + by` or `array + by`, in entries. */
export function movePointer(base: ArrayValue | Pointer, by: Value, sign: 1 | -1): Value {
  const array = base.kind === 'array' ? base : base.array;
  const step = single(by);
  if (base.kind === 'pointer' && base.reach !== undefined && step !== 0)
    return { kind: 'pointer', cells: base.reach, reach: base.reach };
  if (array === undefined) return step === 0 ? base : unknown('a pointer is moved');
  const from = base.kind === 'array' ? 0 : base.index;
  if (step === undefined || from === undefined) {
    const cells = cellsOf(array);
    return cells.length > mostReached ? unknown('a pointer is moved') : { kind: 'pointer', cells };
  }
  return pointerInto(array, from + sign * step);
}

export function pointerInto(array: ArrayValue, index: number): Pointer {
  const cells = array.all === undefined ? cellsOf(array).slice(index, index + 1) : [array.all];
  return { kind: 'pointer', cells: index < 0 ? [] : cells, array, index };
}

/** Cells that a pointer, or an array in its place, points to. */
export function targets(value: Value): readonly Cell[] {
  if (value.kind === 'pointer') return value.cells;
  return value.kind === 'array' ? entryCells(value, known0) : [];
}

/** Plain data and no call: this file is loaded in the middle of value.ts. */
const known0: Value = {
  kind: 'known',
  values: [0],
  type: { name: 'int', bits: 16, signed: true, float: false },
  origins: [],
  direct: 0,
};

/** An array whose entries are all made. */
export function arrayOf(
  cells: Cell[],
  entryBytes: number | undefined,
  definition: ArrayValue['definition'],
  entryType: ArrayValue['entryType'],
): ArrayValue {
  if (cells.length <= longArray) {
    const { length } = cells;
    return {
      kind: 'array',
      length,
      entryBytes,
      cells,
      packed: undefined,
      all: undefined,
      entryType,
      definition,
    };
  }
  const numbers = new Set<number>();
  let plain = true;
  let origins = cells[0]?.value.kind === 'known' ? cells[0].value.origins : [];
  for (const { value } of cells) {
    if (value.kind !== 'known') plain = false;
    else {
      for (const one of value.values) numbers.add(one);
      origins = joinOrigins(origins, value.origins);
    }
  }
  const value: Value =
    plain && entryType !== undefined
      ? knownSet(numbers, entryType, origins)
      : unknown('it is part of a long table');
  const all = newCell(value, entryType, definition);
  return {
    kind: 'array',
    length: cells.length,
    entryBytes,
    cells: undefined,
    packed: undefined,
    all,
    entryType,
    definition,
  };
}
