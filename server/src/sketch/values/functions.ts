/** Following a call into a body: which function it is, what its parameters are bound to, what it gives back. */
import type { Span } from '../../base/span';
import type { Expression, FunctionItem, Item, Parameter } from '../form/ast';
import { makeTyped } from './construct';
import { copyObject } from './copies';
import { evaluate } from './expressions';
import { Flow, type Frame, type Machine } from './machine';
import { spanAt } from './model';
import { asNumber } from './operator-calls';
import { bindPack, packOf } from './packs';
import { placeCells } from './places';
import { Scope } from './scope';
import { runItems } from './statements';
import { bindTemplatePack, templateExpression } from './templates';
import { resolveType } from './types';
import {
  type Callable,
  type Cell,
  convert,
  join,
  known,
  newCell,
  unknown,
  unknownOf,
  type Value,
} from './value';

export type CallExpression = Extract<Expression, { kind: 'call' }>;

/** An argument as handed over: its value, and its cells where a reference can be bound to them. */
export interface Argument {
  readonly value: Value;
  readonly cells: readonly Cell[] | undefined;
}

const deepestCall = 40;
const mostOfOne = 8;

/** Evaluates arguments where the call stands, defaults where the function is. */
export function argumentsFor(
  machine: Machine,
  callable: Callable,
  given: readonly Expression[],
  prototype: readonly Parameter[] | undefined,
): readonly Argument[] {
  const { item, site } = callable;
  const last = item.parameters[item.parameters.length - 1];
  const rest = last?.pack === undefined ? undefined : last;
  const result: Argument[] = given.map((expression, index) => {
    const { type } = item.parameters[index] ?? {};
    const isRest = rest !== undefined && index >= item.parameters.length - 1;
    const reference = isRest ? packOf(machine, rest, site).reference : type?.reference === true;
    const cells = reference ? placeCells(machine, expression) : undefined;
    if (cells !== undefined && cells.length > 0) return { value: cells[0]?.value ?? noArgument, cells };
    if (
      expression.kind === 'list' &&
      expression.type === undefined &&
      type !== undefined &&
      type.pointers === 0
    )
      return { value: makeTyped(machine, type, expression), cells: undefined };
    const value = evaluate(machine, expression);
    const isTurned = value.kind === 'object' && type !== undefined && type.pointers === 0;
    // A class may say what number stands for it, where a number is taken.
    if (isTurned && resolveType(machine, type, site).number !== undefined)
      return { value: asNumber(machine, value, expression), cells: undefined };
    return { value, cells: undefined };
  });
  for (let index = given.length; index < item.parameters.length; index += 1) {
    const value = item.parameters[index]?.value ?? prototype?.[index]?.value;
    if (item.parameters[index]?.pack !== undefined) break;
    if (value === undefined) result.push({ value: noArgument, cells: undefined });
    else
      result.push({
        value: machine.at(site, new Scope(undefined), () => evaluate(machine, value)),
        cells: undefined,
      });
  }
  return result;
}

const noArgument = unknown('the argument is missing');

/** Follows a call expression into a function of the sketch. */
export function callFunction(
  machine: Machine,
  callable: Callable,
  call: CallExpression,
  prototype: readonly Parameter[] | undefined,
): Value {
  const list = argumentsFor(machine, callable, call.arguments, prototype);
  const { item, owner } = callable;
  const named = item.name === '' ? 'lambda' : item.name;
  const name = owner === undefined || item.name === '' ? named : `${owner.name}::${item.name}`;
  const typed = call.callee.kind === 'name' ? call.callee.arguments : undefined;
  return enterFunction(machine, callable, name, list, spanAt(machine.site, call), undefined, typed);
}

/** Follows a call into a body, and gives what it returns. */
export function enterFunction(
  machine: Machine,
  callable: Callable,
  name: string,
  list: readonly Argument[],
  span: Span,
  before?: () => void,
  typeArguments?: Extract<Expression, { kind: 'name' }>['arguments'],
): Value {
  const { item, site, self } = callable;
  const result = resolveType(machine, item.type, site);
  const unknownResult = (reason: string) =>
    result.pointers === 0 ? unknownOf(result.number, reason, span) : unknown(reason, span);
  const outer = machine.frame;
  if (item.body === undefined || outer === undefined) return unknownResult(`\`${name}\` has no body here`);
  if (isTooDeep(machine, callable) || !machine.enter()) {
    // What it does to pins is not seen.
    if (!machine.quiet) machine.pinStates.lost = true;
    return unknownResult(`\`${name}\` is called too deeply`);
  }
  const frame: Frame = {
    callable,
    name,
    self: self ?? undefined,
    mark: machine.state.mark,
    path: machine.pathTo(outer.path, span, name),
    returns: [],
    values: [],
    breakables: [],
  };
  const scope = new Scope(callable.scope);
  item.templateNames.forEach((template, index) => {
    if (template.startsWith('...')) {
      bindTemplatePack(machine, template, typeArguments?.slice(index) ?? [], (name, cells) =>
        scope.define(name, cells),
      );
      return;
    }
    const argument = typeArguments?.[index];
    const given = templateExpression(argument);
    if (given !== undefined) scope.define(template, [newCell(evaluate(machine, given))]);
  });
  const value = runBody(machine, frame, scope, item.body, () => {
    for (const [index, parameter] of item.parameters.entries()) {
      if (parameter.pack === undefined) bind(machine, scope, parameter, list[index]);
      else bindPack(machine, scope, parameter, list.slice(index).map(cellsOfArgument));
    }
    deduceSizes(scope, item, list);
    before?.();
  });
  machine.leave();
  const returned = value ?? unknownResult(`\`${name}\` returns no value`);
  return result.pointers === 0 && !result.auto ? convert(returned, result.number) : returned;
}

/** Runs a body in a new frame; the value is undefined where it returns none. */
export function runBody(
  machine: Machine,
  frame: Frame,
  scope: Scope,
  body: readonly Item[],
  before: () => void,
  after?: (flow: number) => void,
): Value | undefined {
  const outer = machine.frame;
  const { certain } = machine;
  machine.frame = frame;
  const flow = machine.at(frame.callable.site, scope, () => {
    before();
    return runItems(machine, body);
  });
  after?.(flow);
  machine.state.merge(frame.mark, frame.returns, (flow & Flow.next) !== 0);
  machine.frame = outer;
  machine.certain = certain;
  let value: Value | undefined;
  for (const one of frame.values) value = value === undefined ? one : join(value, one);
  return value;
}

/** `template <size_t N> void all(int (&pins)[N])`: N is the length of what is given. */
function deduceSizes(scope: Scope, item: FunctionItem, list: readonly Argument[]): void {
  if (item.templateNames.length === 0) return;
  for (const [index, { type }] of item.parameters.entries()) {
    const [size] = type.sizes;
    const value = list[index]?.value;
    if (size?.kind !== 'name' || value?.kind !== 'array') continue;
    if (item.templateNames.includes(size.name))
      scope.define(size.name, [newCell(known(value.length, lengthType))]);
  }
}

const lengthType = { name: 'size_t', bits: 16, signed: false, float: false };

function bind(machine: Machine, scope: Scope, parameter: Parameter, argument: Argument | undefined): void {
  if (parameter.name === '') return;
  const given = argument ?? { value: noArgument, cells: undefined };
  if (given.cells !== undefined) {
    scope.define(parameter.name, given.cells);
    return;
  }
  const { type } = parameter;
  const resolved = resolveType(machine, type, machine.site);
  const plain = resolved.pointers === 0 && type.sizes.length === 0;
  const number = plain ? resolved.number : undefined;
  const value =
    given.value.kind === 'object' && plain && !type.reference ? copyObject(given.value) : given.value;
  // A parameter has no name of its own among the origins: the number came from where it was called.
  scope.define(parameter.name, [newCell(convert(value, number), number)]);
}

function cellsOfArgument({ value, cells }: Argument): readonly Cell[] {
  if (cells !== undefined) return cells;
  const type = value.kind === 'known' || value.kind === 'unknown' ? value.type : undefined;
  return [newCell(value.kind === 'object' ? copyObject(value) : value, type)];
}

function isTooDeep(machine: Machine, callable: Callable): boolean {
  const { frame } = machine;
  const depth = frame?.path.steps.length ?? 0;
  if (depth < mostOfOne) return false;
  if (depth >= deepestCall) return true;
  // A function that takes any number of arguments ends with the last of them.
  if (callable.item.parameters.some(({ pack }) => pack)) return false;
  const name = callable.item.name;
  const steps = frame?.path.steps ?? [];
  return (
    steps.filter((step) => step.function === name || step.function.endsWith(`::${name}`)).length >= mostOfOne
  );
}
