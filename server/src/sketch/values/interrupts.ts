/** What interrupt handlers may change at any moment: the cells of the globals that they, or what they call, assign. */
import type { Expression, FunctionItem, Item } from '../form/ast';
import { cellsOf } from './arrays';
import type { Machine } from './machine';
import type { Callable, Cell, Value } from './value';

interface Effects {
  readonly assigned: ReadonlySet<string>;
  readonly called: ReadonlySet<string>;
}

const known = new WeakMap<FunctionItem, Effects>();

/** Marks what a handler changes: it is not known between two statements any more. */
export function forgetChanged(machine: Machine, handler: Callable): void {
  const seen = new Set<FunctionItem>();
  const waiting: FunctionItem[] = [handler.item];
  for (let item = waiting.pop(); item !== undefined && seen.size < 200; item = waiting.pop()) {
    if (seen.has(item)) continue;
    seen.add(item);
    const { assigned, called } = effectsOf(item);
    for (const name of assigned) {
      if (item.locals.includes(name)) continue;
      const cells = machine.globals.get(name) ?? handler.self?.fields.get(name);
      if (cells !== undefined) for (const cell of 'value' in cells ? [cells] : cells) share(cell, 0);
    }
    for (const name of called)
      for (const one of machine.program.functions.get(name) ?? []) waiting.push(one.item);
  }
}

/** Makes a cell, and all inside it, one that is not known. */
export function share(cell: Cell, depth: number, by: 'handler' | 'union' = 'handler'): void {
  const { value } = cell;
  if (isContainer(value)) {
    if (depth > 3) return;
    const inner = value.kind === 'array' ? cellsOf(value) : [...value.fields.values()];
    for (const one of inner) share(one, depth + 1, by);
  } else if (!cell.shared) cell.shared = by;
}

function isContainer(value: Value): value is Extract<Value, { kind: 'array' | 'object' }> {
  return value.kind === 'array' || value.kind === 'object';
}

function effectsOf(item: FunctionItem): Effects {
  const ready = known.get(item);
  if (ready !== undefined) return ready;
  const assigned = new Set<string>();
  const called = new Set<string>();
  const look = (node: Expression | Item) => {
    if (node.kind === 'assign') addRoot(node.target, assigned);
    else if (node.kind === 'step') addRoot(node.operand, assigned);
    else if (node.kind === 'call') {
      if (node.callee.kind === 'name') called.add(node.callee.name);
      else if (node.callee.kind === 'member') addRoot(node.callee.base, assigned);
    }
  };
  everyNode(item.body ?? [], look);
  const effects = { assigned, called };
  known.set(item, effects);
  return effects;
}

function addRoot(expression: Expression, names: Set<string>): void {
  let at = expression;
  for (;;) {
    if (at.kind === 'name') names.add(at.name);
    if (at.kind === 'index' || at.kind === 'member') at = at.base;
    else if (at.kind === 'unary') at = at.operand;
    else return;
  }
}

/** Visits every piece of syntax below a value: the form is plain data, so its keys are enough. */
function everyNode(root: unknown, look: (node: Expression | Item) => void): void {
  const waiting: unknown[] = [root];
  while (waiting.length > 0) {
    const at = waiting.pop();
    if (typeof at !== 'object' || at === null) continue;
    if ('kind' in at && typeof at.kind === 'string') look(at as Expression | Item);
    for (const inner of Object.values(at)) if (typeof inner === 'object') waiting.push(inner);
  }
}
