/**
 * The diode across a coil. When the coil's current is switched off it goes on through the diode, so the diode must carry
 * that current, and block the supply while the coil is on.
 * Source: as much current as the coil, twice the supply in reverse (common practice).
 */
import { formatQuantity } from '../base/quantity';
import { faultIn, figure, over, plain, refused, type Sized, type Sum, sumOf, times } from './sum';

export interface FlybackDiode {
  readonly name: string;
  /** Continuous forward current it stands, amperes. */
  readonly maxAmps: number;
  /** Reverse voltage it stands, volts. */
  readonly maxReverseVolts: number;
}

/**
 * Diodes that hang in every drawer, the smallest first.
 * Source: 1N4148 data sheet (300 mA continuous, 75 V), 1N4001 to 1N4007 data sheet (1 A, 50 V to 1000 V), 1N5819 data
 * sheet (1 A, 40 V), 1N5822 data sheet (3 A, 40 V); all from memory.
 */
export const FLYBACK_DIODES: readonly FlybackDiode[] = [
  { name: '1N4148', maxAmps: 0.3, maxReverseVolts: 75 },
  { name: '1N5819', maxAmps: 1, maxReverseVolts: 40 },
  { name: '1N4001', maxAmps: 1, maxReverseVolts: 50 },
  { name: '1N4007', maxAmps: 1, maxReverseVolts: 1000 },
  { name: '1N5822', maxAmps: 3, maxReverseVolts: 40 },
];

export interface FlybackWish {
  /** Volts that feed the coil, the highest. */
  readonly supply: number;
  /** Ohms of the coil, the lowest. */
  readonly coilOhms: number;
  /** Henries of the coil, for the time its current goes on. */
  readonly henries?: number;
  /** Diodes to choose from, in order of preference. */
  readonly diodes?: readonly FlybackDiode[];
}

export function chooseFlybackDiode(
  wish: FlybackWish,
): Sized<{ readonly diode: FlybackDiode; readonly amps: number; readonly sum: Sum }> {
  const { supply, coilOhms, henries, diodes = FLYBACK_DIODES } = wish;
  const fault = faultIn({ supply, "coil's resistance": coilOhms, inductance: henries ?? 1 });
  if (fault !== undefined) {
    return refused(fault);
  }
  const amps = sumOf(over(figure(supply, 'V'), figure(coilOhms, 'ohm')), 'A');
  const reverse = sumOf(times(plain(2), figure(supply, 'V')), 'V');
  const diode = diodes.find((one) => one.maxAmps >= amps.value && one.maxReverseVolts >= reverse.value);
  if (diode === undefined) {
    const need = `${formatQuantity(amps.value, 'A')} and blocks ${formatQuantity(reverse.value, 'V')}`;
    return refused(`no diode of the choice carries ${need}`);
  }
  const sums = [amps, reverse];
  if (henries !== undefined) {
    // Five time constants: what is left is below a hundredth.
    sums.push(sumOf(over(times(plain(5), figure(henries, 'H')), figure(coilOhms, 'ohm')), 's'));
  }
  return { ok: true, diode, amps: amps.value, sum: amps, sums };
}
