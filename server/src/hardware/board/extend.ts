/**
 * A board that extends another says only what differs. This file finds the boards a file stands on and lays its
 * nodes over theirs; every node keeps its own file, so that problems and sources point to where they are written.
 */
import type { Problem } from '../../base/read';
import { childOf, contentSpan, type JsonEntry, type JsonNode, textOf } from '../json/node';
import { isHalfTyped, parseJson } from '../json/parse';
import { quoteName } from '../names';
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

/** Reads a board file and all that it extends. */
export function extendBoard(source: BoardSource, find: FindBoard): ExtendedBoard {
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
          ? {
              code: 'unknown-board',
              message: `There is no board ${quoteName(name)} to extend.`,
              span: contentSpan(parent),
            }
          : {
              code: 'circular-extends',
              message: `${quoteName(name)} extends this board in turn.`,
              span: contentSpan(parent),
            },
      );
      return { root: undefined, sources, problems };
    }
    next = found;
  }
  const [first, ...rest] = layers;
  const root = first && rest.reduce((below, above) => lay(above, below, []), lay(first, emptyOf(first), []));
  return { root, sources, problems };
}

function emptyOf(node: JsonNode): JsonNode {
  return { ...node, kind: 'object', entries: new Map(), items: [] };
}

/** Entries of these belong together: half of one laid over half of another would be a third thing nobody wrote. */
function isWhole(node: JsonNode, path: readonly string[]): boolean {
  if (path.length === 2 && (path[0] === 'headers' || path[0] === 'onBoard')) return true;
  if (path.length === 3 && path[0] === 'limits' && path[1] === 'groups') return true;
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
