// The real library, as the tests of the readers use it, and short ways to ask for what they found.
import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Build } from '../../../server/src/base/build';
import type { Problem } from '../../../server/src/base/read';
import {
  type HardwareLibrary,
  type PartKind,
  readBoard,
  readManifest,
  readPartKind,
} from '../../../server/src/hardware';

export const root = fileURLToPath(new URL('../../..', import.meta.url));
export const schemas = join(root, 'hardware-schemas');

export function filesOf(folder: 'boards' | 'parts'): ReadonlyMap<string, string> {
  const names = readdirSync(join(schemas, folder)).filter((name) => name.endsWith('.json'));
  return new Map(
    names.map((name) => [name.slice(0, -'.json'.length), readFileSync(join(schemas, folder, name), 'utf8')]),
  );
}

/** @param own Files of the user's own by path. */
export function openLibrary(
  own: Readonly<Record<string, string>> = {},
): HardwareLibrary & { readonly partKinds: ReadonlyMap<string, PartKind> } {
  const boards = filesOf('boards');
  const kinds = new Map<string, PartKind>();
  for (const [name, text] of filesOf('parts')) {
    const { value } = readPartKind(`parts/${name}.json`, text);
    if (value !== undefined) kinds.set(value.kind, value);
  }
  const find = (name: string, from: string) => {
    const text = boards.get(name);
    if (text !== undefined) return { file: `boards/${name}.json`, text };
    const file = posix.join(posix.dirname(from), name);
    const ownText = Object.hasOwn(own, file) ? own[file] : undefined;
    return ownText === undefined ? undefined : { file, text: ownText };
  };
  return {
    boardIds: [...boards.keys()],
    partKinds: kinds,
    board(name, from) {
      const source = find(name, from);
      return source && readBoard(source, find);
    },
  };
}

const library = openLibrary();

export function read(text: string, from: HardwareLibrary = library) {
  const { value, problems } = readManifest('hardware.jsonc', text, from);
  return { build: value, problems, codes: problems.map((problem) => problem.code) };
}

/** The build of a manifest that must be free of problems. */
export function readClean(text: string, from: HardwareLibrary = library): Build {
  const { build, problems } = read(text, from);
  if (build === undefined || problems.length > 0) throw new Error(describeProblems(text, problems));
  return build;
}

export function describeProblems(text: string, problems: readonly Problem[]): string {
  return problems
    .map(
      (one) => `${one.code}: ${one.message} ${one.hint ?? ''} <${text.slice(one.span.start, one.span.end)}>`,
    )
    .join('\n');
}
