/** Variables come into being: numbers, arrays, objects of the sketch's classes and of libraries. */
import type { Expression, ListExpression, TypeName, Variable } from '../form/ast';
import { cellsOf } from './arrays';
import { makeArray } from './construct-arrays';
import { makeForeign } from './construct-library';
import { copyObject } from './copies';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { type ClassModel, type Site, spanAt } from './model';
import { makeObject } from './objects';
import { asNumber } from './operator-calls';
import { placeCells } from './places';
import type { Scope } from './scope';
import { type ResolvedType, resolveType } from './types';
import { type Cell, convert, type Definition, known, newCell, unknown, unknownOf, type Value } from './value';

/** What a variable starts from. */
export interface Start {
  readonly value?: Expression;
  readonly arguments?: readonly Expression[];
  /** The whole declarator or expression. */
  readonly start?: number;
  readonly end?: number;
  /** What in the syntax makes the object; else its value or arguments. */
  readonly node?: object;
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
  owner = '',
): readonly Cell[] {
  const { type } = variable;
  const { arguments: list } = variable;
  const from = variable.value ?? (list?.length === 1 ? list[0] : undefined);
  if (type.reference && from !== undefined && type.sizes.length === 0) {
    const cells = placeCells(machine, from);
    if (cells !== undefined && cells.length > 0) return cells;
  }
  return [makeCell(machine, variable, variable, site, kind, zeroed, owner)];
}

function makeCell(
  machine: Machine,
  variable: Variable,
  start: Start,
  site: Site,
  kind: Definition['kind'],
  zeroed: boolean,
  owner: string,
): Cell {
  const resolved = resolveType(machine, variable.type, site);
  const definition = definitionOf(machine, variable, site, kind, owner);
  const plain = resolved.pointers === 0 && variable.type.sizes.length === 0;
  const number = plain ? resolved.number : undefined;
  const made = valueFor(machine, variable.type, resolved, start, definition, zeroed);
  const from = start.value ?? start.arguments?.[0];
  const value = number === undefined || from === undefined ? made : asNumber(machine, made, from);
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
  owner: string,
): OwnDefinition {
  const span = spanAt(site, variable.namePlace);
  const old = machine.definitions.get(variable.namePlace);
  if (old?.span?.start === span.start && old.span.file === span.file) return old;
  const scope = kind === 'global' ? site.prefix + owner : '';
  const definition: OwnDefinition = { name: variable.name, kind, span };
  if (scope !== '') definition.qualified = scope + variable.name;
  machine.definitions.set(variable.namePlace, definition);
  return definition;
}

/** `auto` takes the type of what it starts from. */
function typeIn(value: Value, resolved: ResolvedType): Cell['type'] {
  return resolved.auto && (value.kind === 'known' || value.kind === 'unknown') ? value.type : undefined;
}

/** The value that something of a type starts with. */
export function valueFor(
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
    if (single.kind !== 'list' || single.type !== undefined) {
      const value = evaluate(machine, single);
      const isCopy = value.kind === 'object' && resolved.auto && resolved.pointers === 0 && isPlace(single);
      return isCopy ? copyObject(value) : value;
    }
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
  const value =
    resolved.pointers === 0
      ? unknownOf(resolved.number, reason, definition.span)
      : unknown(reason, definition.span);
  return value.kind === 'unknown' ? { ...value, unset: true } : value;
}

/** An object of a class, with constructor arguments or a list. */
export function makeInstance(
  machine: Machine,
  resolved: ResolvedType,
  start: Start,
  definition: Definition | undefined,
): Value {
  const { model } = resolved;
  if (model === undefined) return makeForeign(machine, resolved, start, definition);
  const { value } = start;
  if (value !== undefined && (value.kind !== 'list' || value.type !== undefined)) {
    const made = evaluate(machine, value);
    if (made.kind === 'object') return isPlace(value) ? copyObject(made) : made;
    return makeObject(machine, model, resolved.arguments, [value], undefined, definition);
  }
  const copied = start.arguments === undefined ? undefined : copyOf(machine, model, start.arguments);
  if (copied !== undefined) return copied;
  const list = value?.kind === 'list' ? value : undefined;
  return makeObject(machine, model, resolved.arguments, start.arguments, list, definition);
}

/** Names something that goes on being there; `this` is a pointer to it. */
function isPlace({ kind }: Expression): boolean {
  return kind === 'name' || kind === 'index' || kind === 'member' || kind === 'unary';
}

/** `Lamp other(lamp)`, `Lamp other(make(3))`: a copy of what the one argument is. */
function copyOf(machine: Machine, model: ClassModel, list: readonly Expression[]): Value | undefined {
  const [only] = list;
  if (only === undefined || list.length > 1 || (only.kind !== 'call' && only.kind !== 'name'))
    return undefined;
  const { mark } = machine.state;
  const made = evaluate(machine, only);
  if (made.kind === 'object' && made.model === model) return copyObject(made);
  // It is evaluated again for the constructor that takes it.
  machine.state.undo(mark);
  return undefined;
}

/** `Type{…}` as an expression. */
export function makeTyped(machine: Machine, type: TypeName, list: ListExpression): Value {
  const resolved = resolveType(machine, type, machine.site);
  if (resolved.model !== undefined || resolved.foreign !== undefined) {
    const { type: _, ...plain } = list;
    return makeInstance(
      machine,
      resolved,
      { value: plain, node: list, start: list.start, end: list.end },
      undefined,
    );
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
  const { arguments: list, start, end } = expression;
  const made = { arguments: list, node: expression, start, end };
  const value = makeInstance(machine, resolved, made, undefined);
  return { kind: 'pointer', cells: [newCell(value)] };
}
