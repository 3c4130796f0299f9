// Made from hardware-schemas/part.schema.json by server/scripts/schema-sources.mjs.

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
/**
 * A figure with its unit as text ("20 mA", "4.7 kohm", "4k7", "5%"), or a bare number in the plain SI unit.
 */
export type Quantity = string | number;
export type Choice = string | ParameterReference;

/**
 * A kind of part: its terminals, what can be said about one of them, and what it is inside.
 */
export interface PartFile {
  /**
   * Where the description of this format lies; editors use it for completion.
   */
  $schema?: string;
  /**
   * The name a manifest uses in `kind`: lower case with dashes.
   */
  kind: string;
  /**
   * The kind in words, as it stands in a sentence: "push-button".
   */
  title: string;
  /**
   * One or two sentences on what it is and what to watch for.
   */
  about?: string;
  /**
   * What can hurt somebody or burn, and how to avoid it; left out where nothing can.
   */
  caution?: string;
  /**
   * Everything a wire can be soldered to, in the usual order.
   *
   * @minItems 1
   */
  terminals: [PartTerminal, ...PartTerminal[]];
  /**
   * The terminals by which a path of wires enters and leaves; `false` where it cannot pass. Left out: the two terminals, where there are exactly two.
   */
  series?: [string, string] | false;
  /**
   * Groups of terminals that metal inside the part makes one conductor: the paired legs of a button, the ways of a connector.
   */
  joined?: [string, string, ...string[]][];
  /**
   * What a manifest may say about one part of this kind, by key.
   */
  parameters?: {
    [k: string]: PartParameter;
  };
  /**
   * What the part is electrically, made of a few primitives.
   */
  inside: PartPrimitive[];
  sources?: Sources;
}
export interface PartTerminal {
  /**
   * Name of the terminal, as typed behind the dot.
   */
  id: string;
  /**
   * Other names that are taken for it.
   */
  names?: string[];
  /**
   * How to tell it on the real thing: "longer leg".
   */
  tell?: string;
  /**
   * Set where the way round matters.
   */
  polarity?: '+' | '-';
  /**
   * What it does on a bus: `i2c.sda`, `uart.tx`.
   */
  roles?: string[];
  /**
   * True where the part works with nothing wired to it.
   */
  optional?: boolean;
  when?: Condition;
}
/**
 * Holds for this variant only: parameter names with the value, or the list of values, they must have.
 */
export interface Condition {
  [k: string]: (string | boolean | number) | [string | boolean | number, ...(string | boolean | number)[]];
}
export interface PartParameter {
  /**
   * `quantity` has a unit, `number` is a plain count, `choice` is one of `choices`, `flag` is true or false, `text` is free.
   */
  type: 'quantity' | 'number' | 'choice' | 'flag' | 'text';
  /**
   * Unit of a quantity; `ratio` is written in per cent.
   */
  unit?: 'ohm' | 'V' | 'A' | 'W' | 'F' | 'H' | 'Hz' | 'm' | 's' | 'Ah' | 'Wh' | 'degC' | 'ratio';
  /**
   * Taken where the manifest says nothing. `{"stock": "tolerance"}` takes the stock's figure.
   */
  default?: (string | number | boolean) | StockDefault;
  /**
   * True where the manifest has to say it.
   */
  required?: boolean;
  /**
   * The words a choice can be.
   *
   * @minItems 1
   */
  choices?: [string, ...string[]];
  /**
   * What it means, shown when the pointer rests on the key.
   */
  about?: string;
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
export interface StockDefault {
  /**
   * Figure of the manifest's `stock`.
   */
  stock: 'tolerance' | 'power';
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
