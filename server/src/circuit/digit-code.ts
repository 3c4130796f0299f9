/**
 * The code of digits alone, printed where a letter does not fit: two or three figures and the number of zeros behind
 * them. "104" on a ceramic capacitor is 100 nF, "472" on a small resistor 4.7 kohm, "4R7" 4.7 ohm.
 * Source: IEC 60062 (2016), three- and four-character codes for resistance and capacitance (from memory); capacitances
 * count in picofarads, resistances in ohms.
 */
import { parseQuantity } from '../base/quantity';

type Coded = 'ohm' | 'F';

/** Power of ten of what is counted in. */
const POWER: Readonly<Record<Coded, number>> = { ohm: 0, F: -12 };

/**
 * Writes a value with `figures` figures and the zeros behind them; below ten of what it counts in, a letter stands for
 * the decimal point ("4R7", "4p7"). Undefined where the code has no way to say it.
 */
export function digitCode(value: number, unit: Coded, figures: 2 | 3 = 2): string | undefined {
  if (!(value > 0) || !Number.isFinite(value)) {
    return undefined;
  }
  const [mantissa = '', exponent = '0'] = value.toExponential(figures - 1).split('e');
  const power = Number(exponent) - POWER[unit];
  if (Math.abs(Number(`${mantissa}e${exponent}`) - value) > value * 1e-9) {
    return undefined;
  }
  const digits = mantissa.replace('.', '');
  const zeros = power - figures + 1;
  if (zeros >= 0) {
    return zeros <= 9 ? `${digits}${zeros}` : undefined;
  }
  const letter = unit === 'ohm' ? 'R' : 'p';
  if (power < -1) {
    return undefined;
  }
  // One place behind the letter in the code of three characters, as many as there are figures left otherwise.
  const whole = power < 0 ? '' : digits.slice(0, power + 1);
  return `${whole}${letter}${digits.slice(power < 0 ? 0 : power + 1)}`;
}

/** Reads "104", "472", "4701", "4R7", "R47": ohms or farads. Undefined where it is not the code. */
export function readDigitCode(text: string, unit: Coded): number | undefined {
  const trimmed = text.trim();
  const match = /^([1-9]\d{1,2})(\d)$/.exec(trimmed);
  if (match !== null) {
    return Number(`${match[1]}e${Number(match[2]) + POWER[unit]}`);
  }
  const letter = unit === 'ohm' ? /^(?:\d{1,2}R\d{1,2}|R\d{1,3})$/ : /^(?:\d{1,2}p\d{1,2}|p\d{1,3})$/;
  if (trimmed.length > 4 || !letter.test(trimmed)) {
    return undefined;
  }
  const quantity = parseQuantity(trimmed, unit);
  return quantity.ok && quantity.value > 0 ? quantity.value : undefined;
}
