/** Operating points: sums that can be done by hand, and networks without a plain answer. */
import { describe, expect, test } from 'vitest';
import type { Element, OperatingPoint } from '../../../server/src/base/circuit';
import { exactly, within } from '../../../server/src/base/range';
import { seriesAmpsOnCurve } from '../../../server/src/circuit';
import { current, diode, resistor, solve, source } from './elements';

const greenLamp = { min: 1.9, typ: 2.1, max: 2.4 };

describe('sums by hand', () => {
  test('Ohm: 3.3 V over 470 ohm is 7.02 mA', () => {
    const point = solve(source('s', 'p', 'GND', 3.3), resistor('r', 'p', 'GND', 470));
    expect(point.amps.r?.typ).toBeCloseTo(3.3 / 470, 12);
    expect(point.amps.s?.typ).toBeCloseTo(3.3 / 470, 12);
    expect(point.nodes.p).toEqual(exactly(3.3));
    expect(point.nodes.GND).toEqual(exactly(0));
    expect(point.notes).toEqual([]);
  });

  test('a divider of 1 kohm and 2 kohm at 5 V gives 3.33 V, with 5 % parts 3.23 to 3.44 V', () => {
    const point = solve(
      source('s', 'p', 'GND', 5),
      resistor('a', 'p', 'm', within(1000, 0.05)),
      resistor('b', 'm', 'GND', within(2000, 0.05)),
    );
    expect(point.nodes.m?.typ).toBeCloseTo(10 / 3, 9);
    expect(point.nodes.m?.min).toBeCloseTo((5 * 1900) / (1900 + 1050), 9);
    expect(point.nodes.m?.max).toBeCloseTo((5 * 2100) / (2100 + 950), 9);
  });

  test('a balanced bridge carries nothing in its middle (Wheatstone)', () => {
    const point = solve(
      source('s', 'p', 'GND', 10),
      resistor('a', 'p', 'x', 1000),
      resistor('b', 'x', 'GND', 2000),
      resistor('c', 'p', 'y', 500),
      resistor('d', 'y', 'GND', 1000),
      resistor('m', 'x', 'y', 47),
    );
    expect(point.amps.m?.typ).toBeCloseTo(0, 12);
  });

  test('two sources share a load by superposition: 12 V and 6 V behind 2 and 3 ohm into 6 ohm give 8 V', () => {
    const point = solve(
      source('s', 'x', 'GND', 12, 2),
      source('t', 'x', 'GND', 6, 3),
      resistor('r', 'x', 'GND', 6),
    );
    expect(point.nodes.x?.typ).toBeCloseTo(8, 9);
    expect(point.amps.s?.typ).toBeCloseTo(2, 9);
    // Out of its plus: the weaker source is charged.
    expect(point.amps.t?.typ).toBeCloseTo(-2 / 3, 9);
  });

  test('a current of 2 mA through 1 kohm lifts its node by 2 V', () => {
    const point = solve(current('i', 'GND', 'x', 0.002), resistor('r', 'x', 'GND', 1000));
    expect(point.nodes.x?.typ).toBeCloseTo(2, 9);
    expect(point.amps.i).toEqual(exactly(0.002));
  });

  test('a lamp at its test current drops its forward volts, and 119 mV less at a tenth of it', () => {
    const at = solve(current('i', 'GND', 'x', 0.02), diode('d', 'x', 'GND', 2.1));
    expect(at.nodes.x?.typ).toBeCloseTo(2.1, 6);
    const tenth = solve(current('i', 'GND', 'x', 0.002), diode('d', 'x', 'GND', 2.1));
    // n Vt ln 10 with n = 2 and Vt = 25.865 mV at 27 degC is 119.1 mV.
    expect(2.1 - (tenth.nodes.x?.typ ?? 0)).toBeCloseTo(0.1191, 4);
  });

  test('a lamp the wrong way round blocks', () => {
    const point = solve(
      source('s', 'p', 'GND', 5),
      resistor('r', 'p', 'x', 470),
      diode('d', 'GND', 'x', 2.1),
    );
    expect(Math.abs(point.amps.d?.typ ?? 1)).toBeLessThan(1e-6);
    expect(point.nodes.x?.typ).toBeCloseTo(5, 6);
  });

  test('a pin, 470 ohm and a green lamp: the engine and the series sum agree at all three corners', () => {
    const volts = within(5, 0.05);
    const inner = { min: 15, typ: 25, max: 40 };
    const ohms = within(470, 0.05);
    const point = solve(
      source('pin', 'p', 'GND', volts, inner),
      resistor('r', 'p', 'x', ohms),
      diode('d', 'x', 'GND', greenLamp),
    );
    const run = (supply: number, forward: number, value: number, sourceOhms: number): number =>
      seriesAmpsOnCurve({ supply, forward, ohms: value, sourceOhms }, 0.02);
    expect(point.amps.d?.min).toBeCloseTo(run(volts.min, 2.4, ohms.max, 40), 9);
    expect(point.amps.d?.typ).toBeCloseTo(run(5, 2.1, 470, 25), 9);
    expect(point.amps.d?.max).toBeCloseTo(run(volts.max, 1.9, ohms.min, 15), 9);
  });
});

describe('networks without a plain answer', () => {
  const noAnswer = (point: OperatingPoint, why: RegExp): void => {
    expect(point.converged).toBe(false);
    expect(point.notes.join(' ')).toMatch(why);
    const figures = [...Object.values(point.nodes), ...Object.values(point.amps)];
    expect(figures.every((range) => range.min === 0 && range.typ === 0 && range.max === 0)).toBe(true);
  };

  test('two ideal sources set against each other', () => {
    noAnswer(
      solve(source('s', 'p', 'GND', 5), source('t', 'p', 'GND', 3.3)),
      /Nothing limits the current of t/,
    );
  });

  test('a shorted ideal source, also through closed switches', () => {
    noAnswer(solve(source('s', 'GND', 'GND', 5)), /Nothing limits/);
    noAnswer(
      solve(source('s', 'p', 'GND', 5), resistor('k', 'p', 'x', 0), resistor('l', 'x', 'GND', 0)),
      /Nothing limits/,
    );
  });

  test('a source with a resistance can be shorted: 5 V behind 25 ohm is 200 mA', () => {
    const point = solve(source('s', 'p', 'GND', 5, 25), resistor('k', 'p', 'GND', 0));
    expect(point.amps.s?.typ).toBeCloseTo(0.2, 6);
  });

  test.each<[string, Element, RegExp]>([
    ['a negative resistance', resistor('r', 'p', 'GND', -5), /cannot be negative/],
    ['not a number', resistor('r', 'p', 'GND', Number.NaN), /not a number/],
    ['infinity', source('r', 'p', 'GND', Number.POSITIVE_INFINITY), /not a number/],
    ['limits in the wrong order', resistor('r', 'p', 'GND', { min: 3, typ: 2, max: 1 }), /wrong order/],
    ['a lamp without forward volts', diode('r', 'p', 'GND', 0), /cannot be zero/],
    ['a lamp without test current', diode('r', 'p', 'GND', 2, 0), /cannot be zero/],
  ])('%s', (_, element, why) => {
    noAnswer(solve(element, resistor('q', 'p', 'GND', 100)), why);
  });

  test('a name used twice', () => {
    noAnswer(solve(resistor('r', 'p', 'GND', 1), resistor('r', 'q', 'GND', 1)), /used for two/);
  });

  test('nodes that nothing ties down are solved among themselves, and said', () => {
    const point = solve(
      source('s', 'a', 'b', 4.8, 0.1),
      resistor('r', 'a', 'b', 100),
      resistor('q', 'p', 'GND', 10),
    );
    expect(point.converged).toBe(true);
    expect(point.amps.r?.typ).toBeCloseTo(4.8 / 100.1, 9);
    expect((point.nodes.a?.typ ?? 0) - (point.nodes.b?.typ ?? 0)).toBeCloseTo((4.8 * 100) / 100.1, 6);
    expect(point.notes).toEqual(['Nothing ties a, b to GND; voltages there are counted from a.']);
  });

  test('a load behind an open switch carries nothing, and the rest is solved', () => {
    const point = solve(
      source('s', 'p', 'GND', 5),
      current('servo', 'p', 'open', 0.2),
      resistor('r', 'p', 'GND', 100),
    );
    expect(point.converged).toBe(true);
    expect(point.amps.servo).toEqual(exactly(0));
    expect(point.amps.s?.typ).toBeCloseTo(0.05, 9);
    expect(point.notes.join(' ')).toMatch(/Nothing feeds servo/);
  });

  test('a load that only a blocked lamp feeds', () => {
    noAnswer(
      solve(source('s', 'p', 'GND', 5), diode('d', 'x', 'p', 2.1), current('i', 'x', 'GND', 0.2)),
      /no way back/,
    );
  });

  test('closed switches side by side share their current', () => {
    const point = solve(
      source('s', 'p', 'GND', 5, 1),
      resistor('k', 'p', 'x', 0),
      resistor('l', 'p', 'x', 0),
      resistor('r', 'x', 'GND', 9),
    );
    expect(point.amps.k?.typ).toBeCloseTo(0.25, 6);
    expect(point.amps.l?.typ).toBeCloseTo(0.25, 6);
  });

  test('an empty network, elements on one node, odd names', () => {
    expect(solve()).toEqual({ nodes: { GND: exactly(0) }, amps: {}, converged: true, notes: [] });
    const point = solve(
      resistor('r', 'GND', 'GND', 10),
      diode('d', '__proto__', '__proto__', 2),
      source('__proto__', '__proto__', 'GND', 5, 1),
      source('s', 'GND', 'GND', 5, 10),
    );
    expect(point.converged).toBe(true);
    expect(point.amps.s?.typ).toBeCloseTo(0.5, 9);
    expect(point.amps.r).toEqual(exactly(0));
    expect(Object.keys(point.nodes)).toContain('__proto__');
    expect(JSON.parse(JSON.stringify(point))).toEqual(point);
  });

  test('a network past the limit is refused in words', () => {
    const chain = Array.from({ length: 20_001 }, (_, at) => resistor(`r${at}`, `n${at}`, `n${at + 1}`, 10));
    noAnswer(
      solve(source('s', 'n0', 'GND', 5), ...chain, resistor('end', 'n20001', 'GND', 10)),
      /more than 20000 are not solved/,
    );
  });

  test('a chain of 2,000 parts: every node by the divider, every reach by its slopes', () => {
    const count = 2000;
    const chain = Array.from({ length: count }, (_, at) =>
      resistor(`r${at}`, `n${at}`, at === count - 1 ? 'GND' : `n${at + 1}`, within(10, 0.05)),
    );
    const point = solve(source('s', 'n0', 'GND', 5), ...chain);
    expect(point.converged).toBe(true);
    for (const at of [0, 1, 500, 1999]) {
      expect(point.nodes[`n${at}`]?.typ).toBeCloseTo((5 * (count - at)) / count, 9);
    }
    // All resistors 5 % up or down change the current by 5 %, by slopes the same way up and down.
    expect(point.amps.r7?.max).toBeCloseTo((5 / 20_000) * 1.05, 9);
    expect(point.amps.r7?.min).toBeCloseTo((5 / 20_000) * 0.95, 9);
    expect(point.notes.join(' ')).toMatch(/not every combination/);
  });

  test('a network near the limit says what it left out, and still brackets', () => {
    const ladder = Array.from({ length: 60 }, (_, at) => [
      resistor(`r${at}`, `n${at}`, `n${at + 1}`, within(100, 0.05)),
      resistor(`g${at}`, `n${at + 1}`, 'GND', within(1e4, 0.05)),
    ]).flat();
    const point = solve(source('s', 'n0', 'GND', 5, 1), ...ladder);
    expect(point.converged).toBe(true);
    expect(point.notes.join(' ')).toMatch(/not every combination/);
    expect(point.nodes.n60?.min).toBeLessThan(point.nodes.n60?.typ ?? 0);
  });
});
