/**
 * The walk downwards from the folders that somebody names. It is bounded three ways, by what it enters, how deep and how
 * far, and what a bound cut off is said: a folder that was not looked into must not look clean.
 */
import { type Dirent, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { compareText, slashed } from './names';
import { explainFileError, type FileProblem } from './read-text';

/** Levels below a named folder that are still entered. */
export const DEEPEST = 16;
/** Folders that the walks of one run read at most. */
export const MOST_FOLDERS = 20_000;

/** What the walks of one run have met. */
export interface Walk {
  readonly problems: FileProblem[];
  readonly notes: Set<string>;
  /** Folders read so far. */
  read: number;
}

/**
 * Visits a folder and all below it. `node_modules`, folders that begin with a dot and symbolic links to folders are not
 * entered.
 * @param path The folder as it was named, for the notes.
 * @param visit Gets a folder and its entries by name; says which of its folders not to enter.
 */
export function walkFolders(
  top: string,
  path: string,
  walk: Walk,
  visit: (folder: string, entries: readonly Dirent[]) => readonly string[],
): void {
  const waiting: { readonly folder: string; readonly depth: number }[] = [{ folder: top, depth: 0 }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (walk.read >= MOST_FOLDERS) {
      walk.notes.add(`The search stopped after ${MOST_FOLDERS} folders; name the folders one by one.`);
      return;
    }
    walk.read += 1;
    const entries = listFolder(next.folder, walk);
    const not = visit(next.folder, entries);
    for (const { name } of entries.filter((entry) => entry.isDirectory())) {
      if (name === 'node_modules' || name.startsWith('.') || not.includes(name)) {
        continue;
      }
      if (next.depth >= DEEPEST) {
        walk.notes.add(`Folders more than ${DEEPEST} levels below ${slashed(path)} were not searched.`);
        break;
      }
      waiting.push({ folder: join(next.folder, name), depth: next.depth + 1 });
    }
  }
}

function listFolder(folder: string, walk: Walk): readonly Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true }).sort((a, b) => compareText(a.name, b.name));
  } catch (error) {
    walk.problems.push({ path: slashed(folder), why: explainFileError(error) });
    return [];
  }
}
