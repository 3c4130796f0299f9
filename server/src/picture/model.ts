/**
 * What a picture shows, as plain data: the board's headers, the parts as symbols, the wires between them, and what is
 * to be told of each. Nothing here knows where it will be drawn.
 */
import type { Severity } from '../base/finding';
import type { Span } from '../base/span';

/** A finding at the place that it is drawn at. */
export interface Mark {
  readonly rule: string;
  readonly severity: Severity;
  readonly message: string;
  readonly span: Span;
}

export interface PictureHole {
  readonly pin: string;
  /** Counted from the landmark, the first is 1; 0 where the wire's pin has no free position left. */
  readonly index: number;
  readonly supply: boolean;
  readonly wired: boolean;
  /** Amperes in the state where the pin carries most, at typical figures. */
  readonly amps?: number;
  readonly marks: readonly Mark[];
}

export interface PictureHeader {
  readonly id: string;
  readonly title: string;
  readonly landmark: string;
  readonly side: 'left' | 'right';
  readonly holes: readonly PictureHole[];
}

/** A primitive as the symbol it gets; `ends` in the primitive's own order. */
export interface PictureSymbol {
  readonly id: string;
  readonly type:
    | 'resistor'
    | 'fuse'
    | 'capacitor'
    | 'coil'
    | 'diode'
    | 'zener'
    | 'light'
    | 'lamp'
    | 'switch'
    | 'potentiometer'
    | 'cells'
    | 'source'
    | 'load'
    | 'motor'
    | 'sounder'
    | 'transistor'
    | 'logic';
  readonly ends: readonly [string, string];
  /** Wiper, base or gate. */
  readonly third?: string;
  readonly polarised?: boolean;
  /** A switch's state at rest, and whether it returns by itself. */
  readonly closed?: boolean;
  readonly momentary?: boolean;
  /** What moves a contact: the id of a coil or load of the part. */
  readonly operatedBy?: string;
  readonly channel?: 'n' | 'p';
  readonly bipolar?: boolean;
}

export interface PictureTerminal {
  readonly id: string;
  readonly tell?: string;
}

export interface PicturePart {
  readonly id: string;
  readonly title: string;
  /** "470 ohm", "green": what tells it from others of its kind. */
  readonly value: string;
  readonly purpose?: string;
  readonly terminals: readonly PictureTerminal[];
  readonly symbols: readonly PictureSymbol[];
  readonly joined: readonly (readonly string[])[];
  /** Amperes in the state where it carries most, at typical figures. */
  readonly amps?: number;
  readonly span: Span;
  readonly marks: readonly Mark[];
}

export type PictureEnd =
  | { readonly kind: 'hole'; readonly header: string; readonly index: number; readonly pin: string }
  | { readonly kind: 'terminal'; readonly part: string; readonly terminal: string };

export interface PictureWire {
  readonly id: string;
  readonly ends: readonly [PictureEnd, PictureEnd];
  /** As the user names it; `paints` are its one or two screen colours, none where the name is not known. */
  readonly colour?: string;
  readonly paints: readonly string[];
  readonly net: string;
  /** True where a supply or ground pin of the board holds the net. */
  readonly rail: boolean;
  /** Both ends and the colour in words. */
  readonly words: string;
  readonly span: Span;
  readonly marks: readonly Mark[];
}

export interface PictureModel {
  readonly title: string;
  readonly revision?: string;
  readonly board: string;
  readonly headers: readonly PictureHeader[];
  readonly parts: readonly PicturePart[];
  readonly wires: readonly PictureWire[];
  /** Findings that belong to no pin, part or wire of the picture. */
  readonly marks: readonly Mark[];
}
