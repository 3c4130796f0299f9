/** What the cores' calls do beyond their names, where that differs from core to core. */
import type { Board } from '../../base/build';

/** True where digitalRead and digitalWrite stop the PWM of their pin (turnOffPWM of the core for AVR). */
export function digitalCallsStopPwm(board: Board): boolean {
  return board.platform.macros.ARDUINO_ARCH_AVR !== undefined;
}
