/** A small platform for the tests: 16-bit numbers, twenty pins, the core's own names. */

import core from '../../../hardware-schemas/libraries/core.json';
import servo from '../../../hardware-schemas/libraries/servo.json';
import type { LibraryFacts, Platform } from '../../../server/src/base/platform';

const analog = Object.fromEntries([0, 1, 2, 3, 4, 5, 6, 7].map((n) => [`A${n}`, 14 + n]));

/** `PD0` → 0, and so on. */
const port = (letter: string, bits: number, from: number) =>
  Object.fromEntries(Array.from({ length: bits }, (_, bit) => [`P${letter}${bit}`, from + bit]));

export const platform: Platform = {
  macros: { ARDUINO: '10819', __AVR__: '1', __AVR_ATmega328P__: '1', F_CPU: '16000000L' },
  names: {
    ...analog,
    LED_BUILTIN: 13,
    LOW: 0,
    HIGH: 1,
    INPUT: 0,
    OUTPUT: 1,
    INPUT_PULLUP: 2,
    CHANGE: 1,
    FALLING: 2,
    RISING: 3,
    MSBFIRST: 1,
  },
  modes: { 0: 'input', 1: 'output', 2: 'input-pullup' },
  intBits: 16,
  ports: { ...port('D', 8, 0), ...port('B', 6, 8), ...port('C', 6, 14) },
  roles: {
    'line.out': 6,
    'line.in': 5,
    'i2c.sda': 18,
    'i2c.scl': 19,
    'timer1.a': 9,
    'timer1.b': 10,
    'timer2.b': 3,
  },
  analogNumbers: { 0: 14, 1: 15, 2: 16, 3: 17, 4: 18, 5: 19, 6: 20, 7: 21 },
  interruptPins: { 0: 2, 1: 3 },
};

export const libraries = [core, servo] as readonly LibraryFacts[];
