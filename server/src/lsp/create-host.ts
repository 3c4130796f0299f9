/** The product's own host: the real disk, the real parser and analysis, the real clock. */
import { createAnalyser } from '../analysis';
import { createTextReader, listSources, loadLibrary, schemasFolder } from '../files';
import { createSketchParser } from '../sketch';
import type { Host } from './host';

/** @param folder Where the running program lies; the library is looked for beside and above it. */
export function createHost(folder: string): Host {
  return {
    later: (job) => void setTimeout(job, 0),
    reader: createTextReader(),
    listSources,
    createParser: (log) => createSketchParser({ log }),
    createAnalyser: (options, readText) =>
      createAnalyser(loadLibrary(options.schemasFolder ?? schemasFolder(folder)), readText),
  };
}
