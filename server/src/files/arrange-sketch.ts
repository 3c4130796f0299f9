/**
 * Which files make one sketch, and in which order they are handed over. Tabs and what is compiled along always count; a
 * header counts where something includes it, for a spare one (`config.example.h`) would define everything twice.
 */
import { realpathSync } from 'node:fs';
import { posix, resolve } from 'node:path';
import { hasSetup, type Includes, scanIncludes } from './includes';
import {
  HEADER_FOLDER,
  isBelow,
  isHeader,
  isTab,
  namesakeOf,
  orderSources,
  SOURCE_FOLDER,
  slashed,
} from './names';

/** Files of one sketch that are read at most, and characters of all of them together. */
export const MOST_SOURCES = 400;
export const MOST_CHARACTERS = 20_000_000;

/** A file's path as every span names it (absolute, forward slashes), and its text. */
export interface FileText {
  readonly file: string;
  readonly text: string;
}

/** Where a sketch lies. */
export interface SketchPlace {
  /** Absolute, forward slashes. */
  readonly folder: string;
  /** Folder that includes must not lead out of: the sketch's own or one above it. */
  readonly ceiling: string;
  /** The tab that is the whole sketch, where its folder holds several. */
  readonly only?: string;
}

/** The files of one sketch. */
export interface Arrangement {
  /** In the order they are handed over. */
  readonly sources: readonly FileText[];
  /** What a bound left out, in whole sentences. */
  readonly notes: readonly string[];
  /** Included paths that are no file of the sketch, as written: headers of the core and of libraries. */
  readonly foreign: ReadonlySet<string>;
}

/** What reading a file from outside the folder takes: undefined where it is missing or cannot be read. */
export type ReadSource = (file: string) => string | undefined;

/**
 * Arranges a sketch.
 * @param listed The source files of its folder (list-sources.ts) and documents not yet saved there.
 * @param scan Keeps include lines between calls, where the caller has a memory.
 */
export function arrangeSketch(
  place: SketchPlace,
  listed: readonly string[],
  read: ReadSource,
  scan: (text: string, file: string) => Includes = scanIncludes,
): Arrangement {
  return new Arranger(place, listed, read, scan).arrange();
}

class Arranger {
  private readonly texts = new Map<string, string | undefined>();
  /** Files that count. */
  private readonly reached = new Set<string>();
  private readonly foreign = new Set<string>();
  private readonly notes = new Set<string>();
  private readonly listed: ReadonlySet<string>;
  /** Folders an include is looked for in besides the includer's own. */
  private readonly search: readonly string[];
  private characters = 0;
  private count = 0;
  private computed = false;

  constructor(
    private readonly place: SketchPlace,
    listed: readonly string[],
    private readonly read: ReadSource,
    private readonly scan: (text: string, file: string) => Includes,
  ) {
    this.listed = new Set(listed);
    const { folder } = place;
    // In a sketch only its own folder is searched; a plain project is built with its two source folders.
    const plain = !listed.some(isTab);
    const also = plain ? [SOURCE_FOLDER, HEADER_FOLDER].map((name) => posix.join(folder, name)) : [];
    this.search = [folder, ...also];
  }

  arrange(): Arrangement {
    const { folder, only } = this.place;
    const listed = [...this.listed];
    const tabs = only === undefined ? listed.filter(isTab) : [only];
    const main = only ?? this.mainOf(tabs, listed);
    const units = only === undefined ? listed.filter((file) => !isHeader(file)) : [only];
    this.follow(orderSources(folder, main, units));
    if (only !== undefined) {
      this.followCompanions();
    }
    if (this.computed) {
      // Which header a macro names is not known here: all of them count.
      this.follow(orderSources(folder, main, listed.filter(isHeader)));
    }
    const files = orderSources(folder, main, [...this.reached]);
    const sources = files.flatMap((file) => {
      const text = this.texts.get(file);
      return text === undefined ? [] : [{ file, text }];
    });
    return { sources, notes: [...this.notes], foreign: this.foreign };
  }

  /** The tab the build begins with, else a plain project's main file. */
  private mainOf(tabs: readonly string[], listed: readonly string[]): string | undefined {
    const { folder } = this.place;
    if (tabs.length > 0) {
      const namesake = namesakeOf(folder, tabs);
      const whole = namesake === undefined ? tabs.filter((tab) => hasSetup(this.textOf(tab) ?? '')) : [];
      return namesake ?? (whole.length === 1 ? whole[0] : undefined);
    }
    return ['main.cpp', `${SOURCE_FOLDER}/main.cpp`]
      .map((name) => posix.join(folder, name))
      .find((file) => listed.includes(file));
  }

  /** Takes files and, one after the other, everything they include. */
  private follow(files: readonly string[]): void {
    const waiting = files.filter((file) => !this.reached.has(file)).reverse();
    for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
      const text = this.reached.has(file) ? undefined : this.take(file);
      if (text === undefined) {
        continue;
      }
      const { paths, computed } = this.scan(text, file);
      this.computed ||= computed;
      const found: string[] = [];
      for (const { path, system } of paths) {
        const target = this.find(file, path, system);
        if (target === undefined) {
          this.foreign.add(path);
        } else if (target !== file) {
          found.push(target);
        }
      }
      this.reached.add(file);
      waiting.push(...found.reverse());
    }
  }

  /** A tab that stands alone takes what is compiled along only where it includes the header of the same name. */
  private followCompanions(): void {
    for (let before = -1; before !== this.reached.size; ) {
      before = this.reached.size;
      const stems = new Set([...this.reached].filter(isHeader).map(stemOf));
      this.follow(
        [...this.listed].filter((file) => !isHeader(file) && !isTab(file) && stems.has(stemOf(file))),
      );
    }
  }

  /** The text of a file that now counts; undefined where it cannot be read or a bound is met. */
  private take(file: string): string | undefined {
    const text = this.textOf(file);
    if (text === undefined) {
      return undefined;
    }
    this.count += 1;
    this.characters += text.length;
    if (this.count > MOST_SOURCES || (this.characters > MOST_CHARACTERS && this.count > 1)) {
      this.notes.add(
        `${this.place.folder}: the sketch has more than ${MOST_SOURCES} files or ${MOST_CHARACTERS} characters; the rest is left out.`,
      );
      return undefined;
    }
    return text;
  }

  private textOf(file: string): string | undefined {
    if (!this.texts.has(file)) {
      this.texts.set(file, this.read(file));
    }
    return this.texts.get(file);
  }

  /** The file that an include line means, as a compiler looks for it: beside the includer, then on the search path. */
  private find(from: string, path: string, system: boolean): string | undefined {
    const written = path.replaceAll('\\', '/');
    if (written.startsWith('/') || /^[A-Za-z]:/.test(written) || written.includes('\0')) {
      return undefined;
    }
    for (const start of new Set([posix.dirname(from), ...this.search])) {
      const file = posix.join(start, written);
      if (this.listed.has(file) ? this.textOf(file) !== undefined : !system && this.isWithin(file)) {
        return file;
      }
    }
    return undefined;
  }

  /** True for a file outside the list that is there and lies below the ceiling, links followed. */
  private isWithin(file: string): boolean {
    const { ceiling } = this.place;
    if (!isBelow(ceiling, file) || this.textOf(file) === undefined) {
      return false;
    }
    try {
      return isBelow(slashed(realpathSync(ceiling)), slashed(realpathSync(file)));
    } catch {
      // Not on disk: a document that was never saved, or a made-up file of a test.
      return true;
    }
  }
}

function stemOf(file: string): string {
  return file.slice(0, file.lastIndexOf('.'));
}

/** The ceiling of a sketch that was found from several named folders: the outermost that holds it, else its own. */
export function ceilingOf(folder: string, named: readonly string[], base: string): string {
  const above = named
    .map((path) => slashed(resolve(base, path)))
    .filter((path) => path === folder || isBelow(path, folder));
  return above.sort((a, b) => a.length - b.length)[0] ?? folder;
}
