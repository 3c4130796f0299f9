/** Writes to and reads of the registers that reach pins: each bit becomes a use of its pin. */
import type { CallFacts } from '../../base/platform';
import type { Expression, Place } from '../form/ast';
import { bitsOf, bitsOfValue, combine, isBitwise } from './bit-sets';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { spanAt } from './model';
import { binary } from './operations';
import { outcome } from './outcomes';
import { type Change, changePins } from './pin-states';
import { bits, eitherTurn, type Turn, type Turns, turnsOf } from './pin-turns';
import { placeCells } from './places';
import { registersAt } from './register-targets';
import { registerValue } from './registers';
import { meetTimer } from './timer-registers';
import { type Cell, either, known, type Register, single, type Unknown, unknown, type Value } from './value';

const { zero, one, same, flip } = outcome;

const asOutput: CallFacts = { name: 'register', action: 'mode', mode: 'output' };
const asInput: CallFacts = { name: 'register', action: 'mode', mode: 'input' };
const asPullUp: CallFacts = { name: 'register', action: 'mode', mode: 'input-pullup' };
const asEither: CallFacts = { name: 'register', action: 'mode' };
const toHigh: CallFacts = { name: 'register', action: 'write' };
const toLow: CallFacts = { name: 'register', action: 'write' };
const toEither: CallFacts = { name: 'register', action: 'write' };
const reading: CallFacts = { name: 'register', action: 'read' };

/** Where a write stands. */
export interface RegisterWrite {
  readonly node: object;
  readonly place: Place;
  readonly target: Place;
  readonly value: Place;
}

/** Follows `register operator= value`; gives the value. */
export function writeRegister(
  machine: Machine,
  cell: Cell,
  operator: string,
  value: Expression | Value,
  write: RegisterWrite,
): Value {
  const { register } = cell;
  if (register === undefined) return unknown('it is no register');
  const width = register.pins.length;
  const old = new Array<number>(width).fill(same);
  const isSyntax = 'start' in value;
  if (operator !== '' && !isBitwise(operator)) {
    const by = isSyntax ? evaluate(machine, value) : value;
    const sum = binary(machine, operator, readRegister(machine, cell, write.target), by);
    meetBits(machine, register, bitsOfValue(sum, width), undefined, write);
    return sum;
  }
  const given = isSyntax
    ? bitsOf(machine, value, cell, width)
    : { bits: bitsOfValue(value, width), hidden: value.kind === 'unknown' ? value : undefined };
  const after = operator === '' ? given.bits : (combine(operator, old, given.bits) ?? given.bits);
  meetBits(machine, register, after, given.hidden, write);
  return unknown(
    `it is the value of \`${register.name}\``,
    spanAt(machine.site, write.place),
    cell.type,
    true,
  );
}

/** By what the register does with a one, the outcome for the pin's level or direction. */
function effectOf(register: Register, bit: number): number {
  if (register.by === 'all') return bit;
  let effect = (bit & (zero | same | flip)) !== 0 ? same : 0;
  if ((bit & ~zero) !== 0) effect |= register.by === 'set' ? one : register.by === 'clear' ? zero : flip;
  return effect;
}

function meetBits(
  machine: Machine,
  register: Register,
  after: readonly number[],
  hidden: Unknown | undefined,
  write: RegisterWrite,
): void {
  if (register.changes === 'timer') {
    meetTimer(machine, register, after, write);
    return;
  }
  const effects = after.map((bit) => effectOf(register, bit));
  const turns = turnsOf(machine);
  const change: (readonly [number, Turn])[] = [];
  const uses: { readonly pin: number; readonly effect: number }[] = [];
  let mayBeAny = false;
  for (const [bit, effect] of effects.entries()) {
    const pin = register.pins[bit];
    if (pin === undefined || (effect & ~same) === 0) continue;
    change.push([pin, turnOf(register, effect, turns)]);
    // A mask that is not known may reach any pin: the use names none.
    if (hidden !== undefined && (effect & same) !== 0) mayBeAny = true;
    else uses.push({ pin, effect });
  }
  const inputs = register.changes === 'level' ? machine.pinStates.inputs : undefined;
  for (const { pin, effect } of uses) {
    const states = machine.pinStates.of(pin) ?? 0;
    const isInput = inputs?.has(pin) === true && states !== 0 && (states & (bits.high | bits.low)) === 0;
    const isRaised = states !== 0 && (states & (bits.low | bits.input | bits.pullDown)) === 0;
    const [facts, value] = meant(register, effect & ~same, isInput, isRaised);
    meet(machine, register, facts, pin, value, (effect & same) === 0, write);
    if (facts === asInput || facts === asPullUp) machine.pinStates.inputs.add(pin);
  }
  if (mayBeAny && hidden !== undefined) {
    const facts = register.changes === 'level' ? toEither : asEither;
    meet(machine, register, facts, unknown(hidden.reason, hidden.span), either, true, write);
  }
  if (change.length > 0) changePins(machine, [change as Change]);
}

function turnOf(register: Register, effect: number, turns: Turns): Turn {
  const isLevel = register.changes === 'level';
  const list: Turn[] = [];
  if ((effect & one) !== 0) list.push(isLevel ? turns.high : turns.output);
  if ((effect & zero) !== 0) list.push(isLevel ? turns.low : turns.undriven);
  if ((effect & flip) !== 0) list.push(isLevel ? turns.flip : eitherTurn(turns.output, turns.undriven));
  if ((effect & same) !== 0) list.push((states) => states);
  return list.reduce(eitherTurn);
}

/** The use that an outcome is, with its value. */
function meant(
  register: Register,
  effect: number,
  isInput: boolean,
  isRaised: boolean,
): readonly [CallFacts, Value | undefined] {
  if (register.changes === 'direction') {
    if (effect === one) return [asOutput, undefined];
    if (effect === zero) return [isRaised && register.pins.length === 8 ? asPullUp : asInput, undefined];
    return [asEither, undefined];
  }
  // A high level on what was made an input is its pull-up.
  if (effect === one) return isInput && register.pins.length === 8 ? [asPullUp, undefined] : [toHigh, high];
  if (effect === zero) return [toLow, low];
  return [toEither, either];
}

const bit = either.type;
const high = known(1, bit);
const low = known(0, bit);

function meet(
  machine: Machine,
  register: Register,
  facts: CallFacts,
  pin: number | Unknown,
  value: Value | undefined,
  certain: boolean,
  write: RegisterWrite,
): void {
  const before = machine.certain;
  if (!certain) machine.certain = false;
  const pinValue = typeof pin === 'number' ? known(pin, machine.types.int) : pin;
  if (machine.use(write.node, facts, pinValue, value)) {
    machine.describe({
      call: register.name,
      span: spanAt(machine.site, write.target),
      callSpan: spanAt(machine.site, write.place),
      valueSpan: spanAt(machine.site, write.value),
    });
  }
  machine.certain = before;
}

/** The value of a register; of one that reads pins, a read of those in the mask. */
export function readRegister(
  machine: Machine,
  cell: Cell,
  place: Place,
  mask?: Value,
  node: object = place,
): Value {
  const { register } = cell;
  const span = spanAt(machine.site, place);
  if (register === undefined) return cell.value;
  if (!register.reads) {
    const value = registerValue(machine, register);
    return value ?? unknown(`it is the value of \`${register.name}\``, span, cell.type, true);
  }
  const set = mask === undefined ? undefined : bitsOfValue(mask, register.pins.length);
  const write = { node, place, target: place, value: place };
  for (const [at, pin] of register.pins.entries()) {
    const read = set?.[at] ?? one;
    if (pin === undefined || (read & one) === 0) continue;
    meet(machine, register, reading, pin, undefined, read === one, write);
  }
  return unknown('it is read from pins', span, cell.type, true);
}

/** `PIND & mask`, `(PIND >> 3) & 1`: reads of some pins of a port. Undefined where it is something else. */
export function maskedRead(
  machine: Machine,
  expression: Extract<Expression, { kind: 'binary' }>,
): Value | undefined {
  const { left, right, operator } = expression;
  if (operator === '>>') {
    const cell = readingCell(machine, left);
    const by = cell === undefined ? undefined : single(evaluate(machine, right));
    if (cell === undefined || by === undefined) return undefined;
    return readRegister(
      machine,
      cell,
      expression,
      known(2 ** 32 - 2 ** by, machine.types.unsignedLong),
      expression,
    );
  }
  for (const [port, mask] of [
    [left, right],
    [right, left],
  ] as const) {
    const isMoved = port.kind === 'binary' && port.operator === '>>';
    const cell = readingCell(machine, isMoved ? port.left : port);
    if (cell === undefined) continue;
    const by = isMoved ? single(evaluate(machine, port.right)) : 0;
    const value = evaluate(machine, mask);
    if (by === undefined) return readRegister(machine, cell, expression, undefined, expression);
    const moved = by === 0 ? value : binary(machine, '<<', value, known(by, machine.types.int));
    return readRegister(machine, cell, expression, moved, expression);
  }
  return undefined;
}

function readingCell(machine: Machine, expression: Expression): Cell | undefined {
  if (expression.kind !== 'name' && expression.kind !== 'member') return undefined;
  const cells =
    expression.kind === 'name'
      ? placeCells(machine, expression)
      : registersAt(machine, expression, undefined);
  const [only] = cells ?? [];
  return cells?.length === 1 && only?.register?.reads === true ? only : undefined;
}
