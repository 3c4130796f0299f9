/**
 * Loops: round by round while the condition is known, and else once for all rounds together, with what changes from
 * round to round forgotten.
 */
import type { Expression, Item } from '../form/ast';
import { cellsOf } from './arrays';
import { declareVariable } from './construct';
import { copyObject } from './copies';
import { evaluate } from './expressions';
import { type Breakable, Flow, type Machine } from './machine';
import { spanAt } from './model';
import { readCells } from './names';
import { holds } from './operator-calls';
import { spreadList } from './packs';
import { apart } from './pin-states';
import { basesOf } from './places';
import { Scope } from './scope';
import { run, runBlock } from './statements';
import { isStepUnfinished, isTestUnfinished } from './unfinished-loops';
import { type ArrayValue, type Cell, join, newCell, same, unknown, unknownOf, type Value } from './value';

/** Rounds of one loop that are followed one by one, the first times it is met. */
const mostRounds = 300;

/** Rounds that every loop may take each time, however often it is met; only fewer once much was spent already. */
const shortRounds = 64;
const tiredRounds = 20;

/** Rounds beyond the short ones that a loop may take over the whole analysis: fading a lamp twice tells all. */
const longAllowance = 600;

/** Where the allowance is used up, rounds that are followed before all others are taken together. */
const sampleRounds = 2;

/** Rounds of the search for what stays the same in a loop that is not followed. */
const mostPasses = 6;
const wornPasses = 2;
/** The pass from which on pins are told apart less, and then no longer, so that what they may be comes to an end. */
const loosePass = 3;

interface Loop {
  /** True, false, or undefined where it is not known; `any` stands for every round at once. */
  test(any: boolean): boolean | undefined;
  body(any: boolean): number;
  step(): void;
  readonly testsFirst: boolean;
  readonly place: Expression | Item;
  /** Goes over a list: what moves it on is not among the cells. */
  readonly counted?: boolean;
  /** What moves it on may not be typed yet: where it would go on for ever, it ends. */
  readonly unfinished?: boolean;
}

type ItemOf<K extends Item['kind']> = Extract<Item, { kind: K }>;

export function runWhile(machine: Machine, item: ItemOf<'while'>): number {
  return inScope(machine, () =>
    runLoop(machine, {
      test: () => holds(machine, evaluate(machine, item.test), item.test),
      body: () => runBlock(machine, [item.body]),
      step: () => {},
      testsFirst: true,
      place: item.test,
    }),
  );
}

export function runDo(machine: Machine, item: ItemOf<'do'>): number {
  return runLoop(machine, {
    test: () => holds(machine, evaluate(machine, item.test), item.test),
    body: () => runBlock(machine, [item.body]),
    step: () => {},
    testsFirst: false,
    place: item.test,
  });
}

export function runFor(machine: Machine, item: ItemOf<'for'>): number {
  const { first, test, step } = item;
  return inScope(machine, () => {
    if (first !== undefined) run(machine, first);
    return runLoop(machine, {
      test: () => {
        if (test === undefined) return true;
        const is = holds(machine, evaluate(machine, test), test);
        return is === true && isTestUnfinished(test, step) ? undefined : is;
      },
      body: () => runBlock(machine, [item.body]),
      step: () => {
        if (step !== undefined) evaluate(machine, step);
      },
      testsFirst: true,
      place: test ?? item,
      unfinished: isStepUnfinished(test, step),
    });
  });
}

export function runEach(machine: Machine, item: ItemOf<'each'>): number {
  return inScope(machine, () => {
    const entries = entriesOf(machine, item.range);
    let at = 0;
    return runLoop(machine, {
      test: (any) => (any || entries === undefined ? undefined : at < entries.length),
      body: (any) => {
        const cells = any || entries === undefined ? (entries ?? []) : entries.slice(at, at + 1);
        bindEntry(machine, item, cells);
        return runBlock(machine, [item.body]);
      },
      step: () => {
        at += 1;
      },
      testsFirst: true,
      place: item.range,
      counted: true,
    });
  });
}

/** The cells that a range loop goes over; undefined where they are not known one by one. */
function entriesOf(machine: Machine, range: Expression): readonly Cell[] | undefined {
  if (range.kind === 'list') {
    return spreadList(machine, range).items.map(({ value }) => newCell(evaluate(machine, value)));
  }
  const [base, other] = basesOf(machine, range);
  if (base?.kind !== 'array' || other !== undefined || isLong(base)) return undefined;
  return cellsOf(base);
}

function isLong(array: ArrayValue): boolean {
  return array.all !== undefined;
}

function bindEntry(machine: Machine, item: ItemOf<'each'>, cells: readonly Cell[]): void {
  const { variable } = item;
  if (variable.type.reference && cells.length > 0) {
    machine.scope.define(variable.name, cells);
    return;
  }
  const [cell] = declareVariable(machine, variable, machine.scope);
  const value = cells.length === 0 ? unknown('what the loop goes over is not known') : readCells(cells);
  if (cell !== undefined) {
    const own = value.kind === 'object' && variable.type.pointers === 0 ? copyObject(value) : value;
    const inner = newCell(own, cell.type, cell.definition);
    machine.scope.define(variable.name, [inner]);
  }
}

function inScope(machine: Machine, follow: () => number): number {
  const { scope } = machine;
  machine.scope = new Scope(scope);
  const flow = follow();
  machine.scope = scope;
  return flow;
}

function runLoop(machine: Machine, loop: Loop): number {
  const { state, certain, frame } = machine;
  const here: Breakable = { mark: state.mark, breaks: [], continues: [], roundMark: state.mark };
  frame?.breakables.push(here);
  const { flow, passes } = follow(machine, loop, here);
  frame?.breakables.pop();
  state.merge(here.mark, here.breaks, passes);
  machine.certain = certain && (flow & Flow.return) === 0;
  const goesOn = passes || here.breaks.length > 0;
  return (flow & Flow.return) | (goesOn ? Flow.next : 0);
}

interface Followed {
  readonly flow: number;
  /** The condition may become false. */
  readonly passes: boolean;
}

function follow(machine: Machine, loop: Loop, here: Breakable): Followed {
  const { state } = machine;
  const allowed = allowedRounds(machine, loop);
  let flow = 0;
  for (let round = 0; ; round += 1) {
    if (machine.stopped) return { flow, passes: false };
    const { certain } = machine;
    const { mark, clock } = state;
    if (round > 0 || loop.testsFirst) {
      const is = loop.test(false);
      if (is === false) return { flow, passes: true };
      if (is === undefined) return allRounds(machine, loop, here, flow, true);
    }
    if (round >= roundLimit(machine, allowed)) {
      const { news } = machine;
      const rest = allRounds(machine, loop, here, flow, false);
      if (machine.news > news) {
        machine.tell(
          'loop-not-followed',
          'This loop takes too many rounds to be followed one by one; what it does is known only roughly.',
          spanAt(machine.site, loop.place),
          'Pins that it reaches by a counter are taken as unknown, or as any of their array.',
        );
      }
      return rest;
    }
    if (round >= shortRounds) {
      const long = (machine.longRounds.get(loop.place) ?? 0) + 1;
      machine.longRounds.set(loop.place, long);
    }
    const ends = oneRound(machine, loop, here, false);
    flow |= ends;
    if ((ends & Flow.next) === 0) return { flow, passes: false };
    machine.certain = certain && (ends & (Flow.break | Flow.return)) === 0;
    loop.step();
    if (isStill(machine, loop, mark, clock)) return { flow, passes: loop.unfinished === true };
  }
}

function allowedRounds(machine: Machine, loop: Loop): number {
  return (machine.longRounds.get(loop.place) ?? 0) < longAllowance ? mostRounds : sampleRounds;
}

/** Asked again each round: much may have been spent in the rounds before. */
function roundLimit(machine: Machine, allowed: number): number {
  if (machine.worn) return 0;
  return machine.tired ? Math.min(allowed, tiredRounds) : allowed;
}

/** Nothing changed in a round of an endless loop: it goes on like this for ever. */
function isStill(machine: Machine, loop: Loop, mark: number, clock: number): boolean {
  if (loop.counted === true || machine.state.changed(mark, clock).length > 0) return false;
  const { quiet, state } = machine;
  const here = state.mark;
  machine.quiet = true;
  const is = loop.test(false);
  // A condition that counts moves the loop on.
  const counts = state.mark > here;
  state.undo(here);
  machine.quiet = quiet;
  return is === true && !counts;
}

/** The body once, with its continues joined. */
function oneRound(machine: Machine, loop: Loop, here: Breakable, any: boolean): number {
  const { state } = machine;
  here.roundMark = state.mark;
  here.continues?.splice(0);
  const ends = loop.body(any);
  const open = (ends & Flow.next) !== 0;
  const continues = here.continues ?? [];
  state.merge(here.roundMark, continues, open);
  const goesOn = open || continues.length > 0;
  return (ends & ~(Flow.next | Flow.continue)) | (goesOn ? Flow.next : 0);
}

/** Every round at once: passes until nothing new changes, forgetting what changes again and again. */
function allRounds(machine: Machine, loop: Loop, here: Breakable, before: number, mayEnd: boolean): Followed {
  const { state } = machine;
  let flow = before;
  let ends = mayEnd;
  const passes = machine.worn ? wornPasses : mostPasses;
  for (let pass = 0; pass < passes && !machine.stopped; pass += 1) {
    const { mark, clock } = state;
    machine.certain = false;
    if (pass > 0 || !mayEnd) {
      const is = loop.test(true);
      if (is !== true) ends = true;
      if (is === false && pass > 0) break;
    }
    const result = oneRound(machine, loop, here, true);
    flow |= result & ~Flow.break;
    if ((result & Flow.next) === 0) {
      state.undo(mark);
      break;
    }
    loop.step();
    const changed = state.changed(mark, clock);
    state.undo(mark);
    let grew = false;
    for (const { cell, from, to } of changed) {
      const isPointer = from.kind === 'pointer' || from.kind === 'array';
      const kept =
        (pass === 0 && !machine.tired) ||
        cell === machine.pinStates.cell ||
        (isPointer && to.kind === 'pointer' && pass < loosePass);
      const joined = join(from, to);
      // What brings nothing new need not be forgotten.
      const value = kept || same(joined, from) ? joined : forgotten(cell);
      const { mark: at } = state;
      state.set(cell, pass >= loosePass ? apart(machine, value, pass > loosePass) : value);
      if (state.mark > at) grew = true;
    }
    if (!grew) break;
    // What goes together did not come to an end in the rounds there are.
    if (pass === passes - 1 && changed.some(({ cell }) => cell === machine.pinStates.cell))
      machine.pinStates.lost = true;
  }
  return { flow, passes: ends };
}

function forgotten(cell: Cell): Value {
  const name = cell.definition === undefined ? 'it' : `\`${cell.definition.name}\``;
  return unknownOf(cell.type, `${name} changes in a loop`, cell.definition?.span);
}
