/**
 * The few things that every part is electrically made of. Rules and the circuit engine see these only, so that a new
 * part is a data file and no code. All figures are SI numbers in the unit that the field names.
 */
import type { Range } from './range';

/** A primitive of a part or of the board with resolved figures. Terminals are names of the owning part. */
export type Primitive =
  | {
      readonly type: 'resistor';
      readonly id: string;
      readonly ends: readonly [string, string];
      readonly ohms: Range;
      /** Power it stands, watts. */
      readonly maxWatts?: number;
      /** Current it carries for ever, amperes; a fuse opens above it. */
      readonly maxAmps?: number;
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
      /** Voltages it works at: from the lowest that operates it for certain to the highest it stands for ever. */
      readonly volts?: Range;
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
      /** Current from which a lamp is clearly seen, amperes. */
      readonly visibleAmps?: number;
      /** Reverse voltage it stands, volts. */
      readonly maxReverseVolts?: number;
      /** Reverse voltage at which it conducts on purpose (a Zener diode), at `breakdownAmps`. */
      readonly breakdownVolts?: Range;
      /** Test current of the breakdown voltage, amperes. */
      readonly breakdownAmps?: number;
      /** Power it stands, watts. */
      readonly maxWatts?: number;
    }
  | {
      readonly type: 'switch';
      readonly id: string;
      readonly ends: readonly [string, string];
      /** momentary returns by itself; latching stays. */
      readonly action: 'momentary' | 'latching';
      /** State when nobody touches it. */
      readonly rest: 'open' | 'closed';
      /** Id of the coil, the load that holds one, or the lamp in the same part that moves it; absent where a hand does. */
      readonly operatedBy?: string;
      /** Id of the first switch of the part on the same lever: both leave their rest state together. */
      readonly movesWith?: string;
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
      /** Terminal its power comes from (a regulator's input); absent where it has its own. */
      readonly from?: string;
      /** Volts the input must lie above the output at least. */
      readonly dropout?: Range;
      /** Power out over power in, 0 to 1. Absent with `from`: a linear one, which takes the current that it gives. */
      readonly efficiency?: Range;
      /** Heat it gets rid of by itself, without a heat sink, at room temperature, watts. */
      readonly maxWatts?: number;
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
      /** Terminal that feeds the circuit behind it; the shares below are shares of its voltage. */
      readonly supply?: string;
      /** Voltage that is read as low at most, and as high at least, for certain, volts. */
      readonly lowVolts?: number;
      readonly highVolts?: number;
      /** The same as shares of the supply, 0 to 1. */
      readonly lowShare?: number;
      readonly highShare?: number;
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
      /** Current it gives or takes, amperes. */
      readonly maxAmps?: number;
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
      /** Voltage between the ends it stands, volts. */
      readonly maxVolts?: number;
      /** Volts between control and second end at which `ohms` is promised (field-effect ones). */
      readonly fullVolts?: number;
      /** Volts between control and second end that must not be passed. */
      readonly maxControlVolts?: number;
    };

/**
 * What moves a contact: contacts of one part with the same lever leave their rest state together. The hand on a switch
 * of its own is named by the switch.
 */
export function leverOf(contact: Extract<Primitive, { type: 'switch' }>): string {
  return contact.operatedBy ?? contact.movesWith ?? contact.id;
}
