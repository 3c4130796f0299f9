/** Arguments in angle brackets as expressions: a bare name there reads as a type, and may be a constant. */
import type { Expression, TypeName } from '../form/ast';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { definePack } from './packs';
import { type Cell, newCell } from './value';

const built = new WeakMap<TypeName, Expression>();

/** The argument as an expression; undefined for what can only be a type. */
export function templateExpression(argument: Expression | TypeName | undefined): Expression | undefined {
  if (argument === undefined || 'kind' in argument) return argument;
  const { name, place, pointers, sizes, reference } = argument;
  if (place === undefined || pointers > 0 || reference || sizes.length > 0 || name === '') return undefined;
  if (name.includes(' ')) return undefined;
  let expression = built.get(argument);
  if (expression === undefined) {
    expression = { kind: 'name', name, ...place };
    built.set(argument, expression);
  }
  return expression;
}

/** `template <uint8_t... Pins>`: numbers in angle brackets, any number of them. */
export function bindTemplatePack(
  machine: Machine,
  template: string,
  given: readonly (Expression | TypeName)[],
  define: (name: string, cells: readonly Cell[]) => void,
): void {
  const members: Cell[][] = [];
  for (const argument of given) {
    const expression = templateExpression(argument);
    if (expression !== undefined) members.push([newCell(evaluate(machine, expression))]);
  }
  definePack(define, template.replace(/^[.\s]+/, ''), members);
}
