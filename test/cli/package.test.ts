/** The packed command line: installed as anybody would install it, and run from there. */
import { spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { root } from '../fixture/bench';
import { CLI, EXAMPLES } from './program';

let base = '';
let installed = '';
const version = (JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }).version;

function call(command: string, args: readonly string[], cwd: string) {
  const { status, stdout, stderr } = spawnSync(command, args, {
    cwd,
    encoding: 'utf8',
    shell: process.platform === 'win32',
    env: { ...process.env, npm_config_update_notifier: 'false' },
    timeout: 170_000,
  });
  return { status, stdout, stderr };
}

beforeAll(() => {
  if (!existsSync(CLI)) {
    throw new Error('server/dist/cli.js is not built: run npm run build');
  }
  base = realpathSync(mkdtempSync(join(tmpdir(), 'package-test-')));
  const packed = call(process.execPath, [join(root, 'server/scripts/pack-cli.mjs'), base], root);
  expect(packed.status, packed.stderr).toBe(0);
  installed = join(base, 'project');
  mkdirSync(installed);
  writeFileSync(join(installed, 'package.json'), '{ "name": "project", "private": true }');
  const args = ['install', '--no-audit', '--no-fund', '--ignore-scripts', '--prefer-offline'];
  const put = call('npm', [...args, join(base, `wiretrue-${version}.tgz`)], installed);
  expect(put.status, put.stderr).toBe(0);
  cpSync(EXAMPLES, join(installed, 'examples'), { recursive: true });
}, 180_000);
afterAll(() => rmSync(base, { recursive: true, force: true }));

test('holds the bundles, the library and the pages, and nothing of the desk', () => {
  const folder = join(installed, 'node_modules/wiretrue');
  expect(readdirSync(folder).sort()).toEqual([
    'CHANGELOG.md',
    'LICENSE',
    'README.md',
    'hardware-schemas',
    'package.json',
    'server',
  ]);
  expect(readdirSync(join(folder, 'server')).sort()).toEqual(['dist', 'docs']);
  expect(readdirSync(join(folder, 'server/dist')).sort()).toEqual(['cli.js', 'picture.js', 'server.js']);
  expect(readdirSync(join(folder, 'hardware-schemas'))).toContain('check-report.schema.json');
});

test('npx checks, sizes and writes papers as the built program does, with the parser it brought along', () => {
  const npx = (...args: string[]) => call('npx', ['--no-install', 'wiretrue', ...args], installed);
  expect(npx('--version')).toMatchObject({ status: 0, stdout: `${version}\n` });
  for (const args of [
    ['check', 'examples'],
    ['check', '--format', 'json', 'examples'],
    ['uses', 'examples'],
    ['guide', 'examples/harbour-model'],
    ['boards', 'nano-v3'],
    ['size', 'wire', '--gauge', '24', '--length', '3m', '--current', '1A'],
  ]) {
    const { status, stdout } = npx(...args);
    const own = call(process.execPath, [CLI, ...args], installed);
    expect({ status, stdout }, args.join(' ')).toEqual({ status: own.status, stdout: own.stdout });
    expect(stdout).not.toBe('');
  }
}, 120_000);
