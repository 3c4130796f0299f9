/** Statements: how each may end, with both sides of what cannot be decided followed and joined. */
import type { Case, Expression, Item } from '../form/ast';
import { callMeant } from './calls-meant';
import { declareVariable, makeTyped } from './construct';
import { wholeEnum } from './enum-lists';
import { evaluate } from './expressions';
import { runDo, runEach, runFor, runWhile } from './loops';
import { type Breakable, Flow, type Machine } from './machine';
import { narrow } from './narrowing';
import { holds } from './operator-calls';
import { argumentsMeant, withArguments } from './prototypes-meant';
import { Scope } from './scope';
import { convert, single, type Value } from './value';

/** Statements one after the other, in a block of their own. Gives the ways they may end. */
export function runBlock(machine: Machine, items: readonly Item[]): number {
  const { scope } = machine;
  machine.scope = new Scope(scope);
  const flow = runItems(machine, items);
  machine.scope = scope;
  return flow;
}

/** Statements in the present scope. */
export function runItems(machine: Machine, items: readonly Item[]): number {
  let ends = 0;
  for (const item of items) {
    const flow = run(machine, item);
    ends |= flow & ~Flow.next;
    if ((flow & Flow.next) === 0) return ends;
  }
  return ends | Flow.next;
}

/** One statement, a single one in the body of a loop or branch too. */
export function run(machine: Machine, item: Item): number {
  if (!machine.enter()) return machine.stopped ? 0 : Flow.next;
  const flow = runOne(machine, item);
  machine.leave();
  return machine.stopped ? 0 : flow;
}

function runOne(machine: Machine, item: Item): number {
  switch (item.kind) {
    case 'expression':
      evaluate(machine, item.expression);
      return Flow.next;
    case 'variables':
      for (const variable of item.variables) {
        const call = callMeant(machine, variable);
        if (call === undefined) declareVariable(machine, variable, machine.scope);
        else evaluate(machine, call);
      }
      return Flow.next;
    case 'prototype': {
      const { variable } = item;
      const call = callMeant(machine, variable);
      if (call !== undefined) {
        evaluate(machine, call);
        return Flow.next;
      }
      const list = argumentsMeant(machine, item);
      if (list !== undefined) declareVariable(machine, withArguments(variable, list), machine.scope);
      return Flow.next;
    }
    case 'block':
      return runBlock(machine, item.items);
    case 'if':
      return runIf(machine, item.test, item.yes, item.no);
    case 'while':
      return runWhile(machine, item);
    case 'do':
      return runDo(machine, item);
    case 'for':
      return runFor(machine, item);
    case 'each':
      return runEach(machine, item);
    case 'switch':
      return runSwitch(machine, item.test, item.cases);
    case 'return':
      return runReturn(machine, item.value);
    case 'break':
      return leaveTo(machine, machine.frame?.breakables.at(-1), Flow.break);
    case 'continue':
      return leaveTo(
        machine,
        machine.frame?.breakables.findLast((one) => one.continues),
        Flow.continue,
      );
    case 'conditional': {
      const chosen = machine.program.branchOf(item, machine.site);
      if (chosen !== undefined) return runItems(machine, item.branches[chosen]?.items ?? []);
      const sides = item.branches.map((branch) => () => runItems(machine, branch.items));
      const complete = item.branches.some((branch) => branch.condition === undefined);
      return fork(machine, complete ? sides : [...sides, () => Flow.next]);
    }
    case 'enum':
      // Constants of an enumeration inside a function.
      for (const [index, entry] of wholeEnum(machine.program, item, machine.site).entries.entries()) {
        machine.scope.define(entry.name, enumCells(machine, entry, index));
      }
      return Flow.next;
    default:
      return Flow.next;
  }
}

function enumCells(
  machine: Machine,
  entry: Extract<Item, { kind: 'enum' }>['entries'][number],
  index: number,
) {
  const type = { name: 'int', constant: true, pointers: 0, reference: false, sizes: [] };
  const value: Expression = entry.value ?? { kind: 'number', value: index, type: 'int', ...entry.place };
  const flags = { isStatic: false, isExtern: false, isVolatile: false };
  const variable = { name: entry.name, namePlace: entry.place, type, value, ...flags, ...entry.place };
  return declareVariable(machine, variable, new Scope(undefined));
}

/** Follows every alternative from the same state, and joins what they leave. */
export function fork(machine: Machine, alternatives: readonly (() => number)[]): number {
  const { state, certain } = machine;
  const { mark } = state;
  const deltas = [];
  let flows = 0;
  for (const alternative of alternatives) {
    machine.certain = false;
    const flow = alternative();
    flows |= flow;
    if ((flow & Flow.next) !== 0) deltas.push(state.since(mark));
    machine.spend(state.mark - mark);
    state.undo(mark);
  }
  state.merge(mark, deltas, false);
  // What follows is only reached where no alternative left early.
  machine.certain = certain && (flows & ~Flow.next) === 0;
  return flows;
}

function runIf(machine: Machine, test: Expression, yes: Item, no: Item | undefined): number {
  const { scope } = machine;
  machine.scope = new Scope(scope);
  const is = holds(machine, evaluate(machine, test), test);
  let flow: number;
  if (is === true) flow = runBlock(machine, [yes]);
  else if (is === false) flow = no === undefined ? Flow.next : runBlock(machine, [no]);
  else {
    flow = fork(machine, [
      () => {
        narrow(machine, test, true);
        return runBlock(machine, [yes]);
      },
      () => {
        narrow(machine, test, false);
        return no === undefined ? Flow.next : runBlock(machine, [no]);
      },
    ]);
  }
  machine.scope = scope;
  return flow;
}

function runReturn(machine: Machine, expression: Expression | undefined): number {
  const { frame, state } = machine;
  const value = expression === undefined ? undefined : returned(machine, expression);
  if (frame === undefined) return Flow.next;
  if (value !== undefined) frame.values.push(value);
  machine.spend(state.mark - frame.mark);
  frame.returns.push(state.since(frame.mark));
  return Flow.return;
}

/** A list that is returned is of the function's type. */
function returned(machine: Machine, expression: Expression): Value {
  const type = machine.frame?.callable.item.type;
  if (expression.kind !== 'list' || expression.type !== undefined || type === undefined || type.name === '')
    return evaluate(machine, expression);
  return makeTyped(machine, type, expression);
}

function leaveTo(machine: Machine, target: Breakable | undefined, flow: number): number {
  // A break outside of everything: half-typed text. It ends nothing.
  if (target === undefined) return Flow.next;
  const { state } = machine;
  const mark = flow === Flow.break ? target.mark : target.roundMark;
  machine.spend(state.mark - mark);
  (flow === Flow.break ? target.breaks : target.continues)?.push(state.since(mark));
  return flow;
}

function runSwitch(machine: Machine, test: Expression, cases: readonly Case[]): number {
  const { scope, certain } = machine;
  machine.scope = new Scope(scope);
  const value = evaluate(machine, test);
  const starts = startsOf(machine, value, cases);
  const [only] = starts;
  let flow: number;
  if (starts.length === 1 && only !== undefined) flow = runFrom(machine, cases, only);
  else
    flow = fork(
      machine,
      starts.map((start) => () => runFrom(machine, cases, start)),
    );
  machine.scope = scope;
  machine.certain = certain && (flow & ~Flow.next) === 0;
  return flow;
}

/** The cases where a switch may start; the number of cases where it may pass them all. */
function startsOf(machine: Machine, value: Value, cases: readonly Case[]): number[] {
  const whole = value.kind === 'known' ? new Set(value.values) : undefined;
  const starts: number[] = [];
  let other = cases.length;
  let decided = false;
  for (const [index, one] of cases.entries()) {
    if (one.value === undefined) {
      other = index;
      continue;
    }
    const constant = single(
      value.kind === 'known'
        ? convert(evaluate(machine, one.value), value.type)
        : evaluate(machine, one.value),
    );
    if (whole === undefined || constant === undefined) starts.push(index);
    else if (whole.delete(constant)) starts.push(index);
    if (whole !== undefined && whole.size === 0) {
      decided = true;
      break;
    }
  }
  if (!decided) starts.push(other);
  return starts;
}

function runFrom(machine: Machine, cases: readonly Case[], start: number): number {
  const { state, frame } = machine;
  const here: Breakable = { mark: state.mark, breaks: [], continues: undefined, roundMark: state.mark };
  frame?.breakables.push(here);
  let ends = 0;
  let open = true;
  for (let at = start; at < cases.length && open; at += 1) {
    const flow = runItems(machine, cases[at]?.items ?? []);
    ends |= flow & ~Flow.next;
    open = (flow & Flow.next) !== 0;
  }
  frame?.breakables.pop();
  state.merge(here.mark, here.breaks, open);
  const passes = open || here.breaks.length > 0;
  return (ends & ~Flow.break) | (passes ? Flow.next : 0);
}
