/** The built server as an editor starts it, on real builds and on everything that is none. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { uriOfPath } from '../../server/src/lsp/uris';
import { RawServer, root } from './json-rpc';

const examples = join(root, 'hardware-schemas/examples');
const clean = join(examples, 'harbour-model');

let folder = '';
let server: RawServer;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'wiretrue-stdio-'));
  server = new RawServer();
  await server.initialize();
});
afterEach(() => {
  server.kill();
  rmSync(folder, { recursive: true, force: true });
});

const uri = (name: string) => uriOfPath(`${folder}/${name}`);
const change = (name: string, version: number, text: string) =>
  server.notify('textDocument/didChange', {
    textDocument: { uri: uri(name), version },
    contentChanges: [{ text }],
  });

test('a clean build has no finding; the server says what parses, and ends when it is told', async () => {
  cpSync(clean, folder, { recursive: true });
  server.open(uri('harbour-model.ino'), readFileSync(join(folder, 'harbour-model.ino'), 'utf8'));
  expect(await server.findings(uri('harbour-model.ino'))).toEqual([]);
  expect([...server.published.keys()]).toEqual([uri('harbour-model.ino')]);
  expect(server.logged.some((text) => /^Checking with the (native|wasm) parser\.$/.test(text))).toBe(true);
  expect(await server.stop()).toBe(0);
  expect(server.complaints).toBe('');
});

test('the command line starts the same server', async () => {
  const other = new RawServer(join(root, 'server/dist/cli.js'), ['serve', '--stdio']);
  try {
    expect(await other.initialize()).toMatchObject({ serverInfo: { name: 'wiretrue' } });
    expect(await other.stop()).toBe(0);
  } finally {
    other.kill();
  }
});

test('a server whose editor is gone ends by itself', async () => {
  server.hangUp();
  await expect(server.until(() => server.exit, 'its end')).resolves.toEqual({ code: 1 });
});

describe('whatever is in the files, the server lives and the next sound text is checked', () => {
  const sound = () => readFileSync(join(clean, 'hardware.jsonc'), 'utf8');
  const sketch = () => readFileSync(join(clean, 'harbour-model.ino'), 'utf8');
  const bytes = String.fromCharCode(...Array.from({ length: 4096 }, (_, index) => (index * 7919) % 65536));

  const manifests: readonly (readonly [string, () => string])[] = [
    ['empty', () => ''],
    ['half typed', () => sound().slice(0, 700)],
    ['an array', () => '[1, [2], {"parts": {}}]'],
    ['a number', () => '7'],
    ['null', () => 'null'],
    ['binary', () => bytes],
    [
      'wrong types everywhere',
      () => '{"format": "x", "board": 7, "parts": [], "wires": {"a": 1}, "stock": null}',
    ],
    ['nested 10,000 deep', () => '['.repeat(10_000)],
    ['5 MB in one line', () => `{"title": "${'x'.repeat(5_000_000)}"`],
    ['prototype names', () => '{"format":1,"board":"constructor","parts":{"__proto__":{"kind":"toString"}}}'],
  ];
  test.each(manifests)('manifest: %s', async (_, make) => {
    writeFileSync(join(folder, 'hardware.jsonc'), sound());
    server.open(uri('hardware.jsonc'), make());
    server.open(uri('a.ino'), sketch());
    await server.findings(uri('a.ino'));
    for (const character of [0, 3, 100]) {
      await server.request('textDocument/hover', {
        textDocument: { uri: uri('hardware.jsonc') },
        position: { line: 0, character },
      });
    }
    change('hardware.jsonc', 2, sound());
    expect(await server.findings(uri('hardware.jsonc'))).toEqual([]);
    expect(server.logged.filter((text) => /broke/.test(text))).toEqual([]);
  });

  const sketches: readonly (readonly [string, () => string])[] = [
    ['empty', () => ''],
    ['half typed', () => sketch().slice(0, 900)],
    ['binary', () => bytes],
    ['5 MB in one line', () => `int a[] = {${'1,'.repeat(2_500_000)}};`],
    ['unbalanced braces', () => 'void setup() {'.repeat(2000)],
    ['lone CR line ends', () => sketch().replaceAll('\n', '\r')],
  ];
  test.each(sketches)('sketch: %s', { timeout: 60_000 }, async (_, make) => {
    cpSync(join(clean, 'hardware.jsonc'), join(folder, 'hardware.jsonc'));
    server.open(uri('a.ino'), make());
    await server.findings(uri('a.ino'));
    change('a.ino', 2, sketch());
    expect(await server.findings(uri('a.ino'))).toEqual([]);
    expect(server.logged.filter((text) => /broke/.test(text))).toEqual([]);
  });

  test('a manifest typed key by key', { timeout: 60_000 }, async () => {
    const text = sound();
    server.open(uri('a.ino'), sketch());
    server.open(uri('hardware.jsonc'), '');
    let line = 0;
    let character = 0;
    for (let at = 0; at < text.length; at += 1) {
      const place = { line, character };
      const typed = text.charAt(at);
      server.notify('textDocument/didChange', {
        textDocument: { uri: uri('hardware.jsonc'), version: at + 2 },
        contentChanges: [{ range: { start: place, end: place }, text: typed }],
      });
      line += typed === '\n' ? 1 : 0;
      character = typed === '\n' ? 0 : character + 1;
      // An answer to each key: every prefix is analysed, no burst swallows it.
      await server.request('textDocument/hover', {
        textDocument: { uri: uri('hardware.jsonc') },
        position: place,
      });
    }
    expect(
      await server.request('textDocument/codeAction', {
        textDocument: { uri: uri('hardware.jsonc') },
        range: { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } },
        context: { diagnostics: [] },
      }),
    ).toEqual([]);
    expect(server.published.get(uri('hardware.jsonc'))?.diagnostics).toEqual([]);
    expect(server.published.get(uri('a.ino'))?.diagnostics).toEqual([]);
    expect(server.logged.filter((entry) => /broke/.test(entry))).toEqual([]);
  });
});
