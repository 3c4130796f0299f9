/**
 * Checks many folders on all cores. Every thread, this one included, takes the next folders from one counter, so that
 * none waits for another and nobody hands out work; results are put back in the order of the folders, so that the number
 * of threads shows nowhere.
 */
import { Worker } from 'node:worker_threads';
import {
  type CheckSetting,
  createFolderChecker,
  type FolderChecker,
  type FolderResult,
} from './check-folder';

/** Folders that a thread takes at a time. */
const TAKEN = 4;
/** A thread costs about as much as checking so many small sketches: with fewer for each, it is not started. */
const WORTH = 24;

/** What a thread is started with. */
export interface WorkerTask {
  readonly setting: CheckSetting;
  readonly folders: readonly string[];
  /** One 32-bit counter: the next folder that nobody has taken. */
  readonly next: SharedArrayBuffer;
}

/** A folder's result with its place in the list. */
export type Numbered = readonly [index: number, result: FolderResult];

export interface CheckFoldersOptions {
  /** Threads at most. */
  readonly jobs: number;
  /** The file a thread runs. Absent: there is this one only. */
  readonly worker?: string;
  /** Called after every folder. */
  progress?(done: number, all: number): void;
}

/** Checks the folders; the results are in their order. */
export async function checkFolders(
  setting: CheckSetting,
  folders: readonly string[],
  { jobs, worker, progress }: CheckFoldersOptions,
): Promise<readonly FolderResult[]> {
  const results: (FolderResult | undefined)[] = folders.map(() => undefined);
  let done = 0;
  const take = ([index, result]: Numbered) => {
    done += results[index] === undefined ? 1 : 0;
    results[index] = result;
    progress?.(done, folders.length);
  };
  const next = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  const task: WorkerTask = { setting, folders, next };
  const threads = worker === undefined ? 1 : Math.min(jobs, Math.ceil(folders.length / WORTH));
  const others = Array.from({ length: threads - 1 }, () => runWorker(worker ?? '', task, take));
  const checker = await createFolderChecker(setting);
  await takeFolders(task, checker, take);
  await Promise.all(others);
  // A thread that died took folders with it; here they are checked after all.
  for (const [index, folder] of folders.entries()) {
    if (results[index] === undefined) {
      take([index, await checker(folder)]);
    }
  }
  return results.filter((result) => result !== undefined);
}

/** Takes folders from the counter until none is left. */
export async function takeFolders(
  { folders, next }: WorkerTask,
  checker: FolderChecker,
  give: (result: Numbered) => void,
): Promise<void> {
  const counter = new Int32Array(next);
  for (;;) {
    const first = Atomics.add(counter, 0, TAKEN);
    if (first >= folders.length) {
      return;
    }
    for (const [offset, folder] of folders.slice(first, first + TAKEN).entries()) {
      give([first + offset, await checker(folder)]);
    }
  }
}

/** Runs a thread to its end, however it ends. */
function runWorker(file: string, task: WorkerTask, take: (result: Numbered) => void): Promise<void> {
  return new Promise((resolve) => {
    const thread = new Worker(file, { workerData: task });
    thread.on('message', take);
    // What it did not finish is checked in this thread, where the same fault is told in words.
    thread.on('error', () => {});
    thread.on('exit', () => resolve());
  });
}
