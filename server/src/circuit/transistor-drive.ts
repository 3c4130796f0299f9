/**
 * What stands between a pin and the transistor it drives: the base resistor of a bipolar one, which sets the current
 * that saturates it, and the gate resistor of a field-effect one, which limits the surge into the gate.
 * Source: base current from the collector's by the lowest gain, with room for saturation; ten to one where the gain is
 * not known (common practice).
 */
import { formatQuantity } from '../base/quantity';
import { usableValues } from './resistor-pair';
import {
  faultIn,
  figure,
  logarithm,
  minus,
  over,
  plain,
  plus,
  refused,
  type Sized,
  type Sum,
  sumOf,
  times,
} from './sum';

export interface BaseWish {
  /** Volts of the pin when high, the lowest. */
  readonly driveVolts: number;
  /** The same, the highest; the lowest where absent. */
  readonly highestDriveVolts?: number;
  /** Ohms inside the pin; 0 where absent. */
  readonly driveOhms?: number;
  /** Collector current to switch, amperes. */
  readonly loadAmps: number;
  /** Lowest current gain at that current; where absent ten to one is forced. */
  readonly gain?: number;
  /** How many times the base current that the gain asks for; 2 where absent. */
  readonly room?: number;
  /** Base-emitter volts in saturation; 0.7 V where absent. */
  readonly baseVolts?: number;
  /** Amperes that the pin may carry. */
  readonly limitAmps: number;
  readonly stock: readonly number[];
  readonly tolerance: number;
}

export interface SizedDrive {
  readonly ohms: number;
  /** Amperes through the pin with that value, at the most. */
  readonly pinAmps: number;
  readonly sum: Sum;
}

const FORCED_GAIN = 10;
const BASE_VOLTS = 0.7;

/** The largest value of the stock that still saturates the transistor, if the pin stands the current. */
export function sizeBaseResistor(wish: BaseWish): Sized<SizedDrive> {
  const { driveVolts, loadAmps, gain, limitAmps, tolerance } = wish;
  const { driveOhms = 0, room = 2, baseVolts = BASE_VOLTS, highestDriveVolts = driveVolts } = wish;
  const fault =
    faultIn({ drive: driveVolts, 'load current': loadAmps, gain: gain ?? 1, room, limit: limitAmps }) ??
    (driveOhms >= 0 && baseVolts >= 0 ? undefined : 'a figure of the sum is out of its range') ??
    (tolerance >= 0 && tolerance < 1 ? undefined : 'the tolerance must lie between 0 and 100 %');
  if (fault !== undefined) {
    return refused(fault);
  }
  if (driveVolts <= baseVolts) {
    const need = `${formatQuantity(baseVolts, 'V')}, the pin gives ${formatQuantity(driveVolts, 'V')}`;
    return refused(`the base needs ${need}`);
  }
  const base =
    gain === undefined
      ? over(figure(loadAmps, 'A'), plain(FORCED_GAIN))
      : over(times(figure(loadAmps, 'A'), plain(room)), plain(gain));
  const baseAmps = sumOf(base, 'A');
  const across = minus(figure(driveVolts, 'V'), figure(baseVolts, 'V'));
  const wanted = over(across, figure(baseAmps.value, 'A'));
  const most = sumOf(driveOhms === 0 ? wanted : minus(wanted, figure(driveOhms, 'ohm')), 'ohm');
  const ohms = usableValues(wish.stock)
    .filter((value) => value * (1 + tolerance) <= most.value * (1 + 1e-9))
    .at(-1);
  if (ohms === undefined) {
    return refused(`the stock has nothing up to ${formatQuantity(Math.max(0, most.value), 'ohm')}`);
  }
  const least = ohms * (1 - tolerance) + driveOhms;
  const pin = sumOf(
    over(minus(figure(highestDriveVolts, 'V'), figure(baseVolts, 'V')), figure(least, 'ohm')),
    'A',
  );
  if (pin.value > limitAmps) {
    const allowed = formatQuantity(limitAmps, 'A');
    return refused(`the pin would carry ${pin.text} and is allowed ${allowed}: the gain is too small`);
  }
  return { ok: true, ohms, pinAmps: pin.value, sum: most, sums: [baseAmps, most, pin] };
}

export interface GateWish {
  /** Volts of the pin when high, the highest. */
  readonly driveVolts: number;
  readonly driveOhms?: number;
  /** Amperes that the pin may carry for a moment. */
  readonly limitAmps: number;
  /** Farads of the gate (input capacitance, or gate charge over drive volts); 1 nF where absent. */
  readonly gateFarads?: number;
  readonly stock: readonly number[];
  readonly tolerance: number;
}

/**
 * The smallest value of the stock that keeps the surge within the pin's limit; `seconds` until the gate has 90 % of its
 * voltage, and the resistor from gate to source that holds it off while the pin is no output yet.
 */
export function sizeGateResistor(
  wish: GateWish,
): Sized<SizedDrive & { readonly seconds: number; readonly holdOhms: number }> {
  const { driveVolts, driveOhms = 0, limitAmps, gateFarads = 1e-9, tolerance } = wish;
  const fault =
    faultIn({ drive: driveVolts, limit: limitAmps, "gate's capacitance": gateFarads }) ??
    (driveOhms >= 0 && tolerance >= 0 && tolerance < 1
      ? undefined
      : 'a figure of the sum is out of its range');
  if (fault !== undefined) {
    return refused(fault);
  }
  const whole = over(figure(driveVolts, 'V'), figure(limitAmps, 'A'));
  const least = sumOf(driveOhms === 0 ? whole : minus(whole, figure(driveOhms, 'ohm')), 'ohm');
  const values = usableValues(wish.stock);
  const ohms = values.find((value) => value * (1 - tolerance) >= least.value * (1 - 1e-9));
  // Before the series resistor, at the pin, it would take nothing of the gate's voltage; ten times and more at the gate
  // takes less than a tenth.
  const holdOhms = values.find((value) => value >= 10_000 && value >= 100 * (ohms ?? 0));
  if (ohms === undefined || holdOhms === undefined) {
    const missing = ohms === undefined ? least.value : Math.max(10_000, 100 * ohms);
    return refused(`the stock has nothing from ${formatQuantity(missing, 'ohm')} upwards`);
  }
  const resistance =
    driveOhms === 0 ? figure(ohms, 'ohm') : plus(figure(ohms, 'ohm'), figure(driveOhms, 'ohm'));
  const rise = sumOf(times(resistance, figure(gateFarads, 'F'), logarithm(plain(10))), 's');
  const pinAmps = driveVolts / (ohms * (1 - tolerance) + driveOhms);
  return { ok: true, ohms, pinAmps, seconds: rise.value, holdOhms, sum: least, sums: [least, rise] };
}
