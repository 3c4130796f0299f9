/** The printed lines of a sketch lead from the old text to the new one. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { compareLines } from '../../../server/src/documents/compare-lines';

/** Applies printed hunks to the old lines, and checks on the way that they fit. */
function apply(before: readonly string[], printed: readonly string[]): string[] {
  const result: string[] = [];
  let at = 0;
  for (const line of printed) {
    const head = /^@@ line (\d+), before (\d+) @@$/.exec(line);
    if (head) {
      while (at < Number(head[2]) - 1) result.push(before[at++] ?? '');
      expect(result).toHaveLength(Number(head[1]) - 1);
      continue;
    }
    if (line.startsWith('+')) result.push(line.slice(1));
    else {
      expect(before[at]).toBe(line.slice(1));
      if (line.startsWith(' ')) result.push(line.slice(1));
      at++;
    }
  }
  return [...result, ...before.slice(at)];
}

it('leads from any text to any other', () => {
  const lines = fc.array(fc.constantFrom('a', 'b', 'c', 'd', '', '@@ x'), { maxLength: 40 });
  fc.assert(
    fc.property(lines, lines, (before, after) => {
      expect(apply(before, compareLines(before, after))).toEqual(after);
    }),
    { numRuns: 500 },
  );
});

it('prints no more than what changed and two lines around it', () => {
  const before = Array.from({ length: 100 }, (_, index) => `line ${index}`);
  const after = before.with(50, 'other').toSpliced(10, 1);
  expect(compareLines(before, after)).toEqual([
    '@@ line 9, before 9 @@',
    ...[' line 8', ' line 9', '-line 10', ' line 11', ' line 12'],
    '@@ line 48, before 49 @@',
    ...[' line 48', ' line 49', '-line 50', '+other', ' line 51', ' line 52'],
  ]);
});

it('tells two texts that have nothing in common as one block, without searching for ever', () => {
  const before = Array.from({ length: 20_000 }, (_, index) => `old ${index}`);
  const after = Array.from({ length: 20_000 }, (_, index) => `new ${index}`);
  expect(apply(before, compareLines(before, after))).toEqual(after);
});
