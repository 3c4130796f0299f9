/**
 * What a board means to C++ text. The sketch layer gets this as an argument: it reads names and macros and knows no
 * hardware.
 */
import type { PinAction, PinMode } from './pin-use';

/** Names and macros that a board's core predefines. */
export interface Platform {
  /** Object-like macros by name, with their replacement text: `__AVR_ATmega328P__` → `1`. */
  readonly macros: Readonly<Record<string, string>>;
  /** Constants by name: `A0` → 14, `LED_BUILTIN` → 13, `HIGH` → 1, `INPUT_PULLUP` → 2. */
  readonly names: Readonly<Record<string, number>>;
  /** What the numbers given to pinMode mean on this core. */
  readonly modes: Readonly<Record<number, PinMode>>;
  /** Bits of an `int`: 16 on AVR, 32 elsewhere. */
  readonly intBits: 16 | 32;
  /**
   * Numbers that analogRead takes for another pin: cores of the first hour count the analog inputs from 0, so that
   * `analogRead(0)` is A0.
   */
  readonly analogNumbers: Readonly<Record<number, number>>;
  /** External interrupt line → pin number, for `digitalPinToInterrupt` and raw line numbers. */
  readonly interruptPins: Readonly<Record<number, number>>;
}

/** What one function or method does to a pin. */
export interface CallFacts {
  readonly name: string;
  readonly action: PinAction;
  /** Index of the argument that is the pin. */
  readonly pin: number;
  /** Index of the argument that is the level, mode, duty or frequency. */
  readonly value?: number;
  /** Index of the argument that is a handler run later as an interrupt. */
  readonly handler?: number;
  /** The pin argument counts interrupt lines, not pins (`attachInterrupt`). */
  readonly pinIsInterruptLine?: boolean;
}

/** A firmware library or the core itself, as data from hardware-schemas/libraries/. */
export interface LibraryFacts {
  readonly id: string;
  readonly functions: readonly CallFacts[];
  readonly classes: readonly { readonly name: string; readonly methods: readonly CallFacts[] }[];
}
