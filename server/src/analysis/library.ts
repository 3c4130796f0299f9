/**
 * The library files as one lookup: boards and part kinds are read when first asked for, since a build uses one board
 * and a handful of kinds.
 */
import type { Board } from '../base/build';
import type { LibraryFacts } from '../base/platform';
import type { Read } from '../base/read';
import { type HardwareLibrary, type PartKind, readBoard, readPartKind } from '../hardware';

/** Texts of the library files by name without `.json`. */
export interface LibraryTexts {
  readonly boards: ReadonlyMap<string, string>;
  readonly parts: ReadonlyMap<string, string>;
  readonly libraries: ReadonlyMap<string, string>;
}

/** A library ready for use. Boards of one's own are read anew when their text changes. */
export interface OpenLibrary {
  readonly hardware: HardwareLibrary;
  readonly calls: readonly LibraryFacts[];
}

export function openLibrary(
  texts: LibraryTexts,
  readText: (path: string) => string | undefined,
): OpenLibrary {
  const find = (idOrPath: string, from: string) => {
    const own = texts.boards.get(idOrPath);
    if (own !== undefined) return { file: `boards/${idOrPath}.json`, text: own };
    if (!/[./\\]/.test(idOrPath)) return undefined;
    const file = resolvePath(from, idOrPath);
    const text = readText(file);
    return text === undefined ? undefined : { file, text };
  };
  const boards = new Map<string, Read<Board | undefined>>();
  const kinds = new Map<string, PartKind | undefined>();
  const kindOf = (name: string): PartKind | undefined => {
    const text = texts.parts.get(name);
    if (text === undefined) return undefined;
    if (!kinds.has(name)) kinds.set(name, readPartKind(`parts/${name}.json`, text).value);
    return kinds.get(name);
  };
  const boardIds = [...texts.boards.keys()].sort();
  return {
    hardware: {
      boardIds,
      partKinds: { get: kindOf, keys: () => texts.parts.keys() },
      board(idOrPath, manifestFile) {
        const source = find(idOrPath, manifestFile);
        if (!source) return undefined;
        const inLibrary = texts.boards.has(idOrPath);
        const kept = inLibrary ? boards.get(idOrPath) : undefined;
        if (kept) return kept;
        const read = readBoard(source, find, boardIds);
        if (inLibrary) boards.set(idOrPath, read);
        return read;
      },
    },
    calls: [...texts.libraries.values()].map((text) => JSON.parse(text) as LibraryFacts),
  };
}

/** A path relative to the folder of `from`, with `.` and `..` taken out. Forward slashes throughout. */
export function resolvePath(from: string, path: string): string {
  const slashed = path.replaceAll('\\', '/');
  const whole = /^(\/|[A-Za-z]:\/)/.test(slashed)
    ? slashed
    : `${from.slice(0, from.lastIndexOf('/') + 1)}${slashed}`;
  const steps: string[] = [];
  for (const step of whole.split('/')) {
    if (step === '.' || (step === '' && steps.length > 0)) continue;
    if (step === '..' && steps.length > 0 && steps.at(-1) !== '..' && steps.at(-1) !== '') steps.pop();
    else steps.push(step);
  }
  return steps.join('/');
}
