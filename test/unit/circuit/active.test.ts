/** Transistors, Zener diodes and relays: sums by hand, and what has no answer. */
import { describe, expect, test } from 'vitest';
import type { Element, OperatingPoint } from '../../../server/src/base/circuit';
import { exactly, type Range, within } from '../../../server/src/base/range';
import { current, diode, resistor, solve, source } from './elements';

type Transistor = Extract<Element, { type: 'transistor' }>;

const npn = (over: Partial<Transistor> = {}): Element => ({
  type: 'transistor',
  id: 'q',
  collector: 'c',
  emitter: 'GND',
  control: 'b',
  channel: 'n',
  volts: exactly(0.7),
  atAmps: 0.1,
  ohms: exactly(0.5),
  gain: exactly(100),
  ...over,
});
const { gain: _, atAmps: __, ...gateOnly } = npn() as Transistor;
const nChannel = (over: Partial<Transistor> = {}): Element => ({
  ...gateOnly,
  volts: exactly(2),
  ohms: exactly(0.05),
  fullVolts: 4.5,
  ...over,
});
const coil = (id: string, a: string, b: string, ohms: number | Range, operateVolts: Range): Element => ({
  type: 'coil',
  id,
  a,
  b,
  ohms: typeof ohms === 'number' ? exactly(ohms) : ohms,
  operateVolts,
});
const contact = (id: string, a: string, b: string, closed: boolean, operatedBy?: string): Element => ({
  type: 'switch',
  id,
  a,
  b,
  ohms: exactly(0.05),
  closed,
  ...(operatedBy === undefined ? {} : { operatedBy }),
});
const amps = (point: OperatingPoint, id: string): number => point.amps[id]?.typ ?? Number.NaN;
const volts = (point: OperatingPoint, node: string): number => point.nodes[node]?.typ ?? Number.NaN;

describe('transistors', () => {
  const relayDriver = (ohms: number, drive: number) =>
    solve(
      source('pin', 'p', 'GND', drive, 25),
      resistor('rb', 'p', 'b', ohms),
      source('v', 'v', 'GND', 12),
      resistor('load', 'v', 'c', 120),
      npn(),
    );

  test('a saturated one passes what the load lets through, an idle one nothing', () => {
    const on = relayDriver(1000, 5);
    expect(amps(on, 'load')).toBeGreaterThan(0.098);
    expect(volts(on, 'c')).toBeLessThan(0.2);
    expect(amps(on, 'q:control')).toBeCloseTo((5 - 0.7) / 1025, 4);
    const off = relayDriver(1000, 0);
    expect(Math.abs(amps(off, 'load'))).toBeLessThan(1e-6);
    expect(volts(off, 'c')).toBeCloseTo(12, 3);
  });

  test('with too large a base resistor it passes the gain times the base current and no more', () => {
    const starved = relayDriver(22e3, 5);
    expect(amps(starved, 'q') / amps(starved, 'q:control')).toBeCloseTo(100, 1);
    expect(volts(starved, 'c')).toBeGreaterThan(5);
  });

  test('a p one is the mirror image of an n one', () => {
    const n = solve(
      source('v', 'v', 'GND', 9),
      source('pin', 'p', 'GND', 3.3, 40),
      resistor('rb', 'p', 'b', 4700),
      resistor('load', 'v', 'c', 220),
      npn(),
    );
    const p = solve(
      source('v', 'v', 'GND', -9),
      source('pin', 'p', 'GND', -3.3, 40),
      resistor('rb', 'p', 'b', 4700),
      resistor('load', 'v', 'c', 220),
      npn({ channel: 'p' }),
    );
    expect(amps(p, 'q')).toBeCloseTo(-amps(n, 'q'), 9);
    expect(volts(p, 'c')).toBeCloseTo(-volts(n, 'c'), 9);
    expect(amps(p, 'q:control')).toBeCloseTo(-amps(n, 'q:control'), 9);
  });

  test('a field-effect one is its resistance at the full gate voltage, and open below its threshold', () => {
    const at = (gate: number) =>
      solve(
        source('g', 'b', 'GND', gate),
        source('v', 'v', 'GND', 12),
        resistor('load', 'v', 'c', 12),
        nChannel(),
      );
    expect(Math.abs(volts(at(4.5), 'c') / amps(at(4.5), 'q') - 0.05)).toBeLessThan(0.001);
    expect(Math.abs(amps(at(1.9), 'q'))).toBeLessThan(1e-9);
    // At 3.3 V half of the overdrive is left, so the resistance is about double.
    expect(volts(at(3.3), 'c') / amps(at(3.3), 'q')).toBeCloseTo((0.05 * 2.5) / 1.3, 2);
  });

  test('a gate that nothing ties hangs free, and it is said', () => {
    const point = solve(source('v', 'v', 'GND', 5), resistor('load', 'v', 'c', 100), nChannel());
    expect(point.converged).toBe(true);
    expect(point.notes.join(' ')).toMatch(/Nothing ties b to GND/);
    expect(Math.abs(amps(point, 'q'))).toBeLessThan(1e-9);
  });

  test('the corners of gain and base voltage bracket the typical current', () => {
    const point = solve(
      source('pin', 'p', 'GND', within(5, 0.05)),
      resistor('rb', 'p', 'b', within(47e3, 0.05)),
      source('v', 'v', 'GND', 12),
      resistor('load', 'v', 'c', 120),
      npn({ gain: { min: 100, typ: 200, max: 400 }, volts: { min: 0.6, typ: 0.7, max: 0.85 } }),
    );
    const range = point.amps.q ?? exactly(0);
    expect(range.max / range.typ).toBeGreaterThan(1.9);
    expect(range.typ / range.min).toBeGreaterThan(1.9);
  });
});

describe('Zener diodes', () => {
  const zener = (over: object = {}): Element => ({
    type: 'diode',
    id: 'z',
    anode: 'GND',
    cathode: 'x',
    volts: exactly(0.8),
    atAmps: 0.1,
    breakdownVolts: exactly(5.1),
    breakdownAmps: 0.01,
    ...over,
  });

  test('holds its voltage in reverse, 119 mV less at a tenth of the test current', () => {
    const at = solve(current('i', 'GND', 'x', 0.01), zener());
    expect(volts(at, 'x')).toBeCloseTo(5.1, 4);
    expect(amps(at, 'z')).toBeCloseTo(-0.01, 9);
    const tenth = solve(current('i', 'GND', 'x', 0.001), zener());
    expect(5.1 - volts(tenth, 'x')).toBeCloseTo(0.1191, 3);
  });

  test('is a plain diode forward, and blocks below its voltage', () => {
    expect(volts(solve(current('i', 'x', 'GND', 0.1), zener()), 'x')).toBeCloseTo(-0.8, 4);
    const below = solve(source('v', 'p', 'GND', 3.3), resistor('r', 'p', 'x', 100), zener());
    expect(Math.abs(amps(below, 'z'))).toBeLessThan(1e-6);
  });

  test('its tolerance is the tolerance of what it holds', () => {
    const point = solve(
      source('v', 'p', 'GND', 12),
      resistor('r', 'p', 'x', 680),
      zener({ breakdownVolts: within(5.1, 0.05) }),
    );
    expect((point.nodes.x?.max ?? 0) - (point.nodes.x?.min ?? 0)).toBeCloseTo(0.51, 1);
  });
});

describe('relays', () => {
  const operate = { min: 1, typ: 3, max: 3.75 };
  const bench = (supply: number, ...more: Element[]) =>
    solve(
      source('v', 'v', 'GND', supply, 0.1),
      coil('k', 'v', 'GND', within(70, 0.1), operate),
      contact('no', 'v', 'lamp', false, 'k'),
      contact('nc', 'v', 'rest', true, 'k'),
      resistor('r1', 'lamp', 'GND', 100),
      resistor('r2', 'rest', 'GND', 100),
      ...more,
    );

  test('at its voltage it changes over, without one it stays', () => {
    const on = bench(5);
    expect(amps(on, 'r1')).toBeGreaterThan(0.049);
    expect(Math.abs(amps(on, 'r2'))).toBeLessThan(1e-9);
    expect(on.notes.join(' ')).not.toMatch(/may operate/);
    const off = bench(0.5);
    expect(amps(off, 'r2')).toBeGreaterThan(0.0049);
    expect(Math.abs(amps(off, 'r1'))).toBeLessThan(1e-9);
  });

  test('in between both ways are counted, and it is said', () => {
    const point = bench(3.3);
    expect(point.notes.join(' ')).toMatch(/What k gets may operate it or not/);
    expect(point.amps.r1?.min).toBeCloseTo(0, 9);
    expect(point.amps.r1?.max).toBeGreaterThan(0.03);
    expect(point.amps.r2?.max).toBeGreaterThan(0.03);
  });

  test('one relay switches the next', () => {
    const point = bench(
      5,
      coil('k2', 'lamp', 'GND', 70, operate),
      contact('last', 'v', 'far', false, 'k2'),
      resistor('r3', 'far', 'GND', 100),
    );
    expect(amps(point, 'r3')).toBeGreaterThan(0.04);
  });

  test('a coil behind its own contact of rest hums for ever, and that is no operating point', () => {
    const point = solve(
      source('v', 'v', 'GND', 5),
      contact('own', 'v', 'x', true, 'k'),
      coil('k', 'x', 'GND', 70, operate),
    );
    expect(point.converged).toBe(false);
    expect(point.notes.join(' ')).toMatch(/never come to rest/);
    expect(amps(point, 'k')).toBe(0);
  });

  test('the lamp of an optocoupler opens its output, forward and not in reverse', () => {
    const coupler = (supply: number) =>
      solve(
        source('pin', 'p', 'GND', supply, 25),
        resistor('r', 'p', 'a', 330),
        diode('lamp', 'a', 'GND', 1.2),
        source('v', 'v', 'GND', 12),
        contact('output', 'v', 'o', false, 'lamp'),
        resistor('load', 'o', 'GND', 1000),
      );
    expect(volts(coupler(5), 'o')).toBeCloseTo(12, 2);
    expect(volts(coupler(-5), 'o')).toBeCloseTo(0, 6);
  });

  test('a coil of which nothing is known leaves its contacts alone, and it is said', () => {
    const point = solve(
      source('v', 'v', 'GND', 5),
      { type: 'coil', id: 'k', a: 'v', b: 'GND', ohms: exactly(70) },
      contact('no', 'v', 'x', false, 'k'),
      resistor('r', 'x', 'GND', 100),
    );
    expect(point.converged).toBe(true);
    expect(point.notes.join(' ')).toMatch(/Nothing says what operates k/);
  });
});

describe('figures that are none', () => {
  test.each<[string, Element, RegExp]>([
    ['no gain', npn({ gain: exactly(0) }), /gain of q cannot be zero/],
    ['a negative threshold', nChannel({ volts: exactly(-2) }), /threshold of q cannot be negative/],
    ['a threshold above the full gate voltage', nChannel({ volts: exactly(5) }), /must lie above/],
    ['a channel without resistance', nChannel({ ohms: exactly(0) }), /resistance of q cannot be zero/],
    ['a contact of no coil', contact('s', 'a', 'b', true, 'nobody'), /no coil or lamp nobody/],
    ['a winding below nothing', coil('k', 'a', 'b', -1, exactly(1)), /resistance of k cannot be negative/],
    [
      'a breakdown at nothing',
      { ...diode('d', 'a', 'b', 1), breakdownVolts: exactly(0) } as Element,
      /breakdown voltage of d cannot be zero/,
    ],
  ])('%s', (_, element, why) => {
    const point = solve(source('v', 'v', 'GND', 5), resistor('r', 'v', 'GND', 100), element);
    expect(point.converged).toBe(false);
    expect(point.notes.join(' ')).toMatch(why);
  });

  test('an open contact carries nothing and leaves its far side at 0 V', () => {
    const point = solve(source('v', 'v', 'GND', 5), contact('s', 'v', 'far', false));
    expect(point.converged).toBe(true);
    expect(point.amps.s).toEqual(exactly(0));
    expect(point.nodes.far).toEqual(exactly(0));
    expect(point.notes.join(' ')).toMatch(/Nothing ties far/);
  });

  test('a closed loop of ideal source and contact with no resistance is refused', () => {
    const shorting = { ...contact('s', 'v', 'GND', true), ohms: exactly(0) } as Element;
    expect(solve(source('v', 'v', 'GND', 5), shorting).notes.join(' ')).toMatch(/Nothing limits/);
  });
});
