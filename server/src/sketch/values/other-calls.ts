/** Calls of something that nobody declares: what they may change is forgotten, what they give is unknown. */
import type { Expression } from '../form/ast';
import type { FactCall } from './board-pins';
import { escape_ } from './escape';
import { evaluate } from './expressions';
import type { CallExpression } from './functions';
import type { Machine } from './machine';
import { spanAt } from './model';
import { meetStrangeFunction, meetStrangeMethod } from './strangers';
import { type ObjectValue, unknown, type Value } from './value';

export function factCall(call: CallExpression, name: string): FactCall {
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

/** A call of something that nobody declares: what it may change is forgotten, what it gives is unknown. */
export function otherCall(
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
