/** Many folders: on several threads, in shards, with a baseline. However it is spread, the report is the same. */
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkFolders } from '../../server/src/cli/check/check-folders';
import type { Report } from '../../server/src/cli/check/report';
import { readShard, shareOf } from '../../server/src/cli/check/shard';
import { findProjects, loadLibrary } from '../../server/src/files';
import { root } from '../fixture/bench';
import { CLEAN, LAMP, openWorkshop, type Workshop } from './program';

const COUNT = 60;
let shop: Workshop;

beforeAll(() => {
  shop = openWorkshop();
  for (let index = 0; index < COUNT; index += 1) {
    // A faulty one, two clean ones, and so on; some lie deeper.
    const folder = `all/${index % 4 === 0 ? 'deep/' : ''}s${String((index * 7) % COUNT).padStart(2, '0')}`;
    shop.putBuild(folder, index % 3 === 0 ? LAMP : CLEAN);
  }
});
afterAll(() => shop.clear());

const json = (...args: string[]) => shop.wiretrue(['check', '--format', 'json', ...args]);

describe('threads', () => {
  test('any number of them gives the same bytes in every format', () => {
    const one = json('-j', '1', 'all');
    expect(one.status).toBe(1);
    const report = JSON.parse(one.stdout) as Report;
    expect(report.summary).toMatchObject({ sketches: COUNT, errors: COUNT / 3 });
    for (const jobs of ['2', '4', '16']) {
      expect(json('-j', jobs, 'all')).toEqual(one);
    }
    expect(shop.wiretrue(['check', '-j4', 'all'])).toEqual(shop.wiretrue(['check', '-j1', 'all']));
  });

  test('a thread that dies takes nothing with it', async () => {
    const worker = shop.put('dies.cjs', "throw new Error('no');");
    const takes = shop.put(
      'takes.cjs',
      // Takes folders and never gives them back.
      "const { next } = require('node:worker_threads').workerData; Atomics.add(new Int32Array(next), 0, 30);",
    );
    const { folders } = findProjects(['all'], shop.base);
    const setting = { library: loadLibrary(join(root, 'hardware-schemas')), base: shop.base, paths: ['all'] };
    const alone = await checkFolders(setting, folders, { jobs: 1 });
    expect(alone).toHaveLength(COUNT);
    for (const file of [worker, takes]) {
      const seen: number[] = [];
      const progress = (done: number) => void seen.push(done);
      expect(await checkFolders(setting, folders, { jobs: 3, worker: file, progress })).toEqual(alone);
      expect(seen.at(-1)).toBe(COUNT);
    }
  });

  test('a number of threads that is none is refused', () => {
    for (const jobs of ['0', '-1', '1.5', 'all', '1000']) {
      const { status, stdout, stderr } = shop.wiretrue(['check', `--jobs=${jobs}`, 'all']);
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
      expect(stderr).toBe(`wiretrue: "${jobs}" is no number of threads from 1 to 256.\n`);
    }
  });
});

describe('shards', () => {
  const write = (shard: string, ...rest: string[]) => {
    const file = `report-${shard.replace('/', '-')}.json`;
    const { status, stdout, stderr } = json('--shard', shard, '-o', file, ...rest);
    expect({ stdout, stderr }).toEqual({ stdout: '', stderr: '' });
    return { file, status };
  };

  test('every folder is in one shard and no shard is far larger than another', () => {
    const all = Array.from({ length: 29 }, (_, at) => at);
    const parts = Array.from({ length: 8 }, (_, at) => shareOf(all, { index: at + 1, count: 8 }));
    expect(parts.flat().sort((a, b) => a - b)).toEqual(all);
    expect(new Set(parts.map(({ length }) => length))).toEqual(new Set([3, 4]));
    expect(readShard('3/8')).toEqual({ index: 3, count: 8 });
    for (const wrong of ['0/8', '9/8', '3', '3/', '/8', '1/0', '1.5/2', '-1/3', '1/99999']) {
      expect(readShard(wrong), wrong).toBeUndefined();
    }
  });

  test('all of eight, merged in any order, equal the single run in every format', () => {
    const files = Array.from({ length: 8 }, (_, at) => write(`${at + 1}/8`, 'all').file);
    expect(shop.wiretrue(['merge', '--format', 'json', ...[...files].reverse()])).toEqual(json('all'));
    for (const format of ['text', 'sarif', 'junit', 'annotations']) {
      expect(shop.wiretrue(['merge', '--format', format, ...files])).toEqual(
        shop.wiretrue(['check', '--format', format, 'all']),
      );
    }
  });

  test('more shards than folders: some are empty, and nothing else changes', () => {
    const files = [1, 2, 3, 4].map((index) => write(`${index}/4`, 'all/s01', 'all/s02'));
    expect(files.at(-1)?.status).toBe(0);
    expect(shop.wiretrue(['merge', '--format', 'json', ...files.map(({ file }) => file)])).toEqual(
      json('all/s01', 'all/s02'),
    );
  });

  test('with a baseline, and with a path that leads nowhere, they are the same too', () => {
    shop.wiretrue(['check', '--write-baseline', 'half.json', 'all/deep']);
    const rest = ['--baseline', 'half.json', 'all', 'gone'];
    const files = [1, 2, 3].map((index) => {
      const file = `b${index}.json`;
      json('--shard', `${index}/3`, '-o', file, ...rest);
      return file;
    });
    const single = json(...rest);
    expect(single.status).toBe(2);
    expect(shop.wiretrue(['merge', '--format', 'json', ...files])).toEqual(single);
  });

  test('one that is missing, twice there or foreign is refused in words', () => {
    const [first, second, third] = ['1/3', '2/3', '3/3'].map((shard) => write(shard, 'all').file);
    const whole = 'whole.json';
    json('-o', whole, 'all');
    shop.put('none.json', '{ "some": "thing" }');
    shop.put(
      'newer.json',
      readFileSync(join(shop.base, whole), 'utf8').replace('"format": 1', '"format": 9'),
    );
    shop.put('damaged.json', readFileSync(join(shop.base, whole), 'utf8').replaceAll('"rule"', '"role"'));
    shop.put('half.txt', readFileSync(join(shop.base, whole), 'utf8').slice(0, 200));
    const other = readFileSync(join(shop.base, String(second)), 'utf8').replace(
      /"version": "[^"]*"/,
      '"version": "9.9.9"',
    );
    shop.put('other.json', other);
    const refused: readonly (readonly [readonly (string | undefined)[], RegExp])[] = [
      [[first, third], /Shard 2\/3 is missing\./],
      [[first], /Shards 2\/3, 3\/3 are missing\./],
      [[first, second, second], /report-2-3\.json and report-2-3\.json are both shard 2\/3\./],
      [[first, second, third, whole], /only one is a shard/],
      [[whole, whole], /The sketch all\/deep\/s\d\d is in whole\.json and in whole\.json\./],
      [[first, 'other.json', third], /Make all of them with the same version\./],
      [['none.json'], /none\.json: is no report of wiretrue check/],
      [['newer.json'], /newer\.json: has format 9; this program knows format 1\. Update the program/],
      [['damaged.json'], /damaged\.json: is a report with a piece missing/],
      [['half.txt'], /half\.txt: is no JSON/],
      [['gone.json'], /gone\.json: does not exist/],
    ];
    for (const [files, why] of refused) {
      const names = files.map(String);
      const { status, stdout, stderr } = shop.wiretrue(['merge', ...names]);
      expect({ status, stdout }, names.join(' ')).toEqual({ status: 2, stdout: '' });
      expect(stderr).toMatch(why);
    }
    expect(shop.wiretrue(['check', '--shard', '4/3', 'all']).stderr).toBe(
      'wiretrue: "4/3" is no shard; write it as in --shard 3/8.\n',
    );
  });
});

describe('baseline', () => {
  test('an old project starts clean, a new fault is told, a mended one is said to be gone', () => {
    cpSync(join(shop.base, 'all'), join(shop.base, 'old'), { recursive: true });
    const written = shop.wiretrue(['check', '--write-baseline', 'old/known.json', 'old']);
    expect(written).toEqual({
      status: 0,
      stdout: `${COUNT / 3} findings of ${COUNT} sketches written into old/known.json\n`,
      stderr: '',
    });
    const clean = shop.wiretrue(['check', '--baseline', 'old/known.json', 'old']);
    expect(clean).toEqual({
      status: 0,
      stdout: `No findings in ${COUNT} sketches\n${COUNT / 3} findings are in the baseline and not shown\n`,
      stderr: '',
    });
    // From elsewhere, and with lines before the finding, it is still the same finding.
    const faulty = (JSON.parse(json('old').stdout) as Report).findings[0];
    const manifest = join(shop.base, faulty?.sketch ?? '', 'hardware.jsonc');
    writeFileSync(manifest, `// Moved\n// down\n${readFileSync(manifest, 'utf8')}`);
    expect(shop.wiretrue(['check', '--baseline', 'known.json'], 'old')).toEqual(clean);
    writeFileSync(manifest, CLEAN);
    expect(shop.wiretrue(['check', '--baseline', 'old/known.json', 'old']).stdout).toMatch(
      /^No findings .*\n19 findings are in the baseline and not shown\n1 finding of the baseline is gone: write it anew\n$/,
    );
    shop.putBuild('old/fresh', LAMP);
    const fresh = shop.wiretrue(['check', '--baseline', 'old/known.json', 'old']);
    expect(fresh.status).toBe(1);
    expect(fresh.stdout).toMatch(/^old\/fresh\/hardware\.jsonc:6:\d+ error lamp-unlimited\n/);
  });

  test('the file is short, ordered, and holds no places', () => {
    shop.wiretrue(['check', '--write-baseline', 'b.json', 'all/s07', 'all/deep']);
    const text = readFileSync(join(shop.base, 'b.json'), 'utf8');
    const { format, known } = JSON.parse(text) as { format: number; known: Record<string, string[]> };
    expect(format).toBe(1);
    expect(Object.keys(known)).toEqual(Object.keys(known).sort());
    expect(new Set(Object.values(known).flat())).toEqual(new Set(['lamp-unlimited:beacon']));
    expect(text).not.toContain(shop.base);
  });

  test('of sketches that are not checked nothing is called gone', () => {
    shop.wiretrue(['check', '--write-baseline', 'some.json', 'all']);
    const { baseline } = JSON.parse(json('--baseline', 'some.json', 'all/deep').stdout) as Report;
    expect(baseline).toMatchObject({ gone: 0 });
  });

  test('one that cannot be used is refused, and none is written where not all was checked', () => {
    shop.put('newer.json', '{ "format": 7, "known": {} }');
    shop.put('list.json', '[]');
    shop.put('odd.json', '{ "format": 1, "known": { "a": [1] } }');
    const why = (file: string) => {
      const { status, stdout, stderr } = shop.wiretrue(['check', '--baseline', file, 'all/deep']);
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
      return stderr;
    };
    expect(why('gone.json')).toBe('wiretrue: gone.json: does not exist\n');
    expect(why('list.json')).toMatch(/list\.json: is no baseline/);
    expect(why('newer.json')).toMatch(
      /newer\.json: has format 7; this program knows format 1\. Update the program/,
    );
    expect(why('odd.json')).toMatch(/odd\.json: has no list of keys for a/);
    const half = shop.wiretrue(['check', '--write-baseline', 'never.json', 'all/deep', 'gone']);
    expect(half.status).toBe(2);
    expect(half.stderr).toMatch(/never\.json is not written, for not everything could be checked\.\n$/);
    expect(shop.wiretrue(['check', '--baseline', 'never.json', 'all']).stderr).toMatch(/does not exist/);
    expect(shop.wiretrue(['check', '--write-baseline', 'x.json', '--shard', '1/2']).status).toBe(2);
  });
});
