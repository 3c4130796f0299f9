/**
 * Which sketch folders are looked at, and when. A folder is looked at from the first of its documents that opens to the
 * last that closes; documents in its `src` and `include` are its own. A change marks its folder and schedules one run for the whole burst; a request that comes before it
 * gets the run made at once, so it never sees an older text than the client's.
 */
import { posix } from 'node:path';
import { type Diagnostic, TextDocuments } from 'vscode-languageserver';
import type { Analyser } from '../analysis';
import { homesOf, isBelow, isSource, MANIFEST_NAME } from '../files';
import type { SketchParser } from '../sketch';
import type { Host } from './host';
import { OpenFile } from './open-file';
import { type OpenFiles, Project, type Run } from './project';
import type { Publisher } from './publisher';
import { nameOf, pathOfUri } from './uris';

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
  /** The sketch folder of each open document, by path. */
  private readonly homes = new Map<string, string>();
  /** Files outside the folders that an analysis asked for: a board file of the user's own. */
  private readonly asked = new Set<string>();
  /** Faults of rules that the log has. */
  private readonly told = new Set<string>();
  /** Workspace folders: how far an include may lead out of a sketch's own. */
  private roots: readonly string[] = [];
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

  ofSketch(folder: string): readonly OpenFile[] {
    return [...this.paths.values()].filter(
      ({ path }) => path !== undefined && this.homes.get(path) === folder,
    );
  }

  /** Tells the workspace folders, before the first document opens. */
  setRoots(uris: readonly string[]): void {
    this.roots = uris.map((uri) => pathOfUri(uri)?.replace(/\/+$/, '')).filter((path) => path !== undefined);
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
    const home = this.projects.get(this.homes.get(path) ?? this.homeOf(path));
    // A header that several sketches share belongs to none of them.
    const readers = [...this.projects.values()].filter((project) => project !== home && project.reads(path));
    for (const project of home === undefined ? readers : [home, ...readers]) {
      if (project.dirty && this.engine !== undefined) {
        this.update(project, this.engine);
      }
      if (project.run?.files.has(path)) {
        return { path, run: project.run };
      }
    }
    return undefined;
  }

  /** The sketch folder of a document and what drafts need of it; undefined where it is in none. */
  projectFor(uri: string): { readonly project: Project; readonly engine: Engine } | undefined {
    const path = pathOfUri(uri);
    const project =
      path === undefined ? undefined : this.projects.get(this.homes.get(path) ?? this.homeOf(path));
    return project === undefined || this.engine === undefined ? undefined : { project, engine: this.engine };
  }

  /** Files changed on disk, as a client that watches them tells. */
  changedOnDisk(uris: readonly string[]): void {
    for (const path of uris.map((uri) => pathOfUri(uri))) {
      if (path === undefined || this.paths.has(path)) {
        continue;
      }
      if (nameOf(path) === MANIFEST_NAME) {
        this.settleHomes();
      }
      if (this.asked.has(path)) {
        this.touch([...this.projects.values()]);
      } else if (concerns(path)) {
        // A file that was not there before may be what an include line was missing.
        this.touch([...this.projects.values()].filter(({ ceiling }) => isBelow(ceiling, path)));
      }
    }
  }

  /** Settings have changed, and with them what every run says. */
  touchAll(): void {
    this.touch([...this.projects.values()]);
  }

  private opened(document: OpenFile): void {
    const { path } = document;
    if (path === undefined || !concerns(path)) {
      return;
    }
    this.paths.set(path, document);
    this.engine?.publisher.forget(path);
    this.homes.set(path, this.homeOf(path));
    this.settleHomes();
  }

  private changed(document: OpenFile): void {
    const { path } = document;
    if (path !== undefined && this.paths.has(path)) {
      this.paths.set(path, document);
      this.touchReaders(path, this.homes.get(path));
    }
  }

  private closed(document: OpenFile): void {
    const { path } = document;
    if (path === undefined || this.paths.get(path)?.uri !== document.uri) {
      return;
    }
    const home = this.homes.get(path);
    this.paths.delete(path);
    this.homes.delete(path);
    this.settleHomes();
    this.touchReaders(path, home);
  }

  /** The sketch folder that a file belongs to: the nearest with a manifest, saved or open, else its own. */
  private homeOf(path: string): string {
    const homes = homesOf(path);
    const hasManifest = (folder: string) => {
      const manifest = `${folder === '/' ? '' : folder}/${MANIFEST_NAME}`;
      return this.paths.has(manifest) || this.host.reader.read(manifest).ok;
    };
    const [own = '/'] = homes;
    // A file that can lie in one folder's sketch alone needs no look at the disk.
    return homes.length === 1 ? own : (homes.find(hasManifest) ?? own);
  }

  /** Looks where the open documents belong, now that one came or went, and keeps a project for each such folder. */
  private settleHomes(): void {
    for (const path of this.paths.keys()) {
      const home = this.homeOf(path);
      const before = this.homes.get(path);
      if (before !== home) {
        this.homes.set(path, home);
        this.touch([before, home].map((folder) => this.projects.get(folder ?? '')));
      }
    }
    const needed = new Set(this.homes.values());
    for (const folder of needed) {
      if (!this.projects.has(folder)) {
        const root = this.roots.find((each) => each === folder || isBelow(each, folder));
        const log = (text: string) => this.log.info(text);
        this.projects.set(folder, new Project(folder, this.host, this, log, root));
      }
    }
    const gone = [...this.projects.values()].filter(({ folder }) => !needed.has(folder));
    for (const project of gone) {
      project.dispose();
      this.projects.delete(project.folder);
      this.engine?.publisher.clear(project.folder);
    }
    if (gone.length > 0) {
      this.keepNeededTexts();
    }
  }

  /** Touches the sketch a file belongs to and those that read it. */
  private touchReaders(path: string, home: string | undefined): void {
    this.touch([...this.projects.values()].filter(({ folder }) => folder === home));
    this.touch([...this.projects.values()].filter((project) => project.reads(path)));
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
    for (const project of this.projects.values()) {
      for (const file of project.paths) {
        kept.add(file);
      }
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
