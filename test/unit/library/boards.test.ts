/**
 * The board files: readable, sourced figure by figure, and true to themselves. What a core's own headers say about
 * the AVR boards is compared in test/oracle/boards.
 */
import { describe, expect, it } from 'vitest';
import type { Board } from '../../../server/src/base/build';
import { parseQuantity } from '../../../server/src/base/quantity';
import { readBoard } from '../../../server/src/hardware';
import type { BoardFile } from '../../../server/src/hardware/generated/board';
import { isFigure, libraryFiles, objectsOf, saysWhereFrom } from './library-files';

const files = libraryFiles<BoardFile>('boards');

function board(id: string): Board {
  const found = files.find(({ name }) => name === id);
  if (found === undefined) {
    throw new Error(`no board file ${id}`);
  }
  const read = readBoard({ file: found.file, text: found.text }, () => undefined);
  if (read.value === undefined) {
    throw new Error(`${id}: ${read.problems.map(({ message }) => message).join(' ')}`);
  }
  return read.value;
}

const positionsOf = (id: string, header: string): readonly string[] =>
  board(id).headers.find((one) => one.id === header)?.positions ?? [];

it('has the four boards of the first release', () => {
  expect(files.map(({ name }) => name)).toEqual(
    expect.arrayContaining(['bare-32u4-3v3', 'nano-v3', 'pico', 'uno-r3']),
  );
});

describe.each(files)('board file $name', ({ name, file, text, data }) => {
  it('is read without a problem, and its id is its file name', () => {
    const read = readBoard({ file, text }, () => undefined);
    expect(read.problems).toEqual([]);
    expect(read.value?.id).toBe(name);
  });

  it('names the source of every figure, or says that it is from memory', () => {
    const onBoard = /^onBoard\.[^.]+\.inside\./;
    const holders = objectsOf(data).filter((holder) => isFigure(holder) && !onBoard.test(holder.path));
    const parts = objectsOf(data).filter(({ path }) => /^onBoard\.[^.]+$/.test(path));
    const silent = [...holders, ...parts].filter((holder) => !saysWhereFrom(holder, data.sources ?? {}));
    expect(holders.length).toBeGreaterThan(15);
    expect(silent.map(({ path }) => path)).toEqual([]);
  });

  it('says in words where a figure that names a document was not looked up in it', () => {
    const mixed = objectsOf(data).filter(
      ({ value }) => value.fromMemory === true && value.source !== undefined && isFigure({ path: '', value }),
    );
    for (const { path, value } of mixed) {
      expect({ path, where: value.where }).toEqual({ path, where: expect.stringMatching(/^from memory/) });
    }
  });

  it('derives the highest output resistance from the test point that it quotes', () => {
    for (const key of ['outputHighOhms', 'outputLowOhms'] as const) {
      const figure = data.limits?.[key];
      const sum =
        /so (?:\(([\d.]+) V - ([\d.]+) V\)|([\d.]+) V) \/ ([\d.]+) mA = (\d+) ohm/.exec(
          figure?.where ?? '',
        ) ?? [];
      const [, upper, lower, drop, milliamps, ohms] = sum.map(Number);
      const volts = Number.isFinite(drop) ? (drop ?? 0) : (upper ?? Number.NaN) - (lower ?? Number.NaN);
      expect(volts / ((milliamps ?? Number.NaN) / 1000)).toBeCloseTo(ohms ?? 0, 6);
      expect(board(name).limits[key].max).toBeCloseTo(ohms ?? 0, 6);
    }
  });

  it('keeps its limits in order', () => {
    const { limits, reset } = board(name);
    const rail = board(name).pins.find(({ id }) => id === board(name).logicRail)?.volts?.typ ?? 0;
    expect(limits.pinRecommended.max).toBeLessThan(limits.pinAbsolute.max);
    expect(limits.inputLowVolts.max).toBeLessThan(limits.inputHighVolts.min);
    expect(limits.inputHighVolts.min).toBeLessThan(rail);
    expect(limits.pinMaxVolts?.max).toBeGreaterThan(rail);
    expect(reset?.assertVolts.max).toBeLessThan(rail / 2);
  });

  it('puts every pin that can drive into one group that gives and one that takes', () => {
    const { limits, pins } = board(name);
    const driving = pins.filter(({ type, number }) => type === 'io' && number !== undefined);
    expect(driving.length).toBeGreaterThanOrEqual(20);
    for (const direction of ['source', 'sink'] as const) {
      const groups = limits.groups.filter((group) => group.direction === direction);
      const counts = driving.map(({ id }) => ({
        id,
        n: groups.filter(({ pins: ids }) => ids.includes(id)).length,
      }));
      expect(counts).toEqual(driving.map(({ id }) => ({ id, n: 1 })));
    }
  });

  it('means the same by a mode number, a mode name and a line number in all its tables', () => {
    const { platform, pins } = board(name);
    const { names, modes } = platform;
    expect([modes[names.INPUT ?? -1], modes[names.OUTPUT ?? -1]]).toEqual(['input', 'output']);
    expect(modes[names.INPUT_PULLUP ?? -1]).toBe('input-pullup');
    for (const { number, interrupt } of pins) {
      if (interrupt !== undefined) {
        expect(platform.interruptPins[interrupt]).toBe(number);
      }
    }
    for (const macro of ['LED_BUILTIN', 'NUM_DIGITAL_PINS', 'NUM_ANALOG_INPUTS']) {
      expect(Number(platform.macros[macro])).toBe(names[macro]);
    }
  });

  it('runs at the clock that its macro tells the sketch', () => {
    const hertz = parseQuantity(data.clock ?? '', 'Hz');
    expect(hertz.ok ? hertz.value : hertz.why).toBe(
      Number.parseInt(board(name).platform.macros.F_CPU ?? '', 10),
    );
  });

  it('has every pin that has a number or gives a supply on a header, unless it serves the board itself', () => {
    const { headers, pins } = board(name);
    const reached = new Set(headers.flatMap(({ positions }) => positions));
    const unreached = pins.filter(({ id }) => !reached.has(id));
    for (const { id, roles } of unreached) {
      expect({ id, roles }).toEqual({
        id,
        roles: expect.arrayContaining([expect.stringMatching(/^b(oard\.|uiltin-)/)]),
      });
    }
  });
});

describe('layout', () => {
  it('has the rows of the Nano as long as they are, both counted from the USB end', () => {
    expect(positionsOf('nano-v3', 'left').length).toBe(15);
    expect(positionsOf('nano-v3', 'right').length).toBe(15);
    expect(positionsOf('nano-v3', 'left').slice(0, 3)).toEqual(['D13', '3V3', 'AREF']);
    expect(positionsOf('nano-v3', 'right').slice(-4)).toEqual(['GND', 'RST', 'D0', 'D1']);
  });

  it('repeats A5 and A4 of the UNO beside AREF, and has headers of 8, 6, 10 and 8 positions', () => {
    expect(positionsOf('uno-r3', 'digital-high').slice(0, 4)).toEqual(['A5', 'A4', 'AREF', 'GND']);
    expect(board('uno-r3').headers.map(({ positions }) => positions.length)).toEqual([8, 6, 10, 8]);
  });

  it('has the grounds of the Pico where its pinout sheet counts them: 3, 8, 13, 18, 23, 28, 33 and 38', () => {
    const right = [...positionsOf('pico', 'right')].reverse();
    const all = [...positionsOf('pico', 'left'), ...right];
    expect(all.length).toBe(40);
    const grounds = all.flatMap((id, index) => (id === 'GND' || id === 'AGND' ? [index + 1] : []));
    expect(grounds).toEqual([3, 8, 13, 18, 23, 28, 33, 38]);
    expect([all[0], all[19], all[20], all[39]]).toEqual(['GP0', 'GP15', 'GP16', 'VBUS']);
  });

  it('has the 44 legs of the bare chip in order, no pin of a port left out or doubled', () => {
    const legs = board('bare-32u4-3v3').headers.flatMap(({ positions }) => positions);
    const ports = board('bare-32u4-3v3').pins.flatMap(({ id, port }) => (port === undefined ? [] : [id]));
    expect(legs.length).toBe(44);
    expect(legs.filter((id) => ports.includes(id)).sort()).toEqual([...ports].sort());
  });
});

describe('rules of the chips that the tables must follow', () => {
  it('gives RP2040 pins their PWM slice, converter channel and line by their number', () => {
    const pins = board('pico').pins.filter(({ number }) => number !== undefined);
    expect(pins.length).toBe(30);
    for (const { id, number = 0, pwm, adc, interrupt, names, roles } of pins) {
      const slice = `slice${Math.floor(number / 2) % 8}`;
      expect({ id, pwm, interrupt, adc }).toEqual({
        id: `GP${number}`,
        pwm: slice,
        interrupt: number,
        adc: number >= 26 ? number - 26 : undefined,
      });
      expect(names).toContain(`D${number}`);
      expect(roles).toContain(`${slice}.${number % 2 === 0 ? 'a' : 'b'}`);
    }
  });

  it('has the lamp on the pin that LED_BUILTIN names, where a board has one', () => {
    for (const { name } of files) {
      const { pins, onBoard, platform } = board(name);
      const lamps = pins.filter(({ roles }) => roles.includes('builtin-lamp')).map(({ number }) => number);
      expect({ name, lamps }).toEqual({
        name,
        lamps: name === 'bare-32u4-3v3' ? [] : [platform.names.LED_BUILTIN],
      });
      expect(onBoard.some(({ id }) => id === 'lamp')).toBe(lamps.length > 0);
    }
  });

  it.each([
    ['uno-r3', 30e3, 60e3],
    ['nano-v3', 30e3, 60e3],
  ])('adds the pull-ups on the reset line of %s in parallel', (id, chipMin, chipMax) => {
    const { onBoard, reset } = board(id);
    const resistor = onBoard.find((part) => part.id === 'reset-pull-up')?.inside[0];
    expect(resistor?.type).toBe('resistor');
    const ohms = resistor?.type === 'resistor' ? resistor.ohms : { min: 0, typ: 0, max: 0 };
    const parallel = (a: number, b: number): number => (a * b) / (a + b);
    const within = (figure: number | undefined, truth: number): void => {
      expect(Math.abs((figure ?? 0) - truth) / truth).toBeLessThan(0.005);
    };
    within(reset?.pullUpOhms.min, parallel(ohms.min, chipMin));
    within(reset?.pullUpOhms.typ, parallel(ohms.typ, (chipMin + chipMax) / 2));
    within(reset?.pullUpOhms.max, parallel(ohms.max, chipMax));
  });
});
