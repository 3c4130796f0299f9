/** Everything a measurement needs, opened once. */
import { join } from 'node:path';
import { createSketchParser } from '../../../server/src/sketch';
import { loadChips, loadLibraries } from './chips';
import type { Tools } from './measure';

/** @param root The folder of the project's package.json. */
export async function openTools(root: string): Promise<Tools> {
  const schemas = join(root, 'hardware-schemas');
  const parser = await createSketchParser({ log: () => {} });
  return { root, chips: loadChips(schemas), libraries: loadLibraries(schemas), parser };
}
