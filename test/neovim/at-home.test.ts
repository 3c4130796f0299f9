/** A second editor's own client goes from a bare sketch to a manifest, and finds its way about in it. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { root } from '../lsp/json-rpc';
import { requireOracle } from '../oracle/oracle';

interface Sitting {
  readonly failure?: string;
  readonly titles: readonly string[];
  readonly kinds: readonly string[];
  readonly hover: string;
}

const present = spawnSync('nvim', ['--version']).status === 0;
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'wiretrue nvim-'));
  writeFileSync(
    join(folder, 'a.ino'),
    '#include <ESP8266WiFi.h>\nconst int beacon = 5;\nvoid setup() { pinMode(beacon, OUTPUT); }\nvoid loop() { digitalWrite(beacon, HIGH); }\n',
  );
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('draft, completion, hover and rename', { timeout: 120_000 }, (context) => {
  requireOracle(context, 'nvim', present);
  const output = join(folder, '.sitting.json');
  const { stdout, stderr } = spawnSync(
    'nvim',
    ['--headless', '-u', 'NONE', '-i', 'NONE', '-n', '-S', join(root, 'test/neovim/at-home.lua')],
    {
      encoding: 'utf8',
      timeout: 60_000,
      env: {
        ...process.env,
        XDG_STATE_HOME: join(folder, '.state'),
        XDG_CACHE_HOME: join(folder, '.cache'),
        NODE: process.execPath,
        SERVER: join(root, 'server/dist/server.js'),
        FOLDER: folder,
        OUTPUT: output,
      },
    },
  );
  if (!existsSync(output)) throw new Error(`the editor wrote nothing: ${stdout}${stderr}`);
  const sitting = JSON.parse(readFileSync(output, 'utf8')) as Sitting;
  expect(sitting.failure).toBeUndefined();
  expect(sitting.titles).toEqual(['Draft hardware.jsonc for nodemcu-esp8266']);
  expect(sitting.kinds).toEqual(expect.arrayContaining(['led', 'servo', 'push-button']));
  expect(sitting.hover).toContain('**beacon** · LED');
  const manifest = readFileSync(join(folder, 'hardware.jsonc'), 'utf8');
  expect(manifest).toContain('"lantern": { "kind": "led" }, // guessed:');
  expect(manifest).toContain('"R1", "lantern", "GND');
  expect(manifest).not.toContain('"beacon":');
});
