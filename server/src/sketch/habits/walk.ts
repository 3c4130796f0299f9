/**
 * One way through the syntax of a body, in the order of the text. Bodies of lambdas are left out: they run at another
 * time. Written out by kind, for it is walked at every keystroke.
 */
import type { Expression, Item, Variable } from '../form/ast';

export interface Visitor {
  /** @returns true where what lies below is not wanted. */
  item?(item: Item, above: readonly Item[]): boolean | undefined;
  expression?(expression: Expression, above: readonly Item[]): boolean | undefined;
  variable?(variable: Variable, above: readonly Item[]): void;
}

/** Visits items and all below them. `above` are the statements around, outermost first; valid during the visit. */
export function walkItems(items: readonly Item[], visitor: Visitor, above: Item[] = []): void {
  for (const item of items) walkItem(item, visitor, above);
}

function walkItem(item: Item, visitor: Visitor, above: Item[]): void {
  if (visitor.item?.(item, above) === true) return;
  above.push(item);
  switch (item.kind) {
    case 'conditional':
      for (const branch of item.branches) walkItems(branch.items, visitor, above);
      break;
    case 'variables':
      walkVariables(item.variables, visitor, above);
      break;
    case 'expression':
      walkExpression(item.expression, visitor, above);
      break;
    case 'block':
      walkItems(item.items, visitor, above);
      break;
    case 'if':
      walkExpression(item.test, visitor, above);
      walkItem(item.yes, visitor, above);
      if (item.no !== undefined) walkItem(item.no, visitor, above);
      break;
    case 'while':
    case 'do':
      walkExpression(item.test, visitor, above);
      walkItem(item.body, visitor, above);
      break;
    case 'for':
      if (item.first !== undefined) walkItem(item.first, visitor, above);
      if (item.test !== undefined) walkExpression(item.test, visitor, above);
      if (item.step !== undefined) walkExpression(item.step, visitor, above);
      walkItem(item.body, visitor, above);
      break;
    case 'each':
      walkExpression(item.range, visitor, above);
      walkItem(item.body, visitor, above);
      break;
    case 'switch':
      walkExpression(item.test, visitor, above);
      for (const one of item.cases) walkItems(one.items, visitor, above);
      break;
    case 'return':
      if (item.value !== undefined) walkExpression(item.value, visitor, above);
      break;
    default:
      break;
  }
  above.pop();
}

function walkVariables(variables: readonly Variable[], visitor: Visitor, above: Item[]): void {
  for (const variable of variables) {
    visitor.variable?.(variable, above);
    if (variable.value !== undefined) walkExpression(variable.value, visitor, above);
    if (variable.arguments !== undefined) walkAll(variable.arguments, visitor, above);
  }
}

function walkAll(list: readonly Expression[], visitor: Visitor, above: Item[]): void {
  for (const one of list) walkExpression(one, visitor, above);
}

export function walkExpression(expression: Expression, visitor: Visitor, above: Item[] = []): void {
  if (visitor.expression?.(expression, above) === true) return;
  switch (expression.kind) {
    case 'unary':
    case 'step':
    case 'cast':
      walkExpression(expression.operand, visitor, above);
      break;
    case 'binary':
    case 'comma':
      walkExpression(expression.left, visitor, above);
      walkExpression(expression.right, visitor, above);
      break;
    case 'assign':
      walkExpression(expression.target, visitor, above);
      walkExpression(expression.value, visitor, above);
      break;
    case 'choice':
      walkExpression(expression.test, visitor, above);
      walkExpression(expression.yes, visitor, above);
      walkExpression(expression.no, visitor, above);
      break;
    case 'call':
      walkExpression(expression.callee, visitor, above);
      walkAll(expression.arguments, visitor, above);
      break;
    case 'index':
      walkExpression(expression.base, visitor, above);
      walkExpression(expression.index, visitor, above);
      break;
    case 'member':
      walkExpression(expression.base, visitor, above);
      break;
    case 'new':
      walkAll(expression.arguments, visitor, above);
      break;
    case 'let':
      walkVariables(expression.variables, visitor, above);
      break;
    case 'opaque':
      walkAll(expression.parts, visitor, above);
      break;
    case 'list':
      if (expression.numbers === undefined)
        for (const { value } of expression.items) walkExpression(value, visitor, above);
      break;
    default:
      break;
  }
}
