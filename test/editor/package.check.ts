/**
 * The package as installed: its server must run with the parsers that lie in it and with nothing of the repository's,
 * by WebAssembly, and with the same findings natively where that is missing and a prebuilt binary loads.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { uriOfPath } from '../../server/src/lsp/uris';
import { RawServer, root } from '../lsp/json-rpc';
import { requireOracle } from '../oracle/oracle';
import { type Installed, installPackage } from './installed';
import { setUp } from './setup.mjs';

let missing = '';
let installed: Installed | undefined;

beforeAll(() => {
  try {
    setUp();
  } catch (error) {
    missing = `the workbench (${String(error)})`;
    return;
  }
  installed = installPackage();
});
afterAll(() => {
  if (installed !== undefined) {
    rmSync(installed.home, { recursive: true, force: true });
  }
});

async function checkFaulty(
  extension: string,
): Promise<{ readonly engine: string; readonly findings: unknown }> {
  const server = new RawServer(join(extension, 'server/dist/server.js'));
  try {
    await server.initialize();
    const folder = join(root, 'hardware-schemas/examples/harbour-faulty');
    const sketch = uriOfPath(join(folder, 'harbour-faulty.ino'));
    server.open(sketch, readFileSync(join(folder, 'harbour-faulty.ino'), 'utf8'));
    await server.findings(sketch);
    const engine = server.logged.join('\n').match(/Checking with the (\w+) parser/)?.[1] ?? 'none';
    return { engine, findings: [...server.published].map(([uri, { diagnostics }]) => [uri, diagnostics]) };
  } finally {
    server.kill();
  }
}

test('the installed command line checks and draws too', (context) => {
  requireOracle(context, missing, missing === '');
  if (installed === undefined) {
    throw new Error('the package was not installed');
  }
  const cli = join(installed.extension, 'server/dist/cli.js');
  const clean = join(root, 'hardware-schemas/examples/harbour-model');
  const run = (command: string) => spawnSync(process.execPath, [cli, command, clean], { encoding: 'utf8' });
  expect(run('check')).toMatchObject({ status: 0, stderr: '' });
  expect(run('picture')).toMatchObject({ status: 0, stdout: expect.stringContaining('data-part="beacon"') });
});

test('the installed server runs by WebAssembly, and natively where that is missing', async (context) => {
  requireOracle(context, missing, missing === '');
  if (installed === undefined) {
    throw new Error('the package was not installed');
  }
  const { extension } = installed;
  const first = await checkFaulty(extension);
  expect(first.engine).toBe('wasm');
  expect(JSON.stringify(first.findings)).toContain('lamp-unlimited');
  rmSync(join(extension, 'server/node_modules/web-tree-sitter'), { recursive: true });
  const script = `require(${JSON.stringify(join(extension, 'server/node_modules/tree-sitter'))})`;
  const native = spawnSync(process.execPath, ['-e', script], { encoding: 'utf8' });
  console.log(`the native parser: ${native.status === 0 ? 'loads' : native.stderr.match(/Error: .*/)?.[0]}`);
  if (native.status === 0) {
    const second = await checkFaulty(extension);
    expect(second.engine).toBe('native');
    expect(second.findings).toEqual(first.findings);
  }
});
