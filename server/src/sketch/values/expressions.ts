/** Evaluation of expressions: values come back, and what calls do to pins is met on the way. */
import type { Expression } from '../form/ast';
import { outside, packedEntry, pointerInto, targets } from './arrays';
import { callValue } from './calls';
import { declareVariable, makeNew, makeTyped } from './construct';
import { copyObject } from './copies';
import { Flow, type Machine } from './machine';
import { spanAt } from './model';
import { nameValue, readCells, writeCells } from './names';
import { narrow } from './narrowing';
import { bool } from './number-types';
import { binary, unary } from './operations';
import { asNumber, hasOperator, holds, operatorCall } from './operator-calls';
import { tried } from './overloads';
import { membersOf } from './packs';
import { basesOf, indexed, objectsOf, placeCells, pointerTo } from './places';
import { registersAt, stepRegisters, writeRegisters } from './register-targets';
import { maskedRead, readRegister } from './register-writes';
import { sizeOf } from './sizes';
import { fork } from './statements';
import { meetStrangeRegister } from './strangers';
import { resolveType } from './types';
import { type Cell, convert, either, join, known, truth, unknown, type Value } from './value';

const nowhere = unknown('the analysis was stopped before');

export function evaluate(machine: Machine, expression: Expression): Value {
  if (!machine.enter()) return nowhere;
  const value = follow(machine, expression);
  machine.leave();
  return value;
}

function follow(machine: Machine, expression: Expression): Value {
  switch (expression.kind) {
    case 'number':
      return known(expression.value, machine.types.literal(expression.type, expression.value));
    case 'name':
      return nameValue(machine, expression);
    case 'text':
      return unknown('it is a text', spanAt(machine.site, expression));
    case 'binary':
      return binaryValue(machine, expression);
    case 'unary':
      return unaryValue(machine, expression);
    case 'assign': {
      const { target } = expression;
      // Only names, pointers and macros reach registers; other targets are looked at behind the value.
      const early = /^(name|unary|call)$/.test(target.kind) ? placeCells(machine, target) : undefined;
      const registers = registersAt(machine, target, early);
      if (registers !== undefined) return writeRegisters(machine, registers, expression);
      const own = ownAssignment(machine, expression, early ?? []);
      if (own !== undefined) return own;
      const right = evaluate(machine, expression.value);
      const cells = early ?? placeCells(machine, target);
      if (cells === undefined || cells.length === 0) {
        if (cells === undefined) evaluate(machine, target);
        meetStrangeRegister(machine, expression);
        return right;
      }
      const { operator } = expression;
      const plain = cells[0]?.type === undefined ? right : asNumber(machine, right, expression.value);
      const value = operator === '' ? plain : binary(machine, operator, readCells(cells), plain);
      writeCells(machine, cells, assigned(cells, value));
      return cells.length === 1 ? readCells(cells) : value;
    }
    case 'step': {
      const cells = placeCells(machine, expression.operand);
      if (cells === undefined || cells.length === 0) return evaluate(machine, expression.operand);
      const registers = registersAt(machine, expression.operand, cells);
      if (registers !== undefined) return stepRegisters(machine, registers, expression);
      const own = operatorCall(machine, cells[0]?.value, expression.by === 1 ? '++' : '--', [], expression);
      if (own !== undefined) return own;
      const before = readCells(cells);
      const after = binary(machine, '+', before, known(expression.by, machine.types.int));
      writeCells(machine, cells, after);
      return expression.prefix ? readCells(cells) : before;
    }
    case 'choice': {
      const test = holds(machine, evaluate(machine, expression.test), expression.test);
      if (test === true) return evaluate(machine, expression.yes);
      if (test === false) return evaluate(machine, expression.no);
      return eitherValue(machine, expression);
    }
    case 'comma':
      evaluate(machine, expression.left);
      return evaluate(machine, expression.right);
    case 'call':
      return callValue(machine, expression);
    case 'index':
      return indexValue(machine, expression);
    case 'member': {
      const cells = placeCells(machine, expression);
      if (cells !== undefined) return readCells(cells);
      const [register] = registersAt(machine, expression, undefined) ?? [];
      if (register !== undefined) return readRegister(machine, register, expression);
      return unknown(`\`${expression.name}\` is not known`, spanAt(machine.site, expression));
    }
    case 'cast': {
      const value = evaluate(machine, expression.operand);
      const type = resolveType(machine, expression.type, machine.site);
      return type.pointers === 0 ? convert(value, type.number) : value;
    }
    case 'size':
      return sizeOf(machine, expression);
    case 'list': {
      const { items, type } = expression;
      if (type !== undefined) return makeTyped(machine, type, expression);
      const [only] = items;
      if (only !== undefined && items.length === 1) return evaluate(machine, only.value);
      for (const { value } of items) evaluate(machine, value);
      return unknown('it is a list', spanAt(machine.site, expression));
    }
    case 'this': {
      const self = machine.frame?.self;
      if (self === undefined) return unknown('`this` is not known here', spanAt(machine.site, expression));
      return pointerTo(self);
    }
    case 'lambda': {
      const { site, scope, frame } = machine;
      const self = frame?.self === undefined ? {} : { self: frame.self };
      const owner = frame?.callable.owner === undefined ? {} : { owner: frame.callable.owner };
      return { kind: 'function', options: [{ item: expression.definition, site, scope, ...self, ...owner }] };
    }
    case 'new':
      return makeNew(machine, expression);
    case 'let': {
      let value: Value = either;
      for (const variable of expression.variables) {
        value = readCells(declareVariable(machine, variable, machine.scope));
      }
      return value;
    }
    case 'opaque': {
      const members = membersOf(machine, expression);
      for (const member of members ?? []) evaluate(machine, member);
      if (members !== undefined) return unknown('it stands for several');
      for (const part of expression.parts) evaluate(machine, part);
      return unknown('the expression is not understood', spanAt(machine.site, expression));
    }
  }
}

/** What goes into a place: an object in the place of another is copied. */
function assigned(cells: readonly Cell[], value: Value): Value {
  const isCopy = value.kind === 'object' && cells.every((cell) => cell.value.kind === 'object');
  return isCopy ? copyObject(value) : value;
}

/** `lamp = HIGH` where the class of the lamp says what that means. */
function ownAssignment(
  machine: Machine,
  expression: Extract<Expression, { kind: 'assign' }>,
  cells: readonly Cell[],
): Value | undefined {
  const [cell] = cells;
  const sign = `${expression.operator}=`;
  if (cell === undefined || cells.length > 1 || !hasOperator(machine, cell.value, sign)) return undefined;
  const [right] = tried(machine, [expression.value]);
  // Another object of the class is copied.
  const isCopy = right?.kind === 'object' && cell.value.kind === 'object' && right.model === cell.value.model;
  return isCopy ? undefined : operatorCall(machine, cell.value, sign, [expression.value], expression);
}

/** Both values where a condition is not known, each followed from the same state. */
function eitherValue(machine: Machine, choice: Extract<Expression, { kind: 'choice' }>): Value {
  const { test, yes, no } = choice;
  const found: Value[] = [];
  const side = (expression: Expression, is: boolean) => () => {
    narrow(machine, test, is);
    found.push(evaluate(machine, expression));
    return Flow.next;
  };
  fork(machine, [side(yes, true), side(no, false)]);
  const [first, second] = found;
  if (first === undefined || second === undefined) return nowhere;
  return join(first, second);
}

function binaryValue(machine: Machine, expression: Extract<Expression, { kind: 'binary' }>): Value {
  const { operator } = expression;
  if ((operator === '&' || operator === '>>') && !machine.ports.none) {
    const read = maskedRead(machine, expression);
    if (read !== undefined) return read;
  }
  const given = evaluate(machine, expression.left);
  const own = operatorCall(machine, given, operator, [expression.right], expression);
  if (own !== undefined) return own;
  const left = asNumber(machine, given, expression.left);
  if (operator !== '&&' && operator !== '||') {
    const other = asNumber(machine, evaluate(machine, expression.right), expression.right);
    return binary(machine, operator, left, other);
  }
  const decided = operator === '||';
  const first = truth(left);
  if (first === decided) return known(decided ? 1 : 0, bool);
  if (first !== undefined)
    return truthValue(asNumber(machine, evaluate(machine, expression.right), expression.right));
  let right: Value = either;
  const run = () => {
    right = asNumber(machine, evaluate(machine, expression.right), expression.right);
    return Flow.next;
  };
  fork(machine, [run, () => Flow.next]);
  return truth(right) === decided ? known(decided ? 1 : 0, bool) : either;
}

function truthValue(value: Value): Value {
  const is = truth(value);
  return is === undefined ? either : known(is ? 1 : 0, bool);
}

function unaryValue(machine: Machine, expression: Extract<Expression, { kind: 'unary' }>): Value {
  const { operator, operand } = expression;
  if (operator === '&') return addressOf(machine, operand);
  const value = evaluate(machine, operand);
  if (operator !== '*')
    return (
      operatorCall(machine, value, operator, [], expression) ??
      unary(machine, operator, asNumber(machine, value, operand))
    );
  if (value.kind === 'pointer' || value.kind === 'array') {
    const cells = targets(value);
    const [only] = cells;
    if (only?.register !== undefined) return readRegister(machine, only, operand);
    return readCells(cells);
  }
  return value.kind === 'function' || value.kind === 'object' ? value : unknown('the pointer is not known');
}

function addressOf(machine: Machine, operand: Expression): Value {
  if (operand.kind === 'index') {
    const bases = basesOf(machine, operand.base);
    const index = evaluate(machine, operand.index);
    const [base] = bases;
    if (base?.kind === 'array' && index.kind === 'known' && index.values.length === 1) {
      return pointerInto(base, index.values[0] ?? 0);
    }
    return { kind: 'pointer', cells: bases.flatMap((one) => indexed(one, index)) };
  }
  const value = operand.kind === 'name' || operand.kind === 'member' ? undefined : evaluate(machine, operand);
  if (value !== undefined) return value;
  const cells = placeCells(machine, operand);
  return cells === undefined || cells.length === 0 ? evaluate(machine, operand) : { kind: 'pointer', cells };
}

function indexValue(machine: Machine, expression: Extract<Expression, { kind: 'index' }>): Value {
  const bases = basesOf(machine, expression.base);
  const index = evaluate(machine, expression.index);
  const [only] = bases;
  if (only?.kind === 'array' && bases.length === 1) {
    const packed = packedEntry(only, index);
    if (packed !== undefined) return packed;
  }
  const cells = bases.flatMap((base) => indexed(base, index));
  if (cells.length > 0) return readCells(cells);
  if (only?.kind === 'array') return outside(only, index);
  const [object] = expression.base.kind === 'name' ? objectsOf(machine, expression.base) : [];
  const own = operatorCall(machine, object, '[]', [expression.index], expression);
  if (own !== undefined) return own;
  return unknown('the array is not known', spanAt(machine.site, expression.base));
}
