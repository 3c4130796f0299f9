/** Arguments in angle brackets as expressions: a bare name there reads as a type, and may be a constant. */
import type { Expression, TypeName } from '../form/ast';

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
