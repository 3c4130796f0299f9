/** Objects of classes that the sketch does not define: those of libraries, and those that nobody describes. */
import type { Expression } from '../form/ast';
import { meetFacts } from './board-calls';
import type { Start } from './construct';
import { evaluate } from './expressions';
import type { LibraryClass } from './library-tables';
import type { Machine } from './machine';
import type { ClassModel } from './model';
import { lineOf } from './objects';
import { meetStranger } from './strangers';
import { findClass, type ResolvedType } from './types';
import type { Cell, Definition, ObjectValue, Value } from './value';
import { newCell } from './value';

const nowhere = { file: '', start: 0, end: 0 };

/** An object of a class that the sketch does not define. */
export function makeForeign(
  machine: Machine,
  resolved: ResolvedType,
  start: Start,
  definition: Definition | undefined,
): Value {
  const name = resolved.foreign ?? '';
  const { value } = start;
  let list = start.arguments ?? [];
  let values: readonly Value[] | undefined;
  if (value?.kind === 'list' && value.type === undefined) list = value.items.map((item) => item.value);
  else if (value !== undefined) {
    const made = evaluate(machine, value);
    // What starts from a number or a function is a name for that type, from a text that is not there.
    const isPlain = made.kind === 'known' && machine.tables.classNamed(name) === undefined;
    if (isPlain || made.kind === 'object' || made.kind === 'pointer' || made.kind === 'function') return made;
    list = [value];
    values = [made];
  }
  const object: ObjectValue = { kind: 'object', className: name, model: undefined, fields: new Map() };
  const node = start.node ?? value ?? start.arguments ?? definition ?? start;
  const place = placeOf(start, list) ?? definition?.span ?? nowhere;
  const call = {
    call: name,
    list,
    place,
    name: definition?.span ?? place,
    node,
    self: object,
    ...(values === undefined ? {} : { values }),
    ...(resolved.arguments === undefined ? {} : { templates: resolved.arguments }),
  };
  const known = machine.tables.classNamed(name);
  if (known !== undefined) meetFacts(machine, known.constructors, { ...call, keys: known.line });
  else meetStranger(machine, call, `\`${name}\` is a class that is not known here`);
  return object;
}

function placeOf(start: Start, list: readonly Expression[]) {
  if (start.start !== undefined && start.end !== undefined) return { start: start.start, end: start.end };
  const first = list[0];
  return first === undefined
    ? undefined
    : { start: first.start, end: list[list.length - 1]?.end ?? first.end };
}

/** Classes of libraries that a class of the sketch comes from. */
export function libraryBases(machine: Machine, model: ClassModel): readonly LibraryClass[] {
  const found: LibraryClass[] = [];
  for (const one of lineOf(machine, model)) {
    for (const base of one.bases) {
      if (findClass(machine, base.name, one.site) !== undefined) continue;
      const library = machine.tables.classNamed(base.name);
      if (library !== undefined) found.push(library);
    }
  }
  return found;
}

/** What the constructor of a library's class does for an object of a class that comes from it. */
export function buildLibraryBase(
  machine: Machine,
  object: ObjectValue,
  name: string,
  list: readonly Expression[],
): void {
  const library = machine.tables.classNamed(name);
  const place = placeOf({}, list);
  if (library === undefined || place === undefined) {
    for (const one of list) evaluate(machine, one);
    return;
  }
  const call = { call: name, list, place, name: place, node: list, self: object, keys: library.line };
  meetFacts(machine, library.constructors, call);
}

/** The class of an object that has a method by that name, where it is a library's. */
export function libraryOf(machine: Machine, object: ObjectValue, name: string): LibraryClass | undefined {
  const { model, className } = object;
  if (model !== undefined) return libraryBases(machine, model).find(({ methods }) => methods.has(name));
  const library = machine.tables.classNamed(className);
  return library?.methods.has(name) === true ? library : undefined;
}

/** The object that a library makes itself, as `Serial`. */
export function libraryObject(machine: Machine, name: string): readonly Cell[] | undefined {
  const ready = machine.libraryObjects.get(name);
  if (ready !== undefined) return ready;
  const library = machine.tables.objectNamed(name);
  if (library === undefined) return undefined;
  const object: ObjectValue = {
    kind: 'object',
    className: library.name,
    model: undefined,
    fields: new Map(),
    label: name,
  };
  const cell = newCell(object);
  // It was there before everything else.
  cell.serial = 0;
  machine.libraryObjects.set(name, [cell]);
  return [cell];
}
