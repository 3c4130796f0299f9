/**
 * The board files: readable, sourced figure by figure, and true to themselves. What a core's own headers say about
 * the AVR boards is compared in test/oracle/boards.
 */
import { describe, expect, it } from 'vitest';
import { type Board, numbersOf } from '../../../server/src/base/build';
import { parseQuantity } from '../../../server/src/base/quantity';
import type { BoardFile } from '../../../server/src/hardware/generated/board';
import { type LibraryBoard, openBoardLibrary } from '../../fixture/board-library';
import { type Holder, isFigure, libraryFiles, objectsOf, saysWhereFrom } from './library-files';

const files = libraryFiles<BoardFile>('boards');
const library = openBoardLibrary();

function entry(id: string): LibraryBoard {
  const found = library.get(id);
  if (found === undefined) {
    throw new Error(`no board file ${id}`);
  }
  return found;
}

function board(id: string): Board {
  const { board: read, problems } = entry(id);
  if (read === undefined) {
    throw new Error(`${id}: ${problems.map(({ message }) => message).join(' ')}`);
  }
  return read;
}

const positionsOf = (id: string, header: string): readonly string[] =>
  board(id).headers.find((one) => one.id === header)?.positions ?? [];

it('has the boards of the first release and the AVR boards that came after', () => {
  expect(files.map(({ name }) => name)).toEqual(
    expect.arrayContaining([
      ...['bare-32u4-3v3', 'nano-v3', 'pico', 'uno-r3'],
      ...['leonardo', 'mega-2560', 'micro', 'pro-mini-3v3', 'pro-mini-5v'],
    ]),
  );
});

describe.each(files)('board file $name', ({ name, data: written }) => {
  const { merged: data } = entry(name);

  it('is read without a problem, and its id is its file name', () => {
    expect(entry(name).problems).toEqual([]);
    expect(board(name).id).toBe(name);
  });

  it('names the source of every figure, or says that it is from memory', () => {
    const onBoard = /^onBoard\.[^.]+\.inside\./;
    const isHolder = (holder: Holder) => isFigure(holder) && !onBoard.test(holder.path);
    const parts = /^(onBoard\.[^.]+|pins\.[^.]+\.(boot|takenBy))$/;
    // A figure names a document of the file it is written in, so each file is asked for itself.
    const silent = objectsOf(written)
      .filter((holder) => isHolder(holder) || parts.test(holder.path))
      .filter((holder) => !saysWhereFrom(holder, written.sources ?? {}));
    expect(objectsOf(data).filter(isHolder).length).toBeGreaterThan(15);
    expect(silent.map(({ path }) => path)).toEqual([]);
  });

  it('says in words where a figure that names a document was not looked up in it', () => {
    const mixed = objectsOf(data).filter(
      ({ value }) => value.fromMemory === true && value.source !== undefined && isFigure({ path: '', value }),
    );
    for (const { path, value } of mixed) {
      const words = data.chip?.startsWith('ATmega') ? /from memory/ : /\w+ \w+/;
      expect({ path, where: value.where }).toEqual({ path, where: expect.stringMatching(words) });
    }
  });

  it('derives the highest output resistance from the test point that it quotes', () => {
    for (const key of ['outputHighOhms', 'outputLowOhms'] as const) {
      const figure = data.limits?.[key];
      // A figure from memory has no test point; AVR boards must have one.
      if (figure?.fromMemory === true && !data.chip?.startsWith('ATmega')) continue;
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
    // Some makers give one figure for both.
    expect(limits.pinRecommended.max).toBeLessThanOrEqual(limits.pinAbsolute.max);
    expect(limits.inputLowVolts.max).toBeLessThan(limits.inputHighVolts.min);
    expect(limits.inputHighVolts.min).toBeLessThan(rail);
    expect(limits.pinMaxVolts?.max).toBeGreaterThan(rail);
    if (reset !== undefined) expect(reset.assertVolts.max).toBeLessThan(rail / 2);
  });

  it('puts every pin that can drive into one group that gives and one that takes', () => {
    const { limits, pins } = board(name);
    // Chips without ports that share a rail have no such limit.
    if (limits.groups.length === 0 && !data.chip?.startsWith('ATmega')) return;
    const driving = pins.filter(
      ({ type, number, port }) => type === 'io' && number !== undefined && port !== undefined,
    );
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
      // Not every core has these as macros with a figure.
      if (/^\d+$/.test(platform.macros[macro] ?? '') && names[macro] !== undefined) {
        expect(Number(platform.macros[macro])).toBe(names[macro]);
      } else {
        expect(data.chip).not.toMatch(/^ATmega/);
      }
    }
  });

  it('runs at the clock that its macro tells the sketch', () => {
    if (board(name).platform.macros.F_CPU === undefined && !data.chip?.startsWith('ATmega')) return;
    const hertz = parseQuantity(data.clock ?? '', 'Hz');
    expect(hertz.ok ? hertz.value : hertz.why).toBe(
      Number.parseInt(board(name).platform.macros.F_CPU ?? '', 10),
    );
  });

  it('has every pin that has a number or gives a supply on a header, unless it serves the board itself', () => {
    const { headers, pins } = board(name);
    const reached = new Set(headers.flatMap(({ positions }) => positions));
    const unreached = pins.filter(({ id }) => !reached.has(id));
    for (const { id, roles, takenBy } of unreached) {
      if (takenBy !== undefined) continue;
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

  it('has the headers of the Mega as long as its data sheet counts them', () => {
    const lengths = board('mega-2560').headers.map(({ id, positions }) => `${id} ${positions.length}`);
    expect(lengths).toEqual([
      ...['power 8', 'analog-low 8', 'analog-high 8', 'digital-high 10', 'digital-low 8'],
      ...['communication 8', 'even 18', 'odd 18', 'icsp 6'],
    ]);
    expect(positionsOf('mega-2560', 'even').slice(0, 2)).toEqual(['5V', 'D22']);
    expect(positionsOf('mega-2560', 'odd').slice(-2)).toEqual(['D53', 'GND']);
  });

  it('has the rows of the Micro and of the Pro Mini as long as they are', () => {
    expect(board('micro').headers.map(({ positions }) => positions.length)).toEqual([17, 17, 6]);
    expect(board('pro-mini-5v').headers.map(({ positions }) => positions.length)).toEqual([12, 12, 2, 2, 6]);
    expect(positionsOf('pro-mini-3v3', 'right').slice(0, 4)).toEqual(['RAW', 'GND', 'RST', 'VCC']);
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
      const lamps = pins.filter(({ roles }) => roles.includes('builtin-lamp'));
      const named = platform.names.LED_BUILTIN;
      expect({ name, lamps: lamps.length }).toEqual({
        name,
        lamps: name === 'bare-32u4-3v3' || named === undefined ? 0 : 1,
      });
      // Some cores know the lamp by a second number of its pin.
      for (const lamp of lamps) expect(numbersOf(lamp), name).toContain(named);
      expect(onBoard.some(({ id }) => id === 'lamp')).toBe(lamps.length > 0);
    }
  });

  it('says of every lamp on an AVR board which level lights it, as its circuit does', () => {
    const lit = [...library.values()].flatMap(({ board: read }) =>
      read?.chip.startsWith('ATmega')
        ? read.onBoard.flatMap(({ lamp, inside }) => (lamp?.direct ? [{ board: read.id, lamp, inside }] : []))
        : [],
    );
    expect(lit.length).toBeGreaterThanOrEqual(7);
    for (const { board: id, lamp, inside } of lit) {
      const rail = lamp.litBy === 'high' ? 'GND' : board(id).logicRail;
      const diode = inside.find(({ type }) => type === 'diode');
      expect({ id, far: diode?.ends[lamp.litBy === 'high' ? 1 : 0] }).toEqual({ id, far: rail });
    }
  });

  it('derives the output resistances of AVR boards from the levels they quote', () => {
    for (const { board: read } of library.values()) {
      if (!read?.chip.startsWith('ATmega')) continue;
      const { limits } = read;
      for (const level of ['high', 'low'] as const) {
        const ohms = (limits.outputLevels ?? [])
          .filter((one) => one.level === level)
          .map((one) => (level === 'high' ? one.supplyVolts - one.volts.min : one.volts.max) / one.amps);
        const figure = level === 'high' ? limits.outputHighOhms : limits.outputLowOhms;
        expect(ohms.length, read.id).toBeGreaterThan(0);
        expect(
          ohms.some((one) => Math.abs(one - figure.max) < 1e-6),
          `${read.id} ${level}`,
        ).toBe(true);
      }
    }
  });

  it.each([
    ['uno-r3', 30e3, 60e3],
    ['nano-v3', 30e3, 60e3],
    ['mega-2560', 30e3, 60e3],
    ['leonardo', 30e3, 60e3],
    ['pro-mini-5v', 30e3, 60e3],
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
