/**
 * What the server gets from outside: the disk, the parser, the analysis, time. Tests hand in their own; the product's is
 * made in create-host.ts.
 */
import type { Analyser } from '../analysis';
import type { TextReader } from '../files';
import type { SketchParser } from '../sketch';

/** The client's initialization options, as far as they are understood. */
export interface StartOptions {
  readonly schemasFolder?: string;
  readonly rulePages?: string;
}

export interface Host {
  /** The clock's part: runs `job` when the messages that wait now have been handled. */
  readonly later: (job: () => void) => void;
  readonly reader: TextReader;
  /** Source files of a folder in reading order; empty where the folder is gone. */
  readonly listSources: (folder: string) => readonly string[];
  readonly createParser: (log: (text: string) => void) => Promise<SketchParser>;
  /** @throws Error in words where the library of boards and parts cannot be read. */
  readonly createAnalyser: (
    options: StartOptions,
    readText: (path: string) => string | undefined,
  ) => Analyser;
}

/** Reads the initialization options; what is not understood counts as not given. */
export function readStartOptions(options: unknown): StartOptions {
  if (typeof options !== 'object' || options === null) {
    return {};
  }
  const text = (value: unknown) => (typeof value === 'string' && value !== '' ? value : undefined);
  const schemas = 'schemasFolder' in options ? text(options.schemasFolder) : undefined;
  const pages = 'rulePages' in options ? text(options.rulePages) : undefined;
  return {
    ...(schemas === undefined ? {} : { schemasFolder: schemas }),
    ...(pages === undefined ? {} : { rulePages: pages }),
  };
}
