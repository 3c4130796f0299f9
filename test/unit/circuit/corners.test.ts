/**
 * The corners that sensitivities point at, against all combinations there are: on random networks with more
 * toleranced figures than the engine tries one by one.
 */
import { expect, test } from 'vitest';
import type { Element, Network } from '../../../server/src/base/circuit';
import { exactly, type Range, within } from '../../../server/src/base/range';
import { solveNetwork } from '../../../server/src/circuit';
import { type CoreNetwork, checkNetwork } from '../../../server/src/circuit/check-network';
import { type CoreElement, coreElements } from '../../../server/src/circuit/core';
import { exploreCorners, type Spread } from '../../../server/src/circuit/corners';
import { compilePiece } from '../../../server/src/circuit/linear-part';
import { randomNetwork } from '../../oracle/circuit/random-networks';

function toleranced(network: Network): CoreNetwork {
  const elements = network.elements.flatMap(coreElements).map((element): CoreElement => {
    switch (element.type) {
      case 'resistor':
        return { ...element, ohms: within(element.ohms.typ, 0.05) };
      case 'source':
        return { ...element, volts: within(element.volts.typ, 0.05) };
      case 'current':
        return { ...element, amps: within(element.amps.typ, 0.2) };
      default:
        return { ...element, volts: within(element.volts.typ, 0.1) };
    }
  });
  return { ground: network.ground, elements };
}

/** How much of the full spread's reach is missed by the guessed one, as a share of the larger end; noise is 0. */
function missed(full: Spread, guessed: Spread, index: number, least: number): number {
  const [low, high] = [full.low[index] ?? 0, full.high[index] ?? 0];
  const gap = Math.max((guessed.low[index] ?? 0) - low, high - (guessed.high[index] ?? 0));
  return gap <= least ? 0 : gap / Math.max(Math.abs(low), Math.abs(high));
}

test('corners by sensitivity miss less than 1 % anywhere, and in 2 of 1000 quantities more than 0.1 %', () => {
  let quantities = 0;
  let wrong = 0;
  let worst = 0;
  for (let seed = 1; seed <= 400; seed += 1) {
    for (const piece of checkNetwork(toleranced(randomNetwork(seed))).pieces) {
      const part = compilePiece(piece);
      const moving = part.parameters.filter(({ range }) => range.min < range.max).length;
      if (moving < 7 || moving > 10) {
        continue;
      }
      const full = exploreCorners(part, 10);
      const guessed = exploreCorners(part);
      if (full === undefined || guessed === undefined) {
        throw new Error(`seed ${seed} has no solution`);
      }
      full.nominal.forEach((_, index) => {
        const miss = missed(full, guessed, index, index < part.nodes.length ? 1e-3 : 1e-6);
        quantities += 1;
        wrong += miss > 1e-3 ? 1 : 0;
        worst = Math.max(worst, miss);
      });
    }
  }
  expect(quantities).toBeGreaterThan(1000);
  expect(worst).toBeLessThan(0.01);
  expect(wrong / quantities).toBeLessThan(0.002);
});

test('of 40 toleranced figures in a lamp matrix, random corners lie inside what was found, but for 1 %', () => {
  const pin = (at: number, high: boolean): Element => ({
    type: 'source',
    id: `pin${at}`,
    plus: `pin${at}`,
    minus: '0',
    volts: high ? within(5, 0.05) : exactly(0),
    ohms: { min: 15, typ: 25, max: 40 },
  });
  const lamps = Array.from({ length: 20 }, (_, at): Element => {
    const ends = { anode: `row${at % 4}`, cathode: `pin${4 + (at % 5)}` };
    return { type: 'diode', id: `l${at}`, ...ends, volts: { min: 1.9, typ: 2.1, max: 2.4 }, atAmps: 0.02 };
  });
  const rows = Array.from({ length: 4 }, (_, at): Element => {
    const ends = { a: `pin${at}`, b: `row${at}` };
    return { type: 'resistor', id: `r${at}`, ...ends, ohms: within(330, 0.05) };
  });
  // A fixed sequence, so that a failure comes back.
  let state = 1;
  const coin = (): boolean => {
    state = (state * 48271) % 2147483647;
    return state % 2 === 0;
  };
  const cornered = (range: Range): Range => exactly(coin() ? range.max : range.min);
  for (const pattern of [0b000001111, 0b000110011, 0b010100101, 0b111100001]) {
    const pins = Array.from({ length: 9 }, (_, at) => pin(at, ((pattern >> at) & 1) === 1));
    const elements = [...pins, ...rows, ...lamps];
    const found = solveNetwork({ ground: '0', elements });
    expect(found.converged).toBe(true);
    for (let round = 0; round < 100; round += 1) {
      const some = elements.map((element): Element => {
        if (element.type === 'source') {
          return { ...element, volts: cornered(element.volts), ohms: cornered(element.ohms) };
        }
        if (element.type === 'resistor') return { ...element, ohms: cornered(element.ohms) };
        return element.type === 'diode' ? { ...element, volts: cornered(element.volts) } : element;
      });
      const point = solveNetwork({ ground: '0', elements: some });
      for (const [id, { typ }] of Object.entries(point.amps)) {
        const slack = 1e-6 + 0.01 * Math.abs(typ);
        expect(typ, `${pattern} ${id}`).toBeGreaterThanOrEqual((found.amps[id]?.min ?? 0) - slack);
        expect(typ, `${pattern} ${id}`).toBeLessThanOrEqual((found.amps[id]?.max ?? 0) + slack);
      }
    }
  }
});
