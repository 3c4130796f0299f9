/** The texts of one sketch, read from disk in the order the sketch layer wants them. */
import { join } from 'node:path';
import { arrangeSketch, type FileText, type SketchPlace } from './arrange-sketch';
import { readSourceList } from './list-sources';
import { MANIFEST_NAME, slashed } from './names';
import { createTextReader, type FileProblem, type TextReader } from './read-text';

/** One sketch as it lies on disk. */
export interface ProjectFiles {
  /** Absolute, forward slashes. */
  readonly folder: string;
  readonly manifest?: FileText;
  /** The main file first. */
  readonly sources: readonly FileText[];
  /** Files that are there and could not be read. */
  readonly problems: readonly FileProblem[];
  /** What a bound left out, in whole sentences. */
  readonly notes: readonly string[];
  /** Included paths that are no file of the sketch. */
  readonly foreign: ReadonlySet<string>;
}

/**
 * Reads the build of one folder.
 * @param reader Hand the same one in again to read only what changed.
 * @param ceiling Folder that includes must not lead out of; the build's own without it.
 */
export function loadProject(folder: string, reader?: TextReader, ceiling?: string): ProjectFiles {
  const own = slashed(folder);
  return loadSketch({ folder: own, ceiling: ceiling ?? own }, reader);
}

/** Reads one sketch, with its manifest where it has one. */
export function loadSketch(place: SketchPlace, reader: TextReader = createTextReader()): ProjectFiles {
  const { folder } = place;
  const problems: FileProblem[] = [];
  const take = (file: string, mayMiss: boolean): string | undefined => {
    const read = reader.read(file);
    if (read.ok) {
      return read.text;
    }
    if (!(mayMiss && read.missing)) {
      problems.push({ path: file, why: read.why });
    }
    return undefined;
  };
  const file = slashed(join(folder, MANIFEST_NAME));
  const text = take(file, true);
  const list = readSourceList(folder);
  problems.push(...list.problems);
  const listed = new Set(list.files);
  const { sources, notes, foreign } = arrangeSketch(place, list.files, (path) =>
    take(path, !listed.has(path)),
  );
  return {
    folder,
    ...(text === undefined ? {} : { manifest: { file, text } }),
    sources,
    problems,
    notes: [...list.notes, ...notes],
    foreign,
  };
}
