/** The texts of one build, read from disk in the order the sketch layer wants them. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { FileProblem } from './find-projects';
import { MANIFEST_NAME, orderSources, slashed } from './names';
import { createTextReader, explainFileError, type TextReader } from './read-text';

/** A file's path as every span names it (absolute, forward slashes), and its text. */
export interface FileText {
  readonly file: string;
  readonly text: string;
}

/** One build as it lies on disk. */
export interface ProjectFiles {
  /** Absolute, forward slashes. */
  readonly folder: string;
  readonly manifest?: FileText;
  /** The main `.ino` first. */
  readonly sources: readonly FileText[];
  /** Files that are there and could not be read. */
  readonly problems: readonly FileProblem[];
}

/** The source files of a folder in reading order, as absolute paths with forward slashes. Empty where it is gone. */
export function listSources(folder: string): readonly string[] {
  try {
    return namesOf(folder).map((name) => slashed(join(folder, name)));
  } catch {
    return [];
  }
}

/**
 * Reads one build.
 * @param reader Hand the same one in again to read only what changed.
 */
export function loadProject(folder: string, reader: TextReader = createTextReader()): ProjectFiles {
  const problems: FileProblem[] = [];
  const take = (path: string, mayMiss: boolean): FileText | undefined => {
    const file = slashed(path);
    const read = reader.read(path);
    if (read.ok) {
      return { file, text: read.text };
    }
    if (!(mayMiss && read.missing)) {
      problems.push({ path: file, why: read.why });
    }
    return undefined;
  };
  const manifest = take(join(folder, MANIFEST_NAME), true);
  let names: readonly string[] = [];
  try {
    names = namesOf(folder);
  } catch (error) {
    problems.push({ path: slashed(folder), why: explainFileError(error) });
  }
  const sources = names.map((name) => take(join(folder, name), false)).filter((read) => read !== undefined);
  return { folder: slashed(folder), ...(manifest === undefined ? {} : { manifest }), sources, problems };
}

function namesOf(folder: string): readonly string[] {
  const entries = readdirSync(folder, { withFileTypes: true });
  return orderSources(
    folder,
    entries.filter((entry) => !entry.isDirectory()).map((entry) => entry.name),
  );
}
