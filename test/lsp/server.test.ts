/** The server over in-memory streams: order, versions, stale answers, and what is published when. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  type ClientCapabilities,
  type CodeAction,
  FileChangeType,
  type Hover,
  type Location,
  LSPErrorCodes,
} from 'vscode-languageserver/node';
import { able, connect, type TestClient } from './test-client';

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
const insert = (line: number, character: number, text: string) => ({
  range: { start: { line, character }, end: { line, character } },
  text,
});

function actionsAt(name: string, line: number, character: number, only?: string[]): Promise<CodeAction[]> {
  const place = { line, character };
  return client.connection.sendRequest('textDocument/codeAction', {
    textDocument: { uri: client.uri(name) },
    range: { start: place, end: place },
    context: { diagnostics: [], ...(only === undefined ? {} : { only }) },
  });
}

const resolve = (action: CodeAction | undefined): Promise<CodeAction> =>
  client.connection.sendRequest('codeAction/resolve', action);

describe('what the server promises', () => {
  test('UTF-16, incremental changes, and edits later where the client can', async () => {
    const { capabilities } = client.initialized;
    expect(capabilities.positionEncoding).toBe('utf-16');
    expect(capabilities.textDocumentSync).toEqual({ openClose: true, change: 2 });
    expect(capabilities.codeActionProvider).toEqual({ codeActionKinds: ['quickfix'], resolveProvider: true });
    expect(capabilities).not.toHaveProperty('diagnosticProvider');
    await reconnect({});
    expect(client.initialized.capabilities.codeActionProvider).toMatchObject({ resolveProvider: false });
  });

  test('files are watched only through a client that can', async () => {
    await client.settle();
    expect(client.registered).toHaveLength(1);
    await reconnect({});
    await client.settle();
    expect(client.registered).toEqual([]);
  });

  test('the log says which parser engine runs', async () => {
    await client.settle();
    expect(client.logged).toContain('Checking with the wasm parser.');
  });
});

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
    await client.open('a.ino', '');
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
    await client.open('a.ino', '');
    await client.tick();
    const names = client.ledger.inputs[0]?.sources.map(({ file }) => file.slice(client.folder.length + 1));
    expect(names).toEqual([main, 'a.ino', 'b.ino', 'b.cpp', 'z.h']);
  });
});

describe('requests', () => {
  test('a request that overtakes the scheduled analysis is answered for the newest text', async () => {
    client.write('hardware.jsonc', '{}');
    await client.open('a.ino', 'fine');
    await client.tick();
    await client.change('a.ino', 2, [insert(0, 4, '\r\n🙂 BAD')]);
    const hover: Hover | null = await client.connection.sendRequest('textDocument/hover', {
      textDocument: { uri: client.uri('a.ino') },
      position: { line: 1, character: 4 },
    });
    expect(hover).toEqual({
      contents: { kind: 'markdown', value: '**BAD is bad**, see `hardware.jsonc`' },
      range: { start: { line: 1, character: 3 }, end: { line: 1, character: 6 } },
    });
    expect(client.published.at(-1)).toMatchObject({ uri: client.uri('a.ino'), version: 2 });
    await client.tick();
    expect(client.ledger.inputs).toHaveLength(2);
  });

  test('definitions lead into closed files', async () => {
    client.write('hardware.jsonc', '{}');
    await client.open('a.ino', 'x');
    const found: Location[] = await client.connection.sendRequest('textDocument/definition', {
      textDocument: { uri: client.uri('a.ino') },
      position: start,
    });
    expect(found.map(({ uri }) => uri)).toEqual([client.uri('hardware.jsonc'), client.uri('a.ino')]);
  });

  test('fixes come without edits, and with versioned ones when chosen; a closed file has no version', async () => {
    client.write('hardware.jsonc', '{}');
    await client.open('a.ino', 'x BAD', 3);
    const actions = await actionsAt('a.ino', 0, 3);
    expect(actions.map(({ title, isPreferred, kind }) => ({ title, isPreferred, kind }))).toEqual([
      { title: 'Solder BAD anew', isPreferred: undefined, kind: 'quickfix' },
      { title: 'Take BAD out', isPreferred: true, kind: 'quickfix' },
    ]);
    expect(actions.every(({ edit }) => edit === undefined)).toBe(true);
    await client.change('a.ino', 4, [insert(0, 0, '  ')]);
    const { edit } = await resolve(actions[1]);
    expect(edit).toEqual({
      documentChanges: [
        {
          textDocument: { uri: client.uri('a.ino'), version: 4 },
          edits: [
            { range: { start: { line: 0, character: 4 }, end: { line: 0, character: 7 } }, newText: '' },
          ],
        },
        {
          textDocument: { uri: client.uri('hardware.jsonc'), version: null },
          edits: [{ range: { start, end: start }, newText: '// no BAD\n' }],
        },
      ],
    });
  });

  test('a fix whose finding is gone is refused, not guessed', async () => {
    client.write('hardware.jsonc', '{}');
    await client.open('a.ino', 'x BAD');
    const [action] = await actionsAt('a.ino', 0, 3);
    await client.change('a.ino', 2, [{ text: 'x' }]);
    await expect(resolve(action)).rejects.toMatchObject({ code: LSPErrorCodes.ContentModified });
  });

  test('a fix is linked to the diagnostic it cures, and found by its key wherever the selection is', async () => {
    client.write('hardware.jsonc', '{}');
    await client.open('a.ino', 'BAD1 BAD2 BAD3');
    await client.tick();
    const shown = client.published.find(({ uri }) => uri === client.uri('a.ino'))?.diagnostics ?? [];
    const actions: CodeAction[] = await client.connection.sendRequest('textDocument/codeAction', {
      textDocument: { uri: client.uri('a.ino') },
      range: { start, end: start },
      context: { diagnostics: [shown[2]] },
    });
    const cured = actions.map(({ title, diagnostics }) => [
      title,
      diagnostics?.map(({ message }) => message),
    ]);
    expect(cured).toEqual([
      ['Solder BAD1 anew', undefined],
      ['Take BAD1 out', undefined],
      ['Solder BAD3 anew', ['BAD3 is bad']],
      ['Take BAD3 out', ['BAD3 is bad']],
    ]);
  });

  test('fixes are offered only where quick fixes are asked for and something is wrong', async () => {
    client.write('hardware.jsonc', '{}');
    await client.open('a.ino', 'xx BAD');
    expect(await actionsAt('a.ino', 0, 0)).toEqual([]);
    expect(await actionsAt('a.ino', 0, 4, ['refactor'])).toEqual([]);
    expect(await actionsAt('a.ino', 0, 4, ['quickfix'])).toHaveLength(2);
  });
});

describe('a client that can little', () => {
  test('gets plain words, related places as lines, and whole unversioned edits', async () => {
    await reconnect({
      textDocument: {
        codeAction: {
          codeActionLiteralSupport: able.textDocument?.codeAction?.codeActionLiteralSupport ?? {
            codeActionKind: { valueSet: [] },
          },
        },
      },
    });
    client.write('hardware.jsonc', '{}');
    await client.open('a.ino', 'BAD');
    await client.tick();
    expect(client.shown('a.ino')).toEqual(['BAD is bad\nDeclared here (hardware.jsonc, line 1)']);
    const hover: Hover | null = await client.connection.sendRequest('textDocument/hover', {
      textDocument: { uri: client.uri('a.ino') },
      position: start,
    });
    expect(hover?.contents).toEqual({ kind: 'plaintext', value: 'BAD is bad, see hardware.jsonc' });
    const actions = await actionsAt('a.ino', 0, 0);
    expect(actions[1]?.edit?.changes).toEqual({
      [client.uri('a.ino')]: [{ range: { start, end: { line: 0, character: 3 } }, newText: '' }],
      [client.uri('hardware.jsonc')]: [{ range: { start, end: start }, newText: '// no BAD\n' }],
    });
    expect(actions[1]).not.toHaveProperty('isPreferred');
  });

  test('that knows no code actions as objects gets none', async () => {
    await reconnect({});
    client.write('hardware.jsonc', '{}');
    await client.open('a.ino', 'BAD');
    expect(await actionsAt('a.ino', 0, 0)).toEqual([]);
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

test('an analysis that breaks is logged, answers nothing, and the next one works', async () => {
  client.write('hardware.jsonc', '{}');
  await client.open('a.ino', 'BAD1');
  await client.tick();
  const before = client.published.length;
  client.ledger.fault = new Error('the sum did not add up');
  await client.change('a.ino', 2, [insert(0, 0, 'BAD2 ')]);
  await client.tick();
  expect(client.published).toHaveLength(before);
  expect(client.logged.join('\n')).toContain('the sum did not add up');
  expect(await actionsAt('a.ino', 0, 1)).toEqual([]);
  client.ledger.fault = undefined;
  await client.change('a.ino', 3, [insert(0, 0, ' ')]);
  await client.tick();
  expect(client.shown('a.ino')).toEqual(['BAD2 is bad', 'BAD1 is bad']);
});

test('a rule that throws is logged once and by name', async () => {
  client.write('hardware.jsonc', '{}');
  client.ledger.ruleFaults = [{ rule: 'odd-rule', error: new Error('divided by nothing') }];
  await client.open('a.ino', 'BAD');
  await client.tick();
  await client.change('a.ino', 2, [insert(0, 0, ' ')]);
  await client.tick();
  expect(client.shown('a.ino')).toEqual(['BAD is bad']);
  const told = client.logged.filter(
    (text) => text.includes('odd-rule') && text.includes('divided by nothing'),
  );
  expect(told).toHaveLength(1);
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
    await client.open('a.ino', 'int a;');
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
    await client.change('a.ino', 52, [{ text: 'whole' }]);
    await client.tick();
    expect(client.ledger.parsed).toHaveLength(3);
    await client.open('b.h', 'int b;');
    await client.tick();
    expect(client.ledger.trees).toBe(2);
    await client.close('a.ino');
    await client.tick();
    expect(client.ledger.trees).toBe(1);
    await client.close('b.h');
    await client.tick();
    expect(client.ledger.trees).toBe(0);
  });
});
