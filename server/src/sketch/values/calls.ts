import type { Expression } from '../form/ast';
import { bitCall } from './bit-calls';
import { meetFacts } from './board-calls';
import type { FactCall } from './board-pins';
import { builtinValue } from './builtins';
import { makeInstance } from './construct';
import { libraryBases, libraryOf } from './construct-library';
import { escape_ } from './escape';
import { evaluate } from './expressions';
import { type CallExpression, callFunction, fitting } from './functions';
import type { LibraryClass } from './library-tables';
import type { Machine } from './machine';
import { bodyOf } from './macros';
import { spanAt } from './model';
import { argumentAt, expand, functionsNamed, macrosAt, variableCells } from './names';
import { methodOf } from './objects';
import { objectsOf } from './places';
import { meetStrangeFunction, meetStrangeMethod } from './strangers';
import { isTypeName, resolveType } from './types';
import { type Callable, convert, join, known, type ObjectValue, unknown, type Value } from './value';

export function callValue(machine: Machine, call: CallExpression): Value {
  const { callee } = call;
  if (callee.kind === 'member') return methodCall(machine, call, callee);
  if (callee.kind !== 'name') {
    const value = evaluate(machine, callee);
    return value.kind === 'function'
      ? callOptions(machine, value.options, call)
      : otherCall(machine, call, 'it');
  }
  return namedCall(machine, call, callee.name, 0);
}

function namedCall(machine: Machine, call: CallExpression, name: string, renamed: number): Value {
  const argument = argumentAt(machine, name);
  if (argument?.expression.kind === 'name' && renamed < 8) {
    return namedCall(machine, call, argument.expression.name, renamed + 1);
  }
  const macro = macrosAt(machine, name, call.start)[0];
  if (macro !== undefined) {
    if (macro.parameters !== undefined) return macroCall(machine, call, name);
    const { expression } = bodyOf(macro);
    if (expression?.kind === 'name' && renamed < 8)
      return namedCall(machine, call, expression.name, renamed + 1);
  }
  const cells = variableCells(machine, name);
  if (cells !== undefined) {
    const [value] = cells.map((cell) => cell.value);
    if (value?.kind === 'function') return callOptions(machine, value.options, call);
    return otherCall(machine, call, name);
  }
  const method = ownMethod(machine, name);
  if (method !== undefined) return method(call);
  const functions = functionsNamed(machine, name);
  if (functions !== undefined) {
    const count = call.arguments.length;
    const chosen = fitting(functions, count, machine.program.prototypes.get(name)) ?? functions[0];
    if (chosen !== undefined) return callOptions(machine, [chosen], call);
  }
  const inherited = inheritedMethod(machine, name);
  if (inherited !== undefined) return inherited(call);
  const changed = bitCall(name, call);
  if (changed !== undefined) return evaluate(machine, changed);
  const facts = machine.functionFacts.get(name);
  if (facts !== undefined) {
    const values = meetFacts(machine, facts, factCall(call, name));
    return builtinValue(machine, name, call, values) ?? unknown(`\`${name}\` gives no value`);
  }
  const builtin = builtinValue(machine, name, call, undefined);
  if (builtin !== undefined) return builtin;
  if (isTypeName(machine, name, machine.site)) return typeCall(machine, call, name);
  return otherCall(machine, call, name);
}

/** `byte(x)` and `Lamp(3)` */
function typeCall(machine: Machine, call: CallExpression, name: string): Value {
  const { callee } = call;
  const list =
    callee.kind === 'name' && callee.arguments !== undefined ? { arguments: callee.arguments } : {};
  const type = { name, constant: false, pointers: 0, reference: false, sizes: [], ...list };
  const resolved = resolveType(machine, type, machine.site);
  const [first] = call.arguments;
  if (resolved.number !== undefined) {
    return first === undefined
      ? known(0, resolved.number)
      : convert(evaluate(machine, first), resolved.number);
  }
  const { arguments: given, start, end } = call;
  return makeInstance(machine, resolved, { arguments: given, node: call, start, end }, undefined);
}

function macroCall(machine: Machine, call: CallExpression, name: string): Value {
  const { site } = machine;
  let value: Value | undefined;
  for (const macro of macrosAt(machine, name, call.start)) {
    if (macro?.parameters === undefined) continue;
    const list = new Map(
      macro.parameters.flatMap((parameter, index) => {
        const expression = call.arguments[index];
        return expression === undefined ? [] : [[parameter, { expression, site }] as const];
      }),
    );
    const one = expand(machine, macro, call, list);
    value = value === undefined ? one : join(value, one);
  }
  return value ?? unknown(`the macro \`${name}\` is not known`, spanAt(site, call));
}

/** A method of the object whose method runs, called by its bare name. */
function ownMethod(machine: Machine, name: string): ((call: CallExpression) => Value) | undefined {
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

function callMethod(
  machine: Machine,
  self: ObjectValue | undefined,
  found: NonNullable<ReturnType<typeof methodOf>>,
  call: CallExpression,
): Value {
  const name = found.options[0]?.item.name ?? '';
  const prototype = found.owner.prototypes.get(name);
  const chosen = fitting(found.options, call.arguments.length, prototype) ?? found.options[0];
  if (chosen === undefined) return otherCall(machine, call, name);
  const bound = { ...chosen, owner: found.owner, ...(self === undefined ? {} : { self }) };
  return callFunction(machine, bound, call, prototype);
}

function methodCall(
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

function factCall(call: CallExpression, name: string): FactCall {
  const { callee } = call;
  const isNamed = callee.kind === 'name' || callee.kind === 'member';
  return {
    call: name,
    list: call.arguments,
    place: call,
    name: callee.kind === 'member' ? callee.namePlace : callee,
    node: call,
    ...(isNamed && callee.arguments !== undefined ? { templates: callee.arguments } : {}),
  };
}

/** A method of a library's class, called by its bare name in a class that comes from it. */
function inheritedMethod(machine: Machine, name: string): ((call: CallExpression) => Value) | undefined {
  const self = machine.frame?.self;
  if (self?.model === undefined) return undefined;
  const cut = name.lastIndexOf('::');
  const bare = cut === -1 ? name : name.slice(cut + 2);
  const library = libraryBases(machine, self.model).find(({ methods }) => methods.has(bare));
  return library === undefined ? undefined : (call) => libraryCall(machine, self, library, call, bare);
}

function callOptions(machine: Machine, options: readonly Callable[], call: CallExpression): Value {
  const [only] = options;
  if (only === undefined) return otherCall(machine, call, 'it');
  const prototype = machine.program.prototypes.get(only.site.prefix + only.item.name);
  if (options.length === 1) return callFunction(machine, only, call, prototype);
  let value: Value | undefined;
  const saved = machine.certain;
  machine.certain = false;
  const { mark } = machine.state;
  const deltas = options.map((option) => {
    const one = callFunction(machine, option, call, prototype);
    value = value === undefined ? one : join(value, one);
    const delta = machine.state.since(mark);
    machine.state.undo(mark);
    return delta;
  });
  machine.state.merge(mark, deltas, false);
  machine.certain = saved;
  return value ?? unknown('the function is not known');
}

/** A call of something that nobody declares: what it may change is forgotten, what it gives is unknown. */
function otherCall(
  machine: Machine,
  call: CallExpression,
  name: string,
  base?: Expression,
  object?: ObjectValue,
): Value {
  if (base !== undefined && base.kind !== 'name') evaluate(machine, base);
  const values = call.arguments.map((argument, index) => {
    const value = evaluate(machine, argument);
    escape_(machine, name, index, value, argument);
    return value;
  });
  const isMethod = call.callee.kind === 'member';
  if (!isMethod) meetStrangeFunction(machine, name, factCall(call, name), values);
  else if (object?.model === undefined && (object !== undefined || base !== undefined)) {
    const owner = object?.label ?? object?.className ?? (base?.kind === 'name' ? base.name : '');
    const isKnown = object !== undefined && machine.tables.classNamed(object.className) !== undefined;
    const named = owner === '' ? name : `${owner}.${name}`;
    if (!isKnown) meetStrangeMethod(machine, name, owner, factCall(call, named), values);
  }
  return otherResult(machine, call, name, base);
}

function otherResult(
  machine: Machine,
  call: CallExpression,
  name: string,
  base: Expression | undefined,
): Value {
  const span = spanAt(machine.site, call);
  if (base?.kind === 'name') {
    if (/^Serial\d?$/.test(base.name)) return unknown('it is read from the serial port', span);
    if (base.name === 'EEPROM') return unknown('it is read from the EEPROM', span);
    return unknown(`\`${base.name}.${name}\` is not defined in the sketch`, span);
  }
  return unknown(`\`${name}\` is not defined in the sketch`, span);
}
