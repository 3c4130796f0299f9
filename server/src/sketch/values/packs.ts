/**
 * Any number of arguments: `Rest... rest`. Each member of a pack is a name of its own, `rest#0`, and a pattern with
 * `...` behind it becomes one copy of itself for each.
 */
import type { Expression, ListExpression, Parameter } from '../form/ast';
import type { Machine } from './machine';
import type { Site } from './model';
import { variableCells } from './names';
import type { Scope } from './scope';
import { type Cell, known, newCell, single } from './value';

const mostMembers = 64;

const lengthType = { name: 'size_t', bits: 16, signed: false, float: false };

interface Pack {
  readonly name: string;
  readonly reference: boolean;
}

const packs = new WeakMap<Parameter, Pack>();

/** Name and kind of a parameter that takes any number of arguments; both are read from its text. */
export function packOf(machine: Machine, parameter: Parameter, site: Site): Pack {
  let pack = packs.get(parameter);
  if (pack === undefined) {
    const text = machine.program.textAt(site, parameter.namePlace) ?? '';
    const [, name = parameter.name] = /\.\.\.\s*(\w+)\s*$/.exec(text) ?? [];
    pack = { name, reference: parameter.type.reference || text.includes('&') };
    packs.set(parameter, pack);
  }
  return pack;
}

/** The members of a pack as names, by way of `define`. */
export function definePack(
  define: (name: string, cells: readonly Cell[]) => void,
  name: string,
  members: readonly (readonly Cell[])[],
): void {
  const list = members.slice(0, mostMembers);
  define(countOf(name), [newCell(known(list.length, lengthType))]);
  for (const [index, cells] of list.entries()) define(memberOf(name, index), cells);
}

/** Binds what is left of the arguments. */
export function bindPack(
  machine: Machine,
  scope: Scope,
  parameter: Parameter,
  members: readonly (readonly Cell[])[],
): void {
  const { name } = packOf(machine, parameter, machine.site);
  if (name !== '') definePack((one, cells) => scope.define(one, cells), name, members);
}

const countOf = (name: string) => `${name}#`;
const memberOf = (name: string, index: number) => `${name}#${index}`;

/** How many members the pack of a name has; undefined where it is none. */
export function packLength(machine: Machine, name: string): number | undefined {
  const [cell] = variableCells(machine, countOf(name)) ?? [];
  return cell === undefined ? undefined : single(cell.value);
}

/** Expressions with what stands for several of them put in. */
export function spread(machine: Machine, list: readonly Expression[]): readonly Expression[] {
  if (!list.some(({ kind }) => kind === 'opaque')) return list;
  return list.flatMap((one) => membersOf(machine, one) ?? [one]);
}

/** The same for a list in braces. */
export function spreadList(machine: Machine, list: ListExpression): ListExpression {
  if (list.numbers !== undefined || !list.items.some(({ value }) => value.kind === 'opaque')) return list;
  const items = list.items.flatMap((item) => {
    const members = membersOf(machine, item.value);
    return members === undefined ? [item] : members.map((value) => ({ value }));
  });
  return { ...list, items };
}

/** `pattern...` and `(pattern, ...)`, which the grammar gives as something with the pattern in it. */
export function membersOf(machine: Machine, expression: Expression): readonly Expression[] | undefined {
  if (expression.kind !== 'opaque') return undefined;
  const [pattern, ...others] = expression.parts.filter(
    (one) => one.kind !== 'opaque' || one.parts.length > 0,
  );
  if (pattern === undefined || others.length > 0) return undefined;
  const names = namesIn(pattern).filter((name) => packLength(machine, name) !== undefined);
  const [first] = names;
  if (first === undefined) return undefined;
  const length = packLength(machine, first) ?? 0;
  return Array.from({ length }, (_, index) => copyFor(pattern, names, index));
}

const inside = new WeakMap<Expression, readonly string[]>();

function namesIn(pattern: Expression): readonly string[] {
  let names = inside.get(pattern);
  if (names === undefined) {
    const found = new Set<string>();
    walk(pattern, (name) => found.add(name));
    names = [...found];
    inside.set(pattern, names);
  }
  return names;
}

function walk(part: unknown, each: (name: string) => void): void {
  if (typeof part !== 'object' || part === null) return;
  if ('kind' in part && part.kind === 'name' && 'name' in part) each(String(part.name));
  for (const inner of Object.values(part)) walk(inner, each);
}

const copies = new WeakMap<Expression, Map<number, Expression>>();

/** One copy for each member, made once: uses are known by their syntax. */
function copyFor(pattern: Expression, names: readonly string[], index: number): Expression {
  let list = copies.get(pattern);
  if (list === undefined) {
    list = new Map();
    copies.set(pattern, list);
  }
  let copy = list.get(index);
  if (copy === undefined) {
    copy = renamed(pattern, new Set(names), index);
    list.set(index, copy);
  }
  return copy;
}

function renamed<T>(part: T, names: ReadonlySet<string>, index: number): T {
  if (typeof part !== 'object' || part === null) return part;
  const copy = Array.isArray(part)
    ? part.map((one) => renamed(one, names, index))
    : Object.fromEntries(Object.entries(part).map(([key, one]) => [key, renamed(one, names, index)]));
  if ('kind' in part && part.kind === 'name' && 'name' in part && names.has(String(part.name))) {
    return { ...copy, name: memberOf(String(part.name), index) } as T;
  }
  return copy as T;
}
