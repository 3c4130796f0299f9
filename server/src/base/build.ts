/**
 * The declared hardware after reading: what hardware/ hands on. Every piece carries its span in the manifest.
 * All figures are SI numbers in the unit that the field names.
 */

import type { Board, BoardPin } from './board';
import type { Severity } from './finding';
import type { Primitive } from './primitive';
import type { Span } from './span';

export type {
  AnalogInputs,
  Board,
  BoardLimits,
  BoardPin,
  BoardReset,
  BootStrap,
  DriveStrength,
  Header,
  OnBoardLamp,
  OnBoardPart,
  OutputLevel,
  Sourced,
  SupplyInput,
  TakenPin,
} from './board';
export type { Primitive } from './primitive';

export interface Terminal {
  readonly id: string;
  /** Other names that are taken for it. */
  readonly names: readonly string[];
  /** How to tell it on the real thing: "longer leg". */
  readonly tell?: string;
  /** Which way round matters here. */
  readonly polarity?: '+' | '-';
  /** Bus roles and the like, in the words of `BoardPin.roles`. */
  readonly roles?: readonly string[];
  /** True where the part works with nothing wired to it. */
  readonly optional?: boolean;
}

export interface Part {
  readonly id: string;
  readonly kind: string;
  /** The kind in words: "push-button". */
  readonly title: string;
  /** What it is for, in the user's words. */
  readonly purpose?: string;
  /** The user's remark on it. */
  readonly note?: string;
  /** The unit it is built into, in the user's words. */
  readonly subassembly?: string;
  /** How and where it is fastened, in the user's words. */
  readonly mount?: string;
  readonly terminals: readonly Terminal[];
  /** Terminals by which a path enters and leaves; absent where the part has none of its own. */
  readonly series?: readonly [string, string];
  /** Groups of terminals that metal inside the part makes one conductor. */
  readonly joined?: readonly (readonly string[])[];
  /** What can hurt somebody or burn, and how to avoid it. */
  readonly caution?: string;
  readonly inside: readonly Primitive[];
  /** Parameters after defaults, as text for people: `value` → `470`. */
  readonly parameters: Readonly<Record<string, string>>;
  /** The part's key in the manifest. */
  readonly span: Span;
  /** Its whole entry, key and object. */
  readonly entry: Span;
  /** Value spans by parameter, for those the user wrote. */
  readonly valueSpans: Readonly<Record<string, Span>>;
}

/** A wire's thickness: a gauge number (0 is 1/0, -1 is 2/0) or square millimetres of copper. */
export type Gauge = { readonly awg: number } | { readonly squareMillimetres: number };

/** The hookup wire in use. */
export interface WireHabits {
  readonly gauge?: Gauge;
  /** Metres stripped at each end. */
  readonly strip?: number;
  /** Share that is bought on top of the sum of all lengths, 0.2 for 20 %. */
  readonly slack?: number;
}

/** One end of a wire. */
export type End =
  | { readonly kind: 'terminal'; readonly part: string; readonly terminal: string; readonly span: Span }
  | {
      readonly kind: 'pin';
      readonly pin: string;
      /** The header position: as declared, or as assigned where the user named none. Absent where none was free. */
      readonly position?: Position;
      readonly span: Span;
    };

export interface Position {
  /** Header id. */
  readonly header: string;
  /** Counted from the landmark, the first is 1. */
  readonly index: number;
  /** True where the manifest says so, false where it was assigned. */
  readonly declared: boolean;
  /** "GND, left header, 4th from the USB end". */
  readonly words: string;
}

/** One piece of hookup wire, soldered at two ends. A path of n ends gives n - 1 of them. */
export interface Wire {
  /** `w3` or, inside a path, `w3.2`: index of the entry in the manifest, then of the piece. */
  readonly id: string;
  /** Index into the manifest's `wires`. */
  readonly entry: number;
  /** Index of the piece in a path; 0 for a plain wire. */
  readonly piece: number;
  readonly ends: readonly [End, End];
  readonly colour?: string;
  /** Metres. */
  readonly length?: number;
  /** Its own thickness and stripped length, else those of `Build.wire`. */
  readonly gauge?: Gauge;
  /** Metres stripped at each end. */
  readonly strip?: number;
  /** The user's remark on the entry. */
  readonly note?: string;
  /** The entry in the manifest. */
  readonly span: Span;
}

/** Everything that is one conductor. */
export interface Net {
  /** The name of its rail or pin where it has one (`GND`, `D7`), else its first terminal (`R1.2`). */
  readonly id: string;
  /** Board pin ids on it. */
  readonly pins: readonly string[];
  readonly terminals: readonly { readonly part: string; readonly terminal: string }[];
  /** Wire ids. */
  readonly wires: readonly string[];
}

export interface Stock {
  /** Ohms, ascending. */
  readonly resistors: readonly number[];
  /** In words: "220, 330, 470, 1k" or "E12". */
  readonly text: string;
  /** Relative, 0.05 for 5 %. */
  readonly tolerance: number;
  /** Watts of one resistor. */
  readonly watts: number;
}

/** The whole declared hardware. */
export interface Build {
  readonly file: string;
  readonly title: string;
  readonly revision?: string;
  readonly board: Board;
  /** The span of the board's name in the manifest. */
  readonly boardSpan?: Span;
  readonly parts: readonly Part[];
  readonly wires: readonly Wire[];
  readonly nets: readonly Net[];
  readonly stock: Stock;
  /** Absent where the manifest says nothing of it. */
  readonly wire?: WireHabits;
  readonly policy: {
    /** Seconds that the batteries shall last; absent where the manifest asks nothing of them. */
    readonly runSeconds?: number;
    /** The figure's place in the manifest. */
    readonly runSpan?: Span;
    /** Amperes a pin may carry by the user's policy, and where that figure comes from. */
    readonly pinAmps: number;
    readonly text: string;
    /** `recommended` and `absolute` follow the board's figures, so a pin's own stand before it. */
    readonly kind: 'recommended' | 'absolute' | 'figure';
  };
  readonly severity: Readonly<Record<string, Severity | 'off'>>;
}

/** All numbers the core counts a pin by: its own, then those among its names (the 32U4's second numbers). */
export function numbersOf(pin: BoardPin): readonly number[] {
  const others = pin.names.filter((name) => /^\d+$/.test(name)).map(Number);
  return pin.number === undefined ? [] : [pin.number, ...others];
}
