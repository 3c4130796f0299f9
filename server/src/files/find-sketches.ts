/** From the paths somebody names to the sketches they lead to, whether or not a `hardware.jsonc` lies beside them. */
import { type Dirent, statSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { ceilingOf, type SketchPlace } from './arrange-sketch';
import { homesOf, isProject } from './find-projects';
import { hasSetup } from './includes';
import { readSourceList } from './list-sources';
import { loadSketch } from './load-project';
import {
  compareText,
  HEADER_FOLDER,
  isSource,
  isTab,
  MANIFEST_NAME,
  namesakeOf,
  SOURCE_FOLDER,
  slashed,
} from './names';
import { explainFileError, type FileProblem, type TextReader } from './read-text';
import { type Walk, walkFolders } from './walk-folders';

/** A plain C++ project is a sketch where it includes this, the header by which a core brings its calls. */
const CORE_HEADER = 'Arduino.h';
const MAIN_FILE = 'main.cpp';

/** Sketches, and where nobody could look. */
export interface FoundSketches {
  /** By folder, then by file; each once. */
  readonly sketches: readonly SketchPlace[];
  /** A named path that leads to no sketch, or a folder that could not be read. */
  readonly problems: readonly FileProblem[];
  /** What a bound of the walk or a folder's layout left out, in whole sentences. */
  readonly notes: readonly string[];
}

/**
 * Finds the sketches that `paths` name. A path may be a folder (it and all below it is searched), a source file or a
 * `hardware.jsonc` (both stand for the sketch they belong to).
 *
 * A folder is one sketch where it holds a `hardware.jsonc`, a tab named like itself, a single tab with a `setup()`, or
 * no tab but a `main.cpp` (also in `src`) that includes the core's header. Several tabs with a `setup()` each are a
 * sketch each.
 * @param base Folder that relative paths start from.
 */
export function findSketches(paths: readonly string[], base: string, reader: TextReader): FoundSketches {
  const walk: Walk = { problems: [], notes: new Set(), read: 0 };
  const found = new Map<string, SketchPlace>();
  const add = (folder: string, only?: string) => {
    const ceiling = ceilingOf(folder, paths, base);
    found.set(only ?? folder, { folder, ceiling, ...(only === undefined ? {} : { only }) });
  };
  for (const path of paths) {
    const full = resolve(base, path);
    try {
      if (statSync(full).isDirectory()) {
        let count = 0;
        walkFolders(full, path, walk, (folder, entries) => {
          const here = sketchesIn(slashed(folder), namesIn(entries), reader, walk.notes);
          for (const only of here) {
            add(slashed(folder), only);
          }
          count += here.length;
          // What lies there belongs to the sketch.
          return here.length > 0 ? [SOURCE_FOLDER, HEADER_FOLDER] : [];
        });
        if (count === 0) {
          walk.problems.push({ path, why: 'has no sketch in it or below it' });
        }
      } else if (basename(full) !== MANIFEST_NAME && !isSource(full)) {
        walk.problems.push({ path, why: `is neither a source file of a sketch nor a ${MANIFEST_NAME}` });
      } else {
        const { folder, only } = sketchOf(slashed(full), reader);
        add(folder, only);
      }
    } catch (error) {
      walk.problems.push({ path, why: explainFileError(error) });
    }
  }
  const sketches = [...found].sort(([a], [b]) => compareText(a, b)).map(([, sketch]) => sketch);
  return { sketches, problems: walk.problems, notes: [...walk.notes] };
}

/** The sketch that a named source file or manifest belongs to; the file alone where there is none. */
function sketchOf(file: string, reader: TextReader): { readonly folder: string; readonly only?: string } {
  const homes = homesOf(file);
  const [own = '.'] = homes;
  const project = homes.find(isProject);
  if (project !== undefined || basename(file) === MANIFEST_NAME) {
    return { folder: project ?? own };
  }
  for (const folder of homes) {
    const names = readSourceList(folder).files.map((each) => each.slice(folder.length + 1));
    const here = sketchesIn(folder, new Set(names), reader);
    if (here.length === 1 && here[0] === undefined) {
      return { folder };
    }
  }
  return { folder: own, only: file };
}

function namesIn(entries: readonly Dirent[]): ReadonlySet<string> {
  return new Set(entries.filter((entry) => !entry.isDirectory()).map((entry) => entry.name));
}

/** The sketches of one folder: the single tab each of them is, or undefined for the folder as a whole. */
function sketchesIn(
  folder: string,
  names: ReadonlySet<string>,
  reader: TextReader,
  notes?: Set<string>,
): readonly (string | undefined)[] {
  const tabs = [...names].filter((name) => isTab(name) && !name.includes('/')).sort(compareText);
  if (names.has(MANIFEST_NAME) || tabs.length === 1 || namesakeOf(folder, tabs) !== undefined) {
    return [undefined];
  }
  if (tabs.length === 0) {
    return isPlainProject(folder, reader) ? [undefined] : [];
  }
  const whole = tabs.filter((name) => {
    const read = reader.read(join(folder, name));
    return read.ok && hasSetup(read.text);
  });
  if (whole.length < 2) {
    return [undefined];
  }
  for (const name of tabs) {
    if (!whole.includes(name)) {
      notes?.add(
        `${slashed(join(folder, name))} defines no setup() and belongs to none of the ${whole.length} sketches beside it.`,
      );
    }
  }
  return whole.map((name) => slashed(join(folder, name)));
}

/** True for a folder with a main file, beside or in `src`, that includes the core's header in whatever way. */
function isPlainProject(folder: string, reader: TextReader): boolean {
  const main = [join(folder, MAIN_FILE), join(folder, SOURCE_FOLDER, MAIN_FILE)].some(
    (file) => statSync(file, { throwIfNoEntry: false })?.isFile() === true,
  );
  return main && loadSketch({ folder, ceiling: folder }, reader).foreign.has(CORE_HEADER);
}
