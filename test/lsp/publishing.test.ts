/** What the server publishes when: order, versions, open and closed files, and which trees it keeps meanwhile. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type ClientCapabilities, FileChangeType } from 'vscode-languageserver/node';
import { able, connect, insert, type TestClient } from './test-client';

let client: TestClient;
beforeEach(async () => {
  client = await connect(able);
});
afterEach(() => client.dispose());

async function reconnect(capabilities: ClientCapabilities, options?: unknown) {
  client.dispose();
  client = await connect(capabilities, options);
}

const start = { line: 0, character: 0 };

describe('publishing', () => {
  test('an open sketch and its closed manifest both get their findings', async () => {
    client.write('hardware.jsonc', '{ BAD1 }');
    await client.open('a.ino', 'x BAD2', 7);
    await client.tick();
    expect(client.published).toEqual([
      {
        uri: client.uri('a.ino'),
        version: 7,
        diagnostics: [
          {
            range: { start: { line: 0, character: 2 }, end: { line: 0, character: 6 } },
            severity: 2,
            code: 'bad-word',
            source: 'wiretrue',
            message: 'BAD2 is bad',
            data: { key: 'bad-word:BAD2' },
            relatedInformation: [
              {
                message: 'Declared here',
                location: {
                  uri: client.uri('hardware.jsonc'),
                  range: { start, end: { line: 0, character: 1 } },
                },
              },
            ],
          },
        ],
      },
      {
        uri: client.uri('hardware.jsonc'),
        diagnostics: [expect.objectContaining({ message: 'BAD1 is bad' })],
      },
    ]);
  });

  test('a burst of changes is one analysis, of the last version', async () => {
    client.write('hardware.jsonc', '{}');
    await client.open('a.ino', '');
    await client.tick();
    for (let version = 2; version <= 21; version += 1) {
      await client.change('a.ino', version, [insert(0, 0, 'BAD ')]);
    }
    await client.settle();
    expect(client.waiting()).toBe(1);
    await client.tick();
    expect(client.ledger.inputs).toHaveLength(2);
    expect(client.published.at(-1)).toMatchObject({ uri: client.uri('a.ino'), version: 21 });
    expect(client.published.at(-1)?.diagnostics).toHaveLength(20);
  });

  test('a list that did not change is not sent again; an open document without findings gets an empty one', async () => {
    client.write('hardware.jsonc', '{ BAD }');
    await client.open('a.ino', 'fine');
    await client.tick();
    expect(client.shown('a.ino')).toEqual([]);
    const before = client.published.length;
    await client.change('a.ino', 2, [insert(0, 4, ' still')]);
    await client.tick();
    expect(client.published).toHaveLength(before);
    await client.change('a.ino', 3, [insert(0, 0, 'BAD')]);
    await client.tick();
    expect(client.published.slice(before).map(({ uri }) => uri)).toEqual([client.uri('a.ino')]);
  });

  test('findings are taken back: cured, manifest gone, last document closed', async () => {
    client.write('hardware.jsonc', 'BAD1');
    await client.open('a.ino', 'BAD2');
    await client.tick();
    await client.change('a.ino', 2, [{ text: '' }]);
    await client.tick();
    expect(client.shown('a.ino')).toEqual([]);
    expect(client.shown('hardware.jsonc')).toEqual(['BAD1 is bad']);
    rmSync(join(client.folder, 'hardware.jsonc'));
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: client.uri('hardware.jsonc'), type: FileChangeType.Deleted }],
    });
    await client.tick();
    expect(client.shown('hardware.jsonc')).toEqual([]);
    client.write('hardware.jsonc', 'BAD1 BAD3');
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: client.uri('hardware.jsonc'), type: FileChangeType.Created }],
    });
    await client.tick();
    expect(client.shown('hardware.jsonc')).toEqual(['BAD1 is bad', 'BAD3 is bad']);
    await client.close('a.ino');
    await client.tick();
    expect(client.shown('hardware.jsonc')).toEqual([]);
  });

  test('a folder without a manifest gets no word', async () => {
    await client.open('a.ino', 'BAD');
    await client.tick();
    expect(client.published).toEqual([]);
    expect(client.ledger.inputs).toEqual([]);
  });

  test('a manifest that was never saved counts', async () => {
    await client.open('a.ino', 'BAD');
    await client.open('hardware.jsonc', '{}');
    await client.tick();
    expect(client.shown('a.ino')).toEqual(['BAD is bad']);
  });

  test('a closed file that changed on disk is seen at the next change, watched or not', async () => {
    await reconnect({ ...able, workspace: {} });
    client.write('hardware.jsonc', '{}');
    client.write('b.h', 'BAD1');
    await client.open('a.ino', '#include "b.h"');
    await client.tick();
    expect(client.shown('b.h')).toEqual(['BAD1 is bad']);
    client.write('b.h', 'BAD1 and BAD2');
    await client.change('a.ino', 2, [insert(0, 0, ' ')]);
    await client.tick();
    expect(client.shown('b.h')).toEqual(['BAD1 is bad', 'BAD2 is bad']);
  });

  test('the text of an open document wins; when it closes unsaved the disk counts again', async () => {
    client.write('hardware.jsonc', 'BAD1');
    await client.open('a.ino', '');
    await client.open('hardware.jsonc', 'BAD2', 4);
    await client.tick();
    expect(client.shown('hardware.jsonc')).toEqual(['BAD2 is bad']);
    await client.close('hardware.jsonc');
    await client.tick();
    expect(client.published.at(-1)).toMatchObject({ uri: client.uri('hardware.jsonc') });
    expect(client.published.at(-1)).not.toHaveProperty('version');
    expect(client.shown('hardware.jsonc')).toEqual(['BAD1 is bad']);
  });

  test('sources come in reading order, the sketch named like its folder first', async () => {
    client.write('hardware.jsonc', '{}');
    const main = `${client.folder.slice(client.folder.lastIndexOf('/') + 1)}.ino`;
    for (const name of ['z.h', 'b.cpp', 'b.ino', 'notes.txt']) {
      client.write(name, '');
    }
    client.write(main, '');
    await client.open('a.ino', '#include "z.h"');
    await client.tick();
    const names = client.ledger.inputs[0]?.sources.map(({ file }) => file.slice(client.folder.length + 1));
    expect(names).toEqual([main, 'a.ino', 'b.ino', 'b.cpp', 'z.h']);
  });
});

test('findings link to their rule where the client names the pages', async () => {
  await reconnect(able, { rulePages: 'https://example.org/rules/' });
  client.write('hardware.jsonc', '{}');
  await client.open('a.ino', 'BAD');
  await client.tick();
  expect(client.published[0]?.diagnostics[0]?.codeDescription).toEqual({
    href: 'https://example.org/rules/bad-word',
  });
});

test('one file under two spellings of its URI is one document', async () => {
  client.write('hardware.jsonc', '{}');
  const uri = client.uri('a.ino').replace('a.ino', '%61.ino');
  await client.connection.sendNotification('textDocument/didOpen', {
    textDocument: { uri, languageId: 'cpp', version: 1, text: 'BAD' },
  });
  await client.tick();
  expect(client.published[0]?.uri).toBe(uri);
  expect(client.ledger.inputs[0]?.sources.map(({ file }) => file)).toEqual([`${client.folder}/a.ino`]);
});

describe('trees', () => {
  test('only what changed is parsed, open files from their old tree, and closed files keep none', async () => {
    client.write('hardware.jsonc', '{}');
    client.write('b.h', 'int b;');
    await client.open('a.ino', '\n#include "b.h"\n');
    await client.tick();
    expect(client.ledger.parsed).toHaveLength(2);
    expect(client.ledger.trees).toBe(1);
    for (let version = 2; version < 52; version += 1) {
      await client.change('a.ino', version, [insert(0, 0, 'x'), insert(0, 0, '\n')]);
      await client.tick();
    }
    expect(client.ledger.parsed).toHaveLength(2);
    expect(client.ledger.reparsed).toHaveLength(50);
    expect(client.ledger.trees).toBe(1);
    await client.change('a.ino', 52, [{ text: 'whole\n#include "b.h"' }]);
    await client.tick();
    expect(client.ledger.parsed).toHaveLength(3);
    await client.open('b.h', 'int b;');
    await client.tick();
    expect(client.ledger.trees).toBe(2);
    client.write('a.ino', '#include "b.h"');
    await client.close('a.ino');
    await client.tick();
    expect(client.ledger.trees).toBe(1);
    await client.close('b.h');
    await client.tick();
    expect(client.ledger.trees).toBe(0);
  });
});
