/** What the analysis knows of a value: finitely many numbers, an array, an object, a pointer, a function, or nothing. */
import type { Span } from '../../base/span';
import type { FunctionItem } from '../form/ast';
import type { Alias, ClassModel, Site } from './model';
import type { NumberType } from './number-types';
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
  /** Of a pin got by the number of an interrupt line: the numbers as the call gave them. */
  readonly lines?: readonly number[];
}

export interface Unknown {
  readonly kind: 'unknown';
  /** A phrase that goes on "…, because". */
  readonly reason: string;
  readonly span: Span | undefined;
  readonly type: NumberType | undefined;
  /** Never below zero. */
  readonly natural: boolean;
  readonly pin: Value | undefined;
  /** Nothing was put there yet: where something may have been, it was, for reading it else means nothing. */
  readonly unset?: true;
  /** Of a pin asked for by the number of an interrupt line that the board lacks: the numbers as given. */
  readonly lines?: readonly number[];
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
  /** Types in angle brackets, by the names that the class gives them. */
  types?: Map<string, Alias>;
  /** Name of an object that a library makes itself. */
  readonly label?: string;
  /** Pins given to its constructor and methods, by their names. */
  given?: Map<string, readonly Value[]>;
}

export interface Pointer {
  readonly kind: 'pointer';
  /** It may be a null pointer as well. */
  readonly nullable?: true;
  readonly cells: readonly Cell[];
  /** Where it points into an array: the array, and the entry. */
  readonly array?: ArrayValue;
  readonly index?: number;
  /** Where it may point into several places: all that it can get to by being moved. */
  readonly reach?: readonly Cell[];
}

export interface Callable {
  readonly item: FunctionItem;
  readonly site: Site;
  readonly owner?: ClassModel;
  readonly scope?: Scope;
  readonly self?: ObjectValue;
  /** A function of a library, by its name. */
  readonly library?: string;
}

export interface FunctionValue {
  readonly kind: 'function';
  /** It may be a null pointer as well. */
  readonly nullable?: true;
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
  /** What a bit in it changes: the direction of its pin, the level, or whether a timer drives it. */
  readonly changes: 'direction' | 'level' | 'timer';
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
  /** An interrupt handler writes it, or another member of its union: nothing is known of it between two statements. */
  shared: false | 'handler' | 'union';
  /** Set for a register of the chip: what is written goes to pins. */
  readonly register?: Register;
  /** The value as it is read, with the name it is read by. */
  read: Known | undefined;
  readOf: Value | undefined;
}
