// Manifests with one mistake, whose place is marked by « and »: it must be told once, there, with the way out.
import { expect, test } from 'vitest';
import { applyEdits } from '../../../server/src/base/span';
import { describeProblems, read } from './library';

export interface Mistake {
  readonly about: string;
  /** The manifest with one marked place. */
  readonly text: string;
  readonly code: string;
  /** The marked text after the fix; left out where there is none. */
  readonly fixed?: string;
}

export const parts = `"parts": {
  "beacon": { "kind": "led", "colour": "green" },
  "R1": { "kind": "resistor", "value": "470" },
  "restart": { "kind": "push-button" },
  "dial": { "kind": "potentiometer", "value": "10k" }
}`;

export function withWires(wires: string): string {
  return `{ "board": "nano-v3", ${parts}, "wires": [${wires}] }`;
}

export function withPart(part: string): string {
  return `{ "board": "nano-v3", "parts": { ${part} } }`;
}

/** One test for each mistake. */
export function testMistakes(mistakes: readonly Mistake[]) {
  for (const { about, text: marked, code, fixed } of mistakes) {
    test(about, () => {
      const start = marked.indexOf('«');
      const end = marked.indexOf('»') - 1;
      expect(end).toBeGreaterThanOrEqual(start);
      const text = marked.replace('«', '').replace('»', '');
      const { problems } = read(text);
      expect(
        problems.map((one) => one.code),
        describeProblems(text, problems),
      ).toEqual([code]);
      const [problem] = problems;
      expect(problem?.span).toEqual({ file: 'hardware.jsonc', start, end });
      expect(problem?.message).toMatch(/^[A-Z"].*\.$/);
      const after = problem?.fix && applyEdits(text, problem.fix.edits);
      expect(after).toBe(fixed === undefined ? undefined : marked.replace(/«.*»/s, fixed));
    });
  }
}
