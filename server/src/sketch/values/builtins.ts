/** Functions of the core and the language whose value can be reckoned, or said to be unknown for a reason. */
import type { Expression } from '../form/ast';
import { targets } from './arrays';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { spanAt } from './model';
import { readCells } from './names';
import { commonType } from './number-types';
import { binary, range } from './operations';
import { registerCalls } from './registers';
import { either, type Known, known, knownSet, single, type Unknown, unknown, type Value } from './value';

type Call = Extract<Expression, { kind: 'call' }>;

/** Calls whose value comes from outside, with the reason. None is below zero. */
const fromOutside: Readonly<Record<string, string>> = {
  analogRead: 'it is read from an analog input',
  pulseIn: 'it is a measured time',
  pulseInLong: 'it is a measured time',
  shiftIn: 'it is read from a shift register',
  millis: 'it is the time',
  micros: 'it is the time',
};

const tableReads = /^pgm_read_(byte|word|dword|ptr|float)(_near|_far)?$/;

const lists: Readonly<Record<string, (machine: Machine, values: readonly Value[]) => Value | undefined>> = {
  min: (machine, [a, b]) => best(machine, a, b, Math.min),
  max: (machine, [a, b]) => best(machine, a, b, Math.max),
  abs: (_, [a]) => each(a, Math.abs) ?? (a?.kind === 'unknown' ? { ...a, natural: true } : undefined),
  sq: (machine, [a]) => (a === undefined ? undefined : binary(machine, '*', a, a)),
  constrain: (machine, [a, low, high]) => constrained(machine, a, low, high),
  map: (machine, [a, ...ends]) => mapped(machine, a, ends),
  bit: (machine, [a]) => shifted(machine, a),
  _BV: (machine, [a]) => shifted(machine, a),
  lowByte: (machine, [a]) =>
    a === undefined ? undefined : binary(machine, '&', a, known(255, machine.types.int)),
  highByte: (_, [a]) => each(a, (value) => (value >> 8) & 255),
  random: (machine, values) => randomValue(machine, values),
  isDigit: () => either,
};

/** The value of a call by name; undefined where the name means nothing here. */
export function builtinValue(
  machine: Machine,
  name: string,
  call: Call,
  done: readonly Value[] | undefined,
): Value | undefined {
  const bare = name.startsWith('std::') ? name.slice(5) : name;
  const values = () => done ?? call.arguments.map((argument) => evaluate(machine, argument));
  if (bare === 'digitalRead') {
    values();
    return either;
  }
  const reason = Object.hasOwn(fromOutside, bare) ? fromOutside[bare] : undefined;
  if (reason !== undefined) {
    values();
    return unknown(reason, spanAt(machine.site, call), machine.types.int, true);
  }
  if (bare === 'digitalPinToInterrupt') return lineOfPin(machine, values()[0]);
  if (tableReads.test(bare)) {
    const [at] = values();
    if (at?.kind === 'pointer' || at?.kind === 'array') return readCells(targets(at));
    return unknown('the table is not known', spanAt(machine.site, call));
  }
  if (Object.hasOwn(registerCalls, bare)) {
    const [pin] = values();
    const reason = pin === undefined ? 'the argument is missing' : firstReason([pin]);
    return registerCalls[bare]?.(machine, pin) ?? unknown(reason, spanAt(machine.site, call));
  }
  const compute = Object.hasOwn(lists, bare) ? lists[bare] : undefined;
  if (compute === undefined) return undefined;
  const given = values();
  return compute(machine, given) ?? unknown(firstReason(given), spanAt(machine.site, call));
}

function firstReason(values: readonly Value[]): string {
  const first = values.find((value): value is Unknown => value.kind === 'unknown');
  return first?.reason ?? 'it is not a number';
}

function each(value: Value | undefined, turn: (value: number) => number): Value | undefined {
  if (value?.kind !== 'known') return undefined;
  return knownSet(value.values.map(turn), value.type, value.origins);
}

function best(
  machine: Machine,
  a: Value | undefined,
  b: Value | undefined,
  choose: (a: number, b: number) => number,
): Value | undefined {
  if (a?.kind !== 'known' || b?.kind !== 'known') return undefined;
  const found: number[] = [];
  for (const left of a.values) for (const right of b.values) found.push(choose(left, right));
  return knownSet(found, commonType(a.type, b.type, machine.types.int), a.origins);
}

function constrained(
  machine: Machine,
  value: Value | undefined,
  low: Value | undefined,
  high: Value | undefined,
): Value | undefined {
  if (low?.kind !== 'known' || high?.kind !== 'known') return undefined;
  if (value?.kind === 'known') return best(machine, best(machine, value, low, Math.max), high, Math.min);
  const from = low.values[0] ?? 0;
  const to = high.values[high.values.length - 1] ?? 0;
  return to - from < 64
    ? knownSet(range(from, to), low.type)
    : { ...unknown('it is not known closer'), natural: from >= 0 };
}

/** `map`: whole numbers, cut off towards zero, as the core does it. */
function mapped(machine: Machine, value: Value | undefined, ends: readonly Value[]): Value | undefined {
  const [fromLow, fromHigh, toLow, toHigh] = ends.map(single);
  if (fromLow === undefined || fromHigh === undefined || toLow === undefined || toHigh === undefined) {
    return undefined;
  }
  if (fromHigh === fromLow) return unknown('it is divided by zero');
  const turn = (one: number) =>
    Math.trunc(((one - fromLow) * (toHigh - toLow)) / (fromHigh - fromLow)) + toLow;
  if (value?.kind === 'known') return knownSet(value.values.map(turn), machine.types.long, value.origins);
  return undefined;
}

function shifted(machine: Machine, value: Value | undefined): Value | undefined {
  return value === undefined ? undefined : binary(machine, '<<', known(1, machine.types.long), value);
}

function randomValue(machine: Machine, values: readonly Value[]): Value {
  const [first, second] = values.map(single);
  const from = second === undefined ? 0 : first;
  const to = second ?? first;
  const unknownNumber = unknown('it is a random number', undefined, machine.types.long, true);
  if (from === undefined || to === undefined || values.length === 0) return unknownNumber;
  return to > from && to - from <= 64 ? knownSet(range(from, to - 1), machine.types.long) : unknownNumber;
}

/** The line of a pin, with the pin kept: where the board has no line for it, it is still the pin that was meant. */
function lineOfPin(machine: Machine, pin: Value | undefined): Value | undefined {
  if (pin === undefined) return undefined;
  if (pin.kind !== 'known') return { ...unknown(firstReason([pin])), pin };
  const lines = new Map(
    Object.entries(machine.platform.interruptPins).map(([line, at]) => [at, Number(line)]),
  );
  const found: number[] = pin.values.map((one) => lines.get(one) ?? -1);
  const set: Known | Unknown = knownSet(found, machine.types.int);
  return { ...set, pin };
}
