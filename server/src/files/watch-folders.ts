/**
 * Tells of changes in folders. Each folder is watched for itself, since watching whole trees is not to be had on every
 * system and would take in what nobody reads.
 */
import { type FSWatcher, statSync, watch } from 'node:fs';
import { join, resolve } from 'node:path';
import { slashed } from './names';
import type { FileProblem } from './read-text';
import { type Walk, walkFolders } from './walk-folders';

/** Folders that are watched at most: systems lend out a limited number of watches. */
export const MOST_WATCHED = 8_000;

/** What to watch. */
export interface WatchWish {
  /** Folders that are watched with all below them; files among them do not count. */
  readonly trees: readonly string[];
  /** Folders that are watched alone. */
  readonly single: readonly string[];
  /** Folder that relative paths start from. */
  readonly base: string;
}

export interface FolderWatcher {
  /** Watches these folders and no others any more. Call it again after a change: folders come and go. */
  watch(wish: WatchWish): void;
  /** What could not be watched. */
  problems(): readonly FileProblem[];
  close(): void;
}

/** @param changed Gets the absolute path, with forward slashes, of what came, went or changed. */
export function watchFolders(changed: (path: string) => void): FolderWatcher {
  const watchers = new Map<string, FSWatcher>();
  let problems: FileProblem[] = [];
  return {
    watch(wish) {
      problems = [];
      const wanted = new Set([...treesOf(wish), ...wish.single]);
      for (const [folder, watcher] of watchers) {
        if (!wanted.has(folder)) {
          watcher.close();
          watchers.delete(folder);
        }
      }
      for (const folder of wanted) {
        if (watchers.has(folder)) {
          continue;
        }
        if (watchers.size >= MOST_WATCHED) {
          problems.push({ path: folder, why: `is not watched: ${MOST_WATCHED} folders are` });
          break;
        }
        try {
          const watcher = watch(folder, (_, name) => {
            changed(name === null ? folder : slashed(join(folder, name.toString())));
          });
          watcher.on('error', () => {
            // A folder that was removed. The walk after this change finds what is there now.
            watcher.close();
            watchers.delete(folder);
            changed(folder);
          });
          watchers.set(folder, watcher);
        } catch (error) {
          if (statSync(folder, { throwIfNoEntry: false }) !== undefined) {
            problems.push({
              path: folder,
              why: `cannot be watched (${error instanceof Error ? error.message : String(error)})`,
            });
          }
        }
      }
    },
    problems: () => problems,
    close() {
      for (const watcher of watchers.values()) {
        watcher.close();
      }
      watchers.clear();
    },
  };
}

function treesOf({ trees, base }: WatchWish): readonly string[] {
  const walk: Walk = { problems: [], notes: new Set(), read: 0 };
  const folders: string[] = [];
  for (const tree of trees) {
    const full = resolve(base, tree);
    if (statSync(full, { throwIfNoEntry: false })?.isDirectory()) {
      walkFolders(full, tree, walk, (folder) => {
        folders.push(slashed(folder));
        return [];
      });
    }
  }
  return folders;
}
