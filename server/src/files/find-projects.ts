/** From the paths somebody names to the folders that are builds: those that hold a `hardware.jsonc`. */
import { statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { compareText, HEADER_FOLDER, isSource, MANIFEST_NAME, SOURCE_FOLDER, slashed } from './names';
import { explainFileError, type FileProblem } from './read-text';
import { type Walk, walkFolders } from './walk-folders';

/** Where builds were found, and where nobody could look. */
export interface FoundProjects {
  /** Absolute folders with forward slashes, sorted, each once. */
  readonly folders: readonly string[];
  /** A named path that leads to no build, or a folder that could not be read. */
  readonly problems: readonly FileProblem[];
  /** What a bound of the walk left out, in whole sentences. */
  readonly notes: readonly string[];
}

/**
 * Finds the builds that `paths` name. A path may be a folder (it and all below it is searched), a source file or a
 * `hardware.jsonc` (both stand for the build they belong to).
 * @param base Folder that relative paths start from.
 */
export function findProjects(paths: readonly string[], base: string): FoundProjects {
  const walk: Walk = { problems: [], notes: new Set(), read: 0 };
  const folders = new Set<string>();
  for (const path of paths) {
    const full = resolve(base, path);
    try {
      if (statSync(full).isDirectory()) {
        let found = 0;
        walkFolders(full, path, walk, (folder, entries) => {
          if (entries.some((entry) => entry.name === MANIFEST_NAME && !entry.isDirectory())) {
            folders.add(slashed(folder));
            found += 1;
          }
          return [];
        });
        if (found === 0) {
          walk.problems.push({ path, why: `has no ${MANIFEST_NAME} in it or below it` });
        }
      } else if (basename(full) !== MANIFEST_NAME && !isSource(full)) {
        walk.problems.push({ path, why: `is neither a ${MANIFEST_NAME} nor a source file of a sketch` });
      } else {
        const folder = projectOf(full);
        if (folder === undefined) {
          walk.problems.push({ path, why: `has no ${MANIFEST_NAME} beside it` });
        } else {
          folders.add(folder);
        }
      }
    } catch (error) {
      walk.problems.push({ path, why: explainFileError(error) });
    }
  }
  return { folders: [...folders].sort(compareText), problems: walk.problems, notes: [...walk.notes] };
}

/** True where the folder holds a `hardware.jsonc`. */
export function isProject(folder: string): boolean {
  return statSync(join(folder, MANIFEST_NAME), { throwIfNoEntry: false })?.isDirectory() === false;
}

/** The build a file belongs to, where there is one. Forward slashes. */
export function projectOf(file: string): string | undefined {
  return homesOf(slashed(resolve(file))).find(isProject);
}

/**
 * The folders whose sketch a file can belong to, the nearest first: its own, and those whose `src` or `include` it lies
 * in. Absolute, forward slashes.
 */
export function homesOf(file: string): readonly string[] {
  const own = slashed(dirname(file));
  const homes = [own];
  for (let below = own; ; ) {
    const above = slashed(dirname(below));
    if (above === below) {
      return homes;
    }
    if (basename(below) === SOURCE_FOLDER || basename(below) === HEADER_FOLDER) {
      homes.push(above);
    }
    below = above;
  }
}
