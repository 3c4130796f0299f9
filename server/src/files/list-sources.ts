/** Which source files lie in a sketch's folder. Whether each of them counts is decided in arrange-sketch.ts. */
import { readdirSync } from 'node:fs';
import { join, posix } from 'node:path';
import {
  compareText,
  HEADER_FOLDER,
  isBelow,
  isHeader,
  isSource,
  isTab,
  SOURCE_FOLDER,
  slashed,
} from './names';
import { explainFileError, type FileProblem } from './read-text';

/** Folders below a sketch's own that are looked into at most, and how deep. */
export const MOST_SOURCE_FOLDERS = 200;
export const DEEPEST_SOURCE_FOLDER = 8;

const SOURCE_FOLDERS: readonly string[] = [SOURCE_FOLDER, HEADER_FOLDER];

/** The files of one folder. */
export interface SourceList {
  /** Absolute, forward slashes, by path. */
  readonly files: readonly string[];
  readonly problems: readonly FileProblem[];
  /** What a bound left out, in whole sentences. */
  readonly notes: readonly string[];
}

/**
 * Lists the source files beside the main file, everything below `src`, and the headers below `include`. Folders that
 * begin with a dot and symbolic links to folders are not entered.
 */
export function readSourceList(folder: string): SourceList {
  const files: string[] = [];
  const problems: FileProblem[] = [];
  const notes = new Set<string>();
  let read = 0;
  const look = (at: string, depth: number) => {
    if (read >= MOST_SOURCE_FOLDERS || depth > DEEPEST_SOURCE_FOLDER) {
      notes.add(
        `${slashed(folder)}: of its source folders the first ${MOST_SOURCE_FOLDERS} were read, ` +
          `${DEEPEST_SOURCE_FOLDER} levels deep.`,
      );
      return;
    }
    read += 1;
    try {
      const entries = readdirSync(at, { withFileTypes: true });
      for (const entry of entries.sort((a, b) => compareText(a.name, b.name))) {
        const path = join(at, entry.name);
        if (!entry.isDirectory()) {
          if (countsInSketch(slashed(folder), slashed(path))) {
            files.push(slashed(path));
          }
        } else if (depth === 0 ? SOURCE_FOLDERS.includes(entry.name) : !entry.name.startsWith('.')) {
          look(path, depth + 1);
        }
      }
    } catch (error) {
      problems.push({ path: slashed(at), why: explainFileError(error) });
    }
  };
  look(folder, 0);
  return { files: files.sort(compareText), problems, notes: [...notes] };
}

/**
 * True for a file that can belong to the sketch of a folder by where it lies: any source file in the folder, below `src`
 * any but a tab, below `include` a header. Absolute, forward slashes.
 */
export function countsInSketch(folder: string, file: string): boolean {
  if (!isSource(file)) {
    return false;
  }
  return (
    posix.dirname(file) === folder ||
    (isBelow(posix.join(folder, SOURCE_FOLDER), file) && !isTab(file)) ||
    (isBelow(posix.join(folder, HEADER_FOLDER), file) && isHeader(file))
  );
}

/** The same as names alone; empty where the folder is gone. */
export function listSources(folder: string): readonly string[] {
  return readSourceList(folder).files;
}
