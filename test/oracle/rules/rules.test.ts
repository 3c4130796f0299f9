/** The rule book finds what is put into clean builds, says it in the right place, and is silent on the clean ones. */
import { beforeAll, describe, expect, test } from 'vitest';
import { rules } from '../../../server/src/rules/generated/registry';
import { openTestBench, root, type TestBench } from '../../fixture/bench';
import { type CleanBuild, loadBuilds } from './builds';
import { ALONE, FOUND } from './goals';
import { measureClean, measureSeeds } from './measure';
import { sumRows } from './report';
import { makeSeeds, WAITING } from './seeds';

const MINUTES = 60_000;
/** Seeds that a rule has at the least. */
const LEAST = 8;

const ids = rules.map(({ id }) => id);

let bench: TestBench;
let builds: readonly CleanBuild[];
beforeAll(async () => {
  bench = await openTestBench();
  builds = loadBuilds(root);
});

test('the clean builds are many, and varied in board and parts', () => {
  const hardware = builds.map(({ files }) => files['hardware.jsonc'] ?? '');
  const words = (pattern: RegExp): Set<string> =>
    new Set(hardware.flatMap((text) => [...text.matchAll(pattern)].map((match) => match[1] ?? '')));
  expect(builds.length).toBeGreaterThanOrEqual(30);
  expect(words(/"board": "([\w-]+)"/g).size).toBeGreaterThanOrEqual(12);
  expect(words(/"kind": "([\w-]+)"/g).size).toBeGreaterThanOrEqual(35);
});

test('no error and no warning stands on a clean build, however it is written', { timeout: MINUTES }, () => {
  expect(measureClean(bench, builds).falseAlarms).toEqual([]);
});

test('every seed speaks of a rule there is, and every rule has seeds', () => {
  const seeds = makeSeeds(builds);
  const unknown = new Set(seeds.map(({ rule }) => rule).filter((rule) => !ids.includes(rule)));
  expect([...unknown].filter((rule) => !WAITING.includes(rule))).toEqual([]);
  expect(WAITING.filter((rule) => ids.includes(rule))).toEqual([]);
  const few = ids.filter((id) => seeds.filter(({ rule, silent }) => rule === id && !silent).length < LEAST);
  expect(few).toEqual([]);
});

describe('the seeded faults', () => {
  test('are found in place, alone, and cured', { timeout: 5 * MINUTES }, () => {
    const { rows, faults } = measureSeeds(
      bench,
      builds,
      makeSeeds(builds).filter(({ rule }) => !WAITING.includes(rule)),
    );
    const all = sumRows(rows);
    const told = faults.join('\n');
    expect(all.placed / all.seeded, told).toBeGreaterThanOrEqual(FOUND);
    expect(1 - all.extra / (all.seeded + all.inside), told).toBeGreaterThanOrEqual(ALONE);
    expect(all.spoke, told).toBe(0);
    expect(all.brokenFixes, told).toBe(0);
  });

  test('are not found where nothing was put', () => {
    // The comparison can fail: a seed whose edit does no harm counts as missed, and one in the wrong place too.
    const harmless = { find: 'const int quayButton = 2;', put: 'const int quayButton = 0 + 2;' };
    const seeded = { find: '  pinMode(beaconPin, OUTPUT);\n', put: '' };
    const row = (edit: typeof harmless, line: string) =>
      measureSeeds(bench, builds, [
        {
          rule: 'mode-missing',
          build: 'beacon-and-horn',
          about: 'a trial',
          edits: [edit],
          places: [{ line }],
          says: ['D7'],
        },
      ]).rows[0];
    expect(row(harmless, 'digitalWrite(beaconPin')).toMatchObject({ seeded: 1, found: 0, placed: 0 });
    expect(row(seeded, 'digitalRead(quayButton')).toMatchObject({ found: 1, placed: 0 });
    expect(row(seeded, 'digitalWrite(beaconPin')).toMatchObject({ found: 1, placed: 1 });
  });
});
