/** Laws that hold for every network, on random ones: a failure prints the seed that repeats it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Element, Network } from '../../../server/src/base/circuit';
import { exactly, type Range, within } from '../../../server/src/base/range';
import { solveNetwork } from '../../../server/src/circuit';
import { MIN_SIEMENS } from '../../../server/src/circuit/diode';
import { richNetwork } from '../../oracle/circuit/random-networks';
import { current, diode, resistor, solve, source } from './elements';

const figures = fc.record({
  ohms: fc.double({ min: 0, max: 6, noNaN: true }),
  volts: fc.double({ min: -12, max: 12, noNaN: true }),
});
const names = fc.constantFrom('GND', 'a', 'b', 'c', 'd');
const anyElement = (range: (value: number) => Range): fc.Arbitrary<Element> =>
  fc
    .tuple(fc.constantFrom('r', 's', 'i', 'd'), names, names, figures, fc.uuid())
    .map(([type, a, b, { ohms, volts }, id]) => {
      const resistance = range(10 ** ohms);
      switch (type) {
        case 'r':
          return resistor(id, a, b, resistance);
        case 's':
          return source(id, a, b, range(volts), resistance);
        case 'i':
          return current(id, a, b, range(volts / 1000));
        default:
          return diode(id, a, b, range(0.5 + Math.abs(volts) / 4));
      }
    });
/** Every element, also with figures that a slip of the keyboard would give. */
const anyOddElement: fc.Arbitrary<Element> = fc
  .tuple(
    fc.constantFrom('r', 'z', 'k', 'c', 't', 'm', 's', 'd'),
    names,
    names,
    names,
    figures,
    fc.uuid(),
    fc.boolean(),
  )
  .map(([type, a, b, c, { ohms, volts }, id, flag]): Element => {
    // A tenth of all resistances are 0, and some figures are turned round.
    const resistance = exactly(ohms < 0.6 ? 0 : 10 ** ohms);
    const positive = within(0.4 + Math.abs(volts), 0.1);
    const channel = flag ? 'n' : 'p';
    const ends = { id, collector: a, emitter: b, control: c, channel, ohms: resistance } as const;
    switch (type) {
      case 'r':
        return resistor(id, a, b, resistance);
      case 's':
        return source(id, a, b, within(volts, 0.1), resistance);
      case 'k':
        return { type: 'switch', id, a, b, ohms: resistance, closed: flag };
      case 'c':
        return { type: 'coil', id, a, b, ohms: resistance, operateVolts: positive };
      case 't':
        return { type: 'transistor', ...ends, volts: within(0.7, 0.1), gain: within(10 ** (ohms / 2), 0.3) };
      case 'm':
        return { type: 'transistor', ...ends, ohms: exactly(10 ** (ohms - 3)), volts: positive };
      case 'z':
        return { ...diode(id, a, b, 0.8), breakdownVolts: positive } as Element;
      default:
        return diode(id, a, b, positive);
    }
  });

const anyNetwork = (range: (value: number) => Range, most = 8): fc.Arbitrary<Network> =>
  fc
    .array(anyElement(range), { minLength: 1, maxLength: most })
    .map((elements) => ({ ground: 'GND', elements }));
/** The nodes of an element of two ends, with the sign of what its current brings them. */
function flowsOf(element: Element): readonly (readonly [string, number])[] {
  switch (element.type) {
    case 'source':
      return [
        [element.minus, -1],
        [element.plus, 1],
      ];
    case 'current':
      return [
        [element.from, -1],
        [element.to, 1],
      ];
    case 'diode':
      return [
        [element.anode, -1],
        [element.cathode, 1],
      ];
    case 'transistor':
      return [
        [element.collector, -1],
        [element.emitter, 1],
      ];
    default:
      return [
        [element.a, -1],
        [element.b, 1],
      ];
  }
}

const typical = (range: Range | undefined): number => range?.typ ?? Number.NaN;

describe('laws', () => {
  test('currents into every node cancel (Kirchhoff)', () => {
    fc.assert(
      fc.property(anyNetwork(exactly), (network) => {
        const point = solveNetwork(network);
        fc.pre(point.converged);
        const sums = new Map<string, number>();
        let largest = 0;
        for (const element of network.elements) {
          const amps = typical(point.amps[element.id]);
          const add = (node: string, into: number): void => {
            sums.set(node, (sums.get(node) ?? 0) + into);
          };
          for (const [node, share] of flowsOf(element)) add(node, share * amps);
          largest = Math.max(largest, Math.abs(amps));
        }
        for (const sum of sums.values()) {
          expect(Math.abs(sum)).toBeLessThanOrEqual(1e-9 + 1e-7 * largest);
        }
      }),
      { numRuns: 500 },
    );
  });

  test('with transistors, relays and Zener diodes too, on 600 networks', () => {
    for (let seed = 1; seed <= 600; seed += 1) {
      const network = richNetwork(seed);
      const point = solveNetwork(network);
      if (!point.converged) {
        expect(point.notes.join(' '), `seed ${seed}`).toMatch(/never come to rest/);
        continue;
      }
      const sums = new Map<string, number>();
      let largest = 0;
      for (const element of network.elements) {
        const amps = typical(point.amps[element.id]);
        const base = element.type === 'transistor' ? (point.amps[`${element.id}:control`]?.typ ?? 0) : 0;
        const flows: (readonly [string, number])[] = flowsOf(element).map(([node, share]) => [
          node,
          share * amps,
        ]);
        if (element.type === 'transistor') flows.push([element.control, -base], [element.emitter, base]);
        for (const [node, into] of flows) sums.set(node, (sums.get(node) ?? 0) + into);
        largest = Math.max(largest, Math.abs(amps));
      }
      for (const [node, sum] of sums) {
        if (node === network.ground) continue;
        expect(Math.abs(sum), `seed ${seed}, ${node}`).toBeLessThanOrEqual(1e-9 + 1e-7 * largest);
      }
    }
  });

  test('nothing is ever NaN, and the typical value lies between the others', () => {
    fc.assert(
      fc.property(
        anyNetwork((value) => within(value, 0.1), 12),
        (network) => {
          const point = solveNetwork(network);
          for (const range of [...Object.values(point.nodes), ...Object.values(point.amps)]) {
            expect([range.min, range.typ, range.max].every(Number.isFinite)).toBe(true);
            expect(range.min <= range.typ && range.typ <= range.max).toBe(true);
          }
        },
      ),
      { numRuns: 200 },
    );
  });

  test('current falls as resistance rises', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        fc.double({ min: 1.01, max: 10, noNaN: true }),
        (ohms, factor) => {
          const at = (value: number): number =>
            typical(
              solve(
                source('s', 'p', 'GND', 5, 25),
                resistor('r', 'p', 'x', value),
                diode('d', 'x', 'GND', 2.1),
              ).amps.d,
            );
          expect(at(ohms * factor)).toBeLessThan(at(ohms));
        },
      ),
    );
  });

  test('not for odd networks of every element either, and no sum takes long', () => {
    fc.assert(
      fc.property(fc.array(anyOddElement, { minLength: 1, maxLength: 14 }), (elements) => {
        const point = solveNetwork({ ground: 'GND', elements });
        const ranges = [...Object.values(point.nodes), ...Object.values(point.amps)];
        for (const range of ranges) {
          expect([range.min, range.typ, range.max].every(Number.isFinite)).toBe(true);
          expect(range.min <= range.typ && range.typ <= range.max).toBe(true);
        }
        if (!point.converged) {
          expect(point.notes.join(' ')).toMatch(
            /Nothing limits|no solution|cannot be|no way back|never come to rest/,
          );
          expect(ranges.every((range) => range.min === 0 && range.max === 0)).toBe(true);
        }
      }),
      { numRuns: 400 },
    );
  });

  test('without junctions, sources twice as strong give twice the volts', () => {
    fc.assert(
      fc.property(anyNetwork(exactly), (network) => {
        const linear = network.elements.filter((element) => element.type !== 'diode');
        const doubled = linear.map((element) =>
          element.type === 'source'
            ? { ...element, volts: exactly(element.volts.typ * 2) }
            : element.type === 'current'
              ? { ...element, amps: exactly(element.amps.typ * 2) }
              : element,
        );
        const once = solveNetwork({ ground: 'GND', elements: linear });
        const twice = solveNetwork({ ground: 'GND', elements: doubled });
        fc.pre(once.converged && twice.converged);
        for (const [node, range] of Object.entries(once.nodes)) {
          expect(Math.abs(typical(twice.nodes[node]) - 2 * range.typ)).toBeLessThanOrEqual(
            1e-6 + 1e-6 * Math.abs(range.typ),
          );
        }
      }),
      { numRuns: 300 },
    );
  });

  test('every point inside the tolerances lies between the corners', () => {
    const inside = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 30, maxLength: 30 });
    fc.assert(
      fc.property(
        anyNetwork((value) => within(value, 0.05), 7),
        inside,
        (network, places) => {
          const point = solveNetwork(network);
          fc.pre(point.converged);
          let at = 0;
          const some = (range: Range): Range =>
            exactly(range.typ + ((range.max - range.min) / 2) * (places[at++] ?? 0));
          const elements = network.elements.map((element): Element => {
            switch (element.type) {
              case 'source':
                return { ...element, volts: some(element.volts), ohms: some(element.ohms) };
              case 'current':
                return { ...element, amps: some(element.amps) };
              case 'diode':
                return { ...element, volts: some(element.volts) };
              case 'transistor':
                return { ...element, volts: some(element.volts), ohms: some(element.ohms) };
              default:
                return { ...element, ohms: some(element.ohms) };
            }
          });
          const one = solveNetwork({ ground: 'GND', elements });
          fc.pre(one.converged);
          // Where only leakage holds a node, the rounding of the largest current decides its volts.
          const currents = Object.values(one.amps).map((range) => Math.abs(range.typ));
          const rounding = (4 * Number.EPSILON * Math.max(0, ...currents)) / MIN_SIEMENS;
          for (const [key, least] of [
            ['nodes', 1e-6 + rounding],
            ['amps', 1e-8],
          ] as const) {
            for (const [name, range] of Object.entries(point[key])) {
              const value = typical(one[key][name]);
              const slack = least + 1e-6 * Math.abs(value);
              expect(value, name).toBeGreaterThanOrEqual(range.min - slack);
              expect(value, name).toBeLessThanOrEqual(range.max + slack);
            }
          }
        },
      ),
      { numRuns: 500 },
    );
  });
});
