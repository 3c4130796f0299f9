/**
 * The library at work: manifests that name its boards and kinds give the primitives and figures that the rules and
 * the circuit engine then see. Values are worked by hand from the part files' own sources.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Build, Part, Primitive } from '../../../server/src/base/build';
import { type HardwareLibrary, readBoard, readManifest, readPartKind } from '../../../server/src/hardware';
import type { BoardFile } from '../../../server/src/hardware/generated/board';
import type { PartFile } from '../../../server/src/hardware/generated/part';
import { libraryFiles } from './library-files';

const boards = libraryFiles<BoardFile>('boards');
const library: HardwareLibrary = {
  board: (id) => {
    const found = boards.find(({ name }) => name === id);
    return found === undefined
      ? undefined
      : readBoard({ file: found.file, text: found.text }, () => undefined);
  },
  boardIds: boards.map(({ name }) => name),
  partKinds: new Map(
    libraryFiles<PartFile>('parts').flatMap(({ name, file, text }) => {
      const { value } = readPartKind(file, text);
      return value === undefined ? [] : [[name, value] as const];
    }),
  ),
};

function build(parts: object, wires: readonly object[] = [], board = 'nano-v3'): Build {
  const stock = { resistors: ['330'], tolerance: '5%', power: '0.25 W' };
  const text = JSON.stringify({ format: 1, title: 'test', board, stock, parts, wires });
  const read = readManifest('hardware.jsonc', text, library);
  expect(read.problems).toEqual([]);
  if (read.value === undefined) {
    throw new Error('no build');
  }
  return read.value;
}

function part(entry: object): Part {
  const [only] = build({ thing: entry }).parts;
  if (only === undefined) {
    throw new Error('no part');
  }
  return only;
}

/** The only primitive of a part, of the type that is wanted. */
function only<T extends Primitive['type']>(entry: object, type: T): Extract<Primitive, { type: T }> {
  const { inside } = part(entry);
  expect(inside.map((piece) => piece.type)).toEqual([type]);
  return inside[0] as Extract<Primitive, { type: T }>;
}

describe('resistor', () => {
  it('takes spread and power from the stock, or its own', () => {
    const plain = only({ kind: 'resistor', value: '4k7' }, 'resistor');
    expect(plain.ohms.min).toBeCloseTo(4465, 6);
    expect(plain.ohms.max).toBeCloseTo(4935, 6);
    expect(plain.maxWatts).toBe(0.25);
    const own = only({ kind: 'resistor', value: '100R', tolerance: '1%', power: '0.5 W' }, 'resistor');
    expect([own.ohms.min, own.ohms.typ, own.ohms.max, own.maxWatts]).toEqual([99, 100, 101, 0.5]);
  });
});

describe('led', () => {
  it('has the forward voltage of its colour at 20 mA', () => {
    const lamp = only({ kind: 'led', colour: 'green' }, 'diode');
    expect(lamp).toMatchObject({
      ends: ['anode', 'cathode'],
      volts: { min: 1.8, typ: 2.1, max: 2.6 },
      atAmps: 0.02,
      lamp: true,
      maxAmps: 0.02,
      maxReverseVolts: 5,
    });
    expect(only({ kind: 'led', colour: 'blue' }, 'diode').volts).toEqual({ min: 2.8, typ: 3.2, max: 3.6 });
  });

  it('takes the figures of its data sheet where the manifest has them', () => {
    const lamp = only(
      { kind: 'led', colour: 'red', forwardVolts: '2 V', testCurrent: '2 mA', maxCurrent: '7 mA' },
      'diode',
    );
    expect(lamp.volts).toEqual({ min: 1.8, typ: 2, max: 2.2 });
    expect([lamp.atAmps, lamp.maxAmps]).toEqual([0.002, 0.007]);
  });

  it('covers every colour where none is said', () => {
    const colours = ['red', 'orange', 'amber', 'yellow', 'green', 'pure-green', 'blue', 'white'];
    const unknown = only({ kind: 'led' }, 'diode').volts;
    for (const colour of colours) {
      const known = only({ kind: 'led', colour }, 'diode').volts;
      expect(unknown.min).toBeLessThanOrEqual(known.min);
      expect(unknown.max).toBeGreaterThanOrEqual(known.max);
    }
  });
});

describe('switches', () => {
  it('makes a push-button momentary and open, unless it says otherwise', () => {
    expect(only({ kind: 'push-button' }, 'switch')).toMatchObject({ action: 'momentary', rest: 'open' });
    expect(only({ kind: 'push-button', action: 'latching', rest: 'closed' }, 'switch')).toMatchObject({
      action: 'latching',
      rest: 'closed',
    });
    expect(only({ kind: 'toggle-switch' }, 'switch')).toMatchObject({ action: 'latching', rest: 'open' });
  });

  it('gives an illuminated button a switch and a lamp that share no terminal, and no resistor', () => {
    const button = part({ kind: 'illuminated-push-button', colour: 'red' });
    expect(button.inside.map(({ type, ends }) => [type, ...ends])).toEqual([
      ['switch', '1', '2'],
      ['diode', 'anode', 'cathode'],
    ]);
    expect(button.terminals.map(({ id, polarity }) => [id, polarity])).toEqual([
      ['1', undefined],
      ['2', undefined],
      ['anode', '+'],
      ['cathode', '-'],
    ]);
    expect(button.series).toBeUndefined();
  });
});

describe('buzzer', () => {
  it('is a capacitor, a coil or a load, by type and drive', () => {
    const disc = only({ kind: 'buzzer' }, 'capacitor');
    expect(disc.farads.typ).toBeCloseTo(20e-9, 15);
    expect(only({ kind: 'buzzer', type: 'magnetic' }, 'coil').ohms).toEqual({ min: 9, typ: 42, max: 48 });
    expect(only({ kind: 'buzzer', type: 'magnetic', coil: '16 ohm' }, 'coil').ohms.typ).toBe(16);
    const sounder = only({ kind: 'buzzer', drive: 'active', type: 'magnetic' }, 'load');
    expect(sounder.amps).toEqual({ min: 0.015, typ: 0.025, max: 0.04 });
    expect(only({ kind: 'buzzer', drive: 'active', current: '12 mA' }, 'load').amps.max).toBe(0.012);
  });

  it('has a right way round only where it is active', () => {
    const poles = (entry: object): unknown => part(entry).terminals.map(({ id, polarity }) => [id, polarity]);
    expect(poles({ kind: 'buzzer', drive: 'active' })).toEqual([
      ['+', '+'],
      ['-', '-'],
    ]);
    expect(poles({ kind: 'buzzer', drive: 'passive' })).toEqual([
      ['+', undefined],
      ['-', undefined],
    ]);
  });
});

describe('capacitor', () => {
  it('has plain terminals, and poles where it is polarised', () => {
    const plain = part({ kind: 'capacitor', value: '100n' });
    expect(plain.terminals.map(({ id }) => id)).toEqual(['1', '2']);
    expect(plain.series).toEqual(['1', '2']);
    const electrolytic = part({ kind: 'capacitor', value: '470 uF', polarised: true, volts: '16 V' });
    expect(electrolytic.terminals.map(({ id, polarity }) => [id, polarity])).toEqual([
      ['+', '+'],
      ['-', '-'],
    ]);
    expect(electrolytic.series).toEqual(['+', '-']);
    expect(electrolytic.inside).toMatchObject([{ ends: ['+', '-'], polarised: true, maxVolts: 16 }]);
  });
});

describe('supplies and movers', () => {
  it('lets a battery fall and rise around its printed voltage, with its charge', () => {
    const pack = only({ kind: 'battery', volts: '4.8', capacity: '2000 mAh' }, 'source');
    expect(pack.volts.min).toBeCloseTo(3.84, 9);
    expect(pack.volts.max).toBeCloseTo(5.76, 9);
    expect(pack.ampHours).toBe(2);
    expect(pack.maxAmps).toBeUndefined();
    expect(part({ kind: 'battery', volts: '9' }).series).toEqual(['+', '-']);
  });

  it('makes a servo a load on its supply and an input on its signal, content with a pack of four cells', () => {
    const servo = part({ kind: 'servo' });
    const [motor, input] = servo.inside;
    expect(motor).toMatchObject({ type: 'load', ends: ['+', '-'], amps: { min: 0.006, typ: 0.2, max: 1.2 } });
    expect(input).toMatchObject({ type: 'logic-input', ends: ['signal', '-'] });
    const pack = only({ kind: 'battery', volts: '4.8' }, 'source').volts;
    const works = motor?.type === 'load' ? motor.volts : undefined;
    expect(works?.min).toBeLessThanOrEqual(pack.min);
    expect(works?.max).toBeGreaterThanOrEqual(pack.max);
  });

  it('makes a potentiometer a track with a wiper', () => {
    expect(only({ kind: 'potentiometer', value: '10k' }, 'potentiometer')).toMatchObject({
      ends: ['1', '2'],
      wiper: 'wiper',
      ohms: { min: 8000, typ: 10000, max: 12000 },
    });
  });
});

describe('whole builds', () => {
  it.each([
    ['nano-v3', 'D7', 'A6'],
    ['uno-r3', '7', 'SDA'],
    ['bare-32u4-3v3', 'PE6', '24'],
    ['pico', 'GP7', 'D26'],
  ])(
    'reads a lamp on a pin and a track to ground on %s, by names that people type',
    (board, lampPin, analogPin) => {
      const rail = board.endsWith('3v3') || board === 'pico' ? '3V3' : '5V';
      const made = build(
        {
          R1: { kind: 'resistor', value: '330' },
          lamp: { kind: 'led', colour: 'red' },
          knob: { kind: 'potentiometer', value: '10k' },
        },
        [
          { path: [lampPin, 'R1', 'lamp', 'GND'] },
          { from: rail, to: 'knob.1' },
          { from: analogPin, to: 'knob.wiper' },
          { from: 'knob.2', to: 'GND' },
        ],
        board,
      );
      const pin = made.nets.find(({ terminals }) => terminals.some(({ terminal }) => terminal === 'wiper'))
        ?.pins[0];
      expect(made.board.pins.find(({ id }) => id === pin)?.adc).toBeDefined();
      const positions = made.wires.flatMap(({ ends }) =>
        ends.flatMap((end) => (end.kind === 'pin' ? [end] : [])),
      );
      expect(positions.length).toBe(5);
      expect(positions.filter(({ position }) => position === undefined)).toEqual([]);
    },
  );

  it("lets a board of one's own stand on the bare chip and say only what differs", () => {
    const base = boards.find(({ name }) => name === 'bare-32u4-3v3');
    const text = JSON.stringify({
      id: 'my-buoy',
      extends: 'bare-32u4-3v3',
      title: 'Buoy',
      headers: {
        ...{ 'side-1': null, 'side-2': null, 'side-3': null, 'side-4': null },
        edge: { title: 'edge', landmark: 'the USB end', positions: ['GND', '3V3', 'D2', 'D3'] },
      },
      pins: { D13: { roles: ['builtin-lamp'] } },
    });
    const find = (): { file: string; text: string } | undefined => base;
    const read = readBoard({ file: 'my-buoy.json', text }, find);
    expect(read.problems).toEqual([]);
    expect(read.value?.headers.map(({ id }) => id)).toEqual(['edge']);
    expect(read.value?.pins.find(({ id }) => id === 'D13')).toMatchObject({
      port: 'PC7',
      roles: ['builtin-lamp'],
    });
    expect(read.value?.platform.macros.F_CPU).toBe('8000000L');
  });

  it('reads the example that comes with the project without a problem', () => {
    const file = 'hardware-schemas/examples/harbour-model/hardware.jsonc';
    const read = readManifest(file, readFileSync(file, 'utf8'), library);
    expect(read.problems).toEqual([]);
    expect(read.value?.parts.length).toBeGreaterThan(5);
  });
});
