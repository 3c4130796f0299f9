/** What this installation calls itself: read from the package that the running file lies in, never written twice. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Name and version of the running program. */
export interface Product {
  readonly name: string;
  readonly version: string;
}

/**
 * Reads name and version from the nearest `package.json` at or above `from` that has both.
 * @throws Error in words where there is none: the installation is broken.
 */
export function readProduct(from: string): Product {
  for (let folder = from; ; folder = dirname(folder)) {
    try {
      const found: unknown = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
      if (isProduct(found)) {
        return { name: found.name, version: found.version };
      }
    } catch {
      // No package here, or none that can be read: the next one up counts.
    }
    if (dirname(folder) === folder) {
      throw new Error(`No package.json with a name and a version lies in ${from} or above it.`);
    }
  }
}

function isProduct(value: unknown): value is Product {
  return (
    typeof value === 'object' &&
    value !== null &&
    'name' in value &&
    typeof value.name === 'string' &&
    'version' in value &&
    typeof value.version === 'string'
  );
}
