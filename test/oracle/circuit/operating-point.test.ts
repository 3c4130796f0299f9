/**
 * Operating points against ngspice, a general-purpose circuit simulator, with the same element models: every node
 * voltage and every element current of random networks. The lamp's curve is the project's own choice; that its
 * equations are solved rightly is not, and is what is compared here.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Element, Network, OperatingPoint } from '../../../server/src/base/circuit';
import { exactly } from '../../../server/src/base/range';
import { solveNetwork } from '../../../server/src/circuit';
import { requireOracle } from '../oracle';
import { type Asked, BULK_VOLTS, deckOf } from './deck';
import { randomNetwork, richNetwork } from './random-networks';

const simulator = 'ngspice';
const present = spawnSync(simulator, ['--version'], { encoding: 'utf8' }).status === 0;

/** Share by which a figure may differ, and what counts as nothing, in volts and amperes. */
const share = 1e-3;
const leastVolts = 1e-6;
const leastAmps = 1e-9;
/**
 * With transistors: our gates' and junctions' leakage, 1 pA a volt, through a megohm; and what the simulator's formula
 * for a blocked junction leaves out of the exponential, up to half a percent of its leakage.
 */
const roughly = { volts: 2e-5, amps: 1e-8 };

interface Difference {
  readonly seed: number;
  readonly name: string;
  readonly ours: number;
  readonly theirs: number;
}

function simulate(
  folder: string,
  network: Network,
  title: string,
  point?: OperatingPoint,
): ReadonlyMap<Asked, number> {
  const { text, asked } = deckOf(network, title, point);
  const prints = asked.map(({ expression }) => `print ${expression}`).join('\n');
  const file = join(folder, 'deck.cir');
  writeFileSync(file, `${text}\n.control\nset numdgt=12\nop\n${prints}\nquit\n.endc\n.end\n`);
  const run = spawnSync(simulator, ['-b', file], { encoding: 'utf8', timeout: 20_000 });
  const values = [...run.stdout.matchAll(/^\S+ = (\S+)\s*$/gm)].map((match) => Number(match[1]));
  if (values.length !== asked.length || !values.every(Number.isFinite)) {
    throw new Error(`${title}: the simulator gave no answer\n${run.stdout}\n${run.stderr}`);
  }
  return new Map(asked.map((one, index) => [one, values[index] ?? Number.NaN]));
}

function compare(
  seed: number,
  point: OperatingPoint,
  theirs: ReadonlyMap<Asked, number>,
  least = { volts: leastVolts, amps: leastAmps },
): Difference[] {
  const differences: Difference[] = [];
  for (const [{ kind, name }, value] of theirs) {
    const ours = (kind === 'node' ? point.nodes : point.amps)[name]?.typ ?? Number.NaN;
    const allowed = share * Math.abs(value) + (kind === 'node' ? least.volts : least.amps);
    if (!(Math.abs(ours - value) <= allowed)) {
      differences.push({ seed, name, ours, theirs: value });
    }
  }
  return differences;
}

function inFolder<T>(work: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'circuit-oracle-'));
  try {
    return work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

test('node voltages and currents of 300 random networks agree with the simulator', {
  timeout: 120_000,
}, (context) => {
  requireOracle(context, simulator, present);
  let figures = 0;
  let conducting = 0;
  const differences = inFolder((folder) => {
    const found: Difference[] = [];
    for (let seed = 1; seed <= 300; seed += 1) {
      const network = randomNetwork(seed);
      const point = solveNetwork(network);
      expect(point.converged, `seed ${seed}: ${point.notes.join(' ')}`).toBe(true);
      const theirs = simulate(folder, network, `seed ${seed}`);
      figures += theirs.size;
      conducting += network.elements.filter(
        ({ type, id }) => type === 'diode' && (point.amps[id]?.typ ?? 0) > 1e-6,
      ).length;
      found.push(...compare(seed, point, theirs));
    }
    return found;
  });
  expect(differences).toEqual([]);
  // The comparison is worth something only where figures were compared and lamps were lit.
  expect(figures).toBeGreaterThan(3000);
  expect(conducting).toBeGreaterThan(100);
});

/** The network with its contacts as our point has settled them: they are what a simulator's switch would be put to. */
function settledNetwork(network: Network, point: OperatingPoint): Network {
  const holds = (id: string | undefined): boolean =>
    network.elements.some(
      (element) =>
        element.type === 'coil' &&
        element.id === id &&
        Math.abs(point.amps[id]?.typ ?? 0) * element.ohms.typ >= (element.operateVolts?.typ ?? Infinity),
    );
  const elements = network.elements.map(
    (element): Element =>
      element.type === 'switch' && holds(element.operatedBy)
        ? { ...element, closed: !element.closed }
        : element,
  );
  return { ...network, elements };
}

test('400 networks of transistors, relays, tracks and Zener diodes agree with the simulator', {
  timeout: 120_000,
}, (context) => {
  requireOracle(context, simulator, present);
  const counts: Record<string, number> = {};
  const count = (name: string): void => {
    counts[name] = (counts[name] ?? 0) + 1;
  };
  const differences = inFolder((folder) => {
    const found: Difference[] = [];
    for (let seed = 1; seed <= 400; seed += 1) {
      const network = richNetwork(seed);
      const point = solveNetwork(network);
      if (point.notes.some((note) => note.includes('never come to rest'))) {
        count('restless');
        continue;
      }
      expect(point.converged, `seed ${seed}: ${point.notes.join(' ')}`).toBe(true);
      // A current into a large resistance; the deck's bulk would no longer lie beyond everything.
      if (Object.values(point.nodes).some(({ typ }) => Math.abs(typ) > BULK_VOLTS - 5)) {
        count('too high');
        continue;
      }
      const settled = settledNetwork(network, point);
      const own = compare(seed, point, simulate(folder, settled, `seed ${seed}`), roughly);
      // Transistors that hold one another have more than one point of rest; begun at ours, the simulator must stay.
      if (own.length > 0) {
        count('other point');
        const again = simulate(folder, settled, `seed ${seed} again`, point);
        found.push(...compare(seed, point, again, roughly));
      }
      for (const element of network.elements) {
        const amps = Math.abs(point.amps[element.id]?.typ ?? 0);
        if (amps > 1e-5) count(element.type === 'transistor' && element.gain ? 'bipolar' : element.type);
        if (
          element.type === 'diode' &&
          element.breakdownVolts &&
          (point.amps[element.id]?.typ ?? 0) < -1e-5
        ) {
          count('breakdown');
        }
      }
    }
    return found;
  });
  expect(differences).toEqual([]);
  // What was compared did something: conducting elements of every kind by count.
  for (const name of ['bipolar', 'transistor', 'coil', 'switch', 'breakdown', 'diode', 'source']) {
    expect(counts[name], name).toBeGreaterThan(25);
  }
  expect(counts.restless ?? 0).toBeLessThan(10);
  expect(counts['too high'] ?? 0).toBeLessThan(20);
  expect(counts['other point'] ?? 0).toBeLessThan(5);
});

test('a piece of 2,000 parts agrees with the simulator', { timeout: 60_000 }, (context) => {
  requireOracle(context, simulator, present);
  // Small random networks that all hang on one rail, so that nothing falls apart into pieces.
  const elements: Element[] = [
    { type: 'source', id: 'rail', plus: 'rail', minus: '0', volts: exactly(5), ohms: exactly(0.02) },
  ];
  for (let seed = 1; elements.length < 2000; seed += 1) {
    const rename = (node: string): string => (node === '0' ? '0' : `${node}x${seed}`);
    for (const element of randomNetwork(seed).elements) {
      if (element.type !== 'current') elements.push(renamed(element, rename, `x${seed}`));
    }
    elements.push({ type: 'resistor', id: `up${seed}`, a: 'rail', b: rename('n1'), ohms: exactly(100) });
  }
  const network = { ground: '0', elements };
  const point = solveNetwork(network);
  expect(point.converged, point.notes.join(' ')).toBe(true);
  inFolder((folder) => {
    expect(compare(0, point, simulate(folder, network, 'large'), roughly)).toEqual([]);
  });
});

function renamed(element: Element, rename: (node: string) => string, suffix: string): Element {
  const id = `${element.id}${suffix}`;
  switch (element.type) {
    case 'resistor':
      return { ...element, id, a: rename(element.a), b: rename(element.b) };
    case 'source':
      return { ...element, id, plus: rename(element.plus), minus: rename(element.minus) };
    case 'diode':
      return { ...element, id, anode: rename(element.anode), cathode: rename(element.cathode) };
    default:
      throw new Error(`${element.type} is not in a plain random network`);
  }
}

test('lamps in series and behind a bridge agree with the simulator', { timeout: 60_000 }, (context) => {
  requireOracle(context, simulator, present);
  const lamp = (id: string, anode: string, cathode: string, volts: number) =>
    ({ type: 'diode', id, anode, cathode, volts: exactly(volts), atAmps: 0.02 }) as const;
  const supply = {
    type: 'source',
    id: 'b',
    plus: 'p',
    minus: '0',
    volts: exactly(9),
    ohms: exactly(1),
  } as const;
  const chain: Network = {
    ground: '0',
    elements: [
      supply,
      { type: 'resistor', id: 'r', a: 'p', b: 'a', ohms: exactly(150) },
      lamp('l1', 'a', 'c', 2.1),
      lamp('l2', 'c', 'd', 2),
      lamp('l3', 'd', '0', 3),
    ],
  };
  const blocked: Network = {
    ground: '0',
    elements: [
      supply,
      lamp('l1', '0', 'm', 2.1),
      lamp('l2', 'm', 'q', 2),
      { type: 'resistor', id: 'r', a: 'q', b: 'p', ohms: exactly(1000) },
    ],
  };
  const bridge: Network = {
    ground: '0',
    elements: [
      { ...supply, minus: 'n' },
      lamp('d1', 'p', 'x', 0.7),
      lamp('d2', '0', 'p', 0.7),
      lamp('d3', 'n', 'x', 0.7),
      lamp('d4', '0', 'n', 0.7),
      { type: 'resistor', id: 'r', a: 'x', b: '0', ohms: exactly(220) },
    ],
  };
  inFolder((folder) => {
    for (const [index, network] of [chain, blocked, bridge].entries()) {
      const point = solveNetwork(network);
      expect(point.converged).toBe(true);
      expect(compare(index, point, simulate(folder, network, `case ${index}`))).toEqual([]);
    }
  });
});
