/** Evaluation of expressions: values come back, and what calls do to pins is met on the way. */
import type { Expression } from '../form/ast';
import { outside, packedEntry, pointerInto, targets } from './arrays';
import { callValue } from './calls';
import { declareVariable, makeNew, makeTyped } from './construct';
import { Flow, type Machine } from './machine';
import { spanAt } from './model';
import { nameValue, readCells, writeCells } from './names';
import { bool } from './number-types';
import { binary, unary } from './operations';
import { basesOf, indexed, placeCells } from './places';
import { registersAt, stepRegisters, writeRegisters } from './register-targets';
import { maskedRead, readRegister } from './register-writes';
import { sizeOf } from './sizes';
import { fork } from './statements';
import { meetStrangeRegister } from './strangers';
import { resolveType } from './types';
import { convert, either, join, known, truth, unknown, type Value } from './value';

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
      // Only names and pointers reach registers; other targets are looked at behind the value.
      const early =
        target.kind === 'name' || target.kind === 'unary' ? placeCells(machine, target) : undefined;
      const registers = registersAt(machine, target, early);
      if (registers !== undefined) return writeRegisters(machine, registers, expression);
      const right = evaluate(machine, expression.value);
      const cells = early ?? placeCells(machine, target);
      if (cells === undefined || cells.length === 0) {
        if (cells === undefined) evaluate(machine, target);
        meetStrangeRegister(machine, expression);
        return right;
      }
      const { operator } = expression;
      const value = operator === '' ? right : binary(machine, operator, readCells(cells), right);
      writeCells(machine, cells, value);
      return cells.length === 1 ? readCells(cells) : value;
    }
    case 'step': {
      const cells = placeCells(machine, expression.operand);
      if (cells === undefined || cells.length === 0) return evaluate(machine, expression.operand);
      const registers = registersAt(machine, expression.operand, cells);
      if (registers !== undefined) return stepRegisters(machine, registers, expression);
      const before = readCells(cells);
      const after = binary(machine, '+', before, known(expression.by, machine.types.int));
      writeCells(machine, cells, after);
      return expression.prefix ? readCells(cells) : before;
    }
    case 'choice': {
      const test = truth(evaluate(machine, expression.test));
      if (test === true) return evaluate(machine, expression.yes);
      if (test === false) return evaluate(machine, expression.no);
      return eitherValue(machine, expression.yes, expression.no);
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
      return self ?? unknown('`this` is not known here', spanAt(machine.site, expression));
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
    case 'opaque':
      for (const part of expression.parts) evaluate(machine, part);
      return unknown('the expression is not understood', spanAt(machine.site, expression));
  }
}

/** Both values where a condition is not known, each followed from the same state. */
function eitherValue(machine: Machine, yes: Expression, no: Expression): Value {
  const found: Value[] = [];
  const side = (expression: Expression) => () => {
    found.push(evaluate(machine, expression));
    return Flow.next;
  };
  fork(machine, [side(yes), side(no)]);
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
  const left = evaluate(machine, expression.left);
  if (operator !== '&&' && operator !== '||') {
    return binary(machine, operator, left, evaluate(machine, expression.right));
  }
  const decided = operator === '||';
  const first = truth(left);
  if (first === decided) return known(decided ? 1 : 0, bool);
  if (first !== undefined) return truthValue(evaluate(machine, expression.right));
  let right: Value = either;
  const run = () => {
    right = evaluate(machine, expression.right);
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
  if (operator !== '*') return unary(machine, operator, value);
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
  return unknown('the array is not known', spanAt(machine.site, expression.base));
}
