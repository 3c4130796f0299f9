/** Names on disk: which file is what, and in which order the files of one sketch are read. */
import { basename, extname, sep } from 'node:path';

/** The declared hardware of the sketch it lies beside. */
export const MANIFEST_NAME = 'hardware.jsonc';

/** Source files by ending, in reading order: the sketch's own tabs, then what is compiled along, then headers. */
const SOURCE_ENDINGS: readonly string[] = ['.ino', '.cpp', '.c', '.h', '.hpp'];

/**
 * A path with forward slashes, as everything behind the file system writes it. Where a backslash is no separator it is
 * a letter like any other and stays.
 */
export function slashed(path: string): string {
  return sep === '/' ? path : path.replaceAll(sep, '/');
}

/** Orders by UTF-16 units, so that the order is the same under every locale. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** True for a file that can belong to a sketch, by its ending. */
export function isSource(file: string): boolean {
  return SOURCE_ENDINGS.includes(extname(file).toLowerCase());
}

/**
 * Puts the source files of one folder in reading order: the `.ino` named like the folder, the other `.ino` by name,
 * then `.cpp`, `.c`, `.h` and `.hpp`, each by name. The first two are the order a sketch's tabs are joined in.
 */
export function orderSources(folder: string, names: readonly string[]): readonly string[] {
  const main = `${basename(folder)}.ino`;
  const rank = (name: string) => (name === main ? -1 : SOURCE_ENDINGS.indexOf(extname(name).toLowerCase()));
  return names.filter(isSource).sort((a, b) => rank(a) - rank(b) || compareText(a, b));
}
