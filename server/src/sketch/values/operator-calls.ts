/** Operators that a class of the sketch defines: `lamp = HIGH`, `if (key)`, `row[2]`. Each is a call of a method. */
import type { Expression } from '../form/ast';
import type { CallExpression } from './functions';
import type { Machine } from './machine';
import { callMethod } from './method-calls';
import type { ClassModel } from './model';
import { lineOf, methodOf } from './objects';
import { truth, type Value } from './value';

const tables = new WeakMap<ClassModel, ReadonlyMap<string, string>>();

/** The operators of a class and its bases: names of methods by sign; under `value`, what turns it into a number. */
function operatorsOf(machine: Machine, model: ClassModel): ReadonlyMap<string, string> {
  let table = tables.get(model);
  if (table === undefined) {
    const found = new Map<string, string>();
    for (const { methods } of lineOf(machine, model)) {
      for (const name of methods.keys()) {
        if (!name.startsWith('operator')) continue;
        const sign = name.slice('operator'.length).trim();
        const key = /^[A-Za-z_]/.test(sign) ? 'value' : sign.replace(/\s/g, '');
        if (!found.has(key)) found.set(key, name);
      }
    }
    table = found;
    tables.set(model, table);
  }
  return table;
}

export function hasOperator(machine: Machine, value: Value | undefined, sign: string): boolean {
  return value?.kind === 'object' && value.model !== undefined && operatorsOf(machine, value.model).has(sign);
}

const calls = new WeakMap<Expression, Map<string, CallExpression>>();

/** Calls the operator of an object; undefined where its class has none. `at` is the expression it stands in. */
export function operatorCall(
  machine: Machine,
  value: Value | undefined,
  sign: string,
  list: readonly Expression[],
  at: Expression,
): Value | undefined {
  if (value?.kind !== 'object' || value.model === undefined) return undefined;
  const name = operatorsOf(machine, value.model).get(sign);
  const found = name === undefined ? undefined : methodOf(machine, value.model, name);
  if (name === undefined || found === undefined) return undefined;
  const { start, end } = at;
  // One call for each place and sign: the way to a use is known by it.
  const made = calls.get(at) ?? new Map<string, CallExpression>();
  calls.set(at, made);
  const call = made.get(sign) ?? {
    kind: 'call',
    callee: { kind: 'name', name, start, end },
    arguments: list,
    start,
    end,
  };
  made.set(sign, call);
  return callMethod(machine, value, found, call);
}

/** What stands for an object where a number is wanted; any other value as it is. */
export function asNumber(machine: Machine, value: Value, at: Expression): Value {
  return value.kind === 'object' ? (operatorCall(machine, value, 'value', [], at) ?? value) : value;
}

/** Whether a condition holds; undefined where it may or may not. */
export function holds(machine: Machine, value: Value, at: Expression): boolean | undefined {
  return truth(asNumber(machine, value, at));
}
