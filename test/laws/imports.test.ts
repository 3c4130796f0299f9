/** The fence between the layers: which folder may import which, and which may touch the outside. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { root } from '../fixture/bench';

const source = join(root, 'server/src');

/** Folders of server/src, each with those it may import besides itself. */
const layers: Readonly<Record<string, readonly string[]>> = {
  base: [],
  sketch: ['base'],
  hardware: ['base'],
  circuit: ['base'],
  rules: ['base', 'circuit', 'hardware'],
  analysis: ['base', 'sketch', 'hardware', 'circuit', 'rules'],
  documents: ['base', 'circuit', 'hardware', 'analysis'],
  picture: ['base', 'analysis', 'documents'],
  files: ['base', 'analysis'],
  lsp: ['base', 'sketch', 'analysis', 'documents', 'picture', 'files'],
  cli: ['base', 'sketch', 'circuit', 'analysis', 'documents', 'picture', 'files', 'rules', 'lsp'],
};

/** Packages and node modules, each with the folders that may import it. */
const packages: Readonly<Record<string, readonly string[]>> = {
  'vscode-languageserver': ['lsp'],
  'vscode-languageserver-textdocument': ['lsp'],
  'tree-sitter': ['sketch'],
  'tree-sitter-cpp': ['sketch'],
  'web-tree-sitter': ['sketch'],
  'jsonc-parser': ['hardware'],
  ajv: ['hardware'],
  'fastest-levenshtein': ['hardware', 'cli'],
  'ml-matrix': ['circuit'],
  elkjs: ['picture'],
  'node:fs': ['files', 'lsp', 'cli'],
  'node:path': ['files', 'lsp', 'cli', 'sketch'],
  'node:url': ['files', 'lsp', 'cli'],
  'node:util': ['cli'],
  // A command line uses all cores, and asks git for an earlier revision.
  'node:os': ['cli'],
  'node:worker_threads': ['cli'],
  'node:child_process': ['cli'],
  // The parser's packages are loaded at run time, from wherever they are installed; the command line starts the server.
  'node:module': ['sketch', 'cli'],
};

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map((entry) => join(entry.parentPath, entry.name));
}

function importsOf(file: string): string[] {
  const text = readFileSync(file, 'utf8').replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');
  const statements = text.matchAll(
    /^(?:import|export)\b(?:[^'"`;]*?\bfrom)?\s*'([^']+)'|\bimport\(\s*'([^']+)'/gm,
  );
  return [...statements].map((match) => match[1] ?? match[2] ?? '');
}

function packageOf(name: string): string {
  if (name.startsWith('node:')) return name.split('/')[0] ?? name;
  const parts = name.split('/');
  return name.startsWith('@') ? parts.slice(0, 2).join('/') : (parts[0] ?? name);
}

describe('imports', () => {
  it('knows every folder, and every folder it knows is there', () => {
    const there = readdirSync(source, { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name);
    expect(there.sort()).toEqual(Object.keys(layers).sort());
    for (const layer of Object.keys(layers)) expect(filesBelow(join(source, layer)), layer).not.toEqual([]);
  });

  it.each(Object.keys(layers))('%s imports only what it may', (layer) => {
    const wrong: string[] = [];
    for (const file of filesBelow(join(source, layer))) {
      for (const name of importsOf(file)) {
        const place = `${relative(root, file)} imports ${name}`;
        if (name.startsWith('.')) {
          const target = relative(source, resolve(dirname(file), name)).split(/[\\/]/)[0] ?? '';
          if (target !== layer && !layers[layer]?.includes(target)) wrong.push(place);
        } else if (!packages[packageOf(name)]?.includes(layer)) {
          wrong.push(place);
        }
      }
    }
    expect(wrong).toEqual([]);
  });

  it('lets every package be imported by somebody who may', () => {
    const used = new Set<string>();
    for (const layer of Object.keys(layers)) {
      for (const file of filesBelow(join(source, layer))) {
        const text = readFileSync(file, 'utf8');
        for (const name of Object.keys(packages)) if (text.includes(`'${name}`)) used.add(name);
      }
    }
    // ajv's code is imported by the generated validators alone.
    expect(Object.keys(packages).filter((name) => !used.has(name) && name !== 'ajv')).toEqual([]);
  });

  it('keeps the client away from the server', () => {
    const files = filesBelow(join(root, 'client/src'));
    expect(files).not.toEqual([]);
    expect(files.filter((file) => importsOf(file).some((name) => /server\/src/.test(name)))).toEqual([]);
  });
});
