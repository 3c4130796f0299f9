/**
 * Random networks for the comparison with a circuit simulator. The generators are plain functions of their seed, so a
 * failure can be repeated by the number it prints.
 */
import type { Element, Network } from '../../../server/src/base/circuit';
import { exactly } from '../../../server/src/base/range';

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

/** Everything there is: transistors, windings and their contacts, tracks with a wiper, Zener diodes, and the above. */
export function richNetwork(seed: number): Network {
  const { elements: plain } = randomNetwork(seed);
  const random = makeRandom(seed + 7919);
  const pick = (low: number, high: number): number => low + random() * (high - low);
  const spread = (low: number, high: number): number => 10 ** pick(Math.log10(low), Math.log10(high));
  const names = [
    '0',
    ...new Set(plain.flatMap((element) => (element.type === 'resistor' ? [element.a] : []))),
  ];
  const node = (): string => names[Math.floor(random() * names.length)] ?? '0';
  const supply = { type: 'source', id: 'supply', plus: 'p', minus: '0' } as const;
  const elements: Element[] = [
    ...plain,
    { ...supply, volts: exactly(pick(3, 15)), ohms: exactly(spread(0.1, 20)) },
  ];
  names.push('p');
  /** Mostly where people put it, so that transistors conduct; else anywhere. */
  const mostly = (usual: string): string => (random() < 0.7 ? usual : node());
  // A node of its own behind a resistor, so that what is put there does not short a neighbour.
  const lead = (id: string, low: number, high: number, from = node()): string => {
    elements.push({ type: 'resistor', id: `${id}l`, a: from, b: `m${id}`, ohms: exactly(spread(low, high)) });
    return `m${id}`;
  };
  const add: readonly ((id: string) => void)[] = [
    (id) => {
      const channel = random() < 0.5 ? 'n' : 'p';
      const gain = exactly(spread(20, 500));
      const figures = {
        volts: exactly(pick(0.6, 0.8)),
        atAmps: spread(1e-3, 0.1),
        ohms: exactly(pick(0.05, 20)),
      };
      const [low, high] = channel === 'n' ? ['0', 'p'] : ['p', '0'];
      const collector = random() < 0.7 ? lead(`${id}c`, 20, 2000, mostly(high)) : node();
      const ends = { collector, emitter: mostly(low), control: lead(`${id}b`, 200, 1e5, mostly(high)) };
      elements.push({ type: 'transistor', id, channel, ...ends, ...figures, gain });
    },
    (id) => {
      const channel = random() < 0.5 ? 'n' : 'p';
      const volts = exactly(pick(0.8, 3.5));
      const figures = { volts, ohms: exactly(spread(0.02, 5)), fullVolts: volts.typ + pick(1.5, 6) };
      const [low, high] = channel === 'n' ? ['0', 'p'] : ['p', '0'];
      const collector = random() < 0.7 ? lead(`${id}d`, 20, 2000, mostly(high)) : node();
      const control = random() < 0.5 ? node() : lead(`${id}g`, 100, 1e6, mostly(high));
      const ends = { collector, emitter: mostly(low), control };
      elements.push({ type: 'transistor', id, channel, ...ends, ...figures });
    },
    (id) => {
      const breakdown = { breakdownVolts: exactly(pick(2.4, 15)), breakdownAmps: spread(1e-3, 0.05) };
      const ends = { anode: mostly('0'), cathode: lead(id, 50, 5000, mostly('p')) };
      elements.push({
        type: 'diode',
        id,
        ...ends,
        volts: exactly(pick(0.6, 0.9)),
        atAmps: 0.1,
        ...breakdown,
      });
    },
    (id) => {
      const track = spread(1e3, 1e5);
      const place = pick(0.001, 0.999);
      const wiper = node();
      const ends = [node(), node()] as const;
      elements.push({ type: 'resistor', id: `${id}f`, a: ends[0], b: wiper, ohms: exactly(track * place) });
      elements.push({
        type: 'resistor',
        id: `${id}s`,
        a: wiper,
        b: ends[1],
        ohms: exactly(track * (1 - place)),
      });
    },
    (id) => {
      const typ = pick(0.5, 9);
      elements.push({
        type: 'coil',
        id,
        a: node(),
        b: node(),
        ohms: exactly(spread(20, 500)),
        operateVolts: exactly(typ),
      });
      const contact = { type: 'switch', id: `${id}k`, ohms: exactly(0.05), operatedBy: id } as const;
      elements.push({ ...contact, a: node(), b: node(), closed: random() < 0.3 });
    },
    (id) => {
      const ohms = exactly(spread(0.01, 0.1));
      elements.push({ type: 'switch', id, a: node(), b: node(), ohms, closed: random() < 0.6 });
    },
  ];
  const count = 2 + Math.floor(random() * 5);
  for (let index = 0; index < count; index += 1) {
    add[Math.floor(random() * add.length)]?.(`y${index}`);
  }
  return { ground: '0', elements: elements.filter((element) => !isLoop(element)) };
}

/** Both ends on one node: an ideal loop that the simulator refuses, and of no interest here. */
function isLoop(element: Element): boolean {
  switch (element.type) {
    case 'resistor':
    case 'switch':
      return element.a === element.b;
    case 'diode':
      return element.anode === element.cathode;
    case 'transistor':
      return element.collector === element.emitter || element.control === element.emitter;
    default:
      return false;
  }
}
