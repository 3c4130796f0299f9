/**
 * What a sketch does to pins: the boundary type between sketch/ and the rest. Pins are numbers as the core counts
 * them; which wire hangs on a number is not known here.
 */
import type { Habit } from './habit';
import type { Problem } from './read';
import type { Span } from './span';

/** What one call does to a pin, or to the chip where it names no pin. */
export type PinAction =
  | 'mode' // pinMode
  | 'write' // digitalWrite
  | 'read' // digitalRead
  | 'pwm' // analogWrite
  | 'analog-read' // analogRead
  | 'tone' // tone
  | 'tone-off' // noTone
  | 'interrupt' // attachInterrupt
  | 'servo' // Servo.attach
  | 'touch' // touchRead
  | 'dac' // dacWrite
  | 'release' // gives the pin back: detach, end
  | 'bus' // opens a bus and takes its pins: Serial.begin, Wire.begin, SPI.begin
  | 'transfer' // moves data over a bus that is open
  | 'device' // a library's object takes the pin for itself: a display, a strip, a sensor
  | 'interrupt-off' // detachInterrupt
  | 'interrupts' // interrupts, noInterrupts
  | 'reference' // analogReference, analogReadResolution
  | 'wait' // delay, delayMicroseconds
  | 'clock' // millis, micros
  | 'watchdog' // wdt_enable, wdt_reset
  | 'reset' // a restart of the chip
  | 'sleep' // deep sleep, sleep_mode
  | 'store'; // EEPROM

/** The modes a pin can be put in. */
export type PinMode = 'input' | 'output' | 'input-pullup' | 'input-pulldown';

/** A whole number known as one of finitely many values (sorted, no doubles), or unknown with the reason. */
export type Amount =
  | { readonly kind: 'known'; readonly values: readonly number[] }
  | {
      readonly kind: 'unknown';
      /** A phrase that goes on "…, because": "it is read from the serial port". */
      readonly reason: string;
      /** The place that hid the value. */
      readonly span?: Span;
    };

/** One step of the way from setup, loop or a handler to a use: the call that was taken and the function it enters. */
export interface CallStep {
  readonly function: string;
  readonly span: Span;
}

/** One thing the sketch does to a pin, on one call path. */
export interface PinUse {
  /** Name of the call as written: `digitalWrite`, `Servo.attach`. */
  readonly call: string;
  readonly action: PinAction;
  /** Pins it touches: none for a call that touches the chip alone. */
  readonly pins: Amount;
  /** Level, mode number, duty or frequency; absent where the call takes none. */
  readonly value?: Amount;
  /** The value is the address of a device on a two-wire bus. */
  readonly valueIsAddress?: true;
  /**
   * Modes it puts the pins in. For the action `mode`: what its value stands for on this platform, empty where unknown.
   * For other actions: the mode the call sets by itself, absent where it sets none.
   */
  readonly modes?: readonly PinMode[];
  /** The one level it drives the pins to: the rest of the time it lets go of them. */
  readonly drivesOnly?: 'low';
  /** Interrupt lines, where the argument counts those and gives no pin by digitalPinToInterrupt. */
  readonly lines?: readonly number[];
  /** The call wants a pin here, and the pin may lead nowhere while another one of the call is wired. */
  readonly mayStayOpen?: true;
  /** Terminal of a part that the library means the pin for: `echo`. */
  readonly terminal?: string;
  /** The pin argument. */
  readonly span: Span;
  /** The whole call expression. */
  readonly callSpan: Span;
  /** The value argument, where there is one. */
  readonly valueSpan?: Span;
  /** The pin as it can be written in setup(): a global constant's name or a number, e.g. `beacon` or `7`. */
  readonly pinText: string;
  /** Definitions the pin number came from, nearest first: the initialiser's declared name or the macro's name. */
  readonly origins: readonly Span[];
  /** One line that says how the number was got: "7, from `beacon`, line 3". Absent for a plain literal. */
  readonly how?: string;
  /** Function the call stands in. */
  readonly function: string;
  /** Calls from the entry (setup, loop, a handler) down to that function; empty inside the entry itself. */
  readonly path: readonly CallStep[];
  /** Part of the program the path starts from. */
  readonly phase: 'setup' | 'loop' | 'interrupt';
  /** Position in the order of execution, over all phases: setup before loop. */
  readonly order: number;
  /** True where every run reaches this use with these pins (no undecided branch on the way). */
  readonly certain: boolean;
}

/** A named constant, variable or macro of the sketch that gave a pin number. */
export interface PinName {
  readonly name: string;
  readonly pins: readonly number[];
  /** The name where it is defined. */
  readonly definition: Span;
  /** Every other place the name stands. */
  readonly references: readonly Span[];
}

/** Where a statement can be put at the beginning of setup(). */
export interface SetupPlace {
  readonly file: string;
  /** Offset directly behind the opening brace of setup's body. */
  readonly offset: number;
  /** White space a new statement line starts with. */
  readonly indent: string;
  /** Line ending of the file. */
  readonly newline: string;
}

/** What a pin's output stage does. */
export type PinState = 'high' | 'low' | 'input' | 'pull-up' | 'pull-down';

/** A combination that pins can be in at the same time: by pin number, the states each may be in. */
export interface PinMoment {
  /** Pins that nothing has touched yet are left out: they are inputs. */
  readonly pins: Readonly<Record<number, readonly PinState[]>>;
}

/** All that the sketch layer knows of one sketch. */
export interface SketchFacts {
  readonly uses: readonly PinUse[];
  readonly pinNames: readonly PinName[];
  readonly setup?: SetupPlace;
  /** What its form tells beside the uses of pins. Absent where there is none. */
  readonly habits?: readonly Habit[];
  /**
   * The distinct combinations of output states that the program can have. Absent where something could not be followed:
   * then anything may go together.
   */
  readonly moments?: readonly PinMoment[];
  /**
   * Pins that `moments` no longer tells apart, since there were too many combinations to keep: each may be in any of
   * its states beside anything of the others. Absent where there are none.
   */
  readonly loosePins?: readonly number[];
  /**
   * Headers that the sketch includes, that are no file of it and that no library's data describes: what comes with them
   * may use the board's buses. Absent where there are none.
   */
  readonly foreignHeaders?: readonly string[];
  /** Said limits (a loop that was not followed to its end). Never grammar errors: those are the compiler's to tell. */
  readonly problems: readonly Problem[];
  /**
   * Set where text that may hold calls was lost to the analysis: an error or a half-typed place that could not be
   * read, a comment that swallowed code, a pin call without its pin. What is told of a use holds, but nothing may be
   * concluded from a use that is missing. Oddities that hide no call do not set it.
   */
  readonly damaged?: true;
}
