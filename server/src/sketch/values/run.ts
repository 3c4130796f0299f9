/** Runs a program in the order the core does: what starts before setup(), setup(), loop() again and again, handlers. */
import type { FunctionItem, Item } from '../form/ast';
import { makeVariable } from './construct';
import { evaluate } from './expressions';
import { runBody } from './functions';
import { forgetChanged } from './interrupts';
import { Flow, type Frame, type Machine, type Phase } from './machine';
import { type Start, spanAt } from './model';
import { binary } from './operations';
import { apart, mostTogether } from './pin-states';
import { argumentsMeant, withArguments } from './prototypes-meant';
import { Scope } from './scope';
import { run } from './statements';
import {
  type Callable,
  type Cell,
  join,
  known,
  newCell,
  readThrough,
  same,
  unknown,
  unknownOf,
  type Value,
} from './value';

/** Rounds of loop() until its counters are given up, where a round costs little, and where it costs much. */
const manyRounds = 10;
const fewRounds = 3;
const cheapSteps = 1500;
const mostRounds = 16;
/** Rounds after which pins are told apart less, and then no longer, so that what they may be comes to an end. */
const looseRounds = 9;
const lastLoose = 12;

const noItem: FunctionItem = {
  kind: 'function',
  name: '',
  namePlace: { start: 0, end: 0 },
  owner: '',
  type: { name: 'void', constant: false, pointers: 0, reference: false, sizes: [] },
  parameters: [],
  members: [],
  templateNames: [],
  isStatic: false,
  directives: [],
  locals: [],
  start: 0,
  end: 0,
};

/** Follows the whole program; its uses and problems come out of the machine. */
export function runProgram(machine: Machine): void {
  const outer: Callable = { item: noItem, site: machine.site };
  machine.frame = newFrame(machine, outer, '');
  for (const start of machine.program.starts) runStart(machine, start);
  machine.begun = true;
  for (const handler of machine.program.handlers) {
    machine.handlers.push({ callable: handler });
    forgetChanged(machine, handler);
  }
  const setup = entry(machine, 'setup') ?? entry(machine, 'main');
  const ended = setup === undefined || enterEntry(machine, setup, 'setup');
  if (ended) runLoops(machine);
  runHandlers(machine);
}

function newFrame(machine: Machine, callable: Callable, name: string): Frame {
  return {
    callable,
    name,
    self: callable.self,
    mark: machine.state.mark,
    path: machine.entryPath(),
    returns: [],
    values: [],
    breakables: [],
  };
}

function entry(machine: Machine, name: string): Callable | undefined {
  return machine.program.functions.get(name)?.find(({ item }) => item.body !== undefined);
}

/** Runs an entry. False where it never comes back. */
function enterEntry(machine: Machine, callable: Callable, phase: Phase, path = machine.entryPath()): boolean {
  const { item } = callable;
  machine.phase = phase;
  const frame: Frame = { ...newFrame(machine, callable, item.name === '' ? 'lambda' : item.name), path };
  const before = machine.state.mark;
  let comesBack = true;
  runBody(
    machine,
    frame,
    new Scope(callable.scope),
    item.body ?? [],
    () => {
      // What an entry gets is not known: a handler's arguments come from a library.
      for (const parameter of item.parameters) {
        const type = machine.types.named(parameter.type.name);
        const value = unknownOf(parameter.type.pointers > 0 ? undefined : type, 'it comes from a library');
        machine.scope.define(parameter.name, [newCell(value)]);
      }
    },
    (flow) => {
      comesBack = (flow & Flow.next) !== 0 || frame.returns.length > 0;
    },
  );
  if (!comesBack) machine.state.undo(before);
  return comesBack;
}

/** loop() from the values that setup() left, then from what its own rounds leave, until nothing new comes. */
function runLoops(machine: Machine): void {
  const loop = entry(machine, 'loop');
  if (loop === undefined) return;
  const path = machine.entryPath();
  const extra = ['serialEvent', 'serialEvent1', 'serialEvent2', 'serialEvent3', 'yield']
    .map((name) => entry(machine, name))
    .filter((one) => one !== undefined)
    .map((callable) => ({ callable, path: machine.entryPath() }));
  const { state } = machine;
  for (let round = 0; round < mostRounds && !machine.stopped; round += 1) {
    const { mark, clock } = state;
    const spent = machine.spentSteps;
    let goesOn = enterEntry(machine, loop, 'loop', path);
    for (const one of extra) {
      if (!goesOn) break;
      const { certain } = machine;
      machine.certain = false;
      goesOn = enterEntry(machine, one.callable, 'loop', one.path);
      machine.certain = certain;
    }
    const changed = goesOn ? state.changed(mark, clock) : [];
    const cost = machine.spentSteps - spent;
    state.undo(mark);
    const giveUp = round >= (cost > cheapSteps ? fewRounds : manyRounds);
    let grew = false;
    for (const { cell, from, to } of changed) {
      const { mark: at } = state;
      const isPointer = from.kind === 'pointer' || from.kind === 'array';
      const isWalking = isPointer && to.kind === 'pointer' && round < looseRounds;
      const kept = !giveUp || cell === machine.pinStates.cell || isWalking;
      const joined = join(from, to);
      const value = kept || same(joined, from) ? joined : forgotten(cell);
      state.set(cell, round >= looseRounds ? apart(machine, value, round >= lastLoose) : value);
      if (state.mark > at) grew = true;
    }
    if (!grew) return;
    if (round === mostRounds - 1) machine.pinStates.lost = true;
  }
}

function forgotten(cell: Cell): Value {
  const name = cell.definition === undefined ? 'it' : `\`${cell.definition.name}\``;
  return unknownOf(cell.type, `${name} changes from round to round of loop()`, cell.definition?.span);
}

/** Handlers run at any moment: what was ever written is not known there. */
function runHandlers(machine: Machine): void {
  const { state } = machine;
  if (machine.handlers.length === 0) return;
  for (const cell of [...state.written]) {
    const { value } = cell;
    if (value.kind !== 'known' && value.kind !== 'unknown') continue;
    state.set(cell, unknownOf(cell.type, 'it may have changed when the handler runs', cell.definition?.span));
  }
  machine.certain = false;
  const { pinStates } = machine;
  // They may come at any moment.
  const together = pinStates.held([...pinStates.seen].sort(), mostTogether);
  state.set(pinStates.cell, { kind: 'states', together });
  // Handlers may set handlers; the list grows while it is gone through.
  for (let at = 0; at < machine.handlers.length && at < 64; at += 1) {
    const handler = machine.handlers[at];
    if (handler !== undefined) enterEntry(machine, handler.callable, 'interrupt');
  }
}

function runStart(machine: Machine, start: Start): void {
  const { site } = start;
  machine.at(site, new Scope(undefined), () => {
    if (start.kind === 'enum') runEnum(machine, start);
    else if (start.kind === 'loose') runLoose(machine, start.item);
    else {
      for (const variable of start.variables) {
        const owner = variable.owner === undefined ? start.owner : `${variable.owner}::`;
        const name = site.prefix + owner + variable.name;
        const bare = variable.value === undefined && variable.arguments === undefined;
        if (variable.isExtern && bare && machine.globals.has(name)) continue;
        machine.globals.set(name, makeVariable(machine, variable, site, 'global', true, owner));
      }
    }
  });
}

/** An object that read as a prototype, or a statement left over from broken text. */
function runLoose(machine: Machine, item: Item): void {
  if (item.kind === 'prototype') {
    const list = argumentsMeant(machine, item);
    if (list === undefined) return;
    const { prefix } = machine.site;
    // With a body somewhere it is a prototype, of types that are not known here.
    if (machine.program.functions.has(prefix + item.variable.name)) return;
    machine.globals.set(
      prefix + item.variable.name,
      makeVariable(machine, withArguments(item.variable, list), machine.site, 'global', true),
    );
    return;
  }
  const { certain } = machine;
  machine.certain = false;
  run(machine, item);
  machine.certain = certain;
}

function runEnum(machine: Machine, start: Extract<Start, { kind: 'enum' }>): void {
  const { item, site, owner } = start;
  let value: Value = known(-1, machine.types.int);
  for (const entry_ of item.entries) {
    value =
      entry_.value === undefined
        ? binary(machine, '+', value, known(1, machine.types.int))
        : evaluate(machine, entry_.value);
    if (value.kind !== 'known') value = unknown('the entry is not known', spanAt(site, entry_.place));
    const scope = site.prefix + owner + (item.scoped ? `${item.name}::` : '');
    const plain = { name: entry_.name, kind: 'entry' as const, span: spanAt(site, entry_.place) };
    // A scoped entry is no number by itself: setup() cannot name a pin by it without a cast.
    const named_ = scope === '' || item.scoped ? plain : { ...plain, qualified: scope + entry_.name };
    const definition = item.scoped ? { ...named_, scoped: true as const } : named_;
    const bare =
      value.kind === 'known' ? { ...value, origins: entry_.value === undefined ? [] : value.origins } : value;
    const named = bare.kind === 'known' ? readThrough(bare, definition) : bare;
    const cells = [newCell(named)];
    if (item.name !== '') machine.globals.set(`${site.prefix}${owner}${item.name}::${entry_.name}`, cells);
    if (!item.scoped) machine.globals.set(site.prefix + owner + entry_.name, cells);
  }
}
