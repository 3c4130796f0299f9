/** The work of one thread: folders from the counter, results to the thread that started it. */
import { parentPort, workerData } from 'node:worker_threads';
import { createFolderChecker } from './check-folder';
import { takeFolders, type WorkerTask } from './check-folders';

/** Runs what this thread was started with. */
export async function runAsWorker(): Promise<void> {
  const task = workerData as WorkerTask;
  const checker = await createFolderChecker(task.setting);
  await takeFolders(task, checker, (result) => parentPort?.postMessage(result));
}
