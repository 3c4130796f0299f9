/**
 * What digitalWrite does to a pin that is an input: it differs from core to core, and the reading of the sketch, the
 * join and the rules all ask.
 */
import type { Platform } from './platform';

/**
 * - `switches-pull`: HIGH switches the pull-up on, LOW off.
 * - `turns-pull`: HIGH switches the pull-up on, LOW a pull-down.
 * - `drives-low`: LOW drives a pin with pull-up low, HIGH lets it go; a plain input stays as it is.
 * - `nothing`: the level waits until the pin becomes an output.
 */
export type LevelOnInput = 'switches-pull' | 'turns-pull' | 'drives-low' | 'nothing';

/** Undefined for a core that nobody looked at. */
export function levelOnInput({ macros }: Pick<Platform, 'macros'>): LevelOnInput | undefined {
  const has = (...names: string[]) => names.some((name) => Object.hasOwn(macros, name));
  // wiring_digital.c of the cores for AVR and SAMD: the level goes to the register that also enables the pull-up.
  if (has('ARDUINO_ARCH_AVR', 'ARDUINO_ARCH_SAMD')) return 'switches-pull';
  // teensy4/digital.c at 7cb39b2: the level chooses between the two pulls; releases before that did nothing.
  if (has('TEENSYDUINO')) return 'turns-pull';
  // wiring_digital.cpp of arduino-pico: a pin with pull-up is written as an open drain.
  if (has('ARDUINO_ARCH_RP2040')) return 'drives-low';
  // wiring_digital.c of the core for STM32 at 0b1f59a (INPUT is taken without pull) and digital.cpp of that for Renesas
  // at 0670beb: the level goes to the output latch alone. The two ESP chips: their documents, from memory.
  return has('ARDUINO_ARCH_ESP32', 'ARDUINO_ARCH_ESP8266', 'ARDUINO_ARCH_RENESAS', 'ARDUINO_ARCH_STM32')
    ? 'nothing'
    : undefined;
}
