/**
 * Which sketch folders are looked at, and when. A folder is looked at from the first of its documents that opens to the
 * last that closes. A change marks its folder and schedules one run for the whole burst; a request that comes before it
 * gets the run made at once, so it never sees an older text than the client's.
 */
import { posix } from 'node:path';
import { type Diagnostic, TextDocuments } from 'vscode-languageserver';
import type { Analyser } from '../analysis';
import { isSource, MANIFEST_NAME } from '../files';
import type { SketchParser } from '../sketch';
import type { Host } from './host';
import { OpenFile } from './open-file';
import { type OpenFiles, Project, type Run } from './project';
import type { Publisher } from './publisher';
import { folderOf, nameOf, pathOfUri } from './uris';

/** What exists once the server has started: before that, documents only gather. */
export interface Engine {
  readonly parser: SketchParser;
  readonly analyser: Analyser;
  readonly publisher: Publisher;
  readonly diagnosticsOf: (run: Run) => ReadonlyMap<string, readonly Diagnostic[]>;
}

export interface Log {
  info(text: string): void;
  error(text: string): void;
}

export class Projects implements OpenFiles {
  readonly documents = new TextDocuments<OpenFile>({ create: OpenFile.open, update: OpenFile.update });
  private readonly projects = new Map<string, Project>();
  /** Open documents by path: two URIs of one file are one document, the later one counts. */
  private readonly paths = new Map<string, OpenFile>();
  /** Files outside the folders that an analysis asked for: a board file of the user's own. */
  private readonly asked = new Set<string>();
  /** Faults of rules that the log has. */
  private readonly told = new Set<string>();
  private engine: Engine | undefined;
  private scheduled = false;

  constructor(
    private readonly host: Host,
    private readonly log: Log,
  ) {
    this.documents.onDidOpen(({ document }) => this.opened(document));
    this.documents.onDidChangeContent(({ document }) => this.changed(document));
    this.documents.onDidClose(({ document }) => this.closed(document));
  }

  start(engine: Engine): void {
    this.engine = engine;
    this.schedule();
  }

  byPath(path: string): OpenFile | undefined {
    return this.paths.get(path);
  }

  inFolder(folder: string): readonly OpenFile[] {
    return [...this.paths.values()].filter(({ path }) => path !== undefined && folderOf(path) === folder);
  }

  /** The text of any file the analysis asks for, open or not. */
  readonly readText = (asked: string): string | undefined => {
    // A board file can be named by way of `..`; clients name it without.
    const path = posix.normalize(asked);
    this.asked.add(path);
    const open = this.paths.get(path);
    if (open !== undefined) {
      return open.text;
    }
    const read = this.host.reader.read(path);
    if (!read.ok && !read.missing) {
      this.log.info(`${path}: ${read.why}.`);
    }
    return read.ok ? read.text : undefined;
  };

  /** The present run for a document, made now where the last one is older than the files. */
  runFor(uri: string): { readonly path: string; readonly run: Run } | undefined {
    const path = pathOfUri(uri);
    return path === undefined ? undefined : this.runForPath(path);
  }

  runForPath(path: string): { readonly path: string; readonly run: Run } | undefined {
    const project = this.projects.get(folderOf(path));
    if (project?.dirty === true && this.engine !== undefined) {
      this.update(project, this.engine);
    }
    return project?.run === undefined ? undefined : { path, run: project.run };
  }

  /** Files changed on disk, as a client that watches them tells. */
  changedOnDisk(uris: readonly string[]): void {
    for (const path of uris.map((uri) => pathOfUri(uri))) {
      if (path === undefined || this.paths.has(path)) {
        continue;
      }
      if (this.asked.has(path)) {
        this.touch([...this.projects.values()]);
      } else if (concerns(path)) {
        this.touch([this.projects.get(folderOf(path))]);
      }
    }
  }

  private opened(document: OpenFile): void {
    const { path } = document;
    if (path === undefined || !concerns(path)) {
      return;
    }
    const folder = folderOf(path);
    this.paths.set(path, document);
    this.engine?.publisher.forget(path);
    if (!this.projects.has(folder)) {
      this.projects.set(folder, new Project(folder, this.host, this, (text) => this.log.info(text)));
    }
  }

  private changed(document: OpenFile): void {
    const { path } = document;
    if (path !== undefined && this.paths.has(path)) {
      this.paths.set(path, document);
      this.touch([this.projects.get(folderOf(path))]);
    }
  }

  private closed(document: OpenFile): void {
    const { path } = document;
    if (path === undefined || this.paths.get(path)?.uri !== document.uri) {
      return;
    }
    this.paths.delete(path);
    const folder = folderOf(path);
    const project = this.projects.get(folder);
    if (this.inFolder(folder).length > 0) {
      this.touch([project]);
      return;
    }
    project?.dispose();
    this.projects.delete(folder);
    this.engine?.publisher.clear(folder);
    this.keepNeededTexts();
  }

  private touch(projects: readonly (Project | undefined)[]): void {
    for (const project of projects) {
      if (project !== undefined) {
        project.dirty = true;
        this.schedule();
      }
    }
  }

  private schedule(): void {
    if (this.engine === undefined || this.scheduled) {
      return;
    }
    this.scheduled = true;
    this.host.later(() => {
      this.scheduled = false;
      const { engine } = this;
      for (const project of engine === undefined ? [] : this.projects.values()) {
        if (project.dirty && engine !== undefined) {
          this.update(project, engine);
        }
      }
    });
  }

  /** One run and its publication. A run that breaks is logged; what the client has then stays as it is. */
  private update(project: Project, engine: Engine): void {
    try {
      const run = project.update(engine.parser, engine.analyser);
      if (run === undefined) {
        engine.publisher.clear(project.folder);
      } else {
        engine.publisher.publish(project.folder, engine.diagnosticsOf(run), run);
        this.tellFaults(project.folder, run);
      }
    } catch (error) {
      this.log.error(`${project.folder}: the analysis broke. ${explain(error)}`);
    }
  }

  /** A rule that threw is told once, not at every key. */
  private tellFaults(folder: string, run: Run): void {
    for (const { rule, error } of run.snapshot.faults) {
      const text = `${folder}: the rule ${rule} broke, the others were run. ${explain(error)}`;
      if (!this.told.has(text)) {
        this.told.add(text);
        this.log.error(text);
      }
    }
  }

  private keepNeededTexts(): void {
    if (this.projects.size === 0) {
      this.asked.clear();
      this.told.clear();
    }
    const kept = new Set(this.asked);
    for (const folder of this.projects.keys()) {
      for (const file of this.host.listSources(folder)) {
        kept.add(file);
      }
      kept.add(`${folder}/${MANIFEST_NAME}`);
    }
    this.host.reader.keepOnly(kept);
  }
}

/** An error for the log, with its stack. */
export function explain(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}

function concerns(path: string): boolean {
  return nameOf(path) === MANIFEST_NAME || isSource(path);
}
