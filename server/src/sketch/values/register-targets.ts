/** Registers as the targets of assignments: by name, through pointers, and as members of a chip's blocks. */
import type { Expression } from '../form/ast';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { writeCells } from './names';
import { readRegister, writeRegister } from './register-writes';
import { wideRegister } from './registers';
import { type Cell, known, unknown, type Value } from './value';

/** The registers that a target may be; undefined where it is none. */
export function registersAt(
  machine: Machine,
  target: Expression,
  cells: readonly Cell[] | undefined,
): readonly Cell[] | undefined {
  if (machine.ports.none) return undefined;
  if (cells !== undefined && cells.length > 0)
    return cells.some(({ register }) => register !== undefined) ? cells : undefined;
  if (machine.ports.inOne.length === 0) return undefined;
  if (target.kind === 'name') return wideRegister(machine, '', target.name);
  if (target.kind !== 'member') return undefined;
  const { base, name } = target;
  // On later chips of the family a register is a union: `GPIO.out_w1ts.val`.
  if (base.kind === 'member' && name === 'val' && base.base.kind === 'name')
    return wideRegister(machine, base.base.name, base.name);
  return base.kind === 'name' ? wideRegister(machine, base.name, name) : undefined;
}

type Assign = Extract<Expression, { kind: 'assign' }>;
type Step = Extract<Expression, { kind: 'step' }>;

export function writeRegisters(machine: Machine, cells: readonly Cell[], expression: Assign): Value {
  const { target, value, operator } = expression;
  const write = { node: expression, place: expression, target, value };
  const [only] = cells;
  if (only !== undefined && cells.length === 1) return writeRegister(machine, only, operator, value, write);
  // One of several: which, is not known. The value is evaluated once.
  const given = evaluate(machine, value);
  const saved = machine.certain;
  machine.certain = false;
  for (const cell of cells) {
    if (cell.register === undefined) writeCells(machine, [cell], unknown('it may have been written'));
    else oneOf(machine, () => writeRegister(machine, cell, operator, given, write));
  }
  machine.certain = saved;
  return given;
}

/** Runs what may happen or not. */
function oneOf(machine: Machine, run: () => void): void {
  const { state } = machine;
  const { mark } = state;
  run();
  const delta = state.since(mark);
  state.undo(mark);
  state.merge(mark, [delta, new Map()], false);
}

export function stepRegisters(machine: Machine, cells: readonly Cell[], expression: Step): Value {
  const { operand } = expression;
  const [only] = cells;
  const before = only === undefined ? unknown('it is a register') : readRegister(machine, only, operand);
  const write = { node: expression, place: expression, target: operand, value: operand };
  const by = known(expression.by, machine.types.int);
  for (const cell of cells) {
    if (cell.register !== undefined) writeRegister(machine, cell, '+', by, write);
  }
  return before;
}
