/**
 * What an undecided condition tells of the variable that it tests: behind `if (pin == 13)` it is 13, and in the other
 * branch anything else. Only names of variables are narrowed; what a pointer or a field leads to may be several things.
 */
import type { Expression } from '../form/ast';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { argumentAt, macrosAt } from './macro-uses';
import { variableCells } from './names';
import { compare } from './number-types';
import { range } from './operations';
import { type Cell, known, maximumValues, single, type Value } from './value';

interface Bound {
  readonly operator: string;
  readonly by: number;
}

type Bounds = Map<Cell, Bound[]>;

const opposite: Readonly<Record<string, string>> = {
  '==': '!=',
  '!=': '==',
  '<': '>=',
  '>=': '<',
  '>': '<=',
  '<=': '>',
};

const mirrored: Readonly<Record<string, string>> = { '<': '>', '>': '<', '<=': '>=', '>=': '<=' };

/** Takes from the variables of a condition what cannot be where it came out so. */
export function narrow(machine: Machine, test: Expression, is: boolean): void {
  const bounds: Bounds = new Map();
  collect(machine, test, is, bounds);
  for (const [cell, list] of bounds) {
    const value = within(cell.value, list);
    if (value !== undefined) machine.state.set(cell, value);
  }
}

function collect(machine: Machine, test: Expression, is: boolean, bounds: Bounds): void {
  if (test.kind === 'unary' && test.operator === '!') collect(machine, test.operand, !is, bounds);
  else if (test.kind === 'name') add(bounds, testedCell(machine, test), is ? '!=' : '==', 0);
  else if (test.kind === 'binary') {
    const { operator, left, right } = test;
    if (operator === (is ? '&&' : '||')) {
      collect(machine, left, is, bounds);
      collect(machine, right, is, bounds);
      return;
    }
    const turned = opposite[operator];
    if (turned === undefined) return;
    const holds = is ? operator : turned;
    const cell = testedCell(machine, left);
    if (cell !== undefined) add(bounds, cell, holds, constantOf(machine, right));
    else add(bounds, testedCell(machine, right), mirrored[holds] ?? holds, constantOf(machine, left));
  }
}

function add(bounds: Bounds, cell: Cell | undefined, operator: string, by: number | undefined): void {
  if (cell === undefined || by === undefined) return;
  const list = bounds.get(cell);
  if (list === undefined) bounds.set(cell, [{ operator, by }]);
  else list.push({ operator, by });
}

/** The one cell of a variable that is tested by its name; undefined for a constant, a field, or one of several. */
function testedCell(machine: Machine, expression: Expression): Cell | undefined {
  if (expression.kind !== 'name') return undefined;
  const { name } = expression;
  if (argumentAt(machine, name) !== undefined || macrosAt(machine, name, expression.start).length > 0)
    return undefined;
  if (machine.scope.find(name) === undefined && machine.frame?.self?.fields.has(name) === true)
    return undefined;
  const cells = variableCells(machine, name) ?? [];
  const [cell] = cells;
  if (cell === undefined || cells.length > 1 || cell.shared || cell.register !== undefined) return undefined;
  if (cell.definition?.kind === 'field' || cell.type?.float === true) return undefined;
  return single(cell.value) === undefined ? cell : undefined;
}

/** The number of an operand that does nothing when it is looked at again. */
function constantOf(machine: Machine, expression: Expression): number | undefined {
  const inner = expression.kind === 'unary' && expression.operator === '-' ? expression.operand : expression;
  if (inner.kind !== 'number' && inner.kind !== 'name') return undefined;
  return single(evaluate(machine, expression));
}

/** The values that meet all bounds; undefined where that tells nothing. */
function within(value: Value, bounds: readonly Bound[]): Value | undefined {
  const meets = (one: number) => bounds.every(({ operator, by }) => compare(operator, one, by) !== false);
  if (value.kind === 'known') {
    const values = value.values.filter(meets);
    return values.length === 0 || values.length === value.values.length ? undefined : { ...value, values };
  }
  if (value.kind !== 'unknown' || value.type === undefined || value.type.float) return undefined;
  let low = value.natural === true ? 0 : Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  for (const { operator, by } of bounds) {
    if (operator === '==' || operator === '>=') low = Math.max(low, by);
    if (operator === '>') low = Math.max(low, by + 1);
    if (operator === '==' || operator === '<=') high = Math.min(high, by);
    if (operator === '<') high = Math.min(high, by - 1);
  }
  if (low > high || high - low >= maximumValues) return undefined;
  const values = range(low, high).filter(meets);
  const { type } = value;
  const first = values[0];
  if (first === undefined) return undefined;
  return values.length === 1 ? known(first, type) : { ...known(first, type), values };
}
