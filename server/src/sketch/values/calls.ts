/** Calls by name: of macros, variables, functions of the sketch and of libraries. */
import { bitCall } from './bit-calls';
import { meetFacts } from './board-calls';
import { builtinValue } from './builtins';
import { makeInstance } from './construct';
import { evaluate } from './expressions';
import { type CallExpression, callFunction } from './functions';
import type { Machine } from './machine';
import { argumentAt, argumentsOf, expand, macrosAt } from './macro-uses';
import { bodyOf } from './macros';
import { inheritedMethod, methodCall, ownMethod, staticMethod } from './method-calls';
import { spanAt } from './model';
import { functionsNamed, variableCells } from './names';
import { operatorCall } from './operator-calls';
import { factCall, otherCall } from './other-calls';
import { fitting } from './overloads';
import { spread } from './packs';
import { isTypeName, resolveType } from './types';
import { type Callable, convert, join, known, unknown, type Value } from './value';

const spreadCalls = new WeakMap<CallExpression, Map<number, CallExpression>>();

/** The call with every member of its packs as an argument; the same object each time, for uses are known by it. */
function spreadCall(machine: Machine, call: CallExpression): CallExpression {
  const list = spread(machine, call.arguments);
  if (list === call.arguments) return call;
  const made = spreadCalls.get(call) ?? new Map<number, CallExpression>();
  spreadCalls.set(call, made);
  const one = made.get(list.length) ?? { ...call, arguments: list };
  made.set(list.length, one);
  return one;
}

export function callValue(machine: Machine, given: CallExpression): Value {
  const call = spreadCall(machine, given);
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
    const value = cells[0]?.value;
    if (value?.kind === 'function') return callOptions(machine, value.options, call);
    const own = operatorCall(machine, value, '()', call.arguments, call);
    return own ?? otherCall(machine, call, name);
  }
  const method = ownMethod(machine, name);
  if (method !== undefined) return method(call);
  const functions = functionsNamed(machine, name);
  if (functions !== undefined) {
    const chosen =
      fitting(machine, functions, call.arguments, machine.program.prototypes.get(name)) ?? functions[0];
    if (chosen !== undefined) return callOptions(machine, [chosen], call);
  }
  const inherited = inheritedMethod(machine, name);
  if (inherited !== undefined) return inherited(call);
  const fixed = staticMethod(machine, name, call);
  if (fixed !== undefined) return fixed;
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
    const one = expand(machine, macro, call, argumentsOf(macro, call, site));
    value = value === undefined ? one : join(value, one);
  }
  return value ?? unknown(`the macro \`${name}\` is not known`, spanAt(site, call));
}

export function callOptions(machine: Machine, options: readonly Callable[], call: CallExpression): Value {
  const [only] = options;
  if (only === undefined) return otherCall(machine, call, 'it');
  const prototype = machine.program.prototypes.get(only.site.prefix + only.item.name);
  if (options.length === 1) return callOption(machine, only, call, prototype);
  let value: Value | undefined;
  const saved = machine.certain;
  machine.certain = false;
  const { mark } = machine.state;
  const deltas = options.map((option) => {
    const one = callOption(machine, option, call, prototype);
    value = value === undefined ? one : join(value, one);
    const delta = machine.state.since(mark);
    machine.state.undo(mark);
    return delta;
  });
  machine.state.merge(mark, deltas, false);
  machine.certain = saved;
  return value ?? unknown('the function is not known');
}

function callOption(
  machine: Machine,
  option: Callable,
  call: CallExpression,
  prototype: Parameters<typeof callFunction>[3],
): Value {
  if (option.library === undefined) return callFunction(machine, option, call, prototype);
  const facts = machine.functionFacts.get(option.library) ?? [];
  const values = meetFacts(machine, facts, factCall(call, option.library));
  return builtinValue(machine, option.library, call, values) ?? unknown('it gives no value');
}
