/** Calls of methods: of the sketch's own classes, and of those that libraries bring. */
import type { Expression } from '../form/ast';
import { meetFacts } from './board-calls';
import { callOptions } from './calls';
import { libraryBases, libraryOf } from './construct-library';
import { type CallExpression, callFunction } from './functions';
import type { LibraryClass } from './library-tables';
import type { Machine } from './machine';
import { spanAt } from './model';
import { bindTemplate, methodOf } from './objects';
import { factCall, otherCall } from './other-calls';
import { fitting } from './overloads';
import { objectsOf } from './places';
import { resolveType } from './types';
import { join, type ObjectValue, unknown, type Value } from './value';

/** A method of the object whose method runs, called by its bare name. */
export function ownMethod(machine: Machine, name: string): ((call: CallExpression) => Value) | undefined {
  const self = machine.frame?.self;
  if (self?.model === undefined) {
    const owner = machine.frame?.callable.owner;
    const found = owner === undefined ? undefined : methodOf(machine, owner, name);
    return found === undefined ? undefined : (call) => callMethod(machine, undefined, found, call);
  }
  const cut = name.lastIndexOf('::');
  const bare = cut === -1 ? name : name.slice(cut + 2);
  const from = cut === -1 ? self.model : machine.program.classes.get(name.slice(0, cut));
  const found = from === undefined ? undefined : methodOf(machine, from, bare);
  return found === undefined ? undefined : (call) => callMethod(machine, self, found, call);
}

/** `Bus::begin()`, also through another name of the class and with values in angle brackets. */
export function staticMethod(machine: Machine, name: string, call: CallExpression): Value | undefined {
  const cut = name.lastIndexOf('::');
  if (cut <= 0) return undefined;
  const { callee } = call;
  const list =
    callee.kind === 'name' && callee.arguments !== undefined ? { arguments: callee.arguments } : {};
  const type = {
    name: name.slice(0, cut),
    constant: false,
    pointers: 0,
    reference: false,
    sizes: [],
    ...list,
  };
  const { model, arguments: given } = resolveType(machine, type, machine.site);
  const found = model === undefined ? undefined : methodOf(machine, model, name.slice(cut + 2));
  if (model === undefined || found === undefined) return undefined;
  if (model.item.templateNames.length === 0) return callMethod(machine, undefined, found, call);
  const self: ObjectValue = { kind: 'object', className: model.name, model, fields: new Map() };
  bindTemplate(machine, self, model, given);
  return callMethod(machine, self, found, call);
}

export function callMethod(
  machine: Machine,
  self: ObjectValue | undefined,
  found: NonNullable<ReturnType<typeof methodOf>>,
  call: CallExpression,
): Value {
  const name = found.options[0]?.item.name ?? '';
  const prototype = found.owner.prototypes.get(name);
  const chosen = fitting(machine, found.options, call.arguments, prototype) ?? found.options[0];
  if (chosen === undefined) return otherCall(machine, call, name);
  const bound = { ...chosen, owner: found.owner, ...(self === undefined ? {} : { self }) };
  return callFunction(machine, bound, call, prototype);
}

export function methodCall(
  machine: Machine,
  call: CallExpression,
  callee: Extract<Expression, { kind: 'member' }>,
): Value {
  const objects = objectsOf(machine, callee.base);
  if (objects.length === 0) return otherCall(machine, call, callee.name, callee.base);
  if (objects.length === 1) return methodOn(machine, objects[0], call, callee.name);
  // One of several objects: each may be the one.
  let value: Value | undefined;
  const saved = machine.certain;
  machine.certain = false;
  for (const object of objects) {
    const { mark } = machine.state;
    const one = methodOn(machine, object, call, callee.name);
    const delta = machine.state.since(mark);
    machine.state.undo(mark);
    machine.state.merge(mark, [delta, new Map()], false);
    value = value === undefined ? one : join(value, one);
  }
  machine.certain = saved;
  return value ?? unknown('the object is not known');
}

function methodOn(
  machine: Machine,
  object: ObjectValue | undefined,
  call: CallExpression,
  name: string,
): Value {
  if (object === undefined) return otherCall(machine, call, name);
  const { model } = object;
  if (model !== undefined) {
    const cut = name.lastIndexOf('::');
    const found = methodOf(machine, model, cut === -1 ? name : name.slice(cut + 2));
    if (found !== undefined) return callMethod(machine, object, found, call);
    const field = object.fields.get(name)?.value;
    if (field?.kind === 'function') return callOptions(machine, field.options, call);
  }
  const library = libraryOf(machine, object, name);
  if (library !== undefined) return libraryCall(machine, object, library, call, name);
  return otherCall(machine, call, name, undefined, object);
}

/** A method of a library's class, as the data describes it. */
function libraryCall(
  machine: Machine,
  self: ObjectValue,
  library: LibraryClass,
  call: CallExpression,
  name: string,
): Value {
  const named = `${self.label ?? (self.model === undefined ? self.className : library.name)}.${name}`;
  meetFacts(machine, library.methods.get(name) ?? [], { ...factCall(call, named), self });
  const span = spanAt(machine.site, call);
  if (/^Serial/.test(self.label ?? '')) return unknown('it is read from the serial port', span);
  if (self.label === 'EEPROM') return unknown('it is read from the EEPROM', span);
  return unknown(`\`${named}\` gives no value that is known`, span);
}

/** A method of a library's class, called by its bare name in a class that comes from it. */
export function inheritedMethod(
  machine: Machine,
  name: string,
): ((call: CallExpression) => Value) | undefined {
  const self = machine.frame?.self;
  if (self?.model === undefined) return undefined;
  const cut = name.lastIndexOf('::');
  const bare = cut === -1 ? name : name.slice(cut + 2);
  const library = libraryBases(machine, self.model).find(({ methods }) => methods.has(bare));
  return library === undefined ? undefined : (call) => libraryCall(machine, self, library, call, bare);
}
