/** What the analysis knows of a value: finitely many numbers, an array, an object, a pointer, a function, or nothing. */
import type { Span } from '../../base/span';
import type { FunctionItem } from '../form/ast';
import type { ClassModel, Site } from './model';
import { bool, type NumberType, wrap } from './number-types';
import type { Scope } from './scope';

/** A name that gives a value: a variable, a macro, an entry of an enumeration, or a name of the board. */
export interface Definition {
  readonly name: string;
  /** The name with its namespaces and class in front, where it has any. */
  readonly qualified?: string;
  /** Absent for names of the board. */
  readonly span?: Span;
  readonly kind: 'global' | 'local' | 'macro' | 'entry' | 'field' | 'board';
  /** An entry of an enumeration that is no number without a cast. */
  readonly scoped?: true;
  /** The variable's cell, where it is one: whether something writes it decides if it is a constant. */
  readonly cell?: Cell;
}

export interface Known {
  readonly kind: 'known';
  /** Sorted, no doubles, never empty. */
  readonly values: readonly number[];
  readonly type: NumberType;
  /** Names the number came through, nearest first. */
  readonly origins: readonly Definition[];
  /** How many of the origins, from the first on, hold this very number; the others were reckoned with. */
  readonly direct: number;
  /** For an interrupt line: the pin it was asked for. */
  readonly pin?: Value;
  /** Counted as an analogue input before: the names it came through hold that other number. */
  readonly renumbered?: true;
}

export interface Unknown {
  readonly kind: 'unknown';
  /** A phrase that goes on "…, because". */
  readonly reason: string;
  readonly span?: Span;
  readonly type?: NumberType;
  /** Never below zero. */
  readonly natural?: boolean;
  readonly pin?: Value;
}

export interface ArrayValue {
  readonly kind: 'array';
  readonly length: number;
  /** Bytes of one entry where known, for sizeof. */
  readonly entryBytes: number | undefined;
  /** Entries, once they are looked at. Absent while `packed` stands for them, or where `all` does. */
  cells: Cell[] | undefined;
  readonly packed: readonly number[] | undefined;
  /** One cell for every entry of a long array. */
  readonly all: Cell | undefined;
  readonly entryType: NumberType | undefined;
  readonly definition: Definition | undefined;
}

export interface ObjectValue {
  readonly kind: 'object';
  readonly className: string;
  /** Absent for a class of a library. */
  readonly model: ClassModel | undefined;
  readonly fields: Map<string, Cell>;
  /** Name of an object that a library makes itself. */
  readonly label?: string;
  /** Pins given to its constructor and methods, by their names. */
  given?: Map<string, readonly Value[]>;
}

export interface Pointer {
  readonly kind: 'pointer';
  readonly cells: readonly Cell[];
  /** Where it points into an array: the array, and the entry. */
  readonly array?: ArrayValue;
  readonly index?: number;
}

export interface Callable {
  readonly item: FunctionItem;
  readonly site: Site;
  readonly owner?: ClassModel;
  readonly scope?: Scope;
  readonly self?: ObjectValue;
}

export interface FunctionValue {
  readonly kind: 'function';
  readonly options: readonly Callable[];
}

/** The states that all pins can be in together: one text for each alternative (see pin-states.ts). */
export interface StatesValue {
  readonly kind: 'states';
  /** Sorted, no doubles. */
  readonly together: readonly string[];
}

export type Value = Known | Unknown | ArrayValue | ObjectValue | Pointer | FunctionValue | StatesValue;

/** A register of the chip that reaches pins. */
export interface Register {
  readonly name: string;
  /** What a bit in it changes: the direction of its pin, or the level. */
  readonly changes: 'direction' | 'level';
  /** A one sets, clears or turns over what it changes; `all`: every bit is taken as it is. */
  readonly by: 'all' | 'set' | 'clear' | 'flip';
  /** Reading it reads the pins. */
  readonly reads: boolean;
  /** The pin of each bit. */
  readonly pins: readonly (number | undefined)[];
}

/** A place that holds a value. */
export interface Cell {
  value: Value;
  readonly type: NumberType | undefined;
  readonly definition: Definition | undefined;
  /** Later cells have higher numbers. */
  serial: number;
  /** Written after its definition. */
  written: boolean;
  /** An interrupt handler writes it: nothing is known of it between two statements. */
  shared: boolean;
  /** Set for a register of the chip: what is written goes to pins. */
  readonly register?: Register;
  /** The value as it is read, with the name it is read by. */
  read: Known | undefined;
  readOf: Value | undefined;
}

let cells = 0;

/** The number of the newest cell. */
export function newestCell(): number {
  return cells;
}

export function newCell(value: Value, type?: NumberType, definition?: Definition): Cell {
  cells += 1;
  return {
    value,
    type,
    definition,
    serial: cells,
    written: false,
    shared: false,
    read: undefined,
    readOf: undefined,
  };
}

/** More values than this are as good as unknown. */
export const maximumValues = 64;
const maximumOrigins = 8;
const none: readonly Definition[] = [];

/** Small numbers come again and again: each is made once for each type. */
const small = new Map<NumberType, (Known | undefined)[]>();

export function known(value: number, type: NumberType): Known {
  if (value >= 0 && value < 256 && Number.isInteger(value)) {
    let made = small.get(type);
    if (made === undefined) {
      made = [];
      small.set(type, made);
    }
    const old = made[value];
    if (old !== undefined) return old;
    const one: Known = { kind: 'known', values: [value + 0], type, origins: none, direct: 0 };
    made[value] = one;
    return one;
  }
  return { kind: 'known', values: [value], type, origins: none, direct: 0 };
}

export function unknown(reason: string, span?: Span, type?: NumberType, natural = false): Unknown {
  return {
    kind: 'unknown',
    reason,
    ...(span === undefined ? {} : { span }),
    ...(type === undefined ? {} : { type }),
    ...(natural ? { natural } : {}),
  };
}

/** A set of numbers; unknown where there are too many. */
export function knownSet(
  values: Iterable<number>,
  type: NumberType,
  origins: readonly Definition[] = none,
  direct = 0,
): Known | Unknown {
  const sorted = [...new Set(values)].sort((a, b) => a - b);
  if (sorted.length > maximumValues)
    return unknown(`it takes more than ${maximumValues} values`, undefined, type);
  return { kind: 'known', values: sorted, type, origins, direct };
}

/** Either truth value. */
export const either: Known = { kind: 'known', values: [0, 1], type: bool, origins: none, direct: 0 };

/** An unknown of a type; a truth value has only two. */
export function unknownOf(type: NumberType | undefined, reason: string, span?: Span): Known | Unknown {
  if (type === bool) return either;
  return unknown(reason, span, type, type !== undefined && !type.signed && !type.float);
}

/** True, false, or undefined where it may be both. */
export function truth(value: Value): boolean | undefined {
  if (value.kind === 'unknown') return undefined;
  if (value.kind !== 'known') return true;
  const zero = value.values.includes(0);
  if (zero && value.values.length === 1) return false;
  return zero ? undefined : true;
}

/** The number a value certainly is. */
export function single(value: Value): number | undefined {
  return value.kind === 'known' && value.values.length === 1 ? value.values[0] : undefined;
}

export function sameOrigins(a: readonly Definition[], b: readonly Definition[]): boolean {
  return a === b || (a.length === b.length && a.every((one, index) => one === b[index]));
}

export function joinOrigins(a: readonly Definition[], b: readonly Definition[]): readonly Definition[] {
  if (b.length === 0 || sameOrigins(a, b)) return a;
  if (a.length === 0) return b;
  return [...new Set([...a, ...b])].slice(0, maximumOrigins);
}

/** The number as it is read through a name. */
export function readThrough(value: Known, definition: Definition): Known {
  if (value.origins.includes(definition)) return value;
  const origins = [definition, ...value.origins].slice(0, maximumOrigins);
  return { ...value, origins, direct: Math.min(value.direct + 1, origins.length) };
}

/** True where nothing is lost by keeping `a` in the place of `b`. */
export function same(a: Value, b: Value): boolean {
  if (a === b) return true;
  if (a.kind === 'known' && b.kind === 'known') {
    return (
      a.type === b.type &&
      a.values.length === b.values.length &&
      a.values.every((value, index) => value === b.values[index]) &&
      sameOrigins(a.origins, b.origins)
    );
  }
  if (a.kind === 'unknown' && b.kind === 'unknown') return a.type === b.type;
  if (a.kind === 'pointer' && b.kind === 'pointer') {
    return (
      a.array === b.array &&
      a.index === b.index &&
      a.cells.length === b.cells.length &&
      a.cells.every((cell, index) => cell === b.cells[index])
    );
  }
  if (a.kind === 'states' && b.kind === 'states') {
    return a.together.length === b.together.length && a.together.every((one, at) => one === b.together[at]);
  }
  if (a.kind === 'function' && b.kind === 'function') {
    return (
      a.options.length === b.options.length && a.options.every((one, i) => one.item === b.options[i]?.item)
    );
  }
  return false;
}

/** What holds where either value may. */
export function join(a: Value, b: Value): Value {
  if (a === b || same(a, b)) return a;
  if (a.kind === 'unknown') return a;
  if (b.kind === 'unknown') return b;
  if (a.kind === 'known' && b.kind === 'known') {
    const origins = joinOrigins(a.origins, b.origins);
    const direct = a.direct > 0 && b.direct > 0 ? origins.length : Math.max(a.direct, b.direct);
    return knownSet([...a.values, ...b.values], a.type, origins, direct);
  }
  if (a.kind === 'pointer' && b.kind === 'pointer') {
    const cells = [...new Set([...a.cells, ...b.cells])];
    if (cells.length <= maximumValues) return { kind: 'pointer', cells };
  }
  if (a.kind === 'function' && b.kind === 'function') {
    const options = [...a.options];
    for (const one of b.options) if (!options.some((other) => other.item === one.item)) options.push(one);
    if (options.length <= 8) return { kind: 'function', options };
  }
  if (a.kind === 'states' && b.kind === 'states') {
    const together = [...new Set([...a.together, ...b.together])].sort();
    return together.length > 256 ? unknown('too much goes together') : { kind: 'states', together };
  }
  // A null pointer beside a real one: what is done is done with the real one.
  if (a.kind === 'known') return b;
  if (b.kind === 'known') return a;
  return unknown('it is one of several things');
}

/** The value after it went into a place of a type. */
export function convert(value: Value, type: NumberType | undefined): Value {
  if (type === undefined) return value;
  if (value.kind === 'unknown') {
    if (value.type === type) return value;
    const turned = unknownOf(type, value.reason, value.span);
    return turned.kind === 'unknown' && value.natural ? { ...turned, natural: true } : turned;
  }
  if (value.kind !== 'known' || value.type === type) return value;
  const exact = value.values.every((one) => wrap(one, type) === one);
  if (exact) return { ...value, type };
  const values = value.values.map((one) => wrap(one, type));
  return knownSet(values, type, value.origins, 0);
}
