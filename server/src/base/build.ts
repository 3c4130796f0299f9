/**
 * The declared hardware after reading: what hardware/ hands on. Every piece carries its span in the manifest.
 * All figures are SI numbers in the unit that the field names.
 */

import type { Severity } from './finding';
import type { Platform } from './platform';
import type { Range } from './range';
import type { Span } from './span';

/** A figure of a board with the document it comes from. */
export interface Sourced extends Range {
  /** Document, revision and table in one phrase; "from memory" where nobody looked it up. */
  readonly source: string;
}

export interface BoardPin {
  /** The canonical printed name: `D7`, `A6`, `GND`, `5V`, `RST`. Unique on the board. */
  readonly id: string;
  /** The number the core counts it by; absent on supply and reset pins. */
  readonly number?: number;
  /** Other names people type or the silk screen prints. */
  readonly names: readonly string[];
  readonly type: 'io' | 'analog-input' | 'supply' | 'ground' | 'reset' | 'reference' | 'not-connected';
  /** Port and bit of the chip: `PD7`. */
  readonly port?: string;
  /** Timer behind analogWrite: `timer2`. Absent: no PWM. */
  readonly pwm?: string;
  /** ADC channel. Absent: no analogRead. */
  readonly adc?: number;
  /** External interrupt line that attachInterrupt reaches. */
  readonly interrupt?: number;
  /** Bus roles and the like: `i2c.sda`, `uart0.rx`. */
  readonly roles: readonly string[];
  /** Volts of a supply pin against ground. */
  readonly volts?: Range;
  /** Amperes that may be drawn from a supply pin. */
  readonly maxAmps?: Sourced;
}

export interface Header {
  readonly id: string;
  /** In words: "left header". */
  readonly title: string;
  /** What one counts from: "the USB end". */
  readonly landmark: string;
  /** Pin ids in physical order, the first next to the landmark. */
  readonly positions: readonly string[];
}

/** A primitive of a part or of the board with resolved figures. Terminals are names of the owning part. */
export type Primitive =
  | {
      readonly type: 'resistor';
      readonly id: string;
      readonly ends: readonly [string, string];
      readonly ohms: Range;
      /** Power it stands, watts. */
      readonly maxWatts?: number;
    }
  | {
      readonly type: 'capacitor';
      readonly id: string;
      /** Plus, minus where it has a polarity. */
      readonly ends: readonly [string, string];
      readonly farads: Range;
      /** Voltage it stands, volts. */
      readonly maxVolts?: number;
      /** True where the wrong way round destroys it. */
      readonly polarised?: boolean;
    }
  | {
      readonly type: 'coil';
      readonly id: string;
      readonly ends: readonly [string, string];
      readonly ohms: Range;
    }
  | {
      readonly type: 'diode';
      readonly id: string;
      /** Anode, cathode. */
      readonly ends: readonly [string, string];
      readonly volts: Range;
      readonly atAmps: number;
      /** True for a light-emitting diode. */
      readonly lamp: boolean;
      /** Continuous forward current it stands, amperes. */
      readonly maxAmps?: number;
      /** Reverse voltage it stands, volts. */
      readonly maxReverseVolts?: number;
    }
  | {
      readonly type: 'switch';
      readonly id: string;
      readonly ends: readonly [string, string];
      /** momentary returns by itself; latching stays. */
      readonly action: 'momentary' | 'latching';
      /** State when nobody touches it. */
      readonly rest: 'open' | 'closed';
      /** Id of the coil in the same part that moves it; absent where a hand does. */
      readonly operatedBy?: string;
      /** Current its contacts carry, amperes. */
      readonly maxAmps?: number;
    }
  | {
      /** A track from the first end to the second with a wiper that stands anywhere on it. */
      readonly type: 'potentiometer';
      readonly id: string;
      readonly ends: readonly [string, string];
      readonly wiper: string;
      /** The whole track. */
      readonly ohms: Range;
    }
  | {
      readonly type: 'source';
      readonly id: string;
      /** Plus, minus. */
      readonly ends: readonly [string, string];
      readonly volts: Range;
      readonly ohms: Range;
      /** Current it can give, amperes. */
      readonly maxAmps?: number;
      /** Charge it holds, ampere-hours. */
      readonly ampHours?: number;
    }
  | {
      readonly type: 'load';
      readonly id: string;
      /** Supply, return. */
      readonly ends: readonly [string, string];
      /** Idle, usual and peak current. */
      readonly amps: Range;
      /** Supply voltages it works at. */
      readonly volts?: Range;
    }
  | {
      readonly type: 'logic-input';
      readonly id: string;
      /** Input, return. */
      readonly ends: readonly [string, string];
      readonly ohms: Range;
      /** Voltage at the input that must not be passed, volts. */
      readonly maxVolts?: number;
    }
  | {
      readonly type: 'logic-output';
      readonly id: string;
      /** Output, return. */
      readonly ends: readonly [string, string];
      /** Terminal whose voltage it gives when high; absent where it only pulls low (open collector). */
      readonly supply?: string;
      /** Resistance behind the output. */
      readonly ohms: Range;
    }
  | {
      /** A switch between its ends that a voltage closes. A base's junction is a diode primitive beside it. */
      readonly type: 'transistor';
      readonly id: string;
      /** Collector and emitter, drain and source. */
      readonly ends: readonly [string, string];
      /** Base or gate. */
      readonly control: string;
      /** n: conducts when the control lies above the second end; p: when below. */
      readonly channel: 'n' | 'p';
      /** Volts between control and second end at which it conducts. */
      readonly volts: Range;
      /** Resistance between the ends when it conducts. */
      readonly ohms: Range;
      /** Current gain of a bipolar one; absent for a field-effect one. */
      readonly gain?: Range;
      /** Current between the ends it stands, amperes. */
      readonly maxAmps?: number;
    };

/** A part of the board itself (built-in lamp, reset pull-up), its ends are board pin ids or inner nodes (`~name`). */
export interface OnBoardPart {
  readonly id: string;
  readonly title: string;
  readonly inside: readonly Primitive[];
  readonly source: string;
}

export interface BoardLimits {
  /** Amperes of one pin: what the maker's documents call a working figure, and what destroys it. */
  readonly pinRecommended: Sourced;
  readonly pinAbsolute: Sourced;
  /** Sums over groups of pins, amperes. */
  readonly groups: readonly {
    readonly title: string;
    readonly pins: readonly string[];
    readonly direction: 'source' | 'sink' | 'both';
    readonly amps: Sourced;
  }[];
  /** Sum over all pins, amperes. */
  readonly total?: Sourced;
  /** Ohms between a pin that drives and its rail. */
  readonly outputHighOhms: Sourced;
  readonly outputLowOhms: Sourced;
  /** Volts read as low at most, and as high at least. */
  readonly inputLowVolts: Sourced;
  readonly inputHighVolts: Sourced;
  /** Ohms. */
  readonly pullUpOhms: Sourced;
  readonly pullDownOhms?: Sourced;
  /** Volts on a pin that must not be passed. */
  readonly pinMaxVolts?: Sourced;
}

export interface BoardReset {
  /** Pin id. */
  readonly pin: string;
  /** Ohms of all pull-ups on the line together. */
  readonly pullUpOhms: Sourced;
  /** Volts below which the chip is held in reset for certain. */
  readonly assertVolts: Sourced;
}

export interface Board {
  readonly id: string;
  readonly title: string;
  readonly chip: string;
  /** Pin id of the rail that feeds the pins: `5V` or `3V3`. */
  readonly logicRail: string;
  readonly pins: readonly BoardPin[];
  readonly headers: readonly Header[];
  readonly onBoard: readonly OnBoardPart[];
  readonly limits: BoardLimits;
  readonly reset?: BoardReset;
  readonly platform: Platform;
}

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
  readonly terminals: readonly Terminal[];
  /** Terminals by which a path enters and leaves; absent where the part has none of its own. */
  readonly series?: readonly [string, string];
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
  readonly policy: {
    /** Amperes a pin may carry by the user's policy, and where that figure comes from. */
    readonly pinAmps: number;
    readonly text: string;
  };
  readonly severity: Readonly<Record<string, Severity | 'off'>>;
}
