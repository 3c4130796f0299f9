/**
 * The units that people type and read in a build, with every spelling that is taken for them. Kept apart from the
 * reading and printing so that one table serves both and a new unit is one row.
 * Source of symbols and prefixes: the SI brochure, 9th edition, tables 2, 4 and 7; IEC 60062 for the letters that
 * stand for a decimal point (both from memory).
 */

/** The unit a figure is wanted in. `ohm` is the symbol's name in letters, so that every terminal and font shows it. */
export type Unit = 'ohm' | 'V' | 'A' | 'W' | 'F' | 'H' | 'Hz' | 'm' | 's' | 'Ah' | 'Wh' | 'degC';

/** Powers of ten by prefix as typed; both code points of the micro sign, and `K`, which everybody types for `k`. */
export const PREFIXES: Readonly<Record<string, number>> = {
  p: -12,
  n: -9,
  u: -6,
  '\u00b5': -6,
  '\u03bc': -6,
  m: -3,
  c: -2,
  k: 3,
  K: 3,
  M: 6,
  G: 9,
};

export interface UnitFacts {
  /** What it measures, for sentences: "a resistance". */
  readonly quantity: string;
  /** A right example, for sentences. */
  readonly example: string;
  /** Spellings of the unit itself, longest first. */
  readonly words: readonly string[];
  /** Spellings that are another unit of the same quantity, by their size in this one. */
  readonly others: Readonly<Record<string, number>>;
  /** Prefixes that make sense here, with or without the unit's word behind them. */
  readonly prefixes: string;
  /** Prefixes that are taken only with the unit's word behind them, since alone they are more likely a slip. */
  readonly wordyPrefixes: string;
  /** Letters that stand for the decimal point, with their power of ten: `4k7`, `4n7`, `3V3`. */
  readonly pointLetters: Readonly<Record<string, number>>;
  readonly signed: boolean;
  /** Upper and lower case of the unit's word do not matter: no other reading is possible. */
  readonly anyCase: boolean;
}

const CAPACITOR_LETTERS = { p: -12, n: -9, u: -6, '\u00b5': -6, '\u03bc': -6, m: -3, F: 0 };

export const UNITS: Readonly<Record<Unit, UnitFacts>> = {
  ohm: {
    quantity: 'a resistance',
    example: '330 ohm or 4k7',
    words: ['ohms', 'ohm', '\u03a9', '\u2126'],
    others: {},
    prefixes: 'kKMG',
    wordyPrefixes: 'm',
    pointLetters: { R: 0, r: 0, k: 3, K: 3, M: 6, G: 9, T: 12 },
    signed: false,
    anyCase: true,
  },
  V: {
    quantity: 'a voltage',
    example: '5 V',
    words: ['volts', 'volt', 'V'],
    others: {},
    prefixes: 'nu\u00b5\u03bcmk',
    wordyPrefixes: '',
    // Common practice on circuit diagrams, not in the standard.
    pointLetters: { V: 0, v: 0 },
    signed: true,
    anyCase: true,
  },
  A: {
    quantity: 'a current',
    example: '20 mA',
    words: ['amperes', 'ampere', 'amps', 'amp', 'A'],
    others: {},
    prefixes: 'pnu\u00b5\u03bcmk',
    wordyPrefixes: '',
    pointLetters: {},
    signed: true,
    anyCase: true,
  },
  W: {
    quantity: 'a power',
    example: '0.25 W',
    words: ['watts', 'watt', 'W'],
    others: {},
    prefixes: 'nu\u00b5\u03bcmk',
    wordyPrefixes: '',
    pointLetters: {},
    signed: false,
    anyCase: true,
  },
  F: {
    quantity: 'a capacitance',
    example: '100 nF or 4n7',
    words: ['farads', 'farad', 'F'],
    others: {},
    prefixes: 'pnu\u00b5\u03bc',
    wordyPrefixes: 'm',
    pointLetters: CAPACITOR_LETTERS,
    signed: false,
    anyCase: true,
  },
  H: {
    quantity: 'an inductance',
    example: '10 mH',
    words: ['henries', 'henrys', 'henry', 'H'],
    others: {},
    prefixes: 'nu\u00b5\u03bcm',
    wordyPrefixes: '',
    pointLetters: {},
    signed: false,
    anyCase: true,
  },
  Hz: {
    quantity: 'a frequency',
    example: '440 Hz',
    words: ['hertz', 'Hz'],
    others: {},
    prefixes: 'kKMG',
    wordyPrefixes: 'm',
    pointLetters: {},
    signed: false,
    anyCase: true,
  },
  m: {
    quantity: 'a length',
    example: '20 cm',
    words: ['metres', 'metre', 'meters', 'meter', 'm'],
    // The international inch is 25.4 mm exactly.
    others: { in: 0.0254, inch: 0.0254, inches: 0.0254, ft: 0.3048, feet: 0.3048, foot: 0.3048 },
    prefixes: '',
    wordyPrefixes: 'u\u00b5\u03bcmck',
    pointLetters: {},
    signed: false,
    anyCase: false,
  },
  s: {
    quantity: 'a time',
    example: '250 ms',
    words: ['seconds', 'second', 'sec', 's'],
    others: { min: 60, minute: 60, minutes: 60, h: 3600, hour: 3600, hours: 3600 },
    prefixes: '',
    wordyPrefixes: 'pnu\u00b5\u03bcm',
    pointLetters: {},
    signed: false,
    anyCase: false,
  },
  Ah: {
    quantity: 'a capacity',
    example: '2000 mAh',
    words: ['Ah'],
    others: {},
    prefixes: '',
    wordyPrefixes: 'u\u00b5\u03bcmk',
    pointLetters: {},
    signed: false,
    anyCase: true,
  },
  Wh: {
    quantity: 'an energy',
    example: '7.4 Wh',
    words: ['Wh'],
    others: {},
    prefixes: '',
    wordyPrefixes: 'mkM',
    pointLetters: {},
    signed: false,
    anyCase: true,
  },
  degC: {
    quantity: 'a temperature',
    example: '25 degC',
    words: ['degC', '\u00b0C'],
    others: {},
    prefixes: '',
    wordyPrefixes: '',
    pointLetters: {},
    signed: true,
    anyCase: false,
  },
};
