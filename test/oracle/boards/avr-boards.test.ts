/**
 * The pin tables of the AVR boards against the open AVR core itself: ports, timers, converter channels, interrupt
 * lines, names and predefined macros, as its own headers give them to its own compiler. No mismatch is tolerated.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import type { BoardFile } from '../../../server/src/hardware/generated/board';
import { requireOracle } from '../oracle';
import { askCore, avrCorePresent, type CoreAnswer, readTarget, type Target } from './avr-core';

type Pin = NonNullable<NonNullable<BoardFile['pins']>[string]>;

const present = avrCorePresent();

/** Library board, and the core's own target it has to agree with. */
const CASES: readonly { readonly id: string; readonly target: () => Target }[] = [
  { id: 'uno-r3', target: () => readTarget('uno') },
  { id: 'nano-v3', target: () => readTarget('nano', 'atmega328') },
  // The core knows this chip at 16 MHz only; the bare chip at 3.3 V runs at 8 MHz and is otherwise the same target.
  { id: 'bare-32u4-3v3', target: () => ({ ...readTarget('leonardo'), fCpu: '8000000L' }) },
];

describe.each(CASES)('board $id against the open AVR core', ({ id, target }) => {
  const board = JSON.parse(readFileSync(join('hardware-schemas/boards', `${id}.json`), 'utf8')) as BoardFile;
  const pins = Object.entries(board.pins ?? {}).flatMap(([name, pin]) =>
    pin === null ? [] : [{ name, pin }],
  );
  const names = Object.keys(board.platform?.names ?? {});
  let cached: CoreAnswer | undefined;
  const core = (): CoreAnswer => {
    cached ??= askCore(target(), names);
    return cached;
  };
  /** By its number, or by a second number the core has for it, which stands among its names. */
  const pinOf = (number: number): Pin | undefined =>
    pins.find(({ pin }) => pin.number === number)?.pin ??
    pins.find(({ pin }) => pin.names?.includes(String(number)))?.pin;

  beforeEach((context) => {
    requireOracle(context, 'open AVR core and its compiler', present);
  });

  it('has the same port and bit behind every pin number', () => {
    const ours = core().pins.map(({ number }) => ({ number, port: pinOf(number)?.port }));
    expect(core().pins.length).toBeGreaterThanOrEqual(20);
    expect(ours).toEqual(core().pins.map(({ number, port }) => ({ number, port })));
  });

  it('has PWM by the same timer and channel on the same pins, and nowhere else', () => {
    const ours = pins.flatMap(({ pin }) => {
      const channels = pin.roles?.filter((role) => /^timer\d\.[abcd]$/.test(role)) ?? [];
      expect(channels.map((channel) => channel.slice(0, 6))).toEqual(pin.pwm == null ? [] : [pin.pwm]);
      return channels.map((timer) => `${pin.number} ${timer}`);
    });
    const theirs = core().pins.flatMap(({ number, timer }) =>
      timer === undefined ? [] : [`${number} ${timer}`],
    );
    expect(theirs.length).toBeGreaterThanOrEqual(6);
    expect(ours.sort()).toEqual(theirs.sort());
    expect(
      core()
        .pins.filter(({ hasPwm }) => hasPwm)
        .map(({ number }) => number),
    ).toEqual(
      core()
        .pins.filter(({ timer }) => timer !== undefined)
        .map(({ number }) => number),
    );
  });

  it('has the same converter channel behind every analog name, and no channel else', () => {
    const ours = core().channels.map((_, index) => {
      const number = board.platform?.names?.[`A${index}`];
      return typeof number === 'number' ? pinOf(number)?.adc : undefined;
    });
    expect(ours).toEqual(core().channels);
    expect(pins.flatMap(({ pin }) => pin.adc ?? []).sort((a, b) => a - b)).toEqual(
      [...core().channels].sort((a, b) => a - b),
    );
  });

  it('reaches the same interrupt lines from the same pins', () => {
    const ours = pins.flatMap(({ pin }) => (pin.interrupt == null ? [] : [`${pin.number} ${pin.interrupt}`]));
    const theirs = core().pins.flatMap(({ number, interrupt }) =>
      interrupt === undefined ? [] : [`${number} ${interrupt}`],
    );
    expect(theirs.length).toBeGreaterThanOrEqual(2);
    expect(ours.sort()).toEqual(theirs.sort());
  });

  it('counts no pin that the core does not count, but for pins that only read voltages', () => {
    const known = new Set(core().pins.map(({ number }) => number));
    const foreign = pins.filter(({ pin }) => typeof pin.number === 'number' && !known.has(pin.number));
    expect(foreign.map(({ pin }) => pin.type)).toEqual(foreign.map(() => 'analog-input'));
  });

  it('puts the buses on the pins of the core', () => {
    const roles = {
      SDA: 'i2c.sda',
      SCL: 'i2c.scl',
      MOSI: 'spi.mosi',
      MISO: 'spi.miso',
      SCK: 'spi.sck',
      SS: 'spi.ss',
    };
    for (const [name, role] of Object.entries(roles)) {
      const bearers = pins.filter(({ pin }) => pin.roles?.includes(role)).map(({ pin }) => pin.number);
      expect({ name, bearers }).toEqual({ name, bearers: [core().names[name]] });
    }
  });

  it('gives every name the value it has in the core', () => {
    expect(names.length).toBeGreaterThan(20);
    expect(board.platform?.names).toEqual(core().names);
  });

  it('predefines macros as the compiler and the core do', () => {
    const macros = board.platform?.macros ?? {};
    expect(Object.keys(macros).length).toBeGreaterThan(10);
    expect(macros).toEqual(
      Object.fromEntries(Object.keys(macros).map((name) => [name, core().macros.get(name) ?? 'not defined'])),
    );
    expect(board.platform?.intBits).toBe(8 * Number(core().macros.get('__SIZEOF_INT__')));
  });
});
