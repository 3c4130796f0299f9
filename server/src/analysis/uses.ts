/**
 * What a sketch does to pins, without any wiring: the sketch layer's facts on a board that somebody names, that the
 * manifest names, or that is assumed where nobody does.
 */
import type { Board } from '../base/build';
import type { SketchFacts } from '../base/pin-use';
import { readManifest } from '../hardware';
import { readSketch } from '../sketch';
import type { ProjectInput } from './analyser';
import type { OpenLibrary } from './library';

/** The board of a sketch that says nothing of one: the one that examples of the core are written for (from memory). */
export const ASSUMED_BOARD = 'uno-r3';

/** The board a sketch is read for, and who chose it; or a whole sentence that says why there is none. */
export type BoardChoice =
  | {
      readonly ok: true;
      readonly board: Board;
      /** `asked`: by whoever calls; `manifest`: by the sketch; `assumed`: by nobody. */
      readonly by: 'asked' | 'manifest' | 'assumed';
      /** A whole sentence where the manifest's own board could not be used. */
      readonly note?: string;
    }
  | { readonly ok: false; readonly why: string };

/**
 * Finds a board by its id in the library or by the path of a board file.
 * @param from File that a relative path starts from, with forward slashes.
 */
export function findBoard(library: OpenLibrary, idOrPath: string, from: string): BoardChoice {
  const read = library.hardware.board(idOrPath, from);
  if (read === undefined) {
    return { ok: false, why: `There is no board "${idOrPath}".` };
  }
  if (read.value === undefined) {
    const [first] = read.problems;
    return {
      ok: false,
      why: `The board "${idOrPath}" cannot be used. ${first?.message ?? 'Its file is empty.'}`,
    };
  }
  return { ok: true, board: read.value, by: 'asked' };
}

/**
 * The board of a sketch that nobody named one for: the manifest's, else the assumed one.
 * @throws Error in words where the library lacks the assumed board: the installation is broken.
 */
export function chooseBoard(library: OpenLibrary, manifest: ProjectInput['manifest']): BoardChoice {
  const read = manifest && readManifest(manifest.file, manifest.text, library.hardware);
  if (read?.value !== undefined) {
    return { ok: true, board: read.value.board, by: 'manifest' };
  }
  const found = findBoard(library, ASSUMED_BOARD, '');
  if (!found.ok) {
    throw new Error(`${found.why} Install the program anew.`);
  }
  const note = read && 'The manifest names no board that can be used; wiretrue check says why.';
  return { ok: true, board: found.board, by: 'assumed', ...(note === undefined ? {} : { note }) };
}

/**
 * What the sketch does to the pins of a board.
 * @param sources In the order the build joins them.
 */
export function readUses(library: OpenLibrary, board: Board, sources: ProjectInput['sources']): SketchFacts {
  return readSketch(sources, board.platform, library.calls);
}
