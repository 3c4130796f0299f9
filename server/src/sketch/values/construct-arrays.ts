/** Arrays come into being: tables of numbers, lists of anything, designated entries, texts. */
import type { Expression, ListEntry, ListExpression, TypeName } from '../form/ast';
import { parseExpression } from '../form/text-parser';
import { type Token, tokens } from '../form/tokens';
import { arrayOf, longArray } from './arrays';
import { type Start, valueFor } from './construct';
import { split } from './enum-lists';
import { expandText, needsText } from './expansion';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { bodyOf } from './macros';
import { spanAt } from './model';
import { spreadList } from './packs';
import { bytesOf, type ResolvedType } from './types';
import {
  type ArrayValue,
  type Cell,
  convert,
  type Definition,
  known,
  newCell,
  type Unknown,
  unknown,
  type Value,
} from './value';

/** Arrays above this are not made at all: no chip that a sketch runs on has room for them. */
const largestArray = 100_000;

export function makeArray(
  machine: Machine,
  type: TypeName,
  resolved: ResolvedType,
  start: Start,
  definition: Definition,
  zeroed: boolean,
): Value {
  const [sizeExpression, ...inner] = type.sizes;
  const list = listIn(machine, start.value);
  const declaredSize = sizeExpression === undefined ? undefined : sizeIn(machine, sizeExpression);
  if (typeof declaredSize === 'object') return declaredSize;
  const given = list === undefined ? 0 : (list.numbers?.length ?? list.items.length);
  const length = declaredSize ?? given;
  if (list === undefined && start.value !== undefined) {
    const value = evaluate(machine, start.value);
    if (value.kind === 'array' && start.value.kind !== 'text') return value;
    return textArray(machine, start.value, declaredSize, definition);
  }
  if (length > largestArray) return unknown('the array is too long to be followed', definition.span);
  machine.spend(length);
  const entry = { ...type, sizes: inner };
  const number = inner.length === 0 && resolved.pointers === 0 ? resolved.number : undefined;
  if (number !== undefined && !number.float && list?.numbers !== undefined) {
    const packed = packedOf(list.numbers, length, number);
    const entryBytes = bytesOf(number);
    return {
      kind: 'array',
      length,
      entryBytes,
      cells: undefined,
      packed,
      all: undefined,
      entryType: number,
      definition,
    };
  }
  const isZeroed = zeroed || list !== undefined;
  const cells = entriesOf(machine, list?.items ?? [], length, (item) => {
    const value = item === undefined ? undefined : item.value;
    const made = valueFor(
      machine,
      entry,
      resolved,
      value === undefined ? {} : { value, start: value.start, end: value.end },
      definition,
      isZeroed,
    );
    return newCell(convert(made, number), number, definition);
  });
  const pointerBytes = machine.types.unsigned.bits / 8;
  const entryBytes = inner.length > 0 ? undefined : resolved.pointers > 0 ? pointerBytes : bytesOf(number);
  return arrayOf(cells, entryBytes, definition, number);
}

function packedOf(
  numbers: readonly number[],
  length: number,
  number: ArrayValue['entryType'],
): readonly number[] {
  const type = number;
  const fits = type === undefined || numbers.every((value) => inRange(value, type));
  const values = fits
    ? numbers
    : numbers.map((value) => {
        const turned = convert(known(value, typeOfAll), type);
        return turned.kind === 'known' ? (turned.values[0] ?? 0) : 0;
      });
  if (values.length >= length) return values;
  return [...values, ...new Array<number>(length - values.length).fill(0)];
}

const typeOfAll = { name: 'int64_t', bits: 64, signed: true, float: false };

function inRange(value: number, type: { readonly bits: number; readonly signed: boolean }): boolean {
  const low = type.signed ? -(2 ** (type.bits - 1)) : 0;
  return value >= low && value < 2 ** (type.signed ? type.bits - 1 : type.bits);
}

/** Entries in their places; designated ones go where they say. */
function entriesOf(
  machine: Machine,
  items: readonly ListEntry[],
  length: number,
  make: (item: ListEntry | undefined) => Cell,
): Cell[] {
  const placed: (ListEntry | undefined)[] = [];
  let at = 0;
  for (const item of items) {
    const index = item.index === undefined ? undefined : evaluate(machine, item.index);
    if (index?.kind === 'known') at = index.values[0] ?? at;
    if (at >= 0 && at < length) placed[at] = item;
    at += 1;
  }
  const cells: Cell[] = [];
  let last: Cell | undefined;
  for (let entry = 0; entry < length; entry += 1) {
    const item = placed[entry];
    // Beyond what can be told apart, the empty rest is one cell.
    const cell: Cell = item === undefined && entry > longArray && last !== undefined ? last : make(item);
    if (item === undefined) last = cell;
    cells.push(cell);
  }
  return cells;
}

function listIn(machine: Machine, value: Expression | undefined): ListExpression | undefined {
  if (value?.kind === 'list') return expandedList(machine, spreadList(machine, value));
  if (value?.kind !== 'name') return undefined;
  return listMacro(machine, value.name, value.start);
}

/** A list with macros in it that stand for several entries. */
function expandedList(machine: Machine, list: ListExpression): ListExpression {
  const { macros } = machine.program;
  const isLoose = ({ value }: ListEntry) => {
    const at = value.kind === 'call' ? value.callee : value;
    const macro = at.kind === 'name' ? macros.find(at.name, machine.site, at.start)[0] : undefined;
    return macro !== undefined && needsText(macros, macro, machine.site, at.start);
  };
  if (list.numbers !== undefined || !list.items.some(isLoose)) return list;
  const text = machine.program.textAt(machine.site, list);
  if (text === undefined) return list;
  return listOfText(expandText(macros, text, machine.site, list.start) ?? '') ?? list;
}

/** A list out of replaced text, entries that say where they go among it. */
function listOfText(text: string): ListExpression | undefined {
  const list = tokens(text);
  if (list[0]?.text !== '{' || list[list.length - 1]?.text !== '}') return undefined;
  const items: ListEntry[] = [];
  for (const part of split(list.slice(1, -1))) {
    const at = part.findIndex(({ text: sign }) => sign === '=');
    const isPlaced = part[0]?.text === '[' && part[at - 1]?.text === ']';
    const isField = part[0]?.text === '.' && at === 2;
    const value = parsed(isPlaced || isField ? part.slice(at + 1) : part);
    if (value === undefined) return undefined;
    const index = isPlaced ? parsed(part.slice(1, at - 1)) : undefined;
    const field = isField ? part[1]?.text : undefined;
    items.push({
      value,
      ...(index === undefined ? {} : { index }),
      ...(field === undefined ? {} : { field }),
    });
  }
  return { kind: 'list', items, start: 0, end: text.length };
}

function parsed(list: readonly Token[]): Expression | undefined {
  return parseExpression(list.map(({ text }) => text).join(' '));
}

/** `#define PINS {3, 5, 6}` */
function listMacro(machine: Machine, name: string, offset: number): ListExpression | undefined {
  const [macro] = machine.program.macros.find(name, machine.site, offset);
  if (macro === undefined || macro.parameters !== undefined) return undefined;
  const { expression } = bodyOf(macro);
  return expression?.kind === 'list' ? expression : undefined;
}

function sizeIn(machine: Machine, expression: Expression): number | undefined | Unknown {
  const value = evaluate(machine, expression);
  if (value.kind === 'known' && value.values.length === 1) return Math.max(0, value.values[0] ?? 0);
  return unknown('the length of the array is not known', spanAt(machine.site, expression));
}

function textArray(
  machine: Machine,
  value: Expression,
  declaredSize: number | undefined,
  definition: Definition,
): Value {
  if (value.kind !== 'text') return unknown('the array starts from something else', definition.span);
  const number = machine.types.named('char');
  const all = newCell(
    unknown('it is part of a text', spanAt(machine.site, value), number),
    number,
    definition,
  );
  const length = declaredSize ?? value.length + 1;
  return {
    kind: 'array',
    length,
    entryBytes: 1,
    cells: undefined,
    packed: undefined,
    all,
    entryType: number,
    definition,
  };
}
