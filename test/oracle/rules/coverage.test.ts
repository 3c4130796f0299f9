/** The page on coverage says what the rules are. A desk writes it and fails once; CI refuses. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { rules } from '../../../server/src/rules/generated/registry';
import { root } from '../../fixture/bench';
import { drawCoverage, readCoverage } from './coverage';

const coverage = readCoverage(join(root, 'test/oracle/rules'));
const ids = rules.map(({ id }) => id);

test('every fault has a rule that there is, or a reason', () => {
  expect(coverage.map(({ row }) => row)).toEqual(
    Array.from({ length: coverage.length }, (_, index) => index + 1),
  );
  expect(
    coverage.flatMap(({ row, rules: named }) =>
      named.filter((id) => !ids.includes(id)).map((id) => `${row}: ${id}`),
    ),
  ).toEqual([]);
  expect(coverage.filter(({ rules: named, note }) => named.length === 0 && note === undefined)).toEqual([]);
});

test('the page is up to date', () => {
  const file = join(root, 'server/docs/coverage.md');
  const page = drawCoverage(coverage, ids);
  let before: string | undefined;
  try {
    before = readFileSync(file, 'utf8');
  } catch {
    before = undefined;
  }
  if (before !== page && !process.env.CI) writeFileSync(file, page);
  expect(before === page, 'server/docs/coverage.md was out of date').toBe(true);
});
