/** The hookup list against a reader who has nothing but the printed page. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, it } from 'vitest';
import type { Build } from '../../../server/src/base/build';
import { listHookup, writeHookup } from '../../../server/src/documents';
import { openTestBench, root } from '../../fixture/bench';

let build: Build;
beforeAll(async () => {
  const bench = await openTestBench();
  const text = readFileSync(join(root, 'hardware-schemas/examples/harbour-model/hardware.jsonc'), 'utf8');
  const snapshot = bench.analyse({
    'hardware.jsonc': text,
    'harbour-model.ino': 'void setup() {}\nvoid loop() {}\n',
  });
  if (!snapshot.build) throw new Error('the harbour model has no build');
  build = snapshot.build;
});

/** Nets as sorted lists of ends, from the rows alone. Board ends count by their pin's name, the word before the comma. */
function netsOfPage(page: string): string[][] {
  const groups = new Map<string, string>();
  const find = (name: string): string => {
    const up = groups.get(name) ?? name;
    return up === name ? name : find(up);
  };
  for (const line of page.split('\n')) {
    const cells = line.split(/(?<!\\)\|/).map((cell) => cell.trim().replace(/\\(.)/g, '$1'));
    if (cells[1] !== '☐') continue;
    const [from, to] = [cells[2] ?? '', cells[3] ?? ''].map((end) => end.split(',')[0] ?? '');
    for (const end of [from ?? '', to ?? '']) groups.set(end, find(end));
    groups.set(find(from ?? ''), find(to ?? ''));
  }
  const nets = new Map<string, string[]>();
  for (const name of groups.keys()) nets.set(find(name), [...(nets.get(find(name)) ?? []), name]);
  return [...nets.values()].map((net) => net.sort()).sort((a, b) => (a[0] ?? '').localeCompare(b[0] ?? ''));
}

it('gives the nets of the manifest to somebody who reads only the page', () => {
  const declared = build.nets
    .filter((net) => net.wires.length > 0)
    .map((net) => [...net.pins, ...net.terminals.map((end) => `${end.part}.${end.terminal}`)].sort())
    .sort((a, b) => (a[0] ?? '').localeCompare(b[0] ?? ''));
  expect(netsOfPage(writeHookup(build))).toEqual(declared);
});

it('has a row for every wire, grounds first, and warns where the way round matters', () => {
  const rows = listHookup(build);
  expect(rows).toHaveLength(build.wires.length);
  expect(rows[0]?.from).toMatch(/^GND, /);
  expect(rows.find((row) => row.to === 'beacon.cathode' || row.from === 'beacon.cathode')?.watch).toContain(
    'flat',
  );
});

it('keeps names from becoming markup', () => {
  const odd = { ...build, title: 'a|b <script> `x`' };
  expect(writeHookup(odd).split('\n')[0]).toBe('# Hookup list: a\\|b &lt;script&gt; \\`x\\`, revision A');
});
