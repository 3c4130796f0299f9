/** Objects of the sketch's own classes: fields, bases, constructors, and the methods they find. */
import type { Expression, ListExpression, MemberStart, Place, TypeName, Variable } from '../form/ast';
import { makeVariable } from './construct';
import { buildLibraryBase } from './construct-library';
import { evaluate } from './expressions';
import { type Argument, argumentsFor, enterFunction } from './functions';
import { share } from './interrupts';
import type { Machine } from './machine';
import { type ClassModel, type Site, spanAt } from './model';
import { fitting } from './overloads';
import { bindTemplatePack, templateExpression } from './templates';
import { findClass, isTypeName } from './types';
import { type Callable, type Cell, type Definition, newCell, type ObjectValue, unknown } from './value';

const deepestBase = 8;
const deepestObject = 8;

/** The cell of a field. A reference field takes the one cell that it refers to. */
function declaredField(machine: Machine, field: Variable, site: Site, zeroed = false): Cell {
  const cells = makeVariable(machine, field, site, 'field', zeroed || !machine.begun);
  const [only] = cells;
  return only !== undefined && cells.length === 1
    ? only
    : newCell(unknown('it refers to one of several things'));
}

const insides = new WeakMap<ClassModel, Site>();

/** The site of a class's members: a type that is declared in the class is found there. */
function insideOf(model: ClassModel): Site {
  let site = insides.get(model);
  if (site === undefined) {
    site = { ...model.site, prefix: `${model.name}::` };
    insides.set(model, site);
  }
  return site;
}

/** A class with its bases, the class itself first. */
export function lineOf(machine: Machine, model: ClassModel): readonly ClassModel[] {
  const line = [model];
  for (let at = 0; at < line.length && line.length < deepestBase; at += 1) {
    const here = line[at];
    for (const base of here?.bases ?? []) {
      const found = here === undefined ? undefined : findClass(machine, base.name, here.site);
      if (found !== undefined && !line.includes(found)) line.push(found);
    }
  }
  return line;
}

export interface FoundMethod {
  readonly options: readonly Callable[];
  readonly owner: ClassModel;
}

/** A method by name, of the class itself or the nearest base that has it. */
export function methodOf(machine: Machine, model: ClassModel, name: string): FoundMethod | undefined {
  for (const owner of lineOf(machine, model)) {
    const options = owner.methods.get(name);
    if (options !== undefined) return { options, owner };
  }
  return undefined;
}

/** Makes an object and runs its constructor. */
export function makeObject(
  machine: Machine,
  model: ClassModel,
  typeArguments: TypeName['arguments'],
  given: readonly Expression[] | undefined,
  list: ListExpression | undefined,
  definition: Definition | undefined,
): ObjectValue {
  const object: ObjectValue = { kind: 'object', className: model.name, model, fields: new Map() };
  if (machine.objects >= deepestObject || !machine.enter()) return object;
  machine.objects += 1;
  bindTemplate(machine, object, model, typeArguments);
  const arguments_ = given ?? list?.items.map(({ value }) => value) ?? [];
  build(machine, object, model, arguments_, list, definition, 0);
  if (isUnion(machine, model)) for (const cell of object.fields.values()) share(cell, 0, 'union');
  machine.objects -= 1;
  machine.leave();
  return object;
}

const unions = new WeakMap<ClassModel, boolean>();

function isUnion(machine: Machine, model: ClassModel): boolean {
  let is = unions.get(model);
  if (is === undefined) {
    const { start } = model.item;
    is = machine.program.textAt(model.site, { start, end: start + 5 }) === 'union';
    unions.set(model, is);
  }
  return is;
}

/** Values in angle brackets are read like fields. */
export function bindTemplate(
  machine: Machine,
  object: ObjectValue,
  model: ClassModel,
  typeArguments: TypeName['arguments'],
): void {
  model.item.templateNames.forEach((name, index) => {
    if (name.startsWith('...')) {
      bindTemplatePack(machine, name, typeArguments?.slice(index) ?? [], (one, [cell]) => {
        if (cell !== undefined) object.fields.set(one, cell);
      });
      return;
    }
    const argument = typeArguments?.[index];
    const given = templateExpression(argument);
    if (argument !== undefined && !('kind' in argument)) {
      object.types ??= new Map();
      object.types.set(name, { type: argument, site: machine.site });
    }
    const isType = given?.kind === 'name' && isTypeName(machine, given.name, machine.site);
    if (given !== undefined && !isType) object.fields.set(name, newCell(evaluate(machine, given)));
  });
}

function build(
  machine: Machine,
  object: ObjectValue,
  model: ClassModel,
  given: readonly Expression[],
  list: ListExpression | undefined,
  definition: Definition | undefined,
  depth: number,
): void {
  if (depth >= deepestBase) return;
  const constructors = model.methods.get(model.item.name) ?? [];
  const constructor_ = fitting(machine, constructors, given, model.prototypes.get(model.item.name));
  if (constructor_ === undefined) {
    // `using Base::Base;`: arguments that no constructor here takes are for the base's.
    const inherits = list === undefined && given.length > 0 && model.bases.length > 0;
    buildBases(machine, object, model, depth, inherits ? inheritedStart(model, given) : []);
    buildFields(machine, object, model, new Set(), list !== undefined);
    // Types and numbers in angle brackets are known inside the object.
    if (list !== undefined && model.item.templateNames.length > 0)
      asSelf(machine, object, model, () => fill(machine, object, model, list));
    else if (list !== undefined) fill(machine, object, model, list);
    else if (!inherits) for (const one of given) evaluate(machine, one);
    return;
  }
  const arguments_ = argumentsFor(machine, constructor_, given, model.prototypes.get(model.item.name));
  const first = given[0];
  const last = given[given.length - 1];
  const place =
    first === undefined || last === undefined
      ? (definition?.span ?? spanAt(machine.site, model.item))
      : spanAt(machine.site, { start: first.start, end: last.end });
  // The way to a use in a constructor starts where the object is declared.
  const span = definition?.span ?? place;
  runConstructor(machine, object, model, constructor_, arguments_, span, depth);
}

function inheritedStart(model: ClassModel, given: readonly Expression[]): readonly MemberStart[] {
  const [base] = model.bases;
  return base === undefined ? [] : [{ name: base.name, arguments: given }];
}

function runConstructor(
  machine: Machine,
  object: ObjectValue,
  model: ClassModel,
  callable: Callable,
  arguments_: readonly Argument[],
  span: NonNullable<Definition['span']>,
  depth: number,
): void {
  const { item } = callable;
  const name = `${model.name}::${item.name}`;
  enterFunction(machine, { ...callable, self: object, owner: model }, name, arguments_, span, () => {
    const delegate = item.members.find((member) => member.name === model.item.name);
    if (delegate !== undefined) {
      build(machine, object, model, delegate.arguments, undefined, undefined, depth + 1);
      return;
    }
    const started = new Set(item.members.map((member) => member.name));
    buildBases(machine, object, model, depth, item.members);
    buildFields(machine, object, model, started);
    for (const member of item.members) {
      const field = model.fields.find((one) => one.name === member.name);
      if (field === undefined) continue;
      const { value: _, ...bare } = field;
      const { scope, site } = machine;
      const { arguments: list } = member;
      // What it starts from stands in the constructor, not where the field is declared.
      const place = { start: list[0]?.start ?? item.start, end: list[list.length - 1]?.end ?? item.end };
      const cell = machine.at(site, scope, () =>
        declaredField(machine, { ...bare, ...place, ...startOf(field, list, place) }, insideOf(model)),
      );
      object.fields.set(member.name, cell);
    }
  });
}

/** An array starts from a list: `pins{a, b}`; anything else from arguments. */
function startOf(field: Variable, list: readonly Expression[], place: Place): Partial<Variable> {
  if (field.type.sizes.length === 0) return { arguments: list };
  const [only] = list;
  if (list.length === 1 && only?.kind === 'list') return { value: only };
  return { value: { kind: 'list', items: list.map((value) => ({ value })), ...place } };
}

function buildBases(
  machine: Machine,
  object: ObjectValue,
  model: ClassModel,
  depth: number,
  members: readonly MemberStart[] = [],
): void {
  for (const base of model.bases) {
    const found = findClass(machine, base.name, model.site);
    if (found === undefined) {
      const start = members.find(({ name }) => name === base.name);
      if (start !== undefined) buildLibraryBase(machine, object, base.name, start.arguments);
      continue;
    }
    bindTemplate(machine, object, found, base.arguments);
    const member = members.find(({ name }) => name === base.name || name === found.item.name);
    build(machine, object, found, member?.arguments ?? [], undefined, undefined, depth + 1);
  }
}

/** Fields without a start of their own in the constructor. */
function buildFields(
  machine: Machine,
  object: ObjectValue,
  model: ClassModel,
  started: ReadonlySet<string>,
  zeroed = false,
): void {
  machine.spend(model.fields.length);
  const make = () => {
    for (const field of model.fields) {
      if (started.has(field.name)) continue;
      object.fields.set(field.name, declaredField(machine, field, insideOf(model), zeroed));
    }
  };
  const named = object.types !== undefined || model.fields.some(({ value, type }) => value ?? type.sizes[0]);
  machine.at(insideOf(model), machine.scope, named ? () => asSelf(machine, object, model, make) : make);
}

/** Runs something that may name the other members of an object. */
function asSelf<T>(machine: Machine, object: ObjectValue, model: ClassModel, run: () => T): T {
  const { frame } = machine;
  if (frame === undefined) return run();
  machine.frame = { ...frame, self: object, callable: { ...frame.callable, owner: model } };
  const result = run();
  machine.frame = frame;
  return result;
}

/** `Lamp lamp = {3, true};` */
function fill(machine: Machine, object: ObjectValue, model: ClassModel, list: ListExpression): void {
  const fields = lineOf(machine, model).flatMap((one) => one.fields);
  let at = 0;
  for (const item of list.items) {
    if (item.field !== undefined) at = fields.findIndex((field) => field.name === item.field);
    const field = fields[at];
    at += 1;
    if (field === undefined) {
      evaluate(machine, item.value);
      continue;
    }
    const { arguments: _, ...bare } = field;
    const { start, end } = item.value;
    const typed = { ...bare, value: item.value, start, end };
    object.fields.set(field.name, declaredField(machine, typed, insideOf(model)));
  }
}
