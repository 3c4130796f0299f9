/**
 * The platform of an ATmega2560, read from the open AVR core's own headers by its own preprocessor. The board library
 * need not have such a board for the sketch layer to be tried on a chip with eleven ports.
 */
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import type { Platform } from '../../../server/src/base/platform';

const CORE = '/usr/share/arduino/hardware/arduino/avr';
const FLAGS = [
  ...['-mmcu=atmega2560', '-DF_CPU=16000000L', '-DARDUINO=10819', '-DARDUINO_AVR_MEGA2560'],
  ...['-DARDUINO_ARCH_AVR', '-DARDUINO_MAIN', '-std=gnu++11', '-w', '-x', 'c++', '-E'],
  ...['-I', join(CORE, 'cores/arduino'), '-I', join(CORE, 'variants/mega')],
];
const SOURCE = '#include <Arduino.h>\n';
/** Numbers of the core's Arduino.h: PA is 1, there is no port I. */
const PORTS = '?ABCDEFGH?JKL';
/** Timer outputs in the order of the core's Arduino.h, TIMER0A being 1 (from `#define TIMER0A 1` on). */
const TIMER = /^TIMER(\d)([ABCD]?)$/;

/** @param like A board of the same core, for what is the same on all its chips. */
export function readMegaPlatform(like: Platform): Platform {
  const text = execFileSync('avr-g++', [...FLAGS, '-P', '-'], { input: SOURCE, encoding: 'utf8' });
  const macros = readMacros(
    execFileSync('avr-g++', [...FLAGS, '-dM', '-'], { input: SOURCE, encoding: 'utf8' }),
  );
  const number = (name: string): number => Number(/\d+/.exec(macros.get(name) ?? '')?.[0] ?? Number.NaN);
  const ports = tableOf(text, 'digital_pin_to_port_PGM').map((port) => PORTS[port] ?? '?');
  const bits = tableOf(text, 'digital_pin_to_bit_mask_PGM').map((mask) => Math.log2(mask));
  const timers = tableOf(text, 'digital_pin_to_timer_PGM');
  const timerNames = new Map([...macros.keys()].filter((n) => TIMER.test(n)).map((n) => [number(n), n]));
  const roles: Record<string, number> = {
    'spi.ss': number('PIN_SPI_SS'),
    'spi.mosi': number('PIN_SPI_MOSI'),
    'spi.miso': number('PIN_SPI_MISO'),
    'spi.sck': number('PIN_SPI_SCK'),
    'i2c.sda': number('PIN_WIRE_SDA'),
    'i2c.scl': number('PIN_WIRE_SCL'),
    // The four serial ports: from memory, and in the comments of the core's header.
    ...{ 'uart0.rx': 0, 'uart0.tx': 1, 'uart1.rx': 19, 'uart1.tx': 18 },
    ...{ 'uart2.rx': 17, 'uart2.tx': 16, 'uart3.rx': 15, 'uart3.tx': 14 },
  };
  for (const [pin, timer] of timers.entries()) {
    const [, count, channel] = TIMER.exec(timerNames.get(timer) ?? '') ?? [];
    if (count !== undefined && channel !== undefined && channel !== '') {
      roles[`timer${count}.${channel.toLowerCase()}`] = pin;
    }
  }
  const analog = Array.from({ length: 16 }, (_, index) => [index, number(`PIN_A${index}`)] as const);
  const {
    __AVR_ATmega328P__: _chip,
    ARDUINO_AVR_UNO: _board,
    ...shared
  } = like.macros as Record<string, string>;
  return {
    ...like,
    macros: {
      ...shared,
      __AVR_ATmega2560__: '1',
      ARDUINO_AVR_MEGA2560: '1',
      __AVR_ARCH__: '6',
      NUM_DIGITAL_PINS: '70',
      NUM_ANALOG_INPUTS: '16',
    },
    names: {
      ...Object.fromEntries(Object.entries(like.names).filter(([name]) => !/^(PIN_)?A\d+$/.test(name))),
      ...Object.fromEntries(
        analog.flatMap(([index, pin]) => [
          [`A${index}`, pin],
          [`PIN_A${index}`, pin],
        ]),
      ),
      ...{ SS: roles['spi.ss'] ?? 0, MOSI: roles['spi.mosi'] ?? 0, MISO: roles['spi.miso'] ?? 0 },
      ...{ SCK: roles['spi.sck'] ?? 0, SDA: roles['i2c.sda'] ?? 0, SCL: roles['i2c.scl'] ?? 0 },
      ...{ LED_BUILTIN: number('LED_BUILTIN'), NUM_DIGITAL_PINS: 70, NUM_ANALOG_INPUTS: 16 },
    },
    analogNumbers: Object.fromEntries(analog),
    ports: Object.fromEntries(ports.map((port, pin) => [`P${port}${bits[pin]}`, pin])),
    roles,
    // `digitalPinToInterrupt` of the variant's header.
    interruptPins: { 0: 2, 1: 3, 2: 21, 3: 20, 4: 19, 5: 18 },
  };
}

function tableOf(text: string, name: string): readonly number[] {
  const body = new RegExp(`${name}\\[\\][^{]*=\\s*\\{([^}]*)\\}`).exec(text)?.[1];
  if (body === undefined) {
    throw new Error(`The core's header has no table ${name}.`);
  }
  const entries = body.split(',').map((entry) => entry.trim());
  return entries.filter((entry) => entry !== '').map(evaluate);
}

/** A number, or what `_BV` becomes: `(1 << (3))`. */
function evaluate(entry: string): number {
  const bare = entry.replace(/[()\s]/g, '');
  const [, base, by] = /^(\d+)<<(\d+)$/.exec(bare) ?? [];
  return base === undefined ? Number(bare) : Number(base) << Number(by);
}

function readMacros(text: string): ReadonlyMap<string, string> {
  return new Map(
    [...text.matchAll(/^#define (\w+) (.*)$/gm)].map(([, name = '', value = '']) => [name, value]),
  );
}
