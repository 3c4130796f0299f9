/** The core's own example sketches: every finding on them was read and judged, and none may come unread. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openTestBench, root } from '../../fixture/bench';
import { requireOracle } from '../oracle';
import { EXAMPLE_BOARDS, examplesPresent, findingsOn, loadExamples } from './examples';

test('findings on the example sketches are the judged ones', { timeout: 60_000 }, async (ctx) => {
  requireOracle(ctx, 'example sketches of the core', examplesPresent());
  const judged = readFileSync(join(root, 'test/oracle/rules/examples.md'), 'utf8')
    .split('\n')
    .filter((line) => /^\| \w/.test(line) && !line.startsWith('| sketch |'))
    .map((line) =>
      line
        .split('|')
        .slice(1, 5)
        .map((cell) => cell.trim().replaceAll('`', ''))
        .join(' | '),
    );
  const bench = await openTestBench();
  const examples = loadExamples(root);
  expect(examples.length).toBeGreaterThanOrEqual(19);
  const found = examples.flatMap((build) =>
    EXAMPLE_BOARDS.flatMap((board) => findingsOn(bench, build, board)),
  );
  expect(found.filter((line) => !judged.includes(line))).toEqual([]);
  expect(judged.filter((line) => !found.includes(line))).toEqual([]);
});
