/**
 * A board as the other layers know it: pins, headers, limits and what is soldered to it. Whatever only some boards have
 * is optional. All figures are SI numbers in the unit that the field names.
 */
import type { Platform } from './platform';
import type { Primitive } from './primitive';
import type { Range } from './range';

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
  /** True: reads levels and never drives one. */
  readonly inputOnly?: boolean;
  /** The chip's own pull resistors that this pin has, where not every pin has the same. Empty: none. */
  readonly pulls?: readonly ('up' | 'down')[];
  /** Converter that serves the pin, on chips with more than one. */
  readonly adcUnit?: number;
  /** What takes the pin's converter away while it runs. */
  readonly adcBlockedBy?: 'radio';
  /** What the chip demands of the pin at reset. */
  readonly boot?: BootStrap;
  /** What on the board uses the pin already. */
  readonly takenBy?: TakenPin;
  /** Amperes of this pin, where they differ from `BoardLimits.pinRecommended` and `pinAbsolute`. */
  readonly recommendedAmps?: Sourced;
  readonly absoluteAmps?: Sourced;
  /** Volts that must not be passed, where they differ from `BoardLimits.pinMaxVolts`. */
  readonly maxInputVolts?: Sourced;
}

/** A level that the chip reads from a pin at reset. */
export interface BootStrap {
  /** Level the pin has to have at reset so that the sketch starts as usual. */
  readonly level: 'high' | 'low';
  /** What the other level does, in words. */
  readonly why: string;
  /** False: the other level changes a trifle, and the sketch starts all the same. */
  readonly must: boolean;
  readonly source: string;
}

/** What uses a pin of the board before anybody has wired it. */
export interface TakenPin {
  readonly what: 'flash' | 'psram' | 'usb' | 'serial' | 'radio' | 'crystal' | 'debug' | 'lamp' | 'board';
  /** True: it can be used all the same, with care. */
  readonly free: boolean;
  readonly why: string;
  readonly source: string;
}

export interface Header {
  readonly id: string;
  /** In words: "left header". */
  readonly title: string;
  /** What one counts from: "the USB end". */
  readonly landmark: string;
  /** Edge of the board, seen on the side of the parts with the landmark up. */
  readonly side?: 'left' | 'right';
  /** Pin ids in physical order, the first next to the landmark. */
  readonly positions: readonly string[];
}

/** A part of the board itself (built-in lamp, reset pull-up), its ends are board pin ids or inner nodes (`~name`). */
export interface OnBoardPart {
  readonly id: string;
  readonly title: string;
  readonly inside: readonly Primitive[];
  /** Where the part is a lamp. */
  readonly lamp?: OnBoardLamp;
  readonly source: string;
}

export interface OnBoardLamp {
  /** Id of the pin that lights it. */
  readonly pin: string;
  /** Level of the pin that lights it; `data`: an addressable lamp that takes a train of bits. */
  readonly litBy: 'high' | 'low' | 'data';
  /** True where the pin itself carries the lamp's current. */
  readonly direct: boolean;
}

/** A place where the board takes its power. */
export interface SupplyInput {
  readonly id: string;
  readonly title: string;
  /** Pin id, where the input has a pin. */
  readonly pin?: string;
  /** Pin id of the rail it feeds. */
  readonly feeds?: string;
  /** What lies between, in words. */
  readonly how?: string;
  /** Volts to feed it with, and those that must not be passed. */
  readonly volts: Sourced;
  readonly absoluteVolts?: Sourced;
  /** Amperes that the input carries, the board's own share included. */
  readonly maxAmps?: Sourced;
  /** Amperes that whatever feeds it has to give at least, peaks of a radio included. */
  readonly needsAmps?: Sourced;
  /** Watts of heat that a linear regulator behind it gets rid of on this board, at room temperature. */
  readonly heatWatts?: Sourced;
}

/** What analogRead measures. */
export interface AnalogInputs {
  /** Volts of the lowest and the highest reading, with the reference the core starts with. */
  readonly volts?: Sourced;
  /** Bits of a reading as the core gives it: 10 counts to 1023. */
  readonly bits?: number;
  /** Highest resistance of what feeds an input for a true reading, ohms. */
  readonly sourceOhms?: Sourced;
}

/** What the documents promise of an output at a current. */
export interface OutputLevel {
  readonly level: 'high' | 'low';
  /** Amperes: out of the pin when high, into it when low. */
  readonly amps: number;
  /** Supply of the chip in that test, volts. */
  readonly supplyVolts: number;
  /** Volts at the pin: `min` of a high level, `max` of a low one. */
  readonly volts: Sourced;
}

/** A strength of the outputs that a sketch chooses by a mode of pinMode. */
export interface DriveStrength {
  /** Number of the mode, as in `Platform.modes`. */
  readonly mode: number;
  /** The core's name for it. */
  readonly title: string;
  /** Working amperes of a pin in this mode. */
  readonly amps: Sourced;
  readonly outputHighOhms?: Sourced;
  readonly outputLowOhms?: Sourced;
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
  /** Amperes that the protection diodes of an input stand. */
  readonly clampAmps?: Sourced;
  /** Promised levels; the resistances above follow from them. */
  readonly outputLevels?: readonly OutputLevel[];
  readonly driveStrengths?: readonly DriveStrength[];
  /** What the pins do from reset until the sketch says otherwise. Absent: not known. */
  readonly pinsAtReset?: { readonly state: 'input' | 'pull-up' | 'pull-down'; readonly source: string };
}

export interface BoardReset {
  /** Pin id. */
  readonly pin: string;
  /** Ohms of all pull-ups on the line together. */
  readonly pullUpOhms: Sourced;
  /** Volts below which the chip is held in reset for certain. */
  readonly assertVolts: Sourced;
  /** Capacitor, farads, through which an upload pulls the line. Absent: none. */
  readonly couplingFarads?: Sourced;
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
  readonly supplyInputs?: readonly SupplyInput[];
  readonly limits: BoardLimits;
  readonly analog?: AnalogInputs;
  readonly reset?: BoardReset;
  readonly platform: Platform;
}
