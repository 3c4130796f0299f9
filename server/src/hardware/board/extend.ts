/**
 * A board that extends another says only what differs. This file finds the boards a file stands on and lays its
 * nodes over theirs; every node keeps its own file, so that problems and sources point to where they are written.
 */
import type { Problem } from '../../base/read';
import type { Span } from '../../base/span';
import { childOf, contentSpan, type JsonEntry, type JsonNode, textOf } from '../json/node';
import { isHalfTyped, parseJson } from '../json/parse';
import { listNames, quoteName, unknownName } from '../names';
import { checkShape } from '../shape';

export interface BoardSource {
  readonly file: string;
  readonly text: string;
}

/** Finds a board's file by library id or by a path as written in the file `from`. */
export type FindBoard = (idOrPath: string, from: string) => BoardSource | undefined;

export interface ExtendedBoard {
  /** The merged content; undefined where a file on the way cannot be used. */
  readonly root: JsonNode | undefined;
  /** The `sources` of each file by its name. */
  readonly sources: ReadonlyMap<string, JsonNode>;
  readonly problems: readonly Problem[];
}

/**
 * Reads a board file and all that it extends.
 * @param known Ids of the library's boards, offered where a board to extend is not found.
 */
export function extendBoard(
  source: BoardSource,
  find: FindBoard,
  known: readonly string[] = [],
): ExtendedBoard {
  const problems: Problem[] = [];
  const sources = new Map<string, JsonNode>();
  const layers: JsonNode[] = [];
  const files = new Set<string>();
  let next: BoardSource | undefined = source;
  while (next !== undefined) {
    files.add(next.file);
    const { value: root, problems: syntax } = parseJson(next.file, next.text);
    problems.push(...syntax);
    if (root === undefined) return { root: undefined, sources, problems };
    const shape = checkShape('board', root);
    problems.push(...shape);
    // Of a half-typed board nobody knows which pins and limits are meant to be there.
    if (root.kind !== 'object' || isHalfTyped(syntax)) return { root: undefined, sources, problems };
    layers.unshift(root);
    const ownSources = childOf(root, 'sources');
    if (ownSources !== undefined) sources.set(next.file, ownSources);
    const parent = childOf(root, 'extends');
    const name = textOf(parent);
    if (parent === undefined || name === undefined) break;
    const found = find(name, next.file);
    if (found === undefined || files.has(found.file)) {
      problems.push(
        found === undefined
          ? missingBase(name, contentSpan(parent), known)
          : circle(name, contentSpan(parent), [...files]),
      );
      return { root: undefined, sources, problems };
    }
    next = found;
  }
  const [first, ...rest] = layers;
  const root = first && rest.reduce((below, above) => lay(above, below, []), lay(first, emptyOf(first), []));
  return { root, sources, problems };
}

function missingBase(name: string, span: Span, known: readonly string[]): Problem {
  const message = `There is no board ${quoteName(name)} to extend.`;
  const problem = unknownName('unknown-board', message, span, name, known);
  return problem.hint === undefined
    ? { ...problem, hint: 'Write the id of a library board, or the path of a board file beside this one.' }
    : problem;
}

function circle(name: string, span: Span, files: readonly string[]): Problem {
  const way = files.length === 1 ? 'It extends itself.' : `The way round: ${listNames(files)}.`;
  return {
    code: 'circular-extends',
    message: `${quoteName(name)} extends this board in turn.`,
    span,
    hint: `${way} Let the last of them extend a library board, or nothing.`,
  };
}

function emptyOf(node: JsonNode): JsonNode {
  return { ...node, kind: 'object', entries: new Map(), items: [] };
}

/** Entries of these belong together: half of one laid over half of another would be a third thing nobody wrote. */
function isWhole(node: JsonNode, path: readonly string[]): boolean {
  const [top, second, third] = path;
  if (path.length === 2 && ['headers', 'onBoard', 'supplyInputs'].includes(top ?? '')) return true;
  if (path.length === 3 && top === 'limits') return second === 'groups' || second === 'driveStrengths';
  if (path.length === 3 && top === 'pins' && (third === 'boot' || third === 'takenBy')) return true;
  return ['min', 'typ', 'max'].some((key) => node.entries.has(key));
}

function lay(above: JsonNode, below: JsonNode, path: readonly string[]): JsonNode {
  const entries = new Map<string, JsonEntry>(below.entries);
  for (const [key, entry] of above.entries) {
    const place = [...path, key];
    if (entry.value.kind === 'null') {
      entries.delete(key);
      continue;
    }
    const under = entries.get(key);
    if (entry.value.kind !== 'object' || isWhole(entry.value, place)) {
      // Free holes are looked for header by header, so the order is that of the file that has written them last.
      if (path.length === 1 && path[0] === 'headers') entries.delete(key);
      entries.set(key, entry);
      continue;
    }
    const mergeable = under?.value.kind === 'object' && !isWhole(under.value, place);
    entries.set(key, {
      ...entry,
      value: lay(entry.value, mergeable ? under.value : emptyOf(entry.value), place),
    });
  }
  return { ...above, kind: 'object', entries };
}
