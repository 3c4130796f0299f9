/** What the cores' calls do beyond their names, where that differs from core to core. */
import type { Board } from '../../base/build';

/**
 * What digitalWrite does to a pin that is an input: it switches the pull-up, drives the pin low against its own
 * pull-up, or does nothing at all. Undefined for a core that nobody looked at.
 */
export function levelOnInput(board: Board): 'switches-pull' | 'drives-low' | 'nothing' | undefined {
  const { macros } = board.platform;
  const has = (...names: string[]) => names.some((name) => macros[name] !== undefined);
  // wiring_digital.c of the cores for AVR and SAMD: the level goes to the register that also enables the pull-up.
  if (has('ARDUINO_ARCH_AVR', 'ARDUINO_ARCH_SAMD')) return 'switches-pull';
  // wiring_digital.cpp of arduino-pico: a pin with pull-up is written as an open drain.
  if (has('ARDUINO_ARCH_RP2040')) return 'drives-low';
  // Output latches of their own: the level waits until the pin becomes an output (the chips' documents, from memory).
  return has('ARDUINO_ARCH_ESP32', 'ARDUINO_ARCH_ESP8266', 'ARDUINO_ARCH_RENESAS', 'TEENSYDUINO')
    ? 'nothing'
    : undefined;
}

/** True where digitalRead and digitalWrite stop the PWM of their pin (turnOffPWM of the core for AVR). */
export function digitalCallsStopPwm(board: Board): boolean {
  return board.platform.macros.ARDUINO_ARCH_AVR !== undefined;
}
