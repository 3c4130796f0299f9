/** Chips with one register for all pins: the single-cycle block of the RP2040, the GPIO registers of the ESP32. */
import { expect, it } from 'vitest';
import type { Platform } from '../../../server/src/base/platform';
import { readSketch } from '../../../server/src/sketch';
import { libraries, platform } from './platform';
import { parser, words } from './reading';

const ports = Object.fromEntries(Array.from({ length: 30 }, (_, pin) => [`GPIO${pin}`, pin]));
const wide: Platform = { ...platform, macros: { ARDUINO: '10819' }, intBits: 32, ports };

async function table(body: string): Promise<string[]> {
  const parsed = (await parser()).parse('wide.ino', `void setup() {\n${body}\n}\nvoid loop() {}\n`);
  const { uses } = readSketch([parsed], wide, libraries);
  parsed.dispose();
  return uses.map(words);
}

it('registers that set, clear and turn over', async () => {
  expect(
    await table(
      'sio_hw->gpio_oe_set = 1u << 5; sio_hw->gpio_set = 1u << 5; sio_hw->gpio_clr = 0x60; sio_hw->gpio_togl = 1 << 7;',
    ),
  ).toEqual([
    'setup gpio_oe_set 5 output',
    'setup gpio_set 5 = 1',
    'setup gpio_clr 5,6 = 0',
    'setup gpio_togl 7 = 0,1',
  ]);
});

it('registers by their members and by their names', async () => {
  expect(
    await table('GPIO.out_w1ts = (1 << 4); GPIO.enable_w1tc.val = 1 << 3; GPIO_OUT_W1TC_REG = 1 << 4;'),
  ).toEqual(['setup out_w1ts 4 = 1', 'setup enable_w1tc 3 input', 'setup out_w1tc 4 = 0']);
});

it('a port of another family is not known', async () => {
  expect(await table('PORTB |= 1;')).toEqual(['setup PORTB ? `PORTB` is a register that is not known here']);
});

it('registers that read pins, whole and by a mask', async () => {
  expect(await table('if (sio_hw->gpio_in & (1u << 4)) tone(3, GPIO.in >> 31);')).toEqual([
    'setup gpio_in 4',
    'setup tone 3 = ? it is read from pins output perhaps',
  ]);
});
