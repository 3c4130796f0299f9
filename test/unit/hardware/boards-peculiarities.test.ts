// What a builder trips over on the boards that are not AVR: straps, taken pins, lamps, supplies, positions in words.
import { describe, expect, test } from 'vitest';
import type { Board } from '../../../server/src/base/build';
import { openLibrary, readClean } from './library';

const library = openLibrary();

function boardOf(id: string): Board {
  const read = library.board(id, 'hardware.jsonc');
  if (read?.value === undefined) throw new Error(`no board ${id}`);
  return read.value;
}

const pinOf = (board: string, id: string) => boardOf(board).pins.find((pin) => pin.id === id);

/** Pins that a sketch must not have at the wrong level at reset, with the level. */
function straps(id: string): Record<string, string> {
  const must = boardOf(id).pins.filter((pin) => pin.boot?.must);
  return Object.fromEntries(must.map((pin) => [pin.id, pin.boot?.level ?? '']));
}

function takenFor(id: string, what: string): string[] {
  return boardOf(id).pins.flatMap((pin) => (pin.takenBy?.what === what ? [pin.id] : []));
}

const all = [
  'uno-r4-minima',
  'zero',
  'nodemcu-esp8266',
  'esp32-devkitc',
  'esp32-s3-devkitc',
  'esp32-c3-devkitm',
  'pico',
  'pico-w',
  'nucleo-f103rb',
  'teensy-4-0',
];

describe('boot straps', () => {
  test.each([
    ['esp32-devkitc', { IO0: 'high', IO12: 'low' }],
    ['esp32-s3-devkitc', { IO0: 'high', IO45: 'low' }],
    ['esp32-c3-devkitm', { IO2: 'high', IO9: 'high' }],
    ['nodemcu-esp8266', { D3: 'high', D4: 'high', D8: 'low' }],
    ['nucleo-f103rb', { BOOT0: 'low' }],
    ['uno-r4-minima', { BOOT: 'high' }],
    ['pico', {}],
  ])('%s demands its levels at reset', (id, levels) => expect(straps(id)).toEqual(levels));

  test('a strap that only changes the boot log lets the sketch start', () => {
    expect(pinOf('esp32-devkitc', 'IO15')?.boot).toMatchObject({ level: 'high', must: false });
  });
});

describe('taken pins', () => {
  test('the flash memory keeps its pins', () => {
    expect(takenFor('esp32-devkitc', 'flash')).toEqual(['IO6', 'IO7', 'IO8', 'IO9', 'IO10', 'IO11']);
    expect(takenFor('nodemcu-esp8266', 'flash')).toEqual(['CLK', 'SD0', 'SD1', 'SD2', 'SD3', 'CMD']);
  });

  test('the radio of the Pico W keeps the four pins that served the Pico itself', () => {
    expect(takenFor('pico-w', 'radio')).toEqual(['GP23', 'GP24', 'GP25', 'GP29']);
    expect(takenFor('pico', 'radio')).toEqual([]);
  });

  test('the serial line of the debugger keeps D0 and D1', () => {
    expect(takenFor('nucleo-f103rb', 'serial')).toEqual(['D0', 'D1']);
  });

  test('a second converter stops while the radio runs', () => {
    const blocked = boardOf('esp32-devkitc').pins.filter((pin) => pin.adcBlockedBy === 'radio');
    expect(blocked.map((pin) => pin.number)).toEqual([0, 2, 4, 12, 13, 14, 15, 25, 26, 27]);
  });

  test('inputs that never drive have no pull resistors', () => {
    const inputs = boardOf('esp32-devkitc').pins.filter((pin) => pin.inputOnly);
    expect(inputs.map((pin) => [pin.number, pin.pulls])).toEqual([34, 35, 36, 39].map((one) => [one, []]));
  });
});

describe('lamps', () => {
  const lampOf = (id: string) => boardOf(id).onBoard.find((part) => part.id === 'lamp')?.lamp;

  test.each([
    ['nodemcu-esp8266', 'D4', 'low'],
    ['esp32-s3-devkitc', 'IO48', 'data'],
    ['esp32-c3-devkitm', 'IO8', 'data'],
    ['pico', 'GP25', 'high'],
    ['pico-w', 'WL_GPIO0', 'high'],
    ['nucleo-f103rb', 'D13', 'high'],
    ['uno-r4-minima', 'D13', 'high'],
    ['zero', 'D13', 'high'],
    ['teensy-4-0', 'D13', 'high'],
  ])('%s: %s lights it when %s', (id, pin, litBy) => expect(lampOf(id)).toMatchObject({ pin, litBy }));

  test.each(all.filter((id) => id !== 'esp32-devkitc'))('LED_BUILTIN of %s is the pin of its lamp', (id) => {
    const board = boardOf(id);
    const number = board.platform.names.LED_BUILTIN;
    const pin = board.pins.find((one) => one.number === number || one.names.includes(String(number)));
    expect(pin?.id).toBe(lampOf(id)?.pin);
    expect(pin?.roles).toContain('builtin-lamp');
  });

  test('the ESP32-DevKitC has none, and LED_BUILTIN stays unknown', () => {
    expect(lampOf('esp32-devkitc')).toBeUndefined();
    expect(boardOf('esp32-devkitc').platform.names.LED_BUILTIN).toBeUndefined();
  });
});

describe('figures', () => {
  test('every drive strength of the RP2040 has its mode', () => {
    const board = boardOf('pico');
    const strengths = board.limits.driveStrengths ?? [];
    expect(strengths.map(({ mode, title, amps }) => [mode, title, amps.max])).toEqual([
      [4, 'OUTPUT_2MA', 0.002],
      [5, 'OUTPUT_4MA', 0.004],
      [6, 'OUTPUT_8MA', 0.008],
      [7, 'OUTPUT_12MA', 0.012],
    ]);
    for (const { mode, title } of strengths) expect(board.platform.names[title]).toBe(mode);
    expect(boardOf('pico-w').limits.driveStrengths).toEqual(strengths);
  });

  test('pins of the RP2040 share a slice in pairs, eight slices for thirty pins', () => {
    for (const { number, pwm, roles } of boardOf('pico').pins) {
      if (number === undefined) continue;
      expect(pwm).toBe(`slice${Math.floor(number / 2) % 8}`);
      expect(roles).toContain(`${pwm}.${number % 2 === 0 ? 'a' : 'b'}`);
    }
  });

  test('pins that tolerate 5 V say so one by one', () => {
    const tolerant = boardOf('nucleo-f103rb').pins.filter((pin) => (pin.maxInputVolts?.max ?? 0) > 5);
    const ids = tolerant.map((pin) => pin.id);
    expect(ids).toContain('D2');
    for (const id of ['A0', 'A5', 'D4', 'D11', 'D12', 'D13', 'PC13']) expect(ids).not.toContain(id);
  });

  test.each(all)('%s: no promised level lies outside of what its resistances give', (id) => {
    const { outputHighOhms, outputLowOhms, outputLevels = [] } = boardOf(id).limits;
    for (const { level, amps, supplyVolts, volts } of outputLevels) {
      const drop = level === 'high' ? supplyVolts - volts.min : volts.max;
      const ohms = level === 'high' ? outputHighOhms : outputLowOhms;
      // The strongest driver that the figures allow keeps the promise of the document.
      expect(ohms.min * amps).toBeLessThanOrEqual(drop + 1e-9);
    }
  });

  test.each(all)('%s: every figure is in order and names where it comes from', (id) => {
    const board = boardOf(id);
    const { pinRecommended, pinAbsolute, inputLowVolts, inputHighVolts } = board.limits;
    expect(pinRecommended.max).toBeLessThanOrEqual(pinAbsolute.max);
    expect(inputLowVolts.max).toBeLessThan(inputHighVolts.min);
    expect(Object.keys(board.supplyInputs ?? {}).length).toBeGreaterThan(0);
    for (const figure of [pinRecommended, pinAbsolute, inputLowVolts, inputHighVolts]) {
      expect(figure.source.length).toBeGreaterThan(10);
    }
  });
});

describe('positions', () => {
  test.each(all)('%s: every pin of a sketch comes to a header or says why not', (id) => {
    const board = boardOf(id);
    const out = new Set(board.headers.flatMap((header) => header.positions));
    const hidden = board.pins.filter(
      (pin) => pin.type === 'io' && !out.has(pin.id) && pin.takenBy === undefined,
    );
    expect(hidden.map((pin) => pin.id)).toEqual([]);
  });

  test.each([
    ['nodemcu-esp8266', 'D5', '14', 'D5, header with D0 to D8, 8th from the antenna end'],
    ['esp32-devkitc', 'IO4', 'T0', 'IO4, header J3, the one with IO23, 13th from the antenna end'],
    [
      'esp32-c3-devkitm',
      'IO10',
      'GPIO_NUM_10',
      'IO10, header J1, the one with RST, 11th from the antenna end',
    ],
    ['pico-w', 'GP15', '15', 'GP15, left header, 20th from the USB end'],
    [
      'nucleo-f103rb',
      'PC10',
      'D16',
      'PC10, connector CN7, row of the odd numbers, 1st from the end of the debugger',
    ],
    ['teensy-4-0', 'D20', 'A6', 'D20, header VIN to 13, 7th from the USB end'],
    ['uno-r4-minima', 'D3', '3', 'D3, digital header D7 to D0, 5th from the USB end'],
    ['zero', 'MOSI', '23', 'MOSI, ICSP header, counted across in pairs, 4th from its pin 1'],
  ])('%s: %s is found by %s', (board, pin, name, words) => {
    const build = readClean(`{
      "format": 1, "title": "t", "board": "${board}",
      "parts": { "R1": { "kind": "resistor", "value": "1k" }, "lamp": { "kind": "led" } },
      "wires": [{ "path": ["${name}", "R1", "lamp", "GND"] }]
    }`);
    expect(build.wires[0]?.ends[0]).toMatchObject({ kind: 'pin', pin, position: { words } });
  });
});
