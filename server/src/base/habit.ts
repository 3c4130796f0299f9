/**
 * Habits of a sketch: plain facts of its form that no pin use tells, such as a variable shared with an interrupt
 * handler, a time kept in too few bits, or a register that is written by name. They are told as they are written; what
 * is wrong with one on a board is for the rules to say.
 */
import type { Span } from './span';

/** A place in a function of the sketch. */
export interface CodePlace {
  readonly span: Span;
  readonly function: string;
}

/** A body that an interrupt runs. */
export interface HandlerHabit {
  readonly kind: 'handler';
  /** Its name; `ISR(VECTOR)` for one of the chip's own, empty for one without a name. */
  readonly name: string;
  /** The name where it is defined. */
  readonly span: Span;
  /** The whole definition: what is called inside of it runs in the interrupt. */
  readonly body: Span;
  /** Calls that hand it to an interrupt; none for the chip's own. */
  readonly attached: readonly Span[];
  /** True where the text gives it, or anything through a macro, an attribute that puts it in memory the chip always reaches. */
  readonly inMemory: boolean;
  /** Offset in the file of `span` where such an attribute can be written: in front of its name. */
  readonly attributeAt?: number;
  /** Places where it adds one to a variable, by the variable's name. */
  readonly counts: readonly (CodePlace & { readonly name: string })[];
  /** True where it, or what it calls, asks a clock or tests a pin again. */
  readonly looksTwice: boolean;
}

/** A global number that a handler writes and the running program reads. */
export interface SharedHabit {
  readonly kind: 'shared-variable';
  readonly name: string;
  /** Its type as written. */
  readonly type: string;
  readonly bits: number;
  readonly isVolatile: boolean;
  /** The name where it is declared. */
  readonly span: Span;
  /** Where `volatile` can be written; absent where the declaration has more names or other qualifiers. */
  readonly volatileAt?: number;
  readonly handler: string;
  readonly written: Span;
  /** Reads outside of handlers, on the way from loop. */
  readonly reads: readonly (CodePlace & {
    /** True where the function, or one that calls it, stops interrupts or reads twice. */
    readonly guarded: boolean;
  })[];
  /** A loop with nothing in it that waits for the variable. */
  readonly waitedFor?: Span;
}

/** A loop that waits until something from outside happens, without a limit of time. */
export interface WaitHabit {
  readonly kind: 'wait-loop';
  readonly span: Span;
  readonly function: string;
  /** A pin, the console's port, or anything else. */
  readonly waitsFor: 'pin' | 'console' | 'other';
  /** Object that is waited for: `Serial`. */
  readonly name?: string;
}

/** A restart by a jump to the program's first instruction. */
export interface JumpHabit {
  readonly kind: 'jump';
  readonly span: Span;
  readonly function: string;
  readonly how: 'pointer' | 'assembler';
}

/** A clock's number kept in a variable with too few bits for it, and used as a time. */
export interface NarrowTimeHabit {
  readonly kind: 'time-narrow';
  readonly name: string;
  readonly type: string;
  /** Bits that hold a time: those of the type without its sign. */
  readonly bits: number;
  readonly clock: 'millis' | 'micros';
  /** The name where it is declared. */
  readonly span: Span;
  readonly set: Span;
  readonly used: Span;
}

/** A clock compared with a moment in its future. */
export interface DeadlineHabit {
  readonly kind: 'time-compared';
  readonly name: string;
  readonly clock: 'millis' | 'micros';
  readonly span: Span;
  readonly set: Span;
}

/** A register of the chip that is written by name. */
export interface RegisterHabit {
  readonly kind: 'register';
  readonly name: string;
  readonly function: string;
  readonly span: Span;
  /** The new value is `(old & keep) | set`; absent where it is not known. */
  readonly change?: { readonly keep: number; readonly set: number };
}

/** A variable that counts changes of a pin in the running program. */
export interface EdgeHabit {
  readonly kind: 'counts-edges';
  readonly name: string;
  readonly span: Span;
  readonly function: string;
  /** The one digitalRead of that function. */
  readonly read: Span;
}

/** What is put into one transmission of a two-wire bus. */
export interface TransmissionHabit {
  readonly kind: 'transmission';
  /** Object: `Wire`. */
  readonly name: string;
  readonly span: Span;
  readonly function: string;
  /** Bytes at least. */
  readonly bytes: number;
}

export type Habit =
  | HandlerHabit
  | SharedHabit
  | WaitHabit
  | JumpHabit
  | NarrowTimeHabit
  | DeadlineHabit
  | RegisterHabit
  | EdgeHabit
  | TransmissionHabit;
