/**
 * One fault put into one clean build, as data: what is changed, which rule has to speak, and where. A seed that lies
 * just inside a limit says so instead, and the rule has to keep silent.
 */
import {
  applyEdits as applyJsonEdits,
  findNodeAtLocation,
  getLocation,
  type JSONPath,
  modify,
  parseTree,
} from 'jsonc-parser';
import type { Finding } from '../../../server/src/base/finding';
import { type CleanBuild, type Files, MANIFEST, mainSketch } from './builds';

export type SeedEdit =
  /** Text that stands exactly once (or `all` of it) is replaced. The file is the build's sketch where none is named. */
  | { readonly find: string; readonly put: string; readonly file?: string; readonly all?: true }
  /** A value of the manifest: set, removed (no value), or inserted into a list. */
  | { readonly path: JSONPath; readonly value?: unknown; readonly insert?: true };

/** Where the finding may stand: the line of a piece of the sketch, a part's entry, or a wire that names an end. */
export type Place =
  | { readonly line: string; readonly file?: string }
  | { readonly part: string }
  | { readonly wire: string }
  /** Anywhere in the manifest's text that reads so. */
  | { readonly text: string };

export interface Seed {
  readonly rule: string;
  readonly build: string;
  /** One phrase: what was done. */
  readonly about: string;
  readonly edits: readonly SeedEdit[];
  readonly places: readonly Place[];
  /** Words that the message has to hold: the pin, the part. */
  readonly says: readonly string[];
  /** True: the rule must not speak; the case lies just inside. */
  readonly silent?: true;
  /** Other rules that rightly speak of the same edit. */
  readonly besides?: readonly string[];
}

/** @throws Error where an edit does not fit: a seed that changes nothing must not pass for one that was not found. */
export function applySeed(build: CleanBuild, seed: Seed): Files {
  const files: Record<string, string> = { ...build.files };
  for (const edit of seed.edits) {
    const file = 'path' in edit ? MANIFEST : (edit.file ?? mainSketch(build));
    const text = files[file];
    if (text === undefined) throw new Error(`${describe(seed)}: there is no ${file}`);
    files[file] = 'path' in edit ? editManifest(text, edit, seed) : editText(text, edit, seed);
  }
  if (Object.entries(files).every(([file, text]) => build.files[file] === text)) {
    throw new Error(`${describe(seed)}: the edits change nothing`);
  }
  return files;
}

export function describe({ rule, build, about }: Seed): string {
  return `${rule} in ${build}: ${about}`;
}

function editText(text: string, edit: Extract<SeedEdit, { find: string }>, seed: Seed): string {
  const pieces = text.split(edit.find);
  if (pieces.length < 2 || (pieces.length > 2 && !edit.all)) {
    throw new Error(`${describe(seed)}: "${edit.find}" stands ${pieces.length - 1} times`);
  }
  return pieces.join(edit.put);
}

function editManifest(text: string, edit: Extract<SeedEdit, { path: JSONPath }>, seed: Seed): string {
  const options = {
    formattingOptions: { insertSpaces: true, tabSize: 2 },
    ...(edit.insert && { isArrayInsertion: true }),
  };
  const edits = modify(text, edit.path, edit.value, options);
  if (edits.length === 0) throw new Error(`${describe(seed)}: ${edit.path.join('.')} is not there`);
  return applyJsonEdits(text, edits);
}

/** True where the finding stands at one of the seed's places and names what it has to name. */
export function isAt(finding: Finding, seed: Seed, files: Files, sketch: string): boolean {
  const { message } = finding;
  return (
    seed.says.every((word) => holdsWord(message, word)) &&
    seed.places.some((place) => standsAt(finding, place, files, sketch))
  );
}

function standsAt({ span }: Finding, place: Place, files: Files, sketch: string): boolean {
  const file = 'line' in place ? (place.file ?? sketch) : MANIFEST;
  if (span.file !== file) return false;
  const text = files[file] ?? '';
  if ('text' in place) return linesAround(text, span.start, span.end).includes(place.text);
  if ('part' in place || 'wire' in place) {
    const [section, which] = getLocation(text, span.start + 1).path;
    if ('part' in place) return section === 'parts' && which === place.part;
    if (section !== 'wires' || typeof which !== 'number') return false;
    const tree = parseTree(text);
    const entry = tree && findNodeAtLocation(tree, ['wires', which]);
    const words = text.slice(entry?.offset ?? 0, (entry?.offset ?? 0) + (entry?.length ?? 0));
    return new RegExp(`"${asPattern(place.wire)}["@.]`).test(words);
  }
  return linesAround(text, span.start, span.end).includes(place.line);
}

function asPattern(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

function holdsWord(text: string, word: string): boolean {
  return new RegExp(`(^|[^\\w])${asPattern(word)}($|[^\\w])`).test(text);
}

/** The lines that a span touches, whole. */
function linesAround(text: string, start: number, end: number): string {
  const from = text.lastIndexOf('\n', start - 1) + 1;
  const to = text.indexOf('\n', Math.max(start, end - 1));
  return text.slice(from, to < 0 ? text.length : to);
}
