/**
 * The corners that sensitivities point at, against all combinations there are: on random networks with more
 * toleranced figures than the engine tries one by one.
 */
import { expect, test } from 'vitest';
import type { Network } from '../../../server/src/base/circuit';
import { within } from '../../../server/src/base/range';
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
