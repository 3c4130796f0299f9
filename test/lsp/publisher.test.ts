/** The last gate before the client: a list made from a version that has passed must not get through. */

import { expect, test } from 'vitest';
import type { Diagnostic, PublishDiagnosticsParams } from 'vscode-languageserver/node';
import { OpenFile } from '../../server/src/lsp/open-file';
import { linesOf } from '../../server/src/lsp/places';
import type { Run } from '../../server/src/lsp/project';
import { Publisher } from '../../server/src/lsp/publisher';

const finding: Diagnostic = {
  range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } },
  message: 'wrong',
};

function runOn(open: OpenFile | undefined): Run {
  const seen = { text: 'x', lines: linesOf('x'), ...(open === undefined ? {} : { open }) };
  return {
    snapshot: {
      findings: [],
      faults: [],
      facts: { uses: [], pinNames: [], problems: [] },
      hover: () => undefined,
      definition: () => [],
      fixes: () => [],
      workings: () => undefined,
    },
    files: new Map([['/s/a.ino', seen]]),
  };
}

test('a list for an older version, or for a file that was closed or opened since, waits for the next run', () => {
  const sent: PublishDiagnosticsParams[] = [];
  const first = OpenFile.open('file:///s/a.ino', 'cpp', 1, 'x');
  const second = OpenFile.update(first, [{ text: 'y' }], 2);
  let now: OpenFile | undefined = second;
  const publisher = new Publisher((params) => sent.push(params), {
    byPath: () => now,
    ofSketch: () => [],
  });
  const lists = new Map([['/s/a.ino', [finding]]]);
  publisher.publish('/s', lists, runOn(first));
  publisher.publish('/s', lists, runOn(undefined));
  now = undefined;
  publisher.publish('/s', lists, runOn(second));
  expect(sent).toEqual([]);
  now = second;
  publisher.publish('/s', lists, runOn(second));
  publisher.publish('/s', lists, runOn(second));
  expect(sent).toEqual([{ uri: 'file:///s/a.ino', version: 2, diagnostics: [finding] }]);
  publisher.forget('/s/a.ino');
  publisher.publish('/s', lists, runOn(second));
  expect(sent).toHaveLength(2);
  publisher.clear('/s');
  expect(sent.at(-1)?.diagnostics).toEqual([]);
});
