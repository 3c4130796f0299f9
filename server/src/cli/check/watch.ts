/**
 * Stays and checks again what changes. A sketch is checked again where a file was touched that its last check had looked
 * for, found or not, or that lies in its folder; a folder that becomes a build or ceases to be one is seen as well.
 */

import { basename, dirname, extname } from 'node:path';
import { type FoundProjects, isBelow, isSource, MANIFEST_NAME, watchFolders } from '../../files';
import { tell } from '../deliver';
import type { Surroundings } from '../spec';
import type { CheckSetting, FolderResult } from './check-folder';
import { createFolderChecker } from './check-folder';
import { exitCodeOf, type Report } from './report';

/** Milliseconds of silence after a change until it is checked: an editor writes a file in several steps. */
const QUIET = 60;

/**
 * Watches until somebody interrupts.
 * @param find Finds the builds, anew every time.
 * @param finish Prints what there is now.
 * @param checkAll The first check, on all cores.
 * @param output The file that `finish` writes, absolute: its change is none.
 * @returns the exit code of the last check.
 */
export async function watchBuilds(
  setting: CheckSetting,
  find: () => FoundProjects,
  finish: (results: readonly FolderResult[], found: FoundProjects) => Report,
  checkAll: (folders: readonly string[]) => Promise<readonly FolderResult[]>,
  here: Surroundings,
  output: string | undefined,
): Promise<number> {
  const checker = await createFolderChecker(setting);
  const touched = new Set<string>();
  let wake: () => void = () => {};
  // Before the first look: what changes during it is not missed.
  const watcher = watchFolders((path) => {
    if (path !== output) {
      touched.add(path);
      wake();
    }
  });
  let stopped = false;
  void here.interrupted().then(() => {
    stopped = true;
    wake();
  });
  let found = find();
  watcher.watch(foldersOf(setting, found, []));
  const first = await checkAll(found.folders);
  const results = new Map(found.folders.map((folder, at) => [folder, first[at]] as const));
  let report = show();
  here.err(
    `wiretrue: watching ${found.folders.length === 1 ? '1 sketch' : `${found.folders.length} sketches`}; Ctrl+C ends\n`,
  );
  while (!stopped) {
    if (touched.size === 0) {
      await new Promise<void>((resolve) => {
        wake = resolve;
      });
      continue;
    }
    await new Promise<void>((resolve) => setTimeout(resolve, QUIET));
    const paths = [...touched];
    touched.clear();
    const started = performance.now();
    found = find();
    const there = new Set(found.folders);
    for (const folder of [...results.keys()].filter((folder) => !there.has(folder))) {
      results.delete(folder);
    }
    const again = found.folders.filter((folder) => isTouched(folder, results.get(folder), paths));
    for (const folder of again) {
      results.set(folder, await checker(folder));
    }
    watcher.watch(foldersOf(setting, found, [...results.values()]));
    if (again.length > 0 || there.size !== report.sketches.length) {
      report = show();
      const took = Math.round(performance.now() - started);
      here.err(`wiretrue: checked ${again.length} of ${found.folders.length} again in ${took} ms\n`);
    }
  }
  watcher.close();
  return exitCodeOf(report);

  function show(): Report {
    const ordered = found.folders.flatMap((folder) => results.get(folder) ?? []);
    const now = finish(ordered, found);
    tell(now.notes, [...now.problems, ...watcher.problems()], here);
    return now;
  }
}

/** The folders named and below, and those of files outside them that a check looked for. */
function foldersOf(
  { paths, base }: CheckSetting,
  { folders }: FoundProjects,
  results: readonly (FolderResult | undefined)[],
): { readonly trees: readonly string[]; readonly single: readonly string[]; readonly base: string } {
  const single = new Set(folders);
  for (const path of results.flatMap((result) => result?.looked ?? [])) {
    single.add(dirname(path));
  }
  return { trees: paths, single: [...single], base };
}

function isTouched(folder: string, result: FolderResult | undefined, paths: readonly string[]): boolean {
  return (
    result === undefined ||
    paths.some(
      (path) => path === folder || (isBelow(folder, path) && mayCount(path)) || result.looked.includes(path),
    )
  );
}

/** False for what no sketch is made of, such as the report that is written beside it. */
function mayCount(path: string): boolean {
  const name = basename(path);
  return name === MANIFEST_NAME || isSource(path) || (extname(path) === '' && !name.startsWith('.'));
}
