/**
 * Asks the chip's own header in the compiler's C library which port bits, timer channels and converter channels the
 * chip has, and, where a sister chip's header says it, which port bit an alternate function sits on.
 */
import { execFileSync } from 'node:child_process';
import type { BoardFile } from '../../../server/src/hardware/generated/board';

/** Of these chips the header of a sister with the same legs names the port and bit of every function. */
const SISTERS: Readonly<Record<string, string>> = { atmega328p: 'atmega88pa' };

/** Functions of a sister's header by our roles. */
const FUNCTIONS: Readonly<Record<string, string>> = {
  'timer0.a': 'OC0A',
  'timer0.b': 'OC0B',
  'timer1.a': 'OC1A',
  'timer1.b': 'OC1B',
  'timer2.a': 'OC2A',
  'timer2.b': 'OC2B',
  'uart0.rx': 'RXD',
  'uart0.tx': 'TXD',
  'i2c.sda': 'SDA',
  'i2c.scl': 'SCL',
  'spi.mosi': 'MOSI',
  'spi.miso': 'MISO',
  'spi.sck': 'SCK',
  'spi.ss': 'SS',
};

/** All macros that are defined behind `avr/io.h` for a chip. */
export function chipMacros(mcu: string): ReadonlyMap<string, string> {
  const text = execFileSync('avr-gcc', [`-mmcu=${mcu}`, '-dM', '-E', '-x', 'c', '-'], {
    input: '#include <avr/io.h>\n',
    encoding: 'utf8',
  });
  const macros = new Map<string, string>();
  for (const line of text.split('\n')) {
    const found = /^#define (\w+)(?: (.*))?$/.exec(line);
    if (found?.[1] !== undefined) macros.set(found[1], (found[2] ?? '').trim());
  }
  return macros;
}

/** Everything the board says of the chip that the chip's header does not bear out. */
export function compareWithChip(board: BoardFile, mcu: string): string[] {
  const chip = chipMacros(mcu);
  const sister = SISTERS[mcu] === undefined ? undefined : chipMacros(SISTERS[mcu]);
  const wrong: string[] = [];
  for (const [id, pin] of Object.entries(board.pins ?? {})) {
    if (pin === null) continue;
    const [, port = '', bit = ''] = /^P([A-L])([0-7])$/.exec(pin.port ?? '') ?? [];
    // Either name holds the number, and the other, where there is one, stands for it.
    const bits = [`P${port}${bit}`, `PORT${port}${bit}`].map((name) => chip.get(name));
    if (pin.port != null && (port === '' || !bits.includes(bit))) {
      wrong.push(`${id}: the chip has no ${pin.port}`);
    }
    if (pin.port != null && !(chip.has(`DDR${port}`) && chip.has(`PIN${port}`))) {
      wrong.push(`${id}: the chip has no port ${port}`);
    }
    if (typeof pin.adc === 'number' && !hasChannel(chip, pin.adc)) {
      wrong.push(`${id}: the chip has no converter channel ${pin.adc}`);
    }
    for (const role of pin.roles ?? []) {
      const [, timer, channel] = /^timer(\d)\.([abcd])$/.exec(role) ?? [];
      const name = `${timer}${channel?.toUpperCase()}`;
      if (timer !== undefined && !(chip.has(`OCR${name}`) && chip.has(`COM${name}1`))) {
        wrong.push(`${id}: the chip has no timer channel ${name}`);
      }
      const key = FUNCTIONS[role];
      if (sister === undefined || key === undefined) continue;
      const place = `P${sister.get(`${key}_PORT`)?.replace('PORT', '')}${sister.get(`${key}_BIT`)}`;
      if (pin.port !== place) wrong.push(`${id}: ${role} sits on ${place}, not on ${pin.port}`);
    }
    if (sister !== undefined && typeof pin.interrupt === 'number') {
      const place = `P${sister.get(`INT${pin.interrupt}_PORT`)?.replace('PORT', '')}${sister.get(`INT${pin.interrupt}_BIT`)}`;
      if (pin.port !== place) wrong.push(`${id}: line ${pin.interrupt} sits on ${place}, not on ${pin.port}`);
    }
  }
  return wrong;
}

/** Channels without a digital buffer (6 and 7 of the 328P) have no bit to switch one off, but one to be chosen by. */
function hasChannel(chip: ReadonlyMap<string, string>, channel: number): boolean {
  if (chip.has(`ADC${channel}D`)) return true;
  const muxBits = ['MUX0', 'MUX1', 'MUX2', 'MUX3'].filter((bit) => chip.has(bit)).length;
  return !chip.has('MUX5') && channel < Math.min(8, 2 ** muxBits);
}
