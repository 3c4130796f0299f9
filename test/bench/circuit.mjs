// Operating points: a build of 60 wires in every state of its pins and keys, and how the sum grows to 2,000 parts.
// Stands on its own too: node test/bench/circuit.mjs [--short]
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { millis, printTable, quantile } from './figures.mjs';

const self = fileURLToPath(import.meta.url);

const exactly = (value) => ({ min: value, typ: value, max: value });
const within = (typ, tolerance) => ({ min: typ * (1 - tolerance), typ, max: typ * (1 + tolerance) });
const resistor = (id, a, b, ohms) => ({ type: 'resistor', id, a, b, ohms });
const source = (id, plus, volts, ohms) => ({ type: 'source', id, plus, minus: '0', volts, ohms });
const lamp = (id, anode, cathode) => ({
  type: 'diode',
  id,
  anode,
  cathode,
  volts: { min: 1.9, typ: 2.1, max: 2.4 },
  atAmps: 0.02,
});
const pinOhms = { min: 15, typ: 25, max: 40 };

/** A pin as source or, when low, as resistance to ground. */
function drive(pin, state) {
  const id = `pin${pin}`;
  if (state === 'high') return [source(id, id, within(5, 0.05), pinOhms)];
  if (state === 'low') return [resistor(id, id, '0', pinOhms)];
  return state === 'pull-up' ? [source(id, id, within(5, 0.05), { min: 2e4, typ: 35e3, max: 5e4 })] : [];
}

/** 16 lamps behind resistors (48 wires) and 6 keys (12 wires), each at its own pin: every pin's own states. */
function* apart() {
  for (let at = 0; at < 16; at += 1) {
    const run = [resistor('r', `pin${at}`, 'x', within(470, 0.05)), lamp('l', 'x', '0')];
    for (const state of ['high', 'low', 'input'])
      yield { ground: '0', elements: [...drive(at, state), ...run] };
  }
  for (let at = 16; at < 22; at += 1) {
    for (const ohms of [exactly(0.05), undefined]) {
      const key = ohms === undefined ? [] : [resistor('k', `pin${at}`, '0', ohms)];
      yield { ground: '0', elements: [...drive(at, 'pull-up'), ...key] };
    }
  }
}

/** 20 lamps at 9 pins in a matrix of 4 rows and 5 columns (60 wires): everything hangs together, 512 states. */
function* matrix() {
  const lamps = Array.from({ length: 20 }, (_, at) => lamp(`l${at}`, `row${at % 4}`, `pin${4 + (at % 5)}`));
  const rows = Array.from({ length: 4 }, (_, at) =>
    resistor(`r${at}`, `pin${at}`, `row${at}`, within(330, 0.05)),
  );
  for (let state = 0; state < 512; state += 1) {
    const pins = Array.from({ length: 9 }, (_, pin) =>
      drive(pin, (state >> pin) & 1 ? 'high' : 'low'),
    ).flat();
    yield { ground: '0', elements: [...pins, ...rows, ...lamps] };
  }
}

/** Lamps with their resistors on one rail: `parts` of them and no piece smaller than all. */
function onOneRail(parts) {
  const elements = [source('rail', 'v', within(5, 0.05), exactly(0.01))];
  for (let at = 0; at < parts / 2; at += 1) {
    elements.push(resistor(`r${at}`, 'v', `x${at}`, within(470, 0.05)), lamp(`l${at}`, `x${at}`, '0'));
  }
  return { ground: '0', elements };
}

/** A square of resistors, the worst that a sparse factorising is likely to meet in a build. */
function grid(parts) {
  const side = Math.max(2, Math.round(Math.sqrt(parts / 2)));
  const node = (x, y) => `n${x}.${y}`;
  const elements = [
    source('s', node(0, 0), exactly(5), exactly(1)),
    resistor('end', node(side - 1, side - 1), '0', exactly(1)),
  ];
  for (let x = 0; x < side; x += 1) {
    for (let y = 0; y < side; y += 1) {
      if (x + 1 < side) elements.push(resistor(`h${x}.${y}`, node(x, y), node(x + 1, y), within(100, 0.05)));
      if (y + 1 < side) elements.push(resistor(`v${x}.${y}`, node(x, y), node(x, y + 1), within(100, 0.05)));
    }
  }
  return { ground: '0', elements };
}

/** The network without its tolerances. */
function typical({ ground, elements }) {
  const one = (value) => (typeof value === 'object' && value !== null ? exactly(value.typ) : value);
  return {
    ground,
    elements: elements.map((element) =>
      Object.fromEntries(Object.entries(element).map(([key, value]) => [key, one(value)])),
    ),
  };
}

function medianOf(work, short) {
  const times = [];
  const until = performance.now() + (short ? 300 : 1500);
  for (let run = 0; run < 3 || (performance.now() < until && run < 100); run += 1) {
    const before = performance.now();
    work();
    times.push(performance.now() - before);
  }
  return quantile(times.slice(times.length > 3 ? 2 : 1), 0.5);
}

/** Prints two tables. @param root the project's folder */
export async function benchCircuit(root, { short }) {
  const outfile = join(root, '.test-output/bench/circuit.cjs');
  await build({
    absWorkingDir: root,
    entryPoints: ['server/src/circuit/index.ts'],
    outfile,
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'cjs',
    logLevel: 'warning',
  });
  const { solveNetwork } = createRequire(self)(outfile);
  const solveAll = (networks) => {
    for (const network of networks) {
      if (!solveNetwork(network).converged) throw new Error('a network of the benchmark has no solution');
    }
  };
  const cases = [
    ['lamps and keys apart', [...apart()]],
    ['lamp matrix', [...matrix()].slice(0, short ? 64 : 512)],
  ];
  const states = cases.map(([name, networks]) => {
    const bare = networks.map(typical);
    const corners = medianOf(() => solveAll(networks), short);
    const single = medianOf(() => solveAll(bare), short);
    const each = (ms) => ((ms * 1000) / networks.length).toFixed(0);
    return [name, String(networks.length), millis(single), each(single), millis(corners), each(corners)];
  });
  console.log('\n60 wires in all their states, milliseconds, median');
  printTable(['build', 'states', 'typical', 'us each', 'corners', 'us each'], states);
  const growth = [];
  for (const parts of short ? [20, 200, 2000] : [20, 60, 200, 600, 2000]) {
    const figures = [onOneRail(parts), grid(parts)].flatMap((network) => [typical(network), network]);
    growth.push([
      String(parts),
      ...figures.map((network) => millis(medianOf(() => solveAll([network]), short))),
    ]);
  }
  console.log('\none piece of that many parts, milliseconds, median');
  printTable(['parts', 'one rail, typical', 'with tolerances', 'grid, typical', 'with tolerances'], growth);
}

if (process.argv[1] === self) {
  await benchCircuit(resolve(self, '../../..'), { short: process.argv.includes('--short') });
}
