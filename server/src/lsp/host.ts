/**
 * What the server gets from outside: the disk, the parser, the analysis, time. Tests hand in their own; the product's is
 * made in create-host.ts.
 */
import type { Analyser } from '../analysis';
import type { Severity } from '../base/finding';
import type { TextReader } from '../files';
import type { SketchParser } from '../sketch';

/** The client's initialization options, as far as they are understood. */
export interface StartOptions {
  readonly schemasFolder?: string;
  readonly rulePages?: string;
  /** How serious rules are where a manifest says nothing of them. */
  readonly severity?: Severities;
}

export type Severities = Readonly<Record<string, Severity | 'off'>>;

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
    ...('severity' in options ? { severity: readSeverities(options.severity) } : {}),
  };
}

const words: readonly unknown[] = ['error', 'warning', 'information', 'hint', 'off'];

/** The rules' severities of a client's settings; what is no severity is left out. */
export function readSeverities(value: unknown): Severities {
  if (typeof value !== 'object' || value === null) {
    return {};
  }
  const rows = Object.entries(value).filter(([, word]) => words.includes(word));
  return Object.fromEntries(rows) as Severities;
}

/** The severities in what a client sends when its settings change; undefined where it says nothing of them. */
export function severitiesOf(settings: unknown): Severities | undefined {
  if (typeof settings !== 'object' || settings === null || !('wiretrue' in settings)) {
    return undefined;
  }
  const { wiretrue } = settings;
  return typeof wiretrue === 'object' && wiretrue !== null && 'severity' in wiretrue
    ? readSeverities(wiretrue.severity)
    : undefined;
}
