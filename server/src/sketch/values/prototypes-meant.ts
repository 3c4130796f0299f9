/** `Row row(pins, sizeof(pins));` reads as a prototype. Where its brackets can only hold values it makes an object. */
import type { Expression, Item, Variable } from '../form/ast';
import { parseExpression } from '../form/text-parser';
import type { Machine } from './machine';
import { numberTypes } from './number-types';
import { isTypeName } from './types';

type Prototype = Extract<Item, { kind: 'prototype' }>;

const read = new WeakMap<Prototype, readonly Expression[] | 'none'>();
const numbers = numberTypes(16);

/** The arguments that the brackets hold; undefined where it is a prototype. */
export function argumentsMeant(machine: Machine, item: Prototype): readonly Expression[] | undefined {
  const { arguments: bare } = item.variable;
  const list = bare ?? argumentsInText(machine, item);
  const roots = list?.map(rootName) ?? [];
  if (roots.some((name) => name !== undefined && isTypeName(machine, name, machine.site))) return undefined;
  return list;
}

function argumentsInText(machine: Machine, item: Prototype): readonly Expression[] | undefined {
  const { type, namePlace } = item.variable;
  // What gives a number or nothing is a function.
  if (type.pointers > 0 || type.reference || item.parameters.length === 0) return undefined;
  if (type.name === 'void' || numbers.named(type.name) !== undefined) return undefined;
  let list = read.get(item);
  if (list === undefined) {
    const text = machine.program.textAt(machine.site, { start: namePlace.start, end: item.end });
    if (text === undefined) return undefined;
    // Blanks in front keep the places of what is read.
    const call = parseExpression(' '.repeat(namePlace.start) + text.replace(/;\s*$/, ''));
    list = call?.kind === 'call' && call.arguments.length > 0 ? call.arguments : 'none';
    read.set(item, list);
  }
  return list === 'none' ? undefined : list;
}

/** The name that an argument begins with; undefined where no parameter could begin so. */
function rootName(expression: Expression): string | undefined {
  switch (expression.kind) {
    case 'name':
      return expression.name;
    case 'index':
      return rootName(expression.base);
    case 'call':
      return rootName(expression.callee);
    case 'binary':
      return rootName(expression.left);
    default:
      return undefined;
  }
}

const made = new WeakMap<Variable, Variable>();

/** The object that is made with these arguments: one for each declaration. */
export function withArguments(variable: Variable, list: readonly Expression[]): Variable {
  if (variable.arguments === list) return variable;
  let whole = made.get(variable);
  if (whole === undefined) {
    whole = { ...variable, arguments: list };
    made.set(variable, whole);
  }
  return whole;
}
