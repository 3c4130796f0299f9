/**
 * One sketch folder: its files as they are now (open documents first, else the disk), their parsed forms, and the last
 * snapshot of the analysis. Forms are kept by text, so a run parses only what changed since the last one; trees are kept
 * for open documents only.
 */
import type { Analyser, Snapshot } from '../analysis';
import { arrangeSketch, countsInSketch, MANIFEST_NAME, rememberIncludes } from '../files';
import type { ParsedFile, SketchParser } from '../sketch';
import type { Host } from './host';
import type { Journal, OpenFile } from './open-file';
import { type Lines, linesOf } from './places';

/** A file of a run: what was analysed, so that offsets keep their meaning. */
export interface SeenFile {
  readonly text: string;
  readonly lines: Lines;
  /** The open document it was, with its URI and version; absent for a file from disk. */
  readonly open?: OpenFile;
}

/** The outcome of one run. */
export interface Run {
  readonly snapshot: Snapshot;
  readonly files: ReadonlyMap<string, SeenFile>;
}

/** Reads open documents. */
export interface OpenFiles {
  byPath(path: string): OpenFile | undefined;
  /** Those that belong to the sketch of a folder: in it, or in its `src` or `include`. */
  ofSketch(folder: string): readonly OpenFile[];
}

interface Parsed {
  readonly file: ParsedFile;
  /** Journal of the open document whose tree it holds; absent where there is no tree. */
  readonly journal?: Journal;
}

export class Project {
  /** Undefined where there is no manifest, or before the first run, or where the analysis broke. */
  run: Run | undefined;
  /** True while files have changed since the last run. */
  dirty = true;
  private readonly parsed = new Map<string, Parsed>();
  private readonly closedLines = new Map<string, Lines>();
  private readonly complaints = new Set<string>();
  private readonly includes = rememberIncludes();
  /** Files that the last attempt at a run read, whether or not it came to an end. */
  private read: ReadonlyMap<string, SeenFile> = new Map();

  constructor(
    readonly folder: string,
    private readonly host: Host,
    private readonly open: OpenFiles,
    private readonly log: (text: string) => void,
    /** Folder that includes must not lead out of: the workspace folder, else the sketch's own. */
    readonly ceiling: string = folder,
  ) {}

  /** True for a file that the last run read. */
  reads(path: string): boolean {
    return this.read.has(path);
  }

  /** The files that the last run read. */
  get paths(): readonly string[] {
    return [...this.read.keys()];
  }

  get manifestPath(): string {
    return `${this.prefix}${MANIFEST_NAME}`;
  }

  /**
   * Brings the run up to date with the files.
   * @throws whatever the parser or the analysis throws; the run is undefined then.
   */
  update(parser: SketchParser, analyser: Analyser): Run | undefined {
    this.dirty = false;
    this.run = undefined;
    const files = new Map<string, SeenFile>();
    this.read = files;
    const manifest = this.see(this.manifestPath, files);
    if (manifest === undefined) {
      this.dispose();
      // Nobody parses here now, so nobody would empty the journals either.
      this.forgetJournals(() => true);
      return undefined;
    }
    const sources = this.readSources(parser, files);
    // What was looked at and left out by a bound has no form.
    const kept = new Set([this.manifestPath, ...sources.map(({ file }) => file)]);
    for (const path of [...files.keys()].filter((each) => !kept.has(each))) {
      files.delete(path);
    }
    this.drop((path) => !files.has(path));
    this.forgetJournals((path) => !files.has(path));
    const snapshot = analyser.analyse({
      manifest: { file: this.manifestPath, text: manifest.text },
      sources,
    });
    this.run = { snapshot, files };
    return this.run;
  }

  /** The sketch alone, for a draft of its manifest: read anew, so that nothing of a run is touched. */
  readBare(parser: SketchParser): {
    readonly sources: readonly ParsedFile[];
    readonly files: ReadonlyMap<string, SeenFile>;
  } {
    const files = new Map<string, SeenFile>();
    const { sources: arranged } = this.arrange(files);
    const sources = arranged.flatMap(({ file }) => {
      const seen = files.get(file);
      if (seen === undefined) return [];
      const parsed = parser.parse(file, seen.text);
      parsed.dispose();
      return [parsed];
    });
    return { sources, files };
  }

  private arrange(files: Map<string, SeenFile>) {
    const { folder, ceiling } = this;
    return arrangeSketch(
      { folder, ceiling },
      this.listedPaths(),
      (path) => this.see(path, files)?.text,
      this.includes,
    );
  }

  private readSources(parser: SketchParser, files: Map<string, SeenFile>): readonly ParsedFile[] {
    const { sources: arranged, notes } = this.arrange(files);
    for (const note of notes) {
      this.complain(note, note);
    }
    return arranged.flatMap(({ file: path }) => {
      const seen = files.get(path);
      return seen === undefined ? [] : [this.parse(parser, path, seen)];
    });
  }

  /** Frees all trees and forgets all forms. */
  dispose(): void {
    this.drop(() => true);
    this.closedLines.clear();
  }

  private get prefix(): string {
    return this.folder.endsWith('/') ? this.folder : `${this.folder}/`;
  }

  /** Files on disk, and documents that were never saved. */
  private listedPaths(): readonly string[] {
    const open = this.open.ofSketch(this.folder).flatMap(({ path }) => path ?? []);
    const counting = open.filter((path) => countsInSketch(this.folder, path));
    return [...new Set([...this.host.listSources(this.folder), ...counting])];
  }

  private forgetJournals(goes: (path: string) => boolean): void {
    for (const { path, journal } of this.open.ofSketch(this.folder)) {
      if (path !== undefined && goes(path)) {
        journal.forget();
      }
    }
  }

  private complain(about: string, text: string): void {
    if (!this.complaints.has(about)) {
      this.complaints.add(about);
      this.log(text);
    }
  }

  private see(path: string, files: Map<string, SeenFile>): SeenFile | undefined {
    const open = this.open.byPath(path);
    if (open !== undefined) {
      const seen = { text: open.text, lines: open.lines, open };
      files.set(path, seen);
      return seen;
    }
    const read = this.host.reader.read(path);
    if (!read.ok) {
      if (!read.missing) {
        this.complain(path, `${path}: ${read.why}. It is left out.`);
      }
      return undefined;
    }
    this.complaints.delete(path);
    let lines = this.closedLines.get(path);
    if (lines?.getText() !== read.text) {
      lines = linesOf(read.text);
      this.closedLines.set(path, lines);
    }
    const seen = { text: read.text, lines };
    files.set(path, seen);
    return seen;
  }

  private parse(parser: SketchParser, path: string, seen: SeenFile): ParsedFile {
    const before = this.parsed.get(path);
    // A shared header belongs to one sketch, whose tree follows its journal; any other reads it as a file from disk.
    const journal = this.open.ofSketch(this.folder).some((file) => file === seen.open)
      ? seen.open?.journal
      : undefined;
    if (before !== undefined && before.journal === journal && before.file.text === seen.text) {
      journal?.take();
      return before.file;
    }
    // The old tree must not be freed twice: reparse frees it, and where it throws the entry is gone all the same.
    this.parsed.delete(path);
    const changes = journal?.take();
    let file: ParsedFile;
    if (before !== undefined && before.journal === journal && changes !== undefined) {
      file = parser.reparse(before.file, seen.text, changes);
    } else {
      free(before);
      file = parser.parse(path, seen.text);
    }
    if (journal === undefined) {
      file.dispose();
      this.parsed.set(path, { file });
    } else {
      this.parsed.set(path, { file, journal });
    }
    return file;
  }

  private drop(goes: (path: string) => boolean): void {
    for (const [path, parsed] of this.parsed) {
      if (goes(path)) {
        free(parsed);
        this.parsed.delete(path);
      }
    }
    for (const path of this.closedLines.keys()) {
      if (goes(path)) {
        this.closedLines.delete(path);
      }
    }
  }
}

/** Frees the tree, where there is one: a form without a journal has lost its tree already. */
function free(parsed: Parsed | undefined): void {
  if (parsed?.journal !== undefined) {
    parsed.file.dispose();
  }
}
