// Made from hardware-schemas/board.schema.json by server/scripts/schema-sources.mjs.

export type Clock = string | number;
/**
 * A figure with its unit as text ("20 mA", "4.7 kohm", "4k7", "5%"), or a bare number in the plain SI unit.
 */
export type Quantity = string | number;
export type PartPrimitive =
  | Resistor
  | Capacitor
  | Coil
  | Diode
  | Switch
  | Potentiometer
  | Source
  | Load
  | LogicInput
  | LogicOutput
  | Transistor;
/**
 * A quantity, a range, the value of a parameter, or a table by a parameter.
 */
export type Figure = Quantity | RangeFigure | ParameterFigure | TableFigure;
export type Choice = string | ParameterReference;

/**
 * A board: its pins, headers, limits and what its core means to a sketch. With `extends` the file says only what differs: pins and the other objects are merged key by key; a list, a figure, a header, an on-board part, a supply input, a pin group, a drive strength, a boot strap and what takes a pin is replaced as a whole; `null` removes.
 */
export interface BoardFile {
  /**
   * Where the description of this format lies; editors use it for completion.
   */
  $schema?: string;
  /**
   * The name a manifest uses in `board`; that of the file.
   */
  id: string;
  /**
   * Id of a library board, or the path of a board file beside this one, that this board is like.
   */
  extends?: string;
  /**
   * The board's name in words.
   */
  title?: string;
  /**
   * One or two sentences on what it is and what to watch for.
   */
  about?: string;
  /**
   * The controller chip.
   */
  chip?: string;
  /**
   * Clock of the chip.
   */
  clock?: Clock;
  /**
   * Id of the pin whose voltage feeds the pins.
   */
  logicRail?: string;
  /**
   * The pins, by canonical printed name: `D7`, `A6`, `GND`, `5V`, `RST`. Several holes with one name are one pin.
   */
  pins?: {
    [k: string]: Pin | null;
  };
  /**
   * The pin headers (or edges, or rows of pads), by a short key that a manifest uses in `pin@header.position`.
   */
  headers?: {
    [k: string]: BoardHeader | null;
  };
  /**
   * Parts soldered to the board that act on its pins, by key: built-in lamp, pull-up of the reset line.
   */
  onBoard?: {
    [k: string]: OnBoardPart | null;
  };
  /**
   * Where the board takes its power, by key: `usb`, `vin`.
   */
  supplyInputs?: {
    [k: string]: SupplyInput | null;
  };
  limits?: BoardLimits;
  /**
   * What analogRead measures.
   */
  analog?: AnalogInputs | null;
  /**
   * The reset line.
   */
  reset?: ResetLine | null;
  platform?: BoardPlatform;
  sources?: Sources;
}
/**
 * One pin.
 */
export interface Pin {
  /**
   * The number the core counts it by; left out on supply and reset pins.
   */
  number?: number | null;
  /**
   * Other names that are printed or typed for it. The number itself need not be listed.
   */
  names?: string[];
  /**
   * What the pin is. `analog-input` cannot drive or read a digital level.
   */
  type?: 'io' | 'analog-input' | 'supply' | 'ground' | 'reset' | 'reference' | 'not-connected';
  /**
   * Port and bit of the chip: `PD7`.
   */
  port?: string | null;
  /**
   * Timer or slice behind analogWrite: `timer2`. Left out: no PWM.
   */
  pwm?: string | null;
  /**
   * Channel of the converter. Left out: no analogRead.
   */
  adc?: number | null;
  /**
   * External interrupt line that attachInterrupt reaches.
   */
  interrupt?: number | null;
  /**
   * What else it does: `i2c.sda`, `i2c.scl`, `spi.mosi`, `spi.miso`, `spi.sck`, `spi.ss`, `uart0.rx`, `uart0.tx`, `usb.d+`, `builtin-lamp`, `pin-change` (where not every pin has that interrupt), `boot.high`, `boot.low`.
   */
  roles?: string[];
  /**
   * Voltage of a supply pin against ground.
   */
  volts?: BoardFigure | null;
  /**
   * Current that may be drawn from a supply pin.
   */
  maxAmps?: BoardFigure | null;
  /**
   * True where the pin reads levels but never drives one. Of an `io` pin.
   */
  inputOnly?: boolean | null;
  /**
   * The chip's own pull resistors that this pin has, where not every pin of the board has the same: `[]` for none.
   */
  pulls?: ('up' | 'down')[];
  /**
   * Converter that serves the pin, on chips with more than one: 2 for ADC2.
   */
  adcUnit?: number | null;
  /**
   * What takes the pin's converter away while it runs.
   */
  adcBlockedBy?: 'radio' | null;
  /**
   * What the chip demands of this pin at reset: a boot strap.
   */
  boot?: BootStrap | null;
  /**
   * What on the board uses this pin already.
   */
  takenBy?: TakenPin | null;
  /**
   * Working current of this pin, where it differs from `limits.pinRecommended`.
   */
  recommendedAmps?: BoardFigure | null;
  /**
   * Current of this pin that must never be passed, where it differs from `limits.pinAbsolute`.
   */
  absoluteAmps?: BoardFigure | null;
  /**
   * Voltage on this pin that must not be passed, where it differs from `limits.pinMaxVolts`: 5.5 V on a pin of a 3.3 V board that tolerates 5 V.
   */
  maxInputVolts?: BoardFigure | null;
}
/**
 * A figure with the document it comes from. One of min, typ, max is enough: the missing ones are filled from those given.
 */
export interface BoardFigure {
  /**
   * Lowest value.
   */
  min?: Quantity;
  /**
   * Usual value.
   */
  typ?: Quantity;
  /**
   * Highest value.
   */
  max?: Quantity;
  /**
   * The condition the figure holds under, as in "at 20 mA, 25 degC".
   */
  when?: string;
  /**
   * Key of the document in `sources` that the figure comes from.
   */
  source?: string;
  /**
   * Place in that document (table, note, figure), and how the figure follows from it where it is not printed there.
   */
  where?: string;
  /**
   * True where nobody looked the figure up.
   */
  fromMemory?: true;
}
/**
 * A level that the chip reads from a pin at reset.
 */
export interface BootStrap {
  /**
   * Level the pin has to have at reset so that the sketch starts as usual.
   */
  level: 'high' | 'low';
  /**
   * What the other level does: "low starts the loader instead of the sketch".
   */
  why: string;
  /**
   * False where the other level only changes a trifle and the sketch starts all the same. Left out: true.
   */
  must?: boolean;
  /**
   * Key of the document in `sources` that the figure comes from.
   */
  source?: string;
  /**
   * Place in that document (table, note, figure), and how the figure follows from it where it is not printed there.
   */
  where?: string;
  /**
   * True where nobody looked the figure up.
   */
  fromMemory?: true;
}
/**
 * What uses a pin already.
 */
export interface TakenPin {
  /**
   * The user of the pin; `serial`: the bridge to USB; `board`: something else that is soldered there.
   */
  what: 'flash' | 'psram' | 'usb' | 'serial' | 'radio' | 'crystal' | 'debug' | 'lamp' | 'board';
  /**
   * True where the pin can be used all the same, with care. Left out: it cannot.
   */
  free?: boolean;
  /**
   * In words: "feeds the flash chip that the sketch runs from".
   */
  why: string;
  /**
   * Key of the document in `sources` that the figure comes from.
   */
  source?: string;
  /**
   * Place in that document (table, note, figure), and how the figure follows from it where it is not printed there.
   */
  where?: string;
  /**
   * True where nobody looked the figure up.
   */
  fromMemory?: true;
}
export interface BoardHeader {
  /**
   * In words: "left header".
   */
  title: string;
  /**
   * What one counts from, as in "4th from ...": "the USB end".
   */
  landmark: string;
  /**
   * Pin ids in physical order, the first next to the landmark.
   *
   * @minItems 1
   */
  positions: [string, ...string[]];
  /**
   * Edge of the board it lies on, seen on the side of the parts with the landmark up. Left out: elsewhere.
   */
  side?: 'left' | 'right';
}
export interface OnBoardPart {
  /**
   * In words: "built-in lamp".
   */
  title: string;
  /**
   * What it is electrically. Ends are pin ids of the board or inner nodes written `~name`; figures are quantities or ranges.
   *
   * @minItems 1
   */
  inside: [PartPrimitive, ...PartPrimitive[]];
  /**
   * Key of the document in `sources` that the figure comes from.
   */
  source?: string;
  /**
   * Place in that document (table, note, figure), and how the figure follows from it where it is not printed there.
   */
  where?: string;
  /**
   * True where nobody looked the figure up.
   */
  fromMemory?: true;
  lamp?: OnBoardLamp;
}
/**
 * A resistance between two ends.
 */
export interface Resistor {
  /**
   * A resistance between two ends.
   */
  type: 'resistor';
  /**
   * A name for this piece, unique inside the part.
   */
  id: string;
  /**
   * The two ends. Terminal names of the part, or inner nodes written `~name`.
   *
   * @minItems 2
   * @maxItems 2
   */
  ends: [string, string];
  /**
   * Resistance.
   */
  ohms: Figure;
  /**
   * Power it stands for ever.
   */
  maxWatts?: Figure;
  /**
   * Current it carries for ever; a fuse opens above it.
   */
  maxAmps?: Figure;
  when?: Condition;
}
/**
 * A figure by its lowest, usual and highest value; missing ones are filled from those given.
 */
export interface RangeFigure {
  /**
   * Lowest value.
   */
  min?: Quantity;
  /**
   * Usual value.
   */
  typ?: Quantity;
  /**
   * Highest value.
   */
  max?: Quantity;
  /**
   * The condition the figure holds under, as in "at 20 mA, 25 degC".
   */
  when?: string;
  /**
   * Key of the document in `sources` that the figure comes from.
   */
  source?: string;
  /**
   * Place in that document (table, note, figure), and how the figure follows from it where it is not printed there.
   */
  where?: string;
  /**
   * True where nobody looked the figure up.
   */
  fromMemory?: true;
}
/**
 * The value a parameter has.
 */
export interface ParameterFigure {
  /**
   * Name of the parameter.
   */
  parameter: string;
  /**
   * Spread on both sides: a ratio such as "5%", or the parameter that holds it.
   */
  tolerance?: Quantity | ParameterReference;
  /**
   * The value is multiplied by this: for a count of equal things, each with this figure.
   */
  times?: Quantity | RangeFigure;
  /**
   * Taken where the parameter has no value.
   */
  otherwise?: Figure;
}
export interface ParameterReference {
  /**
   * Name of the parameter.
   */
  parameter: string;
}
/**
 * A figure chosen by the value of a parameter.
 */
export interface TableFigure {
  /**
   * Name of the parameter.
   */
  by: string;
  /**
   * The figure for each value.
   */
  table: {
    [k: string]: Quantity | RangeFigure;
  };
  /**
   * Taken for a value that is not in the table.
   */
  otherwise?: Figure;
}
/**
 * Holds for this variant only: parameter names with the value, or the list of values, they must have.
 */
export interface Condition {
  [k: string]: (string | boolean | number) | [string | boolean | number, ...(string | boolean | number)[]];
}
/**
 * A capacitance between two ends.
 */
export interface Capacitor {
  /**
   * A capacitance between two ends.
   */
  type: 'capacitor';
  /**
   * A name for this piece, unique inside the part.
   */
  id: string;
  /**
   * Plus and minus where it has a polarity. Terminal names of the part, or inner nodes written `~name`.
   *
   * @minItems 2
   * @maxItems 2
   */
  ends: [string, string];
  /**
   * Capacitance.
   */
  farads: Figure;
  /**
   * Voltage it stands.
   */
  maxVolts?: Figure;
  /**
   * True where the wrong way round destroys it.
   */
  polarised?: boolean;
  when?: Condition;
}
/**
 * A winding: motor, relay, solenoid or magnetic buzzer.
 */
export interface Coil {
  /**
   * A winding: motor, relay, solenoid or magnetic buzzer.
   */
  type: 'coil';
  /**
   * A name for this piece, unique inside the part.
   */
  id: string;
  /**
   * The two ends. Terminal names of the part, or inner nodes written `~name`.
   *
   * @minItems 2
   * @maxItems 2
   */
  ends: [string, string];
  /**
   * Resistance of the winding to direct current.
   */
  ohms: Figure;
  /**
   * Voltages it works at: `min` operates it for certain, `max` it stands for ever.
   */
  volts?: Figure;
  when?: Condition;
}
/**
 * A junction that conducts from its first end to its second.
 */
export interface Diode {
  /**
   * A junction that conducts from its first end to its second.
   */
  type: 'diode';
  /**
   * A name for this piece, unique inside the part.
   */
  id: string;
  /**
   * Anode, then cathode. Terminal names of the part, or inner nodes written `~name`.
   *
   * @minItems 2
   * @maxItems 2
   */
  ends: [string, string];
  /**
   * Forward voltage at the test current.
   */
  volts: Figure;
  /**
   * The test current that `volts` is given at.
   */
  atAmps: Figure;
  /**
   * True for a light-emitting diode.
   */
  lamp: boolean;
  /**
   * Continuous forward current it stands.
   */
  maxAmps?: Figure;
  /**
   * Current from which a lamp is clearly seen.
   */
  visibleAmps?: Figure;
  /**
   * Reverse voltage it stands.
   */
  maxReverseVolts?: Figure;
  /**
   * Reverse voltage at which it conducts on purpose (a Zener diode).
   */
  breakdownVolts?: Figure;
  /**
   * The test current that `breakdownVolts` is given at.
   */
  breakdownAmps?: Figure;
  /**
   * Power it stands.
   */
  maxWatts?: Figure;
  when?: Condition;
}
/**
 * A contact that joins two ends when it is closed.
 */
export interface Switch {
  /**
   * A contact that joins two ends when it is closed.
   */
  type: 'switch';
  /**
   * A name for this piece, unique inside the part.
   */
  id: string;
  /**
   * The two ends. Terminal names of the part, or inner nodes written `~name`.
   *
   * @minItems 2
   * @maxItems 2
   */
  ends: [string, string];
  /**
   * `momentary` returns by itself, `latching` stays; or the parameter that says so.
   */
  action: Choice;
  /**
   * State when nobody touches it: `open` or `closed`; or the parameter that says so.
   */
  rest: Choice;
  /**
   * Id of the coil, the load that holds one, or the lamp in this part that moves the contact; left out where a hand does.
   */
  operatedBy?: string;
  /**
   * Id of another switch of this part on the same lever: both leave their rest state together.
   */
  movesWith?: string;
  /**
   * Current the contact carries.
   */
  maxAmps?: Figure;
  when?: Condition;
}
/**
 * A track with a wiper that can stand anywhere on it.
 */
export interface Potentiometer {
  /**
   * A track with a wiper that can stand anywhere on it.
   */
  type: 'potentiometer';
  /**
   * A name for this piece, unique inside the part.
   */
  id: string;
  /**
   * The two ends of the track. Terminal names of the part, or inner nodes written `~name`.
   *
   * @minItems 2
   * @maxItems 2
   */
  ends: [string, string];
  /**
   * Terminal of the wiper.
   */
  wiper: string;
  /**
   * Resistance of the whole track.
   */
  ohms: Figure;
  when?: Condition;
}
/**
 * A voltage from the second end up to the first, behind a resistance.
 */
export interface Source {
  /**
   * A voltage from the second end up to the first, behind a resistance.
   */
  type: 'source';
  /**
   * A name for this piece, unique inside the part.
   */
  id: string;
  /**
   * Plus, then minus. Terminal names of the part, or inner nodes written `~name`.
   *
   * @minItems 2
   * @maxItems 2
   */
  ends: [string, string];
  /**
   * Voltage without a load.
   */
  volts: Figure;
  /**
   * Resistance inside the source.
   */
  ohms: Figure;
  /**
   * Current it can give.
   */
  maxAmps?: Figure;
  /**
   * Charge it holds.
   */
  ampHours?: Figure;
  /**
   * Terminal its power comes from (a regulator's input); left out where it has its own.
   */
  from?: string;
  /**
   * Volts the input must lie above the output at least.
   */
  dropout?: Figure;
  /**
   * Power out over power in, in per cent; left out for a linear regulator, which takes the current that it gives.
   */
  efficiency?: Figure;
  /**
   * Heat that it gets rid of by itself, without a heat sink, at room temperature.
   */
  maxWatts?: Figure;
  when?: Condition;
}
/**
 * Something that draws a current from its supply, whatever the voltage.
 */
export interface Load {
  /**
   * Something that draws a current from its supply, whatever the voltage.
   */
  type: 'load';
  /**
   * A name for this piece, unique inside the part.
   */
  id: string;
  /**
   * Supply, then return. Terminal names of the part, or inner nodes written `~name`.
   *
   * @minItems 2
   * @maxItems 2
   */
  ends: [string, string];
  /**
   * Current it draws: idle as `min`, usual as `typ`, peak as `max`.
   */
  amps: Figure;
  /**
   * Supply voltages it works at.
   */
  volts?: Figure;
  when?: Condition;
}
/**
 * An input of a circuit that only listens.
 */
export interface LogicInput {
  /**
   * An input of a circuit that only listens.
   */
  type: 'logic-input';
  /**
   * A name for this piece, unique inside the part.
   */
  id: string;
  /**
   * Input, then return. Terminal names of the part, or inner nodes written `~name`.
   *
   * @minItems 2
   * @maxItems 2
   */
  ends: [string, string];
  /**
   * Resistance between the input and its return.
   */
  ohms: Figure;
  /**
   * Voltage at the input that must not be passed.
   */
  maxVolts?: Figure;
  /**
   * Terminal that feeds the circuit behind it.
   */
  supply?: string;
  /**
   * Voltage at most that is read as low for certain.
   */
  lowVolts?: Figure;
  /**
   * Voltage at least that is read as high for certain.
   */
  highVolts?: Figure;
  /**
   * The same as a share of the supply, in per cent.
   */
  lowShare?: Figure;
  /**
   * The same as a share of the supply, in per cent.
   */
  highShare?: Figure;
  when?: Condition;
}
/**
 * An output of a circuit that drives low, and high where it has a supply.
 */
export interface LogicOutput {
  /**
   * An output of a circuit that drives low, and high where it has a supply.
   */
  type: 'logic-output';
  /**
   * A name for this piece, unique inside the part.
   */
  id: string;
  /**
   * Output, then return. Terminal names of the part, or inner nodes written `~name`.
   *
   * @minItems 2
   * @maxItems 2
   */
  ends: [string, string];
  /**
   * Terminal whose voltage it gives when high; left out for an open collector.
   */
  supply?: string;
  /**
   * Resistance behind the output.
   */
  ohms: Figure;
  /**
   * Current it gives or takes.
   */
  maxAmps?: Figure;
  when?: Condition;
}
/**
 * A path between its ends that a voltage opens. Describe a base's junction by a diode beside it.
 */
export interface Transistor {
  /**
   * A path between its ends that a voltage opens. Describe a base's junction by a diode beside it.
   */
  type: 'transistor';
  /**
   * A name for this piece, unique inside the part.
   */
  id: string;
  /**
   * Collector and emitter, or drain and source. Terminal names of the part, or inner nodes written `~name`.
   *
   * @minItems 2
   * @maxItems 2
   */
  ends: [string, string];
  /**
   * Terminal of the base or the gate.
   */
  control: string;
  /**
   * `n` conducts when the control lies above the second end, `p` when below.
   */
  channel: 'n' | 'p';
  /**
   * Voltage between control and second end at which it conducts.
   */
  volts: Figure;
  /**
   * Resistance between the ends when it conducts.
   */
  ohms: Figure;
  /**
   * Current gain of a bipolar transistor.
   */
  gain?: Figure;
  /**
   * Current between the ends it stands.
   */
  maxAmps?: Figure;
  /**
   * Voltage between the ends it stands.
   */
  maxVolts?: Figure;
  /**
   * Voltage between control and second end at which `ohms` is promised.
   */
  fullVolts?: Figure;
  /**
   * Voltage between control and second end that must not be passed.
   */
  maxControlVolts?: Figure;
  when?: Condition;
}
/**
 * Where the part is a lamp: the pin that lights it and how.
 */
export interface OnBoardLamp {
  /**
   * Pin id.
   */
  pin: string;
  /**
   * Level of the pin that lights it; `data`: an addressable lamp that takes a train of bits.
   */
  litBy: 'high' | 'low' | 'data';
  /**
   * True where the pin itself carries the lamp's current; false behind a buffer or transistor.
   */
  direct?: boolean;
}
/**
 * A place where the board takes its power.
 */
export interface SupplyInput {
  /**
   * In words: "VIN", "the USB socket".
   */
  title: string;
  /**
   * Pin id, where the input has a pin.
   */
  pin?: string;
  /**
   * Id of the pin whose rail it feeds.
   */
  feeds?: string;
  /**
   * What lies between: "linear regulator", "fuse of 500 mA".
   */
  how?: string;
  /**
   * Voltage to feed it with.
   */
  volts: BoardFigure;
  /**
   * Voltage that must not be passed.
   */
  absoluteVolts?: BoardFigure;
  /**
   * Current that the input carries, the board's own share included.
   */
  maxAmps?: BoardFigure;
  /**
   * Current that whatever feeds it has to give at least, peaks of a radio included.
   */
  needsAmps?: BoardFigure;
  /**
   * Heat that a linear regulator behind it gets rid of on this board, at room temperature.
   */
  heatWatts?: BoardFigure;
}
/**
 * What the pins stand and what they give.
 */
export interface BoardLimits {
  /**
   * Current of one pin that the maker's documents call a working figure.
   */
  pinRecommended?: BoardFigure | null;
  /**
   * Current of one pin that must never be passed.
   */
  pinAbsolute?: BoardFigure | null;
  /**
   * Sums of current over groups of pins, by key.
   */
  groups?: {
    [k: string]: PinGroup | null;
  };
  /**
   * Sum of current over all pins.
   */
  total?: BoardFigure | null;
  /**
   * Resistance between a pin that drives high and its rail.
   */
  outputHighOhms?: BoardFigure | null;
  /**
   * Resistance between a pin that drives low and ground.
   */
  outputLowOhms?: BoardFigure | null;
  /**
   * Voltage that is still read as low: `max` is what the documents promise.
   */
  inputLowVolts?: BoardFigure | null;
  /**
   * Voltage that is read as high: `min` is what the documents promise.
   */
  inputHighVolts?: BoardFigure | null;
  /**
   * The chip's own pull-up.
   */
  pullUpOhms?: BoardFigure | null;
  /**
   * The chip's own pull-down, where it has one.
   */
  pullDownOhms?: BoardFigure | null;
  /**
   * Voltage on a pin that must not be passed.
   */
  pinMaxVolts?: BoardFigure | null;
  /**
   * Current that the protection diodes of an input stand when the voltage on it passes a rail.
   */
  clampAmps?: BoardFigure | null;
  /**
   * What the documents promise of the output levels; `outputHighOhms` and `outputLowOhms` follow from it.
   */
  outputLevels?: OutputLevel[];
  pinsAtReset?: PinsAtReset;
  /**
   * Strengths by the number of their mode in pinMode, where a sketch can choose.
   */
  driveStrengths?: {
    [k: string]: DriveStrength | null;
  };
}
export interface PinGroup {
  /**
   * In words: "port D and the analog pins".
   */
  title: string;
  /**
   * Pin ids.
   *
   * @minItems 1
   */
  pins: [string, ...string[]];
  /**
   * `source`: current out of the pins; `sink`: into them; `both`: either way.
   */
  direction: 'source' | 'sink' | 'both';
  /**
   * Sum of the currents of the group.
   */
  amps: BoardFigure;
}
/**
 * A level that an output is promised to hold at a current.
 */
export interface OutputLevel {
  /**
   * The level that is driven.
   */
  level: 'high' | 'low';
  /**
   * Current of the pin, out of it when high, into it when low.
   */
  amps: Quantity;
  /**
   * Supply of the chip in that test.
   */
  supplyVolts: Quantity;
  /**
   * Voltage at the pin: `min` of a high level, `max` of a low one.
   */
  volts: BoardFigure;
}
/**
 * What the pins do from reset until the sketch says otherwise, those with a `boot` of their own aside.
 */
export interface PinsAtReset {
  /**
   * `input`: nothing in the chip holds them.
   */
  state: 'input' | 'pull-up' | 'pull-down';
  /**
   * Key of the document in `sources` that it comes from.
   */
  source?: string;
  /**
   * Place in that document (table, note, figure).
   */
  where?: string;
  /**
   * True where nobody looked it up.
   */
  fromMemory?: true;
}
/**
 * A strength that a mode of pinMode sets.
 */
export interface DriveStrength {
  /**
   * The core's name for the mode: `OUTPUT_12MA`.
   */
  title: string;
  /**
   * Working current of a pin in this mode.
   */
  amps: BoardFigure;
  /**
   * Resistance to the rail in this mode, when high.
   */
  outputHighOhms?: BoardFigure;
  /**
   * Resistance to ground in this mode, when low.
   */
  outputLowOhms?: BoardFigure;
}
/**
 * What analogRead measures.
 */
export interface AnalogInputs {
  /**
   * Voltage of the lowest and the highest reading with the reference the core starts with.
   */
  volts?: BoardFigure | null;
  /**
   * Bits of a reading as the core gives it: 10 counts to 1023.
   */
  bits?: number | null;
  /**
   * Highest resistance of what feeds an input for a true reading.
   */
  sourceOhms?: BoardFigure | null;
}
export interface ResetLine {
  /**
   * Id of the reset pin.
   */
  pin?: string;
  /**
   * All pull-ups on the line together.
   */
  pullUpOhms?: BoardFigure;
  /**
   * Voltage below which the chip is held in reset for certain.
   */
  assertVolts?: BoardFigure;
  /**
   * The capacitor through which the bridge to USB, or the adapter, pulls the line at an upload. Left out: there is none.
   */
  couplingFarads?: BoardFigure;
}
/**
 * What the board's core means to the text of a sketch.
 */
export interface BoardPlatform {
  /**
   * Macros that the compiler predefines, with their text: `"ARDUINO_ARCH_AVR": "1"`.
   */
  macros?: {
    [k: string]: string | null;
  };
  /**
   * Constants of the core by name: `"LED_BUILTIN": 13`. A0, A1 ... follow from the pin table.
   */
  names?: {
    [k: string]: number | null;
  };
  /**
   * What the numbers given to pinMode mean.
   */
  modes?: {
    [k: string]: 'input' | 'output' | 'input-pullup' | 'input-pulldown' | null;
  };
  /**
   * Bits of an `int`.
   */
  intBits?: 16 | 32;
  /**
   * External interrupt line to pin number, where it does not follow from the pin table.
   */
  interruptPins?: {
    [k: string]: number | null;
  };
}
/**
 * The documents the figures of this file come from, each under a short key that `source` names.
 */
export interface Sources {
  [k: string]: Document;
}
export interface Document {
  /**
   * Title of the document, with its number where it has one.
   */
  document: string;
  /**
   * Revision, edition or date of the copy that was read.
   */
  revision?: string;
  /**
   * Who publishes it.
   */
  publisher?: string;
}
