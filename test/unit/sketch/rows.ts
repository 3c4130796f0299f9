/** Tests as rows: a sketch, and its uses in words. */
import { expect, it } from 'vitest';
import type { LibraryFacts } from '../../../server/src/base/platform';
import { table } from './reading';

export interface Row {
  readonly about: string;
  readonly text: string;
  readonly uses: readonly string[];
}

/** Text of a whole sketch out of globals and the body of setup(). */
export const inSetup = (globals: string, body: string) =>
  `${globals}\nvoid setup() {\n${body}\n}\nvoid loop() {}\n`;
export const inLoop = (globals: string, body: string) =>
  `${globals}\nvoid setup() {}\nvoid loop() {\n${body}\n}\n`;

export function check(rows: readonly Row[], known?: readonly LibraryFacts[]): void {
  for (const { about, text, uses } of rows) {
    it(about, async () => {
      expect(await table(text, known)).toEqual(uses);
    });
  }
}
