/** Variables come into being: numbers, arrays, objects of the sketch's classes and of libraries. */
import type { Expression, ListEntry, ListExpression, TypeName, Variable } from '../form/ast';
import { arrayOf, cellsOf, longArray } from './arrays';
import { meetFacts } from './board-calls';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { bodyOf } from './macros';
import { type Site, spanAt } from './model';
import { makeObject } from './objects';
import { placeCells } from './places';
import type { Scope } from './scope';
import { bytesOf, type ResolvedType, resolveType } from './types';
import {
  type ArrayValue,
  type Cell,
  convert,
  type Definition,
  known,
  newCell,
  type Unknown,
  unknown,
  unknownOf,
  type Value,
} from './value';

/** What a variable starts from. */
interface Start {
  readonly value?: Expression;
  readonly arguments?: readonly Expression[];
}

/** Defines a local variable in a scope. */
export function declareVariable(machine: Machine, variable: Variable, scope: Scope): readonly Cell[] {
  const kept = variable.isStatic ? machine.statics.get(variable)?.get(machine.site.order) : undefined;
  const cells = kept ?? makeVariable(machine, variable, machine.site, 'local', variable.isStatic);
  if (variable.isStatic && kept === undefined) {
    const places = machine.statics.get(variable) ?? new Map<number, readonly Cell[]>();
    // It was there before whatever is followed just now, and outlives it.
    for (const cell of cells) settle(cell);
    places.set(machine.site.order, cells);
    machine.statics.set(variable, places);
  }
  scope.define(variable.name, cells);
  return cells;
}

function settle(cell: Cell): void {
  cell.serial = 0;
  const { value } = cell;
  if (value.kind === 'object') for (const inner of value.fields.values()) settle(inner);
  if (value.kind === 'array') for (const inner of cellsOf(value)) settle(inner);
}

/** The cells of a new variable: one, or for a reference those that it refers to. */
export function makeVariable(
  machine: Machine,
  variable: Variable,
  site: Site,
  kind: Definition['kind'],
  zeroed: boolean,
): readonly Cell[] {
  const { type } = variable;
  if (type.reference && variable.value !== undefined && type.sizes.length === 0) {
    const cells = placeCells(machine, variable.value);
    if (cells !== undefined && cells.length > 0) return cells;
  }
  return [makeCell(machine, variable, variable, site, kind, zeroed)];
}

function makeCell(
  machine: Machine,
  variable: Variable,
  start: Start,
  site: Site,
  kind: Definition['kind'],
  zeroed: boolean,
): Cell {
  const resolved = resolveType(machine, variable.type, site);
  const definition = definitionOf(machine, variable, site, kind);
  const plain = resolved.pointers === 0 && variable.type.sizes.length === 0;
  const number = plain ? resolved.number : undefined;
  const value = valueFor(machine, variable.type, resolved, start, definition, zeroed);
  const cell = newCell(
    convert(value, number),
    number ?? (plain ? typeIn(value, resolved) : undefined),
    definition,
  );
  definition.cell = cell;
  return cell;
}

type OwnDefinition = { -readonly [K in keyof Definition]: Definition[K] };

/** One definition for each declaration, however often it is run. */
function definitionOf(
  machine: Machine,
  variable: Variable,
  site: Site,
  kind: Definition['kind'],
): OwnDefinition {
  const span = spanAt(site, variable.namePlace);
  const old = machine.definitions.get(variable);
  if (old?.span?.start === span.start && old.span.file === span.file) return old;
  const definition: OwnDefinition = { name: variable.name, kind, span };
  machine.definitions.set(variable, definition);
  return definition;
}

/** `auto` takes the type of what it starts from. */
function typeIn(value: Value, resolved: ResolvedType): Cell['type'] {
  return resolved.auto && (value.kind === 'known' || value.kind === 'unknown') ? value.type : undefined;
}

function valueFor(
  machine: Machine,
  type: TypeName,
  resolved: ResolvedType,
  start: Start,
  definition: Definition,
  zeroed: boolean,
): Value {
  if (type.sizes.length > 0) return makeArray(machine, type, resolved, start, definition, zeroed);
  if (resolved.pointers === 0 && (resolved.model !== undefined || resolved.foreign !== undefined)) {
    return makeInstance(machine, resolved, start, definition);
  }
  const single = start.value ?? (start.arguments?.length === 1 ? start.arguments[0] : undefined);
  if (single !== undefined) {
    if (single.kind !== 'list' || single.type !== undefined) return evaluate(machine, single);
    const [only] = single.items;
    return only === undefined ? zero(machine, resolved) : evaluate(machine, only.value);
  }
  for (const argument of start.arguments ?? []) evaluate(machine, argument);
  return zeroed ? zero(machine, resolved) : unset(resolved, definition);
}

function zero(machine: Machine, resolved: ResolvedType): Value {
  return known(0, resolved.number ?? machine.types.int);
}

function unset(resolved: ResolvedType, definition: Definition): Value {
  const reason = `\`${definition.name}\` has no value yet`;
  return resolved.pointers === 0
    ? unknownOf(resolved.number, reason, definition.span)
    : unknown(reason, definition.span);
}

/** An object of a class, with constructor arguments or a list. */
export function makeInstance(
  machine: Machine,
  resolved: ResolvedType,
  start: Start,
  definition: Definition | undefined,
): Value {
  const { model, foreign } = resolved;
  const { value } = start;
  if (model !== undefined) {
    if (value !== undefined && (value.kind !== 'list' || value.type !== undefined)) {
      const made = evaluate(machine, value);
      if (made.kind === 'object') return made;
      return makeObject(machine, model, resolved.arguments, [value], undefined, definition);
    }
    const list = value?.kind === 'list' ? value : undefined;
    return makeObject(machine, model, resolved.arguments, start.arguments, list, definition);
  }
  if (value !== undefined && value.kind !== 'list') {
    const made = evaluate(machine, value);
    if (made.kind === 'object') return made;
  } else {
    const list = start.arguments ?? (value?.kind === 'list' ? value.items.map((item) => item.value) : []);
    const facts = machine.classFacts.get(foreign ?? '')?.get(foreign ?? '');
    if (facts !== undefined && list.length > 0) {
      const first = list[0]?.start ?? 0;
      const place = { start: first, end: list[list.length - 1]?.end ?? first };
      meetFacts(machine, facts, foreign ?? '', list, place, start);
    } else for (const one of list) evaluate(machine, one);
  }
  return { kind: 'object', className: foreign ?? '', model: undefined, fields: new Map() };
}

/** `Type{…}` as an expression. */
export function makeTyped(machine: Machine, type: TypeName, list: ListExpression): Value {
  const resolved = resolveType(machine, type, machine.site);
  if (resolved.model !== undefined || resolved.foreign !== undefined) {
    const { type: _, ...plain } = list;
    return makeInstance(machine, resolved, { value: plain }, undefined);
  }
  const [only] = list.items;
  return only === undefined
    ? zero(machine, resolved)
    : convert(evaluate(machine, only.value), resolved.number);
}

export function makeNew(machine: Machine, expression: Extract<Expression, { kind: 'new' }>): Value {
  const resolved = resolveType(machine, expression.type, machine.site);
  if (resolved.model === undefined && resolved.foreign === undefined) {
    const [only] = expression.arguments;
    const value = only === undefined ? zero(machine, resolved) : evaluate(machine, only);
    return { kind: 'pointer', cells: [newCell(value, resolved.number)] };
  }
  const value = makeInstance(machine, resolved, { arguments: expression.arguments }, undefined);
  return { kind: 'pointer', cells: [newCell(value)] };
}

/** Arrays above this are not made at all: no chip that a sketch runs on has room for them. */
const largestArray = 100_000;

function makeArray(
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
      value === undefined ? {} : { value },
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
  if (value?.kind === 'list') return value;
  if (value?.kind !== 'name') return undefined;
  return listMacro(machine, value.name, value.start);
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
