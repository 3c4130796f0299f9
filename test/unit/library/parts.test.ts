/**
 * The part files: readable, sourced, and such that every terminal that people wire does something inside.
 */
import { describe, expect, it } from 'vitest';
import { readPartKind } from '../../../server/src/hardware';
import { figureUnits } from '../../../server/src/hardware/figures';
import type { PartFile, PartPrimitive } from '../../../server/src/hardware/generated/part';
import { touchedNames } from '../../../server/src/hardware/primitives';
import { isFigure, libraryFiles, objectsOf, saysWhereFrom } from './library-files';

const files = libraryFiles<PartFile>('parts');

it('has the kinds that hobby builds are made of', () => {
  const kinds = `
    resistor resistor-network potentiometer trimmer photoresistor thermistor capacitor electrolytic-capacitor
    diode schottky-diode zener-diode led rgb-led seven-segment-display led-bar addressable-strip led-strip filament-lamp
    push-button illuminated-push-button tact-switch toggle-switch slide-switch rotary-encoder keypad-matrix
    reed-switch tilt-switch limit-switch buzzer speaker npn-transistor pnp-transistor n-mosfet p-mosfet
    darlington-array h-bridge relay relay-module dc-motor stepper-motor stepper-board stepper-driver servo solenoid
    optocoupler analog-sensor digital-sensor open-collector-sensor i2c-device spi-device serial-device
    one-wire-sensor temperature-humidity-sensor ultrasonic-ranger pir-sensor infrared-receiver joystick
    character-lcd i2c-display spi-display level-shifter shift-register voltage-regulator step-down-module battery
    alkaline-battery nimh-battery lithium-battery lithium-iron-battery lead-acid-battery coin-cell
    nine-volt-battery power-adapter usb-power fuse resettable-fuse connector terminal-block wire-joint`;
  expect(files.map(({ name }) => name)).toEqual(expect.arrayContaining(kinds.trim().split(/\s+/)));
});

/** The figures of a primitive that stand bare, where no source could be named: all but references to a parameter. */
function bareFigures(piece: PartPrimitive): string[] {
  const bare = (figure: unknown): boolean => {
    if (typeof figure !== 'object' || figure === null) return true;
    const { table = {}, times, otherwise } = figure as Record<string, unknown>;
    const parts = [...Object.values(table as object), times, otherwise].filter((one) => one !== undefined);
    return parts.some(bare);
  };
  return Object.entries(piece)
    .filter(([key, figure]) => Object.hasOwn(figureUnits, key) && bare(figure))
    .map(([key]) => `${piece.id}.${key}`);
}

describe.each(files)('part file $name', ({ name, file, text, data }) => {
  it('is read without a problem, and its kind is its file name', () => {
    const read = readPartKind(file, text);
    expect(read.problems).toEqual([]);
    expect(read.value?.kind).toBe(name);
  });

  it('names the source of every figure and every default figure, or says that it is from memory', () => {
    const figures = objectsOf(data).filter(isFigure);
    const defaults = objectsOf(data.parameters ?? {}, ['parameters']).filter(
      ({ value }) => value.type === 'quantity' && typeof value.default === 'string',
    );
    const silent = [...figures, ...defaults].filter((holder) => !saysWhereFrom(holder, data.sources ?? {}));
    expect(silent.map(({ path }) => path)).toEqual([]);
    expect(data.inside.flatMap(bareFigures)).toEqual([]);
  });

  it('says where in its source a figure stands', () => {
    const sourced = objectsOf(data).filter(({ value }) => value.source !== undefined);
    expect(sourced.filter(({ value }) => value.where === undefined).map(({ path }) => path)).toEqual([]);
  });

  it('uses every source that it lists', () => {
    const used = new Set(objectsOf(data).map(({ value }) => value.source));
    expect(Object.keys(data.sources ?? {}).filter((key) => !used.has(key))).toEqual([]);
  });

  it('has no terminal that leads nowhere, and no parameter that people cannot understand', () => {
    const touched = new Set([...data.inside.flatMap(touchedNames), ...(data.joined ?? []).flat()]);
    expect(data.terminals.filter(({ id }) => !touched.has(id))).toEqual([]);
    for (const [key, parameter] of Object.entries(data.parameters ?? {})) {
      expect({ key, about: parameter.about }).toEqual({ key, about: expect.stringMatching(/.{15}\.$/) });
    }
  });

  it('uses every parameter that is a figure, but for what only people read', () => {
    const told = JSON.stringify([data.inside, data.terminals]);
    const spoken = new Set(['taper', 'address', 'baud', 'action', 'style', 'maxCurrent']);
    const unused = Object.keys(data.parameters ?? {}).filter(
      (key) => !told.includes(`"${key}"`) && !spoken.has(key),
    );
    expect(unused).toEqual([]);
  });

  it('says in whole sentences what it is and what to watch for', () => {
    expect(data.about).toMatch(/^[A-Z].{25,}\.$/);
    if (data.caution !== undefined)
      expect(data.caution).toMatch(/^[A-Z].*\((common practice|.* local code)\)\.$/);
  });

  it('tells its terminals apart wherever the way round matters, and has both poles then', () => {
    const poled = data.terminals.filter(({ polarity }) => polarity !== undefined);
    expect(poled.filter(({ tell }) => tell === undefined)).toEqual([]);
    expect(new Set(poled.map(({ polarity }) => polarity)).size).not.toBe(1);
  });

  it('tells terminals apart wherever it has more than two', () => {
    const silent = data.terminals.filter(({ tell }) => tell === undefined);
    const same =
      ['wire-joint', 'capacitor'].includes(name) || new Set(data.terminals.map(({ id }) => id)).size === 2;
    expect(same ? [] : silent).toEqual([]);
  });

  it('gives every name to one terminal only', () => {
    for (const [index, terminal] of data.terminals.entries()) {
      const others = data.terminals.filter((other, at) => at !== index && other.id !== terminal.id);
      const taken = others.flatMap(({ id, names = [] }) => [id, ...names]);
      expect([terminal.id, ...(terminal.names ?? [])].filter((one) => taken.includes(one))).toEqual([]);
    }
  });

  it('gives polarity to the ends of every lamp, source, load and polarised capacitor', () => {
    for (const piece of data.inside) {
      const poled =
        ['source', 'load'].includes(piece.type) ||
        ('lamp' in piece && piece.lamp) ||
        ('polarised' in piece && piece.polarised);
      if (!poled) continue;
      const poles = piece.ends.map((end) =>
        data.terminals
          .filter(({ id, when }) => id === end && (!when || !piece.when || alike(when, piece.when)))
          .map(({ polarity }) => polarity),
      );
      // An inner node has no pole of its own.
      const [first = [], second = []] = poles;
      expect({ id: piece.id, first: first.filter((pole) => pole !== '+') }).toEqual({
        id: piece.id,
        first: [],
      });
      expect({ id: piece.id, second: second.filter((pole) => pole !== '-') }).toEqual({
        id: piece.id,
        second: [],
      });
    }
  });
});

/** True where two conditions can hold at once. */
function alike(one: object, other: object): boolean {
  const values = new Map(Object.entries(other));
  return Object.entries(one).every(([key, value]) => {
    const second = values.get(key);
    return second === undefined || [value].flat().some((word) => [second].flat().includes(word));
  });
}
