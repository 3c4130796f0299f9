/** Sketches of more than one folder in the server: files below src, headers that sketches share, and their trees. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { FileChangeType, type Hover } from 'vscode-languageserver/node';
import { able, connect, insert, type TestClient } from './test-client';

let client: TestClient;
beforeEach(async () => {
  client = await connect(able);
});
afterEach(() => client.dispose());

function put(name: string, text: string): void {
  mkdirSync(dirname(join(client.folder, name)), { recursive: true });
  writeFileSync(join(client.folder, name), text);
}

async function changedOnDisk(name: string, type: FileChangeType): Promise<void> {
  await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
    changes: [{ uri: client.uri(name), type }],
  });
}

const lastSources = () =>
  client.ledger.inputs.at(-1)?.sources.map(({ file }) => file.slice(client.folder.length + 1));

test('a file below src belongs to the sketch above it: findings, hovers, changes, and one run for both', async () => {
  put('horn/hardware.jsonc', '{}');
  put('horn/horn.ino', '#include "src/lamp/lamp.h"\n');
  put('horn/src/lamp/lamp.h', 'BAD1');
  await client.open('horn/src/lamp/lamp.cpp', '#include "lamp.h"\nBAD2');
  await client.tick();
  expect(lastSources()).toEqual(['horn/horn.ino', 'horn/src/lamp/lamp.cpp', 'horn/src/lamp/lamp.h']);
  expect(client.shown('horn/src/lamp/lamp.cpp')).toEqual(['BAD2 is bad']);
  expect(client.shown('horn/src/lamp/lamp.h')).toEqual(['BAD1 is bad']);
  const hover: Hover | null = await client.connection.sendRequest('textDocument/hover', {
    textDocument: { uri: client.uri('horn/src/lamp/lamp.cpp') },
    position: { line: 1, character: 1 },
  });
  expect(hover?.contents).toMatchObject({ value: expect.stringContaining('BAD2') });
  await client.open('horn/horn.ino', '#include "src/lamp/lamp.h"\n');
  await client.tick();
  const before = client.ledger.inputs.length;
  await client.change('horn/src/lamp/lamp.cpp', 2, [insert(1, 0, 'BAD3 ')]);
  await client.tick();
  expect(client.ledger.inputs).toHaveLength(before + 1);
  expect(client.shown('horn/src/lamp/lamp.cpp')).toEqual(['BAD3 is bad', 'BAD2 is bad']);
  expect(client.ledger.reparsed).toEqual([join(client.folder, 'horn/src/lamp/lamp.cpp')]);
  await client.close('horn/horn.ino');
  await client.close('horn/src/lamp/lamp.cpp');
  await client.tick();
  expect(client.ledger.trees).toBe(0);
  expect(client.shown('horn/src/lamp/lamp.h')).toEqual([]);
});

test('a manifest that comes later makes an open file below src part of its sketch', async () => {
  put('horn/horn.ino', '');
  await client.open('horn/src/lamp.cpp', 'BAD');
  await client.tick();
  expect(client.published).toEqual([]);
  put('horn/hardware.jsonc', '{}');
  await changedOnDisk('horn/hardware.jsonc', FileChangeType.Created);
  await client.tick();
  expect(client.shown('horn/src/lamp.cpp')).toEqual(['BAD is bad']);
});

test('a header counts from the moment it is included, and a spare one never', async () => {
  put('horn/hardware.jsonc', '{}');
  put('horn/config.h', 'BAD1');
  put('horn/config.example.h', 'BAD2');
  await client.open('horn/horn.ino', '\n');
  await client.tick();
  expect(lastSources()).toEqual(['horn/horn.ino']);
  await client.change('horn/horn.ino', 2, [insert(0, 0, '#include "config.h"')]);
  await client.tick();
  expect(lastSources()).toEqual(['horn/horn.ino', 'horn/config.h']);
  await client.change('horn/horn.ino', 3, [{ text: '#include "late.h"' }]);
  await client.tick();
  expect(lastSources()).toEqual(['horn/horn.ino']);
  expect(client.shown('horn/config.h')).toEqual([]);
  put('horn/late.h', 'BAD4');
  await changedOnDisk('horn/late.h', FileChangeType.Created);
  await client.tick();
  expect(client.shown('horn/late.h')).toEqual(['BAD4 is bad']);
});

test('a header outside the sketch is read below the workspace folder alone, and its open text wins', async () => {
  put('gate/hardware.jsonc', '{}');
  put('shared/pins.h', 'BAD1');
  await client.open('gate/gate.ino', '#include "../shared/pins.h"\n');
  await client.tick();
  // This client named no workspace folder.
  expect(lastSources()).toEqual(['gate/gate.ino']);
  const { folder } = client;
  client.dispose();
  client = await connect(able, undefined, (own) => [own]);
  expect(client.folder).not.toBe(folder);
  for (const sketch of ['gate', 'horn']) {
    put(`${sketch}/hardware.jsonc`, '{}');
  }
  put('shared/pins.h', 'BAD1');
  await client.open('gate/gate.ino', '#include "../shared/pins.h"\n');
  await client.open('horn/horn.ino', '#include "../shared/pins.h"\nBAD9');
  await client.tick();
  expect(lastSources()).toEqual(['horn/horn.ino', 'shared/pins.h']);
  expect(new Set(client.shown('shared/pins.h'))).toEqual(new Set(['BAD1 is bad']));
  await client.open('shared/pins.h', 'BAD1 BAD2');
  await client.tick();
  await client.change('shared/pins.h', 2, [insert(0, 0, 'BAD3 ')]);
  await client.tick();
  expect(new Set(client.shown('shared/pins.h'))).toEqual(
    new Set(['BAD3 is bad', 'BAD1 is bad', 'BAD2 is bad']),
  );
  // It belongs to neither sketch, so neither keeps a tree of it.
  expect(client.ledger.trees).toBe(2);
  const hover: Hover | null = await client.connection.sendRequest('textDocument/hover', {
    textDocument: { uri: client.uri('shared/pins.h') },
    position: { line: 0, character: 1 },
  });
  expect(hover?.contents).toMatchObject({ value: expect.stringContaining('BAD3') });
  // What one sketch still says of it stays when the other closes.
  await client.close('horn/horn.ino');
  await client.tick();
  expect(client.shown('shared/pins.h')).toHaveLength(3);
  await client.close('gate/gate.ino');
  await client.tick();
  expect(client.shown('shared/pins.h')).toEqual([]);
  expect(client.ledger.trees).toBe(0);
});

test('headers that include each other end, and are read once', async () => {
  put('horn/hardware.jsonc', '{}');
  put('horn/a.h', '#include "b.h"\n');
  put('horn/b.h', '#include "a.h"\n');
  await client.open('horn/horn.ino', '#include "a.h"\n');
  await client.tick();
  expect(lastSources()).toEqual(['horn/horn.ino', 'horn/a.h', 'horn/b.h']);
});
