/** `i digitalWrite(lamp, HIGH);` reads as a declaration: with a name of a function it is a call, and `i` is half typed. */
import type { Variable } from '../form/ast';
import type { CallExpression } from './functions';
import type { Machine } from './machine';
import { isTypeName } from './types';

/** One call for each declaration: a use is known by the syntax of its call. */
const calls = new WeakMap<Variable, CallExpression>();

/** The call that a declaration in a function's body is, where it declares nothing. */
export function callMeant(machine: Machine, variable: Variable): CallExpression | undefined {
  const { name, namePlace, arguments: list } = variable;
  const isFunction = machine.functionFacts.has(name) || machine.program.functions.has(name);
  if (list === undefined || !isFunction) return undefined;
  const [first] = list;
  // With types in the brackets it is a prototype.
  if (first?.kind === 'name' && isTypeName(machine, first.name, machine.site)) return undefined;
  let call = calls.get(variable);
  if (call === undefined) {
    const place = { start: namePlace.start, end: variable.end };
    call = { kind: 'call', callee: { kind: 'name', name, ...namePlace }, arguments: list, ...place };
    calls.set(variable, call);
  }
  return call;
}
