/** Which of several functions of one name a call means: by the number of its arguments, then by their types. */
import type { Expression, Parameter } from '../form/ast';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { resolveType } from './types';
import type { Callable, Value } from './value';

/** The function that takes these arguments; undefined where none with a body does. */
export function fitting(
  machine: Machine,
  functions: readonly Callable[],
  list: readonly Expression[],
  prototype: readonly Parameter[] | undefined,
): Callable | undefined {
  const [only] = functions;
  if (only !== undefined && functions.length === 1)
    return only.item.body !== undefined && takes(only, list.length, prototype) ? only : undefined;
  const able = functions.filter((one) => one.item.body !== undefined && takes(one, list.length, prototype));
  // What takes any number of arguments comes last, where several fit equally well.
  if (able.length > 1) able.sort((a, b) => isOpen(a) - isOpen(b));
  return able.length < 2 || list.length === 0 ? able[0] : bestOf(machine, able, list);
}

const isOpen = ({ item }: Callable) => Number(item.parameters.some(({ pack }) => pack));

/** Whether it can be called with so many arguments. */
function takes({ item }: Callable, count: number, prototype: readonly Parameter[] | undefined): boolean {
  let needed = 0;
  let open = false;
  for (let at = 0; at < item.parameters.length; at += 1) {
    const parameter = item.parameters[at];
    if (parameter === undefined) break;
    if (parameter.pack !== undefined) open = true;
    else if (parameter.value === undefined && prototype?.[at]?.value === undefined) needed += 1;
  }
  return count >= needed && (open || count <= item.parameters.length);
}

function bestOf(
  machine: Machine,
  able: readonly Callable[],
  list: readonly Expression[],
): Callable | undefined {
  const values = tried(machine, list);
  let best: Callable | undefined;
  let most = Number.NEGATIVE_INFINITY;
  for (const one of able) {
    let score = 0;
    for (const [index, value] of values.entries()) {
      const parameter = one.item.parameters[index];
      const expression = list[index];
      if (parameter !== undefined && expression !== undefined)
        score += scoreOf(machine, one, parameter, value, expression);
    }
    if (score > most) {
      best = one;
      most = score;
    }
  }
  return best;
}

/** The values of the arguments, for their types: nothing of it has happened yet. */
export function tried(machine: Machine, list: readonly Expression[]): readonly Value[] {
  const { quiet, state } = machine;
  const { mark } = state;
  machine.quiet = true;
  const values = list.map((one) => evaluate(machine, one));
  state.undo(mark);
  machine.quiet = quiet;
  return values;
}

const mismatch = -5;

function scoreOf(
  machine: Machine,
  callable: Callable,
  parameter: Parameter,
  value: Value,
  expression: Expression,
): number {
  const resolved = resolveType(machine, parameter.type, callable.site);
  if (resolved.auto) return 0;
  const isPointer = resolved.pointers > 0 || parameter.type.sizes.length > 0;
  if (expression.kind === 'text') return isPointer || resolved.foreign !== undefined ? 4 : mismatch;
  switch (value.kind) {
    case 'known':
    case 'unknown': {
      const { type } = value;
      if (type === undefined) return 0;
      const { number } = resolved;
      if (isPointer || number === undefined) return mismatch;
      if (number === type) return 4;
      return number.float === type.float && (number.bits === 1) === (type.bits === 1) ? 3 : 1;
    }
    case 'object':
      if (isPointer) return mismatch;
      return resolved.model === value.model &&
        (value.model !== undefined || resolved.foreign === value.className)
        ? 4
        : mismatch;
    case 'array':
    case 'pointer':
      return isPointer ? 3 : mismatch;
    default:
      return isPointer || resolved.number === undefined ? 2 : mismatch;
  }
}
