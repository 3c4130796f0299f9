/** Parts as elements: what every primitive becomes, and above all which diode is a transistor's base. */
import { describe, expect, test } from 'vitest';
import type { Element } from '../../../server/src/base/circuit';
import type { Primitive } from '../../../server/src/base/primitive';
import { exactly, within } from '../../../server/src/base/range';
import { elementsOfPart, type PartPlace, type PinDrive, pinElements } from '../../../server/src/circuit';
import { resistor, solve, source } from './elements';

const place = (over: Partial<PartPlace> = {}): PartPlace => ({
  prefix: 'p/',
  nodeOf: (terminal) => (terminal === '-' || terminal === 'emitter' ? 'GND' : `n.${terminal}`),
  ...over,
});
const junction = (id: string, a: string, b: string, volts: number): Primitive => ({
  type: 'diode',
  id,
  ends: [a, b],
  volts: exactly(volts),
  atAmps: 0.001,
  lamp: false,
});
const npn: Primitive = {
  type: 'transistor',
  id: 'q',
  ends: ['collector', 'emitter'],
  control: 'base',
  channel: 'n',
  volts: exactly(0.7),
  ohms: exactly(1),
  gain: exactly(100),
};
const ids = (elements: readonly Element[]): string[] => elements.map(({ type, id }) => `${type} ${id}`);

describe('bipolar transistors', () => {
  test('the diode beside one is its base and is not counted twice', () => {
    const elements = elementsOfPart([junction('be', 'base', 'emitter', 0.7), npn], place());
    expect(ids(elements)).toEqual(['transistor p/q']);
    const point = solve(
      source('pin', 'pin', 'GND', 5),
      resistor('rb', 'pin', 'n.base', 4300),
      source('v', 'v', 'GND', 12),
      resistor('load', 'v', 'n.collector', 1000),
      ...elements,
    );
    expect(point.amps['p/q:control']?.typ).toBeCloseTo(0.001, 4);
    expect(point.amps.load?.typ).toBeGreaterThan(0.0118);
  });

  test('behind its own base resistor too, each of an array with its own', () => {
    const channel = (at: number): Primitive[] => [
      { type: 'resistor', id: `rb${at}`, ends: [`in${at}`, `~b${at}`], ohms: exactly(2700) },
      junction(`be${at}`, `~b${at}`, '-', 1.4),
      { ...npn, id: `q${at}`, ends: [`out${at}`, '-'], control: `in${at}` } as Primitive,
      junction(`clamp${at}`, `out${at}`, 'common', 1.7),
    ];
    const elements = elementsOfPart([...channel(1), ...channel(2)], place());
    expect(ids(elements)).toEqual([
      'resistor p/rb1',
      'transistor p/q1',
      'diode p/clamp1',
      'resistor p/rb2',
      'transistor p/q2',
      'diode p/clamp2',
    ]);
    const controls = elements.flatMap((element) => (element.type === 'transistor' ? [element.control] : []));
    expect(controls).toEqual(['n.~b1', 'n.~b2']);
  });

  test('a p one has its diode the other way round; a field-effect one keeps its body diode', () => {
    const pnp = { ...npn, channel: 'p' } as Primitive;
    expect(ids(elementsOfPart([junction('be', 'emitter', 'base', 0.7), pnp], place()))).toEqual([
      'transistor p/q',
    ]);
    const { gain: _, ...mosfet } = npn as Extract<Primitive, { type: 'transistor' }>;
    const body = junction('body', 'emitter', 'collector', 0.8);
    expect(ids(elementsOfPart([mosfet, body], place()))).toEqual(['transistor p/q', 'diode p/body']);
  });
});

describe('contacts and knobs', () => {
  const relay: Primitive[] = [
    {
      type: 'coil',
      id: 'coil',
      ends: ['c1', '-'],
      ohms: within(70, 0.1),
      volts: { min: 3.75, typ: 5, max: 6 },
    },
    { type: 'switch', id: 'no', ends: ['com', 'no'], action: 'momentary', rest: 'open', operatedBy: 'coil' },
    {
      type: 'switch',
      id: 'nc',
      ends: ['com', 'nc'],
      action: 'momentary',
      rest: 'closed',
      operatedBy: 'coil',
    },
  ];

  test('a relay changes over at its voltage', () => {
    const at = (supply: number) =>
      solve(
        source('v', 'n.c1', 'GND', supply),
        source('w', 'n.com', 'GND', 12),
        resistor('r1', 'n.no', 'GND', 1000),
        resistor('r2', 'n.nc', 'GND', 1000),
        ...elementsOfPart(relay, place()),
      );
    expect(at(5).amps.r1?.min).toBeGreaterThan(0.011);
    expect(at(5).amps.r2?.max).toBeLessThan(1e-9);
    expect(at(1).amps.r2?.min).toBeGreaterThan(0.011);
  });

  test('a moved lever moves every contact on it', () => {
    const lever: Primitive[] = [
      { type: 'switch', id: 'a', ends: ['1', '2'], action: 'latching', rest: 'open' },
      { type: 'switch', id: 'b', ends: ['1', '3'], action: 'latching', rest: 'closed', movesWith: 'a' },
    ];
    const closed = (moved?: ReadonlySet<string>): boolean[] =>
      elementsOfPart(lever, place(moved && { moved })).flatMap((element) =>
        element.type === 'switch' ? [element.closed] : [],
      );
    expect(closed()).toEqual([false, true]);
    expect(closed(new Set(['a']))).toEqual([true, false]);
  });

  test('a wiper divides its track, and never quite reaches its ends', () => {
    const track: Primitive = {
      type: 'potentiometer',
      id: 't',
      ends: ['1', '2'],
      wiper: 'w',
      ohms: exactly(1e4),
    };
    const ohms = (share?: number): number[] =>
      elementsOfPart([track], place(share === undefined ? {} : { wipers: { t: share } })).flatMap(
        (element) => (element.type === 'resistor' ? [element.ohms.typ] : []),
      );
    expect(ohms()).toEqual([5000, 5000]);
    expect(ohms(0)[0]).toBeCloseTo(10, 9);
    expect(ohms(2)[1]).toBeCloseTo(10, 9);
  });

  test('an output is a resistance to its supply or to its return; an open collector lets go', () => {
    const output = (supply?: string): Primitive => ({
      type: 'logic-output',
      id: 'o',
      ends: ['out', '-'],
      ohms: exactly(100),
      ...(supply === undefined ? {} : { supply }),
    });
    const ends = (primitive: Primitive, high: boolean): string[][] =>
      elementsOfPart([primitive], place(high ? { high: new Set(['o']) } : {})).flatMap((element) =>
        element.type === 'resistor' ? [[element.a, element.b]] : [],
      );
    expect(ends(output('+'), true)).toEqual([['n.+', 'n.out']]);
    expect(ends(output('+'), false)).toEqual([['GND', 'n.out']]);
    expect(ends(output(), true)).toEqual([]);
  });

  test('capacitors are open, loads are currents, sources are sources, a Zener diode keeps its breakdown', () => {
    const all: Primitive[] = [
      { type: 'capacitor', id: 'c', ends: ['1', '2'], farads: exactly(1e-6) },
      { type: 'load', id: 'l', ends: ['+', '-'], amps: exactly(0.1) },
      { type: 'source', id: 's', ends: ['+', '-'], volts: exactly(5), ohms: exactly(0.1) },
      { ...junction('z', 'a', 'k', 0.8), breakdownVolts: exactly(5.1), breakdownAmps: 0.01 } as Primitive,
      { type: 'logic-input', id: 'i', ends: ['in', '-'], ohms: exactly(1e7) },
    ];
    const elements = elementsOfPart(all, place());
    expect(ids(elements)).toEqual(['current p/l', 'source p/s', 'diode p/z', 'resistor p/i']);
    expect(elements.find(({ type }) => type === 'diode')).toMatchObject({ breakdownAmps: 0.01 });
  });
});

describe('pins', () => {
  const figures = {
    volts: within(5, 0.05),
    highOhms: exactly(25),
    lowOhms: exactly(22),
    pullUpOhms: { min: 20e3, typ: 35e3, max: 50e3 },
    leakAmps: 1e-6,
  };
  const at = (drive: PinDrive, ...more: Element[]) =>
    solve(...pinElements({ id: 'pin', node: 'x', ground: 'GND' }, figures, drive), ...more);

  test('give and take through their resistance, and carry a short', () => {
    const load = resistor('r', 'x', 'GND', 475);
    expect(at('high', load).amps.pin?.typ).toBeCloseTo(0.01, 9);
    expect(at('low', load).amps.pin?.typ).toBeCloseTo(0, 12);
    expect(at('high', resistor('short', 'x', 'GND', 0)).amps.pin?.max).toBeCloseTo(5.25 / 25, 5);
  });

  test('leak as inputs: a pull-up of 50 kohm loses up to 50 mV to 1 microampere', () => {
    const { x } = at('pull-up').nodes;
    expect(x?.typ).toBeCloseTo(5, 6);
    expect(x?.min).toBeCloseTo(5 * 0.95 - 50e3 * 1e-6, 6);
    expect(x?.max).toBeCloseTo(5 * 1.05 + 50e3 * 1e-6, 6);
    expect(at('input', resistor('down', 'x', 'GND', 1e5)).nodes.x?.max).toBeCloseTo(0.1, 6);
  });

  test('left alone as inputs they float, and it is said', () => {
    const point = at('input');
    expect(point.converged).toBe(true);
    expect(point.notes.join(' ')).toMatch(/Nothing ties x to GND/);
  });
});
