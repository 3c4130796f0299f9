/** Calls that change or test one bit of a place, rewritten as the assignments that they stand for. */
import type { Expression } from '../form/ast';
import type { CallExpression } from './functions';

const rewritten = new WeakMap<CallExpression, Expression>();

type Rewrite = (list: readonly Expression[], bit: Expression, call: CallExpression) => Expression | undefined;

const set: Rewrite = ([target], bit, { start, end }) =>
  target && { kind: 'assign', operator: '|', target, value: bit, start, end };
const clear: Rewrite = ([target], bit, { start, end }) =>
  target && {
    kind: 'assign',
    operator: '&',
    target,
    value: { kind: 'unary', operator: '~', operand: bit, start: bit.start, end: bit.end },
    start,
    end,
  };
const toggle: Rewrite = ([target], bit, { start, end }) =>
  target && { kind: 'assign', operator: '^', target, value: bit, start, end };
const test: Rewrite = ([target], bit, { start, end }) =>
  target && { kind: 'binary', operator: '&', left: target, right: bit, start, end };
const testNot: Rewrite = (list, bit, call) => {
  const operand = test(list, bit, call);
  return operand && { kind: 'unary', operator: '!', operand, start: call.start, end: call.end };
};

const read: Rewrite = ([target, at], _, { start, end }) => {
  if (target === undefined || at === undefined) return undefined;
  const unit: Expression = { kind: 'number', value: 1, type: 'int', start, end };
  const moved: Expression = { kind: 'binary', operator: '>>', left: target, right: at, start, end };
  const operand: Expression = { kind: 'binary', operator: '&', left: moved, right: unit, start, end };
  const not: Expression = { kind: 'unary', operator: '!', operand, start, end };
  return { kind: 'unary', operator: '!', operand: not, start, end };
};

/** `x = (x & ~bit) | (value ? bit : 0)`, which tells each bit apart where the value is not known. */
const write: Rewrite = ([target, at, value], bit, { start, end }) => {
  if (target === undefined || at === undefined || value === undefined) return undefined;
  const place = { start: value.start, end: value.end };
  const digit = (number: number): Expression => ({ kind: 'number', value: number, type: 'int', ...place });
  const truth: Expression = { kind: 'choice', test: value, yes: digit(1), no: digit(0), ...place };
  const others: Expression = { kind: 'unary', operator: '~', operand: bit, ...place };
  const kept: Expression = { kind: 'binary', operator: '&', left: target, right: others, ...place };
  const moved: Expression = { kind: 'binary', operator: '<<', left: truth, right: at, ...place };
  const sum: Expression = { kind: 'binary', operator: '|', left: kept, right: moved, ...place };
  return { kind: 'assign', operator: '', target, value: sum, start, end };
};

const rewrites: Readonly<Record<string, Rewrite>> = {
  bitSet: set,
  sbi: set,
  bitClear: clear,
  cbi: clear,
  bitToggle: toggle,
  bitWrite: write,
  bitRead: read,
  bit_is_set: test,
  bit_is_clear: testNot,
  loop_until_bit_is_set: test,
  loop_until_bit_is_clear: test,
};

/** The expression that a call of that name stands for; undefined for other calls. */
export function bitCall(name: string, call: CallExpression): Expression | undefined {
  const rewrite = Object.hasOwn(rewrites, name) ? rewrites[name] : undefined;
  const at = call.arguments[1];
  if (rewrite === undefined || at === undefined) return undefined;
  const ready = rewritten.get(call);
  if (ready !== undefined) return ready;
  const place = { start: at.start, end: at.end };
  const unit: Expression = { kind: 'number', value: 1, type: 'unsigned long', ...place };
  const bit: Expression = { kind: 'binary', operator: '<<', left: unit, right: at, ...place };
  const made = rewrite(call.arguments, bit, call);
  if (made !== undefined) rewritten.set(call, made);
  return made;
}
