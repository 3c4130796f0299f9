/**
 * The parsed form of a hardware file: jsonc-parser's tree reduced to what the readers ask for, with a span and a
 * file on every node, so that nodes of several files can stand in one tree when a board extends another.
 */
import type { Span } from '../../base/span';

export type JsonKind = 'object' | 'array' | 'string' | 'number' | 'boolean' | 'null';
export type JsonScalar = string | number | boolean | null;
export type JsonPath = readonly (string | number)[];

export interface JsonEntry {
  readonly key: string;
  /** The key without its quotes. */
  readonly keySpan: Span;
  /** Key, colon and value. */
  readonly span: Span;
  readonly value: JsonNode;
}

export interface JsonNode {
  readonly kind: JsonKind;
  /** The literal, brackets and quotes included. */
  readonly span: Span;
  /** Value of a scalar; null in lists and objects. */
  readonly scalar: JsonScalar;
  /** Entries of an object by key, in the order of the text. Where a key is doubled the first one counts. */
  readonly entries: ReadonlyMap<string, JsonEntry>;
  /** Items of a list. */
  readonly items: readonly JsonNode[];
}

/** The place to point at for a value: what stands between the quotes of a text, the literal of anything else. */
export function contentSpan(node: JsonNode): Span {
  const { file, start, end } = node.span;
  return node.kind === 'string' && end - start >= 2 ? { file, start: start + 1, end: end - 1 } : node.span;
}

export function childOf(node: JsonNode | undefined, key: string): JsonNode | undefined {
  return node?.entries.get(key)?.value;
}

export function textOf(node: JsonNode | undefined): string | undefined {
  return typeof node?.scalar === 'string' ? node.scalar : undefined;
}

/** A text or number as typed, for what is read as a quantity. */
export function quantityOf(node: JsonNode | undefined): string | number | undefined {
  const scalar = node?.scalar;
  return typeof scalar === 'string' || typeof scalar === 'number' ? scalar : undefined;
}

export function integerOf(node: JsonNode | undefined): number | undefined {
  return typeof node?.scalar === 'number' && Number.isInteger(node.scalar) ? node.scalar : undefined;
}

/** The texts of a list; whatever else stands in it is left out. */
export function textsOf(node: JsonNode | undefined): string[] {
  return (node?.items ?? []).flatMap((item) => textOf(item) ?? []);
}

/** The node at a path below `node`. */
export function nodeAt(node: JsonNode | undefined, path: JsonPath): JsonNode | undefined {
  let current = node;
  for (const step of path) {
    current = typeof step === 'number' ? current?.items[step] : childOf(current, step);
  }
  return current;
}

/** The entry whose value stands at a path, where the last step is a key. */
export function entryAt(node: JsonNode | undefined, path: JsonPath): JsonEntry | undefined {
  const last = path.at(-1);
  return typeof last === 'string' ? nodeAt(node, path.slice(0, -1))?.entries.get(last) : undefined;
}

/**
 * The plain value. Objects have no prototype, so that a key like `__proto__` is data like any other.
 * @param without Places of keys (their `keySpan.start`) that are left out.
 */
export function plainValue(node: JsonNode, without?: ReadonlySet<number>): unknown {
  if (node.kind === 'array') return node.items.map((item) => plainValue(item, without));
  if (node.kind !== 'object') return node.scalar;
  const result: Record<string, unknown> = Object.create(null);
  for (const [key, entry] of node.entries) {
    if (without?.has(entry.keySpan.start) !== true) result[key] = plainValue(entry.value, without);
  }
  return result;
}
