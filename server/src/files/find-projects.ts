/**
 * From the paths somebody names to the folders that are builds. The walk is bounded three ways, by what it enters, how
 * deep and how far, and what a bound cut off is said: a folder that was not looked into must not look clean.
 */
import { type Dirent, readdirSync, statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { compareText, isSource, MANIFEST_NAME, slashed } from './names';
import { explainFileError } from './read-text';

/** Levels below a named folder that are still entered. */
export const DEEPEST = 16;
/** Folders that one walk reads at most. */
export const MOST_FOLDERS = 20_000;

/** Something that could not be looked at, for people. */
export interface FileProblem {
  readonly path: string;
  /** A phrase that goes behind the path and a colon. */
  readonly why: string;
}

/** Where builds were found, and where nobody could look. */
export interface FoundProjects {
  /** Absolute folders with forward slashes, sorted, each once. */
  readonly folders: readonly string[];
  /** A named path that leads to no build, or a folder that could not be read. */
  readonly problems: readonly FileProblem[];
  /** What a bound of the walk left out, in whole sentences. */
  readonly notes: readonly string[];
}

interface Walk {
  readonly folders: Set<string>;
  readonly problems: FileProblem[];
  readonly notes: string[];
  read: number;
}

/**
 * Finds the builds that `paths` name. A path may be a folder (it and all below it is searched), a source file or a
 * `hardware.jsonc` (both stand for their own folder). While walking, `node_modules`, folders that begin with a dot and
 * symbolic links to folders are not entered.
 * @param base Folder that relative paths start from.
 */
export function findProjects(paths: readonly string[], base: string): FoundProjects {
  const walk: Walk = { folders: new Set(), problems: [], notes: [], read: 0 };
  for (const path of paths) {
    const full = resolve(base, path);
    try {
      if (statSync(full).isDirectory()) {
        searchFolder(full, path, walk);
      } else {
        takeFile(full, path, walk);
      }
    } catch (error) {
      walk.problems.push({ path, why: explainFileError(error) });
    }
  }
  const folders = [...walk.folders].sort(compareText);
  return { folders, problems: walk.problems, notes: [...new Set(walk.notes)] };
}

function takeFile(full: string, path: string, walk: Walk): void {
  if (basename(full) !== MANIFEST_NAME && !isSource(full)) {
    walk.problems.push({ path, why: `is neither a ${MANIFEST_NAME} nor a source file of a sketch` });
  } else if (!isProject(dirname(full))) {
    walk.problems.push({ path, why: `has no ${MANIFEST_NAME} beside it` });
  } else {
    walk.folders.add(slashed(dirname(full)));
  }
}

function searchFolder(top: string, path: string, walk: Walk): void {
  let found = 0;
  const waiting: { readonly folder: string; readonly depth: number }[] = [{ folder: top, depth: 0 }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (walk.read >= MOST_FOLDERS) {
      walk.notes.push(
        `The search stopped after ${MOST_FOLDERS} folders; name the folders to check one by one.`,
      );
      break;
    }
    walk.read += 1;
    const entries = listFolder(next.folder, walk);
    if (entries.some((entry) => entry.name === MANIFEST_NAME && !entry.isDirectory())) {
      walk.folders.add(slashed(next.folder));
      found += 1;
    }
    for (const entry of entries) {
      if (!entry.isDirectory() || entry.name === 'node_modules' || entry.name.startsWith('.')) {
        continue;
      }
      if (next.depth >= DEEPEST) {
        walk.notes.push(`Folders more than ${DEEPEST} levels below ${slashed(path)} were not searched.`);
        break;
      }
      waiting.push({ folder: join(next.folder, entry.name), depth: next.depth + 1 });
    }
  }
  if (found === 0) {
    walk.problems.push({ path, why: `has no ${MANIFEST_NAME} in it or below it` });
  }
}

function listFolder(folder: string, walk: Walk): readonly Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch (error) {
    walk.problems.push({ path: slashed(folder), why: explainFileError(error) });
    return [];
  }
}

/** True where the folder holds a `hardware.jsonc`. */
export function isProject(folder: string): boolean {
  return statSync(join(folder, MANIFEST_NAME), { throwIfNoEntry: false })?.isDirectory() === false;
}

/** The build a file belongs to: its own folder, where a `hardware.jsonc` lies in it. Forward slashes. */
export function projectOf(file: string): string | undefined {
  const folder = dirname(resolve(file));
  return isProject(folder) ? slashed(folder) : undefined;
}
