// Writes what follows from other files and must be there before a build, a test or a type check: the registry of rules
// from the folder listing, and the types and validators from the JSON Schemas. Only changed files are written.
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { makeSchemaSources } from './schema-sources.mjs';

const root = resolve(fileURLToPath(import.meta.url), '../../..');
const notRules = new Set(['rule.ts', 'subject.ts']);

/** The registry: one import a rule, in the order of their names. */
export async function makeRegistry(folder) {
  const listing = await readdir(join(folder, 'server/src/rules'), { withFileTypes: true });
  const ids = listing
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts') && !notRules.has(entry.name))
    .map((entry) => entry.name.slice(0, -3))
    .sort();
  const name = (id) => id.replace(/-(\w)/g, (_, letter) => letter.toUpperCase());
  return [
    '// Made from the listing of server/src/rules by server/scripts/prepare-sources.mjs.',
    ...ids.map((id) => `import ${name(id)} from '../${id}';`),
    "import type { Rule } from '../rule';",
    '',
    '/** Every rule, by id. */',
    'export const rules: readonly Rule[] = [',
    ...ids.map((id) => `  ${name(id)} as Rule,`),
    '];',
    '',
  ].join('\n');
}

/** Writes a text where it differs from what is there. */
export async function writeChanged(path, text) {
  const before = await readFile(path, 'utf8').catch(() => undefined);
  if (before === text) return false;
  await mkdir(dirname(path), { recursive: true });
  await writeFile(path, text);
  return true;
}

async function main() {
  await writeChanged(join(root, 'server/src/rules/generated/registry.ts'), await makeRegistry(root));
  for (const [path, text] of await makeSchemaSources(root)) await writeChanged(join(root, path), text);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main();
