/** What a sizing gives back, for printing as text and as JSON. */
import { formatQuantity, formatTolerance } from '../../base/quantity';
import { bandsFor, letterCode, type Sized } from '../../circuit';
import type { OptionSpec } from '../spec';
import type { Figures } from './figures';

/** One thing that can be sized. */
export interface Sizer {
  readonly what: string;
  /** A phrase: "the series resistor of a lamp". */
  readonly about: string;
  /** Names of its options; each is one of `OPTIONS`. */
  readonly options: readonly string[];
  size(figures: Figures): Answer;
}

/** The outcome: what to take and the figures that follow, or why nothing fits. */
export type Answer = Sized<{
  /** What to take. */
  readonly take: string;
  /** What follows from it, a line each. */
  readonly lines: readonly string[];
  /** The same figures for programs, SI. */
  readonly figures: Readonly<Record<string, unknown>>;
}>;

/** "330 ohm, 5 % (orange, orange, brown, gold; printed 330R)". */
export function resistorWords(ohms: number, tolerance: number): string {
  const bands = bandsFor(ohms, tolerance);
  const said = [
    ...(bands.ok ? [bands.bands.join(', ')] : []),
    ...[letterCode(ohms, 'ohm') ?? []].flat().map((code) => `printed ${code}`),
  ];
  return `${formatQuantity(ohms, 'ohm', 4)}, ${formatTolerance(tolerance)}${said.length === 0 ? '' : ` (${said.join('; ')})`}`;
}

/** Every option of every sizing. */
export const OPTIONS: readonly OptionSpec[] = [
  quantity('supply', 'V', 'volts of the supply or of a pin that is high; a range is written 4.5..5.5V'),
  quantity('forward', 'V', 'forward volts of the lamp; a range is written 1.9..2.3V'),
  quantity('at', 'A', 'the current that the forward volts were measured at'),
  quantity(
    'current',
    'A',
    'the current: wanted (series), of whoever moves the line (pull-up), at most (divider), through it (wire)',
  ),
  quantity('limit', 'A', 'what may flow at the worst'),
  quantity(
    'source-ohms',
    'OHM',
    'ohms inside the pin or the supply; for a divider: what its output may look like, at most',
  ),
  quantity('power', 'W', 'watts that one resistor stands'),
  { name: 'pair', about: 'two resistors are fine where one does not come near' },
  quantity('low', 'V', 'volts that are left on the line when it is pulled away'),
  quantity('leakage', 'A', 'leakage of all that hangs on the line'),
  quantity('loss', 'V', 'volts that the line may lose to the leakage'),
  quantity('capacitance', 'F', 'farads of the line or of the capacitor'),
  quantity('time', 'S', 'seconds: that the edge may take at most (pull-up), that are wanted at least (rc)'),
  quantity('input', 'V', 'volts that are divided; a range is written 11..14.4V'),
  quantity('wanted', 'V', 'volts wanted at the output'),
  quantity('at-most', 'V', 'volts that the output must not pass; the wanted ones without it'),
  quantity('at-least', 'V', 'volts that the output must not fall below at the least input'),
  quantity('load', 'OHM|A', 'ohms behind the divider; amperes that the transistor switches'),
  quantity('threshold', 'V', 'volts at which the input changes its mind'),
  {
    name: 'edge',
    value: { words: 'EDGE', choices: ['rise', 'fall'] },
    about: 'whether the capacitor charges (rise) or discharges (fall); rise without it',
  },
  quantity('capacitor-tolerance', 'PERCENT', 'of the capacitor; 20% without it'),
  quantity('most-ohms', 'OHM', 'ohms that the resistor must not exceed; 100k without it'),
  quantity('gain', 'N', 'lowest current gain at that load; ten to one is forced without it'),
  quantity('room', 'N', 'how many times the base current that the gain asks for; 2 without it'),
  quantity('base-volts', 'V', 'base-emitter volts in saturation; 0.7V without it'),
  quantity('gauge', 'AWG', 'thickness of the wire as a gauge number; -1 is 2/0'),
  quantity('area', 'MM2', 'thickness of the wire in square millimetres of copper'),
  quantity('length', 'M', 'from one end to the other'),
  { name: 'one-way', about: 'the current comes back by another way' },
  quantity('degrees', 'C', 'of the copper, in degC; 20 without it'),
  quantity(
    'stock',
    'STOCK',
    'values that can be had: a series (E12) or a list (220,330,4k7); E12 without it',
  ),
  quantity('tolerance', 'PERCENT', 'of the resistors; 5% without it'),
  {
    name: 'board',
    value: { words: 'BOARD', names: 'board' },
    about: 'take volts, ohms and limits of a pin from this board, where no option says otherwise',
  },
];

function quantity(name: string, words: string, about: string): OptionSpec {
  return { name, value: { words }, about };
}
