/** All that a rule sees: the sketch's facts, the build, and the join of both as plain data. */
import type { BoardPin, Build, Net, Primitive, Wire } from '../base/build';
import type { OperatingPoint } from '../base/circuit';
import type { PinMode, PinUse, SketchFacts } from '../base/pin-use';
import type { LibraryFacts } from '../base/platform';
import type { Problem } from '../base/read';
import type { PartKind } from '../hardware';

/** What a pin's output stage does at one moment. */
export type Drive = 'high' | 'low' | 'input' | 'pull-up' | 'pull-down';

/** A board pin with all that the sketch and the wires have to do with it. */
export interface PinView {
  readonly pin: BoardPin;
  readonly net: Net;
  /** Uses whose known pins include this one. */
  readonly uses: readonly PinUse[];
  /** Modes the sketch puts it in; empty where it never says. */
  readonly modes: readonly PinMode[];
  /** What its output stage can do once the sketch runs, always at least one. */
  readonly drives: readonly Drive[];
  /** Wires that end on it. */
  readonly wires: readonly Wire[];
  /** Ids of the board's own parts on it. */
  readonly onBoard: readonly string[];
}

/** A primitive in its place: which nets its ends are on. */
export interface Placed {
  /** Element id in the operating point: `part/primitive`. */
  readonly id: string;
  /** Part id, or the on-board part's id. */
  readonly part: string;
  readonly onBoard: boolean;
  readonly primitive: Primitive;
  /** Net ids of the two ends (a terminal without a wire is a net of its own). */
  readonly nets: readonly [string, string];
  /** Net of the wiper, the control or the output's supply, for the primitives that have one. */
  readonly third?: string;
}

/** A region (nets joined by parts, up to the rails) in one state of its pins and switches. */
export interface StatePoint {
  /** "D7 high, restart closed". Empty where the region has no pins and no switches. */
  readonly words: string;
  /** By pin id. */
  readonly drives: Readonly<Record<string, Drive>>;
  /** By placed switch id. */
  readonly switches: Readonly<Record<string, 'open' | 'closed'>>;
  /** By placed id of a potentiometer or of an output of another circuit: where it stands. */
  readonly settings: Readonly<Record<string, string>>;
  readonly point: OperatingPoint;
}

/** A connected piece of the build between the rails. */
export interface Region {
  /** Net ids without the rails. */
  readonly nets: readonly string[];
  readonly pins: readonly string[];
  readonly elements: readonly Placed[];
  /** Said where not all states could be looked at. */
  readonly limit?: string;
}

export interface Subject {
  readonly facts: SketchFacts;
  readonly build: Build;
  /** Texts by file, the manifest among them, for the builders of edits. */
  readonly texts: Readonly<Record<string, string>>;
  /** What the readers found wrong. */
  readonly problems: readonly Problem[];
  /** Every pin of the board. */
  readonly pins: readonly PinView[];
  readonly placed: readonly Placed[];
  /** Pin ids of rails by net id: nets that a supply or ground pin holds. */
  readonly rails: Readonly<Record<string, string>>;
  readonly regions: readonly Region[];
  /** Ids of pins and parts in wires that could not be read: of those nothing can be said. */
  readonly doubtful: readonly string[];
  /** Uses whose pins are not known; where there are any, "never used" cannot be said of a pin. */
  readonly unresolved: readonly PinUse[];
  /** What the calls of the core and of the firmware libraries do. */
  readonly libraries: readonly LibraryFacts[];
  /** A kind of the part library, for repairs that declare a part. Absent: none is at hand. */
  readonly partKind?: (kind: string) => PartKind | undefined;
  /** Operating points of a region in all the states looked at. Computed on demand and kept. */
  points(region: Region): readonly StatePoint[];
}
