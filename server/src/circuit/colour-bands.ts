/**
 * The coloured bands on a resistor's body: how one tells 470 ohm from 4.7 kohm in the drawer and on the board.
 * Source: IEC 60062 (2016), colour code for fixed resistors, as tabulated on public reference pages; grey as a
 * tolerance differs between editions (0.05 % before, 0.01 % now) and is read as the newer one (from memory).
 */

const DIGITS = [
  'black',
  'brown',
  'red',
  'orange',
  'yellow',
  'green',
  'blue',
  'violet',
  'grey',
  'white',
] as const;
export type BandColour = (typeof DIGITS)[number] | 'gold' | 'silver' | 'pink';

/** Power of ten of the multiplier band for those that are not digits. */
const SMALL_MULTIPLIERS: readonly (readonly [BandColour, number])[] = [
  ['gold', -1],
  ['silver', -2],
  ['pink', -3],
];

/** Relative tolerances; none at all is 20 %. */
const TOLERANCES: readonly (readonly [BandColour, number])[] = [
  ['silver', 0.1],
  ['gold', 0.05],
  ['red', 0.02],
  ['brown', 0.01],
  ['green', 0.005],
  ['blue', 0.0025],
  ['violet', 0.001],
  ['orange', 0.0005],
  ['yellow', 0.0002],
  ['grey', 0.0001],
];
const NO_BAND = 0.2;

/** Millionths per kelvin. */
const COEFFICIENTS: readonly (readonly [BandColour, number])[] = [
  ['black', 250],
  ['brown', 100],
  ['red', 50],
  ['orange', 15],
  ['yellow', 25],
  ['green', 20],
  ['blue', 10],
  ['violet', 5],
  ['grey', 1],
];

/** What bands say. */
export interface Banded {
  readonly ohms: number;
  /** Relative. */
  readonly tolerance: number;
  /** Temperature coefficient in millionths per kelvin, where a sixth band says so. */
  readonly perKelvin?: number;
}

/** The bands in reading order, or why there are none: a clause without capital and full stop. */
export type Bands =
  | { readonly ok: true; readonly bands: readonly BandColour[] }
  | { readonly ok: false; readonly why: string };

/**
 * The bands of a resistor: three without a tolerance band (20 %), four with two digits, five with three digits, six
 * with a temperature coefficient. As on real parts, 5 % and wider carry two digits and tighter ones three; a value
 * that needs a third digit gets it anyway.
 */
export function bandsFor(ohms: number, tolerance: number, perKelvin?: number): Bands {
  if (ohms === 0) {
    return { ok: true, bands: ['black'] };
  }
  if (!(ohms >= 1e-3 && ohms < 1e13)) {
    return { ok: false, why: 'the colour code has no bands for this resistance' };
  }
  const toleranceBand = bandOf(TOLERANCES, tolerance);
  if (toleranceBand === undefined && !same(tolerance, NO_BAND)) {
    return { ok: false, why: 'the colour code has no band for this tolerance' };
  }
  const coefficientBand = perKelvin === undefined ? undefined : bandOf(COEFFICIENTS, perKelvin);
  if (perKelvin !== undefined && (coefficientBand === undefined || toleranceBand === undefined)) {
    return { ok: false, why: 'the colour code has no band for this temperature coefficient' };
  }
  const fewest = tolerance >= 0.05 - 1e-9 && perKelvin === undefined ? 2 : 3;
  for (let count = fewest; count <= 3; count += 1) {
    const value = valueBands(ohms, count);
    if (value !== undefined) {
      const rest = [toleranceBand, coefficientBand].filter((band) => band !== undefined);
      return count === 3 && toleranceBand === undefined
        ? { ok: false, why: 'three digits without a tolerance band would be read as two and a tolerance' }
        : { ok: true, bands: [...value, ...rest] };
    }
  }
  return { ok: false, why: 'the colour code has no more than three digits for a resistance' };
}

/** Digits and multiplier, or undefined where the value has more digits or no multiplier band fits. */
function valueBands(ohms: number, count: number): readonly BandColour[] | undefined {
  const [mantissa = '', exponent = '0'] = ohms.toExponential(count - 1).split('e');
  const power = Number(exponent) - (count - 1);
  if (!same(Number(`${mantissa}e${exponent}`), ohms)) {
    return undefined;
  }
  const multiplier = DIGITS[power] ?? SMALL_MULTIPLIERS.find(([, small]) => small === power)?.[0];
  const digits = [...mantissa.replace('.', '')].flatMap((digit) => DIGITS[Number(digit)] ?? []);
  return multiplier === undefined ? undefined : [...digits, multiplier];
}

/** What three to six bands say, in reading order; a single black one is the 0 ohm link. Undefined where nonsense. */
export function readBands(bands: readonly BandColour[]): Banded | undefined {
  if (bands.length === 1 && bands[0] === 'black') {
    return { ohms: 0, tolerance: 0 };
  }
  if (bands.length < 3 || bands.length > 6) {
    return undefined;
  }
  const count = bands.length >= 5 ? 3 : 2;
  const digits = bands.slice(0, count).map((band) => DIGITS.indexOf(band as (typeof DIGITS)[number]));
  const multiplier = bands[count];
  const power =
    SMALL_MULTIPLIERS.find(([band]) => band === multiplier)?.[1] ??
    DIGITS.indexOf(multiplier as (typeof DIGITS)[number]);
  const tolerance = bands.length === 3 ? NO_BAND : figureOf(TOLERANCES, bands[count + 1]);
  const perKelvin = bands.length === 6 ? figureOf(COEFFICIENTS, bands[5]) : undefined;
  if (digits.includes(-1) || (power === -1 && multiplier !== 'gold') || tolerance === undefined) {
    return undefined;
  }
  if (bands.length === 6 && perKelvin === undefined) {
    return undefined;
  }
  const ohms = Number(`${digits.join('')}e${power}`);
  return { ohms, tolerance, ...(perKelvin === undefined ? {} : { perKelvin }) };
}

function same(a: number, b: number): boolean {
  return Math.abs(a - b) <= Math.abs(b) * 1e-9;
}

function bandOf(table: readonly (readonly [BandColour, number])[], value: number): BandColour | undefined {
  return table.find(([, entry]) => same(entry, value))?.[0];
}

function figureOf(
  table: readonly (readonly [BandColour, number])[],
  band: BandColour | undefined,
): number | undefined {
  return table.find(([colour]) => colour === band)?.[1];
}
