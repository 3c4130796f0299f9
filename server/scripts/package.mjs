// Packs the extension: dist/wiretrue-<version>.vsix. What goes in is laid out in a folder of its own first, by name, so
// that nothing of the desk comes along, and the parsers' packages with their prebuilt binaries for every system, so that
// one file serves them all. The server takes the WebAssembly that is packed beside them, and a binary where that fails.
import { spawnSync } from 'node:child_process';
import { cp, mkdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = resolve(fileURLToPath(import.meta.url), '../../..');
const stage = join(root, 'dist/stage');

/** Folders and files of the repository that are packed as they are. */
const own = [
  'README.md',
  'LICENSE',
  'CHANGELOG.md',
  'client/dist/extension.js',
  'client/walkthrough',
  'server/dist/server.js',
  'server/dist/cli.js',
  'server/dist/picture.js',
  'server/docs',
  'hardware-schemas',
];

/** Of the packages that are not bundled, what they need at run time. */
const packages = {
  'tree-sitter': ['package.json', 'LICENSE', 'index.js', 'prebuilds'],
  'tree-sitter-cpp': [
    'package.json',
    'LICENSE',
    'bindings/node/index.js',
    'prebuilds',
    'tree-sitter-cpp.wasm',
  ],
  'node-gyp-build': ['package.json', 'LICENSE', 'index.js', 'node-gyp-build.js'],
  'web-tree-sitter': ['package.json', 'LICENSE', 'web-tree-sitter.cjs', 'web-tree-sitter.wasm'],
};

/** Keys of package.json that an editor reads. */
const manifestKeys = [
  'name',
  'displayName',
  'description',
  'version',
  'publisher',
  'license',
  'engines',
  'categories',
  'keywords',
  'icon',
  'main',
  'activationEvents',
  'contributes',
  'capabilities',
];

// Packages of earlier versions go too: dist/ holds the one that the sources make.
await rm(join(root, 'dist'), { recursive: true, force: true });
await mkdir(stage, { recursive: true });
for (const path of own) {
  await copy(join(root, path), join(stage, path));
}
for (const [name, paths] of Object.entries(packages)) {
  for (const path of paths) {
    await copy(join(root, 'node_modules', name, path), join(stage, 'server/node_modules', name, path));
  }
}
const manifest = JSON.parse(await readFile(join(root, 'package.json'), 'utf8'));
const packed = Object.fromEntries(
  manifestKeys.filter((key) => key in manifest).map((key) => [key, manifest[key]]),
);
await writeFile(join(stage, 'package.json'), `${JSON.stringify(packed, null, 2)}\n`);
await copy(join(root, '.vscodeignore'), join(stage, '.vscodeignore'));

const target = join(root, 'dist', `wiretrue-${manifest.version}.vsix`);
const vsce = join(root, 'node_modules/@vscode/vsce/vsce');
// The packages lie below server/, where vsce would not look for them: they go in as plain files.
const options = ['--no-dependencies', '--allow-missing-repository', '--no-rewrite-relative-links'];
const { status } = spawnSync(process.execPath, [vsce, 'package', ...options, '--out', target], {
  cwd: stage,
  stdio: 'inherit',
});
if (status !== 0) {
  throw new Error(`vsce ended with ${status}`);
}
console.log(`${target}: ${((await stat(target)).size / 1024 / 1024).toFixed(1)} MB`);

async function copy(from, to) {
  try {
    await stat(from);
  } catch {
    throw new Error(`${from} is missing, so the package would be broken; did the build run?`);
  }
  await cp(from, to, { recursive: true });
}
