// Packs the command line for npm: wiretrue-<version>.tgz in dist/, or in the folder that is named. The package is laid out
// in a folder of its own, by name, with a package.json of its own: everything but the parser is in the bundles, so the
// parser is all it depends on. It takes the WebAssembly one: the native module's package and the grammar's ask for two
// versions of each other, which an override settles here and which a package that is installed cannot settle for others.
import { spawnSync } from 'node:child_process';
import { cp, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = resolve(fileURLToPath(import.meta.url), '../../..');
const target = resolve(process.argv[2] ?? join(root, 'dist'));
const stage = join(target, 'npm');

/** Folders and files of the repository that are packed as they are. */
const own = [
  'README.md',
  'LICENSE',
  'CHANGELOG.md',
  'server/dist/cli.js',
  'server/dist/picture.js',
  'server/dist/server.js',
  'server/docs',
  'hardware-schemas',
];
const parsers = ['tree-sitter-cpp', 'web-tree-sitter'];
const keys = ['name', 'version', 'description', 'license', 'bin'];

const manifest = JSON.parse(await readFile(join(root, 'package.json'), 'utf8'));
await rm(stage, { recursive: true, force: true });
await mkdir(stage, { recursive: true });
for (const path of own) {
  await cp(join(root, path), join(stage, path), { recursive: true });
}
const packed = {
  ...Object.fromEntries(keys.map((key) => [key, manifest[key]])),
  engines: { node: manifest.engines.node },
  files: own,
  dependencies: Object.fromEntries(parsers.map((name) => [name, manifest.dependencies[name]])),
};
await writeFile(join(stage, 'package.json'), `${JSON.stringify(packed, null, 2)}\n`);
const { status } = spawnSync('npm', ['pack', '--silent', '--pack-destination', target], {
  cwd: stage,
  stdio: 'inherit',
  shell: process.platform === 'win32',
});
await rm(stage, { recursive: true, force: true });
if (status !== 0) {
  throw new Error(`npm pack ended with ${status}`);
}
