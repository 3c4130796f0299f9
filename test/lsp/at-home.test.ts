/** The server over the real analysis: drafts, completion, renames and the rest, as an editor asks for them. */
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type {
  CodeAction,
  CodeLens,
  ColorInformation,
  CompletionItem,
  DocumentSymbol,
  InlayHint,
  Location,
  TextDocumentEdit,
  WorkspaceEdit,
} from 'vscode-languageserver/node';
import { uriOfPath } from '../../server/src/lsp/uris';
import { RawServer } from './json-rpc';
import { able } from './test-client';

const sketch = `#include <ESP8266WiFi.h>
const int beacon = 5;
void setup() { pinMode(beacon, OUTPUT); }
void loop() { digitalWrite(beacon, HIGH); }
`;
const manifest = `{
  "board": "nodemcu-esp8266",
  "stock": { "resistors": ["330"] },
  "parts": { "beacon": { "kind": "led" }, "R1": { "kind": "resistor", "value": "330" } },
  "wires": [{ "path": ["D1", "R1", "beacon", "GND"], "colours": ["red", "red", "black"] }]
}
`;

let folder = '';
let server: RawServer;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'wiretrue home ä-'));
  server = new RawServer();
  await server.request('initialize', {
    processId: null,
    rootUri: null,
    capabilities: {
      ...able,
      workspace: {
        ...able.workspace,
        workspaceEdit: { documentChanges: true, resourceOperations: ['create'] },
      },
    },
  });
  server.notify('initialized', {});
});
afterEach(() => {
  server.kill();
  rmSync(folder, { recursive: true, force: true });
});

const uri = (name: string) => uriOfPath(`${folder}/${name}`);
const document = (name: string) => ({ textDocument: { uri: uri(name) } });
const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
const actions = (name: string, triggerKind: number) =>
  server.request<CodeAction[]>('textDocument/codeAction', {
    ...document(name),
    range,
    context: { diagnostics: [], triggerKind },
  });

function writtenBy(edit: WorkspaceEdit | undefined): string | undefined {
  const last = edit?.documentChanges?.at(-1) as TextDocumentEdit | undefined;
  return last?.edits.map((each) => ('newText' in each ? each.newText : '')).join('');
}

test('a bare sketch gets its manifest by a code action, made when it is chosen and never over a file', async () => {
  server.open(uri('a.ino'), sketch);
  const [offered] = await actions('a.ino', 2);
  expect(offered).toMatchObject({ title: 'Draft hardware.jsonc from this sketch', kind: 'refactor.rewrite' });
  expect(offered).not.toHaveProperty('edit');
  const chosen = await server.request<CodeAction>('codeAction/resolve', offered);
  expect(chosen.edit?.documentChanges?.[0]).toEqual({
    kind: 'create',
    uri: uri('hardware.jsonc'),
    options: { overwrite: false, ignoreIfExists: false },
  });
  expect(writtenBy(chosen.edit)).toContain('"beacon": { "kind": "led" }, // guessed:');
  expect((await actions('a.ino', 1))[0]?.title).toBe('Draft hardware.jsonc for nodemcu-esp8266');
  expect(existsSync(join(folder, 'hardware.jsonc'))).toBe(false);
});

test('a sketch that does not say its board is asked about, and the answer is drafted for', async () => {
  server.open(uri('a.ino'), sketch.replace(/^.*\n/, ''));
  const asked = await server.request<{ ok: boolean; boards: { id: string }[] }>('wiretrue/draft', {
    uri: uri('a.ino'),
  });
  expect(asked).toMatchObject({ ok: false });
  expect(asked.boards[0]?.id).toBe('uno-r3');
  const made = await server.request<{ edit: WorkspaceEdit }>('wiretrue/draft', {
    uri: uri('a.ino'),
    board: 'nano-v3',
  });
  expect(writtenBy(made.edit)).toContain('"board": "nano-v3"');
  expect((await actions('a.ino', 1)).map(({ title }) => title)).toHaveLength(4);
});

test('what an editor asks about a whole build', async () => {
  writeFileSync(join(folder, 'hardware.jsonc'), manifest);
  server.open(uri('a.ino'), sketch);
  server.open(uri('hardware.jsonc'), manifest);
  const inManifest = (word: string, more = 1) => {
    const before = manifest.slice(0, manifest.indexOf(word) + more).split('\n');
    return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
  };
  const items = await server.request<CompletionItem[]>('textDocument/completion', {
    ...document('hardware.jsonc'),
    position: inManifest('"led"'),
  });
  expect(items.find(({ label }) => label === 'servo')).toMatchObject({ textEdit: { newText: '"servo"' } });
  expect(
    await server.request('textDocument/prepareRename', {
      ...document('hardware.jsonc'),
      position: inManifest('"beacon"', 2),
    }),
  ).toEqual({
    start: inManifest('"beacon"'),
    end: inManifest('"beacon"', 7),
  });
  const renamed = await server.request<WorkspaceEdit>('textDocument/rename', {
    ...document('hardware.jsonc'),
    position: inManifest('"beacon"', 2),
    newName: 'lantern',
  });
  const [change] = (renamed.documentChanges ?? []) as TextDocumentEdit[];
  expect(change?.edits).toHaveLength(2);
  await expect(
    server.request('textDocument/rename', {
      ...document('hardware.jsonc'),
      position: inManifest('"beacon"', 2),
      newName: 'R1',
    }),
  ).rejects.toThrow('There is a part "R1" already.');
  const symbols = await server.request<DocumentSymbol[]>(
    'textDocument/documentSymbol',
    document('hardware.jsonc'),
  );
  expect(symbols.map(({ name }) => name)).toEqual(['parts', 'wires']);
  const colours = await server.request<ColorInformation[]>(
    'textDocument/documentColor',
    document('hardware.jsonc'),
  );
  expect(colours).toHaveLength(3);
  const lenses = await server.request<CodeLens[]>('textDocument/codeLens', document('hardware.jsonc'));
  expect(lenses[0]?.command?.title).toMatch(/^D1 · 2 uses in the sketch · at most /);
  const hints = await server.request<InlayHint[]>('textDocument/inlayHint', {
    ...document('a.ino'),
    range: { start: range.start, end: { line: 9, character: 0 } },
  });
  expect(hints.map(({ position }) => position.line)).toEqual([2, 3]);
  const references = await server.request<Location[]>('textDocument/references', {
    ...document('a.ino'),
    position: { line: 3, character: 28 },
    context: { includeDeclaration: true },
  });
  expect(references.map((each) => each.uri)).toEqual([uri('a.ino'), uri('a.ino'), uri('hardware.jsonc')]);
  const pins = await server.request<{ board: string; pins: { pin: string }[] }>('wiretrue/pins', {
    uri: uri('a.ino'),
  });
  expect(pins.pins[0]?.pin).toBe('D1');
});

test('severities of the settings count where the manifest says nothing of the rule', async () => {
  writeFileSync(join(folder, 'hardware.jsonc'), '{ "board": "nodemcu-esp8266" }');
  server.open(uri('a.ino'), sketch);
  expect((await server.findings(uri('a.ino')))?.map(({ code, severity }) => [code, severity])).toEqual([
    ['unwired-pin', 2],
  ]);
  const set = (severity: string) =>
    server.notify('workspace/didChangeConfiguration', {
      settings: { wiretrue: { severity: { 'unwired-pin': severity } } },
    });
  set('error');
  await server.until(() => server.published.get(uri('a.ino'))?.diagnostics[0]?.severity === 1, 'an error');
  set('off');
  await server.until(() => server.published.get(uri('a.ino'))?.diagnostics.length === 0, 'nothing');
});
