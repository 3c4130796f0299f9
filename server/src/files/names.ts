/** Names on disk: which file is what, and in which order the files of one sketch are read. */
import { basename, extname, posix, sep } from 'node:path';

/** The declared hardware of the sketch it lies beside. */
export const MANIFEST_NAME = 'hardware.jsonc';

/** The folder beside the main file from which everything is compiled along, however deep it lies. */
export const SOURCE_FOLDER = 'src';
/** The folder beside it that a plain C++ project keeps its headers in. */
export const HEADER_FOLDER = 'include';

/** Source files by ending, in reading order: the sketch's own tabs, then what is compiled along, then headers. */
const SOURCE_ENDINGS: readonly string[] = ['.ino', '.cpp', '.c', '.h', '.hpp'];
const HEADER_ENDINGS: readonly string[] = ['.h', '.hpp'];

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

/** True for a file that is compiled only where another one includes it. */
export function isHeader(file: string): boolean {
  return HEADER_ENDINGS.includes(extname(file).toLowerCase());
}

/** True for a tab of a sketch. */
export function isTab(file: string): boolean {
  return extname(file).toLowerCase() === '.ino';
}

/** True where `file` lies somewhere below `folder`; both absolute with forward slashes. */
export function isBelow(folder: string, file: string): boolean {
  return file.startsWith(folder.endsWith('/') ? folder : `${folder}/`);
}

/** The tab that is named like its folder, whose name the build goes by. Upper and lower case may differ. */
export function namesakeOf(folder: string, tabs: readonly string[]): string | undefined {
  const name = `${basename(folder)}.ino`;
  return (
    tabs.find((tab) => basename(tab) === name) ??
    tabs.find((tab) => basename(tab).toLowerCase() === name.toLowerCase())
  );
}

/**
 * Puts the source files of one sketch in reading order: `main`, the other `.ino` by name, then `.cpp`, `.c`, `.h` and
 * `.hpp`, each ending first those beside the main file and then those below by path. The tabs come in the order the
 * build joins them.
 */
export function orderSources(folder: string, main: string | undefined, files: readonly string[]): string[] {
  const isBeside = (file: string) => posix.dirname(file) === folder;
  const rank = (file: string) => {
    const ending = SOURCE_ENDINGS.indexOf(extname(file).toLowerCase());
    // An included file may have any ending: it counts as a header.
    const kind = ending === -1 ? SOURCE_ENDINGS.length : ending;
    return file === main ? -1 : kind * 2 + (isBeside(file) ? 0 : 1);
  };
  return [...files].sort((a, b) => rank(a) - rank(b) || compareText(a, b));
}
