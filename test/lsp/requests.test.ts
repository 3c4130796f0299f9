/** What the server answers: to clients that can everything and to those that can little, and when something breaks. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  type ClientCapabilities,
  type CodeAction,
  type Hover,
  type Location,
  LSPErrorCodes,
} from 'vscode-languageserver/node';
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
    expect(capabilities.codeActionProvider).toEqual({
      codeActionKinds: ['quickfix', 'refactor.rewrite'],
      resolveProvider: true,
    });
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
