// Made from hardware-schemas/manifest.schema.json by server/scripts/schema-sources.mjs.

/**
 * A figure with its unit as text ("20 mA", "4.7 kohm", "4k7", "5%"), or a bare number in the plain SI unit.
 */
export type Quantity = string | number;
/**
 * Thickness of a wire: a gauge number ("AWG 24") or its cross-section ("0.25 mm2").
 */
export type Gauge = string;

/**
 * The hardware a sketch runs on, as built: the board, the parts and the wires between them.
 */
export interface ManifestFile {
  /**
   * Where the description of this format lies; editors use it for completion.
   */
  $schema?: string;
  /**
   * Version of this format: 1. Taken as 1 where it is left out.
   */
  format?: number;
  /**
   * What is being built, in your words. It heads the hookup list and the other papers.
   */
  title?: string;
  /**
   * Revision of the build as published: "A", "B", "2024-05". The addendum says what changed since.
   */
  revision?: string;
  /**
   * Anything worth remembering. It is not read.
   */
  note?: string;
  /**
   * The board the sketch runs on: an id of the board library, or the path of a board file of your own, from this file.
   */
  board: string;
  stock?: ManifestStock;
  wire?: ManifestWire;
  policy?: ManifestPolicy;
  /**
   * The parts, each under the name that the wires call it by.
   */
  parts?: {
    [k: string]: ManifestPart;
  };
  /**
   * The wires, as they are soldered.
   */
  wires?: (PathWire | PlainWire)[];
  /**
   * How serious a rule is in this project, by rule id; `off` silences it.
   */
  severity?: {
    [k: string]: 'error' | 'warning' | 'information' | 'hint' | 'off';
  };
}
/**
 * What you have at hand. Sizing picks from it.
 */
export interface ManifestStock {
  /**
   * The resistor values you can take: a list ("330", "4k7"), or a series of preferred numbers ("E12").
   */
  resistors?: [Quantity, ...Quantity[]] | ('E3' | 'E6' | 'E12' | 'E24' | 'E48' | 'E96' | 'E192');
  /**
   * Their tolerance, as in "5%".
   */
  tolerance?: Quantity;
  /**
   * The power one of them stands, as in "0.25 W".
   */
  power?: Quantity;
}
/**
 * The hookup wire you use, for every wire that says nothing of its own. The papers print it.
 */
export interface ManifestWire {
  gauge?: Gauge;
  /**
   * Length that is stripped at each end, as in "5 mm".
   */
  strip?: Quantity;
  /**
   * What is bought on top of the sum of all lengths, as in "20%".
   */
  slack?: Quantity;
}
/**
 * How careful the checks are.
 */
export interface ManifestPolicy {
  /**
   * Current a pin may carry: the board's `recommended` figure, its `absolute` limit, or a figure of your own such as "10 mA".
   */
  pinCurrent?: Quantity;
  /**
   * How long the batteries shall last, as in "8 h". Left out: nothing is asked of them.
   */
  runTime?: Quantity;
}
/**
 * One part. What else can be said about it depends on its kind.
 */
export interface ManifestPart {
  /**
   * What it is: a kind of the part library or of the workspace, such as `led`, `resistor`, `push-button`.
   */
  kind: string;
  /**
   * What it is for, in your words. It is printed in the papers.
   */
  purpose?: string;
  /**
   * Anything worth remembering. It is printed in the papers.
   */
  note?: string;
  /**
   * The unit it is built into, in your words. The guide builds one unit after the other; left out, parts that one signal joins are one.
   */
  subassembly?: string;
  /**
   * How and where it is fastened, in your words. It is printed in the guide.
   */
  mount?: string;
  [k: string]: string | number | boolean;
}
/**
 * A series run: wires from end to end, through parts with two terminals.
 */
export interface PathWire {
  /**
   * The ends in order: a board pin (`D7`, `GND@left.4`), a part that the run passes through from its first terminal to its second (`R1`), or one terminal (`restart.1`).
   *
   * @minItems 2
   */
  path: [string, string, ...string[]];
  /**
   * Colour of each wire of the run: one fewer than the path has ends.
   */
  colours?: string[];
  /**
   * Length of each wire of the run, as in "20 cm": one fewer than the path has ends.
   */
  lengths?: Quantity[];
  gauge?: Gauge;
  /**
   * Length that is stripped at each end of it, as in "5 mm".
   */
  strip?: Quantity;
  /**
   * Anything worth remembering. It is printed in the papers.
   */
  note?: string;
}
/**
 * One wire between two ends.
 */
export interface PlainWire {
  /**
   * One end: a board pin (`D7`, `GND@left.4`) or a terminal (`restart.1`).
   */
  from: string;
  /**
   * The other end: a board pin (`D7`, `GND@left.4`) or a terminal (`restart.1`).
   */
  to: string;
  /**
   * Colour of the wire.
   */
  colour?: string;
  /**
   * Length of the wire, as in "20 cm".
   */
  length?: Quantity;
  gauge?: Gauge;
  /**
   * Length that is stripped at each end of it, as in "5 mm".
   */
  strip?: Quantity;
  /**
   * Anything worth remembering. It is printed in the papers.
   */
  note?: string;
}
