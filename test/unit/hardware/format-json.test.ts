/** How values are written into a manifest. */
import { expect, test } from 'vitest';
import { formatJson } from '../../../server/src/hardware';

test('values are printed on one line', () => {
  expect(formatJson({ a: [1, 'x', true, null], b: {}, c: undefined, 'd"': { e: [] } })).toBe(
    '{ "a": [1, "x", true, null], "b": {}, "d\\"": { "e": [] } }',
  );
});
