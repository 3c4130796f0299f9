/** What a name means at a place: macro argument, macro, local, field, global, function, name of the board. */
import type { Expression, FunctionItem } from '../form/ast';
import { readBinaryName } from '../form/literals';
import { libraryObject } from './construct-library';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { argumentAt, expand, macrosAt } from './macro-uses';
import { spanAt } from './model';
import { readRegister } from './register-writes';
import { bitNumber, registerCells } from './registers';
import { findClass, inNamespaces } from './types';
import {
  type Callable,
  type Cell,
  convert,
  join,
  known,
  readThrough,
  unknown,
  unknownOf,
  type Value,
} from './value';

export type NameExpression = Extract<Expression, { kind: 'name' }>;

/** The value of a cell as its name gives it. */
export function readCell(cell: Cell): Value {
  const { value, definition } = cell;
  if (cell.shared) {
    const by = cell.shared === 'union' ? 'another member of its union' : 'an interrupt handler';
    return unknownOf(cell.type, `${by} changes it`, definition?.span);
  }
  if (value.kind !== 'known' || definition === undefined) return value;
  if (cell.readOf === value && cell.read !== undefined) return cell.read;
  cell.read = readThrough(value, definition);
  cell.readOf = value;
  return cell.read;
}

export function readCells(cells: readonly Cell[]): Value {
  const [first] = cells;
  if (first === undefined) return unknown('it lies outside an array');
  let value = readCell(first);
  for (let at = 1; at < cells.length && value.kind !== 'unknown'; at += 1) {
    const cell = cells[at];
    if (cell !== undefined) value = join(value, readCell(cell));
  }
  return value;
}

/** Writes a value: for certain into one cell, perhaps into each of several. */
export function writeCells(machine: Machine, cells: readonly Cell[], value: Value): void {
  machine.spend(cells.length);
  const [only] = cells;
  if (only !== undefined && cells.length === 1 && only !== undefined) {
    machine.state.write(only, convert(value, only.type));
    return;
  }
  for (const cell of cells) machine.state.write(cell, join(cell.value, convert(value, cell.type)));
}

/** Cells of a variable by name, macros left out. */
export function variableCells(machine: Machine, name: string): readonly Cell[] | undefined {
  const local = machine.scope.find(name);
  if (local !== undefined) return local;
  const { frame } = machine;
  const field = frame?.self?.fields.get(name);
  if (field !== undefined) return [field];
  const { globals, site } = machine;
  if (site.prefix === '' && frame?.callable.owner === undefined) {
    const plain = globals.get(name);
    if (plain !== undefined) return plain;
    if (machine.program.namespaces.size === 0 && !name.includes('::')) return builtCells(machine, name);
  }
  const find = (one: string) => globals.get(one);
  return (
    ofOwner(machine, (owner) => find(`${owner}::${name}`)) ??
    inNamespaces(name, site.prefix, find) ??
    inUsed(machine, name, find) ??
    builtCells(machine, name) ??
    throughAlias(machine, name, (one) => variableCells(machine, one))
  );
}

/** What is there without a declaration, where the sketch has nothing else by that name. */
function builtCells(machine: Machine, name: string): readonly Cell[] | undefined {
  if (machine.program.functions.has(name)) return undefined;
  return registerCells(machine, name) ?? libraryObject(machine, name);
}

/** Tries the class of the running method and its bases. */
export function ofOwner<T>(machine: Machine, find: (owner: string) => T | undefined): T | undefined {
  let model = machine.frame?.callable.owner;
  for (let step = 0; model !== undefined && step < 8; step += 1) {
    const found = find(model.name);
    if (found !== undefined) return found;
    const base: string | undefined = model.bases[0]?.name;
    model = base === undefined ? undefined : findClass(machine, base, model.site);
  }
  return undefined;
}

/** What `using` brings in: a name that is not found is looked for in every namespace, for the text must compile. */
function inUsed<T>(
  machine: Machine,
  name: string,
  find: (qualified: string) => T | undefined,
): T | undefined {
  for (const prefix of machine.program.namespaces) {
    const found = find(prefix + name);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Functions of the sketch by name. */
export function functionsNamed(machine: Machine, name: string): readonly Callable[] | undefined {
  const { functions, namespaces } = machine.program;
  if (machine.site.prefix === '' && machine.frame?.callable.owner === undefined) {
    const plain = functions.get(name);
    if (plain !== undefined) return plain;
    if (namespaces.size === 0 && !name.includes('::')) return undefined;
  }
  const find = (one: string) => functions.get(one);
  return (
    inNamespaces(name, machine.site.prefix, find) ??
    ofOwner(machine, (owner) => find(`${owner}::${name}`)) ??
    inUsed(machine, name, find) ??
    throughAlias(machine, name, (one) => functionsNamed(machine, one))
  );
}

/** `p::light` where `p` is another name of a namespace or a class. */
function throughAlias<T>(
  machine: Machine,
  name: string,
  find: (name: string) => T | undefined,
): T | undefined {
  const cut = name.indexOf('::');
  if (cut <= 0) return undefined;
  const first = name.slice(0, cut);
  const alias = inNamespaces(first, machine.site.prefix, (one) => machine.program.aliases.get(one));
  const target = alias?.type.name;
  if (target === undefined || target === first || target.includes(`${first}::`)) return undefined;
  return find(target + name.slice(cut));
}

export function nameValue(machine: Machine, expression: NameExpression): Value {
  const { name } = expression;
  const argument = argumentAt(machine, name);
  if (argument !== undefined) {
    return machine.at(argument.site, machine.scope, () => evaluate(machine, argument.expression));
  }
  const macros = macrosAt(machine, name, expression.start);
  if (macros.length === 0) return plainName(machine, expression);
  let value: Value | undefined;
  for (const macro of macros) {
    const isMacro = macro !== undefined && macro.parameters === undefined;
    const one = isMacro ? expand(machine, macro, expression) : plainName(machine, expression);
    // In the branch that does not define it the text would not compile: that branch is not the one.
    if (!isMacro && one.kind === 'unknown' && value !== undefined) continue;
    value = value === undefined ? one : join(value, one);
  }
  return value ?? plainName(machine, expression);
}

function plainName(machine: Machine, expression: NameExpression): Value {
  const { name } = expression;
  const cells = variableCells(machine, name);
  const [only] = cells ?? [];
  if (only?.register !== undefined) return readRegister(machine, only, expression);
  if (cells !== undefined) return readCells(cells);
  const functions = functionsNamed(machine, name);
  if (functions !== undefined) {
    const first = functions.find(({ item }) => item.body !== undefined) ?? functions[0];
    return { kind: 'function', options: first === undefined ? [] : [first] };
  }
  const bit = bitNumber(machine, name);
  if (bit !== undefined) return known(bit, machine.types.int);
  if (machine.functionFacts.has(name)) {
    return { kind: 'function', options: [{ item: libraryItem(name), site: machine.site, library: name }] };
  }
  const board = boardName(machine, name.startsWith('::') ? name.slice(2) : name);
  if (board !== undefined) return board;
  const bits = readBinaryName(name);
  if (bits !== undefined) return known(bits, machine.types.int);
  return unknown(`\`${name}\` is not defined in the sketch`, spanAt(machine.site, expression));
}

const libraryItems = new Map<string, FunctionItem>();

/** A function of a library as a value: it has no body here. */
function libraryItem(name: string): FunctionItem {
  let item = libraryItems.get(name);
  if (item === undefined) {
    const place = { start: 0, end: 0 };
    const type = { name: 'void', constant: false, pointers: 0, reference: false, sizes: [] };
    const none = { parameters: [], members: [], templateNames: [], directives: [], locals: [] };
    item = { kind: 'function', name, namePlace: place, owner: '', type, isStatic: false, ...none, ...place };
    libraryItems.set(name, item);
  }
  return item;
}

function boardName(machine: Machine, name: string): Value | undefined {
  const ready = machine.boardNames.get(name);
  if (ready !== undefined) return ready;
  const { names } = machine.platform;
  const number = Object.hasOwn(names, name) ? names[name] : machine.tables.names.get(name);
  if (number === undefined) return undefined;
  const value = readThrough(known(number, machine.types.int), { name, kind: 'board' });
  machine.boardNames.set(name, value);
  return value;
}
