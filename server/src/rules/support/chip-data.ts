/** Figures of library data that hold for one chip or for a family of chips. */
import type { Board } from '../../base/build';

/**
 * The value for this very chip, by its name in small letters, else that of its family. What `avr` says holds for the
 * ATmega328P alone, since its sisters have other timers.
 */
export function forChip<Value>(board: Board, values: Readonly<Record<string, Value>>): Value | undefined {
  const chip = board.chip.toLowerCase();
  const own = values[chip] ?? (chip === 'atmega328p' ? values.avr : undefined);
  if (own !== undefined) return own;
  const { macros } = board.platform;
  const family = Object.keys(values).find(
    (key) =>
      key !== 'avr' && /^[a-z]+\d*$/.test(key) && macros[`ARDUINO_ARCH_${key.toUpperCase()}`] !== undefined,
  );
  return family === undefined ? undefined : values[family];
}
