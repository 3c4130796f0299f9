/**
 * Random networks for the comparison with a circuit simulator, and the text in which the simulator reads them. The
 * generator is a plain function of its seed, so a failure can be repeated by the number it prints.
 */
import type { Element, Network } from '../../../server/src/base/circuit';
import { exactly } from '../../../server/src/base/range';
import { IDEALITY, makeJunction } from '../../../server/src/circuit/diode';

/** A small generator of uniform numbers below 1 (multiply-with-carry on 32 bits; its quality is not at stake). */
function makeRandom(seed: number): () => number {
  let state = (seed * 2654435761) >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 2 ** 32;
  };
}

export function randomNetwork(seed: number): Network {
  const random = makeRandom(seed);
  const pick = (low: number, high: number): number => low + random() * (high - low);
  const spread = (low: number, high: number): number => 10 ** pick(Math.log10(low), Math.log10(high));
  const count = 1 + Math.floor(random() * 7);
  const nodes = ['0', ...Array.from({ length: count }, (_, index) => `n${index + 1}`)];
  const node = (): string => nodes[Math.floor(random() * nodes.length)] ?? '0';
  const elements: Element[] = [];
  // A tree of resistors ties every node to ground, as the simulator demands.
  nodes.slice(1).forEach((name, index) => {
    const to = nodes[Math.floor(random() * (index + 1))] ?? '0';
    elements.push({ type: 'resistor', id: `rt${index}`, a: name, b: to, ohms: exactly(spread(10, 1e5)) });
  });
  const extra = 2 + Math.floor(random() * 8);
  for (let index = 0; index < extra; index += 1) {
    const [a, b] = [node(), node()];
    if (a === b) {
      continue;
    }
    const id = `x${index}`;
    const which = random();
    if (which < 0.2) {
      elements.push({ type: 'resistor', id, a, b, ohms: exactly(spread(0.02, 1e6)) });
    } else if (which < 0.45) {
      const ohms = exactly(spread(0.1, 1e3));
      elements.push({ type: 'source', id, plus: a, minus: b, volts: exactly(pick(-12, 12)), ohms });
    } else if (which < 0.5) {
      elements.push({ type: 'current', id, from: a, to: b, amps: exactly(pick(-0.02, 0.02)) });
    } else {
      const volts = exactly(pick(0.5, 3.4));
      elements.push({ type: 'diode', id, anode: a, cathode: b, volts, atAmps: spread(1e-3, 0.05) });
    }
  }
  return { ground: '0', elements };
}

/** What a deck asks the simulator to print: its own expression, and what it is to us. */
export interface Asked {
  readonly expression: string;
  readonly kind: 'node' | 'element';
  readonly name: string;
}

/**
 * The network as a simulator deck. A source's series resistance and a sense source of 0 V in each resistor's and
 * diode's way are elements of their own there, so that every current can be asked for.
 */
export function deckOf(network: Network, title: string): { text: string; asked: readonly Asked[] } {
  const lines: string[] = [title];
  const asked: Asked[] = [];
  const names = new Set<string>();
  for (const element of network.elements) {
    const { id } = element;
    let ends: [string, string];
    if (element.type === 'resistor') {
      ends = [element.a, element.b];
      lines.push(`vs${id} ${element.a} s${id} 0`, `r${id} s${id} ${element.b} ${exact(element.ohms.typ)}`);
    } else if (element.type === 'diode') {
      ends = [element.anode, element.cathode];
      const { saturationAmps } = makeJunction(element.volts.typ, element.atAmps);
      lines.push(`vs${id} ${element.anode} s${id} 0`, `d${id} s${id} ${element.cathode} m${id}`);
      lines.push(`.model m${id} d(is=${exact(saturationAmps)} n=${IDEALITY})`);
    } else if (element.type === 'source') {
      ends = [element.plus, element.minus];
      lines.push(`vs${id} ${element.plus} t${id} 0`, `r${id} t${id} u${id} ${exact(element.ohms.typ)}`);
      lines.push(`v${id} u${id} ${element.minus} ${exact(element.volts.typ)}`);
    } else {
      ends = [element.from, element.to];
      lines.push(
        `vs${id} ${element.from} s${id} 0`,
        `i${id} s${id} ${element.to} ${exact(element.amps.typ)}`,
      );
    }
    // The simulator counts a source's current into its plus; ours counts out of `plus` for sources.
    const sign = element.type === 'source' ? '-' : '';
    asked.push({ expression: `${sign}i(vs${id})`, kind: 'element', name: id });
    for (const end of ends) {
      names.add(end);
    }
  }
  for (const name of names) {
    if (name !== network.ground) {
      asked.push({ expression: `v(${name})`, kind: 'node', name });
    }
  }
  // Its floor for saturation currents, 1e-28 A unless told, would lift those of white lamps.
  lines.push(
    '.options temp=27 tnom=27 gmin=1e-12 reltol=1e-6 abstol=1e-14 vntol=1e-9 itl1=1000 epsmin=1e-60',
  );
  return { text: lines.join('\n'), asked };
}

function exact(value: number): string {
  return value.toExponential(15);
}
