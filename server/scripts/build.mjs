// Bundles the three programs of the product: the extension, the language server and the command line; and the picture with
// its laying-out library, which the command line loads when somebody wants one. With --watch it
// stays and bundles again after every change. The parsers stay outside the bundles: they load native code and WebAssembly
// from their own packages.
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, context } from 'esbuild';

const root = resolve(fileURLToPath(import.meta.url), '../../..');
const watch = process.argv.includes('--watch');

const common = {
  absWorkingDir: root,
  bundle: true,
  platform: 'node',
  // jsonc-parser's CommonJS form loads its pieces in a way that no bundler can follow.
  mainFields: ['module', 'main'],
  target: 'node20',
  format: 'cjs',
  sourcemap: true,
  sourcesContent: false,
  logLevel: 'info',
};

// A CommonJS bundle has no import.meta; what reads its URL gets that of the bundle.
const importMeta = {
  define: { 'import.meta.url': 'bundleUrl' },
  banner: { js: "const bundleUrl = require('node:url').pathToFileURL(__filename).href;" },
};

const parsers = ['tree-sitter', 'tree-sitter-cpp', 'web-tree-sitter'];

/** The picture stays a bundle of its own: it is larger than all else, and most runs draw none. */
const apart = {
  name: 'picture-apart',
  setup({ onResolve }) {
    onResolve({ filter: /^(\.\.\/)+picture$/ }, () => ({ path: './picture.js', external: true }));
  },
};

const programs = [
  {
    ...common,
    ...importMeta,
    entryPoints: ['server/src/picture/index.ts'],
    outfile: 'server/dist/picture.js',
    minify: true,
    external: parsers,
  },
  {
    ...common,
    entryPoints: ['client/src/extension.ts'],
    outfile: 'client/dist/extension.js',
    external: ['vscode'],
  },
  {
    ...common,
    ...importMeta,
    entryPoints: ['server/src/lsp/run.ts'],
    outfile: 'server/dist/server.js',
    external: parsers,
  },
  {
    ...common,
    ...importMeta,
    // esbuild keeps the entry's own #! line in front of the banner.
    entryPoints: ['server/src/cli/main.ts'],
    outfile: 'server/dist/cli.js',
    external: parsers,
    plugins: [apart],
  },
];

for (const options of programs) {
  const [entry] = options.entryPoints;
  if (!existsSync(join(root, entry))) {
    console.error(`${entry} is missing: ${options.outfile} is not built`);
    process.exitCode = 1;
  } else if (watch) {
    await (await context(options)).watch();
  } else {
    await build(options);
  }
}
