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
  /** Port and bit of the chip → pin number: `PD7` → 7. For writes to DDRD, PORTD and their kin. */
  readonly ports: Readonly<Record<string, number>>;
  /** Role → pin number: `i2c.sda` → 18, `uart0.tx` → 1. For calls that open a bus and name no pin. */
  readonly roles: Readonly<Record<string, number>>;
  /** External interrupt line → pin number, for `digitalPinToInterrupt` and raw line numbers. */
  readonly interruptPins: Readonly<Record<number, number>>;
}

/** What one function, method or constructor does to a pin, or to the chip. */
export interface CallFacts {
  readonly name: string;
  readonly action: PinAction;
  /** Index of the argument that is the pin. Absent: the call names none. */
  readonly pin?: number;
  /** The pin argument is an array of pins: every element counts. */
  readonly pinIsArray?: boolean;
  /** Index of the argument from which on every argument is a pin (a display's data lines). */
  readonly pinsFrom?: number;
  /** The argument that holds a pin may be left out, or be this number where there is no pin: 255, -1. */
  readonly noPin?: number;
  /** The pin has to be named, and may lead nowhere while another one of the call is in use: a port that only listens. */
  readonly mayStayOpen?: true;
  /** Index of the template argument that is the pin: `addLeds<CHIP, 6>`. */
  readonly templatePin?: number;
  /** Pins by the board's roles, for calls that name none: every role with this beginning, `i2c` or `uart0`. */
  readonly roles?: readonly string[];
  /** Index of the argument that is the level, mode, duty or frequency. */
  readonly value?: number;
  /** The value argument is the address of a device on a two-wire bus, in seven bits. */
  readonly valueIsAddress?: true;
  /** The one level it drives the pins to: the rest of the time it lets go of them. */
  readonly drivesOnly?: 'low';
  /** Mode the call sets by itself. */
  readonly mode?: PinMode;
  /** Index of the argument that is a handler run later as an interrupt. */
  readonly handler?: number;
  /** The pin argument counts interrupt lines, not pins (`attachInterrupt`). */
  readonly pinIsInterruptLine?: boolean;
  /** With how many arguments the call means this; absent: with any number. */
  readonly arguments?: { readonly min?: number; readonly max?: number };
  /** The pins are those given to the constructor or to an earlier call with this name (a method `begin()`). */
  readonly pinsOf?: string;
  /** Terminals of a part that the pins are meant for: that of `pin`, or in order those of `pinsFrom`. */
  readonly terminals?: readonly string[];
  /** How many pins can be in its hands at a time, keyed as the timers of a class. */
  readonly most?: Readonly<Record<string, number>>;
  /** Highest value argument that has a meaning, as long as the sketch does not set another range. */
  readonly highest?: number;
  /** Bytes that one transmission begun by the call holds, by core: `avr`, `esp8266`. */
  readonly bytes?: Readonly<Record<string, number>>;
  /** How often the call can write one cell of its memory for certain, by core: `avr`. */
  readonly cycles?: Readonly<Record<string, number>>;
  /** Timer the call takes, keyed as that of a class; where given, it stands before the class's. */
  readonly timers?: Readonly<Record<string, string>>;
}

/** A class of a firmware library. */
export interface ClassFacts {
  /** As the sketch writes it. A leading `*_` stands for any maker's name: `*_Strip` is every `Word_Strip`. */
  readonly name: string;
  /** Classes, of any library, whose methods it has too; a method it names itself hides theirs of that name. */
  readonly bases?: readonly string[];
  /** What making an object does. `name` is that of the class. */
  readonly constructors?: readonly CallFacts[];
  readonly methods: readonly CallFacts[];
  /** Objects the library makes itself: `Serial`, `Wire`. */
  readonly objects?: readonly string[];
  /**
   * The class is there only on boards whose core predefines one of these macros: `Serial` is a UART on one core and
   * USB on another. Absent: on every board.
   */
  readonly macros?: readonly string[];
  /** Board roles whose pins an object takes when it is begun. */
  readonly buses?: readonly string[];
  /**
   * Timer its methods take: by the chip's name in small letters (`atmega2560`), else by the family (`samd`); `avr` means
   * the ATmega328P alone, since its sisters have other timers.
   */
  readonly timers?: Readonly<Record<string, string>>;
}

/** A firmware library or the core itself, as data from hardware-schemas/libraries/. */
export interface LibraryFacts {
  readonly id: string;
  /** Headers that bring it: `Servo.h`. */
  readonly headers?: readonly string[];
  /** Numbers that the library gives a name: 255 for no pin. */
  readonly names?: Readonly<Record<string, number>>;
  readonly functions: readonly CallFacts[];
  readonly classes: readonly ClassFacts[];
}
