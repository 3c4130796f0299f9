/** The boards, parts and firmware libraries that come with the product, as texts for the façade. */
import { existsSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { LibraryTexts } from '../analysis';
import { compareText } from './names';
import { createTextReader } from './read-text';

/**
 * Looks for `hardware-schemas` beside `from` and beside every folder above it: the same search finds it from the
 * sources, from the bundle and from an installed extension.
 * @throws Error in words where there is none: the installation is broken.
 */
export function schemasFolder(from: string): string {
  for (let folder = from; ; folder = dirname(folder)) {
    const found = join(folder, 'hardware-schemas');
    if (existsSync(join(found, 'boards'))) {
      return found;
    }
    if (dirname(folder) === folder) {
      throw new Error(`No hardware-schemas folder lies in ${from} or above it. Install the program anew.`);
    }
  }
}

/**
 * Reads the library.
 * @throws Error in words where a file of it cannot be read: the installation is broken.
 */
export function loadLibrary(schemas: string): LibraryTexts {
  return {
    boards: readTexts(join(schemas, 'boards')),
    parts: readTexts(join(schemas, 'parts')),
    libraries: readTexts(join(schemas, 'libraries')),
  };
}

function readTexts(folder: string): ReadonlyMap<string, string> {
  const reader = createTextReader();
  const texts = new Map<string, string>();
  const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
  for (const name of names.sort(compareText)) {
    const read = reader.read(join(folder, name));
    if (!read.ok) {
      throw new Error(`${join(folder, name)}: ${read.why}. Install the program anew.`);
    }
    texts.set(name.slice(0, -'.json'.length), read.text);
  }
  return texts;
}
