/**
 * What a wire takes of the voltage, by gauge or cross-section and length, there and back.
 * Sources: ASTM B258 (gauge 36 is 0.005 inch, gauge 0000 is 0.46 inch, 39 equal ratios between); IEC 60028 for annealed
 * copper (1.7241e-8 ohm metre at 20 degC, 0.393 % more per kelvin), from memory.
 */
import { faultIn, figure, named, over, plain, refused, type Sized, type Sum, sumOf, times } from './sum';

/** A wire's thickness: a gauge number (0 is 1/0, -1 is 2/0, -3 is 4/0) or square millimetres of copper. */
export type Thickness = { readonly awg: number } | { readonly squareMillimetres: number };

const INCH = 25.4;
const COPPER_OHM_METRES = 1.7241e-8;
const COPPER_PER_KELVIN = 0.00393;

/** Millimetres of a solid wire of that gauge; undefined beyond the gauges there are (4/0 to 56). */
export function gaugeMillimetres(awg: number): number | undefined {
  return awg >= -3 && awg <= 56 ? 0.005 * 92 ** ((36 - awg) / 39) * INCH : undefined;
}

/** Square millimetres of a wire; undefined where the thickness is none. */
export function squareMillimetresOf(thickness: Thickness): number | undefined {
  if ('squareMillimetres' in thickness) {
    const { squareMillimetres } = thickness;
    return squareMillimetres > 0 && Number.isFinite(squareMillimetres) ? squareMillimetres : undefined;
  }
  const diameter = gaugeMillimetres(thickness.awg);
  return diameter === undefined ? undefined : (Math.PI / 4) * diameter ** 2;
}

/** Ohms of a metre of copper at a temperature in degC. */
export function ohmsPerMetre(squareMillimetres: number, degrees = 20): number {
  return (COPPER_OHM_METRES * (1 + COPPER_PER_KELVIN * (degrees - 20)) * 1e6) / squareMillimetres;
}

export interface WireWish {
  readonly thickness: Thickness;
  /** Metres from one end to the other. */
  readonly metres: number;
  /** Amperes through it. */
  readonly amps: number;
  /** Whether the current comes back by such a wire too; true where absent. */
  readonly thereAndBack?: boolean;
  /** degC of the copper; 20 where absent. */
  readonly degrees?: number;
  /** Volts at its beginning, for the share that is lost. */
  readonly supply?: number;
}

export interface WireDrop {
  readonly ohms: Sum;
  readonly volts: Sum;
  readonly watts: number;
  /** Lost share of the supply, where one is given. */
  readonly share?: number;
}

export function wireDrop(wish: WireWish): Sized<WireDrop> {
  const { thickness, metres, amps, thereAndBack = true, degrees = 20, supply } = wish;
  const area = squareMillimetresOf(thickness);
  if (area === undefined) {
    return refused('there is no wire of that thickness');
  }
  const fault =
    faultIn({ length: metres, supply: supply ?? 1 }) ??
    (amps >= 0 && Number.isFinite(amps) ? undefined : 'the current must be a number of zero or more') ??
    (degrees > -200 && degrees < 1000 ? undefined : 'copper is no wire at that temperature');
  if (fault !== undefined) {
    return refused(fault);
  }
  const each = ohmsPerMetre(area, degrees);
  const length = thereAndBack ? times(plain(2), figure(metres, 'm')) : figure(metres, 'm');
  const perMetre = { ...named(each * 1000, 'mohm/m'), value: each };
  const ohms = sumOf(times(length, perMetre), 'ohm');
  const volts = sumOf(times(figure(amps, 'A'), figure(ohms.value, 'ohm')), 'V');
  const lost = supply === undefined ? undefined : over(figure(volts.value, 'V'), figure(supply, 'V')).value;
  return {
    ok: true,
    ohms,
    volts,
    watts: amps ** 2 * ohms.value,
    ...(lost === undefined ? {} : { share: lost }),
    sums: [ohms, volts],
  };
}
