/** The hookup list against a reader who has nothing but the printed page. */
import { beforeAll, expect, it } from 'vitest';
import type { Build } from '../../../server/src/base/build';
import { hookupPaper, listHookup, writeCsv, writeHookup } from '../../../server/src/documents';
import { readHarbour } from './harbour';
import { netsOfRows, readCsv, readTables, sorted } from './read-page';

let build: Build;
beforeAll(async () => {
  build = (await readHarbour()).after.build;
});

function declaredNets(): string[][] {
  return sorted(
    build.nets
      .filter((net) => net.wires.length > 0)
      .map((net) => [...net.pins, ...net.terminals.map((end) => `${end.part}.${end.terminal}`)].sort()),
  );
}

it('gives the nets of the manifest to somebody who reads only the page', () => {
  const rows = [...readTables(writeHookup(build)).values()].flat();
  expect(rows).toHaveLength(build.wires.length);
  const wires = rows.map((row) => ({ from: row.from ?? '', to: row.to ?? '' }));
  expect(netsOfRows(wires)).toEqual(declaredNets());
});

it('gives the same nets as a table for programs', () => {
  const [heads = [], ...rows] = readCsv(writeCsv(hookupPaper(build)) ?? '');
  const [from, to] = [heads.indexOf('from'), heads.indexOf('to')];
  const wires = rows.map((row) => ({ from: row[from] ?? '', to: row[to] ?? '' }));
  expect(netsOfRows(wires)).toEqual(declaredNets());
});

it('has a row for every wire, grounds first, and warns where the way round matters', () => {
  const rows = listHookup(build);
  expect(rows).toHaveLength(build.wires.length);
  expect(rows.map(({ number }) => number)).toEqual(rows.map((_, index) => index + 1));
  expect(rows[0]?.from).toMatch(/^GND, /);
  expect(rows.find((row) => row.to === 'beacon.cathode' || row.from === 'beacon.cathode')?.watch).toContain(
    'flat',
  );
});

it('keeps what is on ground together, whether it touches the board or not, and follows a run to its end', () => {
  const rows = listHookup(build);
  const ground = rows.filter(({ group }) => group === 'ground');
  expect(ground.map(({ wire }) => wire).sort()).toEqual([...(build.nets[2]?.wires ?? [])].sort());
  expect(ground.map(({ number }) => number)).toEqual(ground.map((_, index) => index + 1));
  const [into, onward] = ['R1.1', 'R1.2'].map((end) =>
    rows.find(({ from, to }) => from === end || to === end),
  );
  expect(onward?.number).toBe((into?.number ?? 0) + 1);
});

it('keeps names from becoming markup', () => {
  const odd = { ...build, title: 'a|b <script> `x`' };
  expect(writeHookup(odd).split('\n')[1]).toBe('# Hookup list: a\\|b &lt;script&gt; \\`x\\`, revision A');
});
