/** Where in the manifest an offset lies, and what is written about that place: the ground of hovers and completion. */
import type { Span } from '../../base/span';
import { type JsonSchema, schemas } from '../generated/validators';
import { contentSpan, type JsonNode, type JsonPath } from '../json/node';
import { parseJson } from '../json/parse';
import type { PartKind } from '../part-kind';
import { resolveSchema } from '../schema-lookup';

export interface ManifestPlace {
  readonly path: (string | number)[];
  /** The key or value without its quotes. */
  readonly span: Span;
  readonly isKey: boolean;
}

/** The innermost key or value at an offset; undefined outside of any. */
export function manifestPathAt(text: string, offset: number, file = ''): ManifestPlace | undefined {
  const { value: root } = parseJson(file, text);
  return root && placeIn(root, offset, []);
}

function placeIn(node: JsonNode, offset: number, path: (string | number)[]): ManifestPlace | undefined {
  if (offset < node.span.start || offset > node.span.end) return undefined;
  for (const entry of node.entries.values()) {
    if (offset >= entry.keySpan.start - 1 && offset <= entry.keySpan.end + 1) {
      return { path: [...path, entry.key], span: entry.keySpan, isKey: true };
    }
    const inside = placeIn(entry.value, offset, [...path, entry.key]);
    if (inside !== undefined) return inside;
  }
  for (const [index, item] of node.items.entries()) {
    const inside = placeIn(item, offset, [...path, index]);
    if (inside !== undefined) return inside;
  }
  return { path, span: contentSpan(node), isKey: false };
}

/**
 * What the schema says about the value at a path.
 * @param kind The kind of the part, for a path into one: its parameters stand in the kind's own file.
 */
export function describeKey(path: JsonPath, kind?: PartKind): string | undefined {
  const [section, , key] = path;
  if (section === 'parts' && typeof key === 'string' && kind?.parameters !== undefined) {
    const parameter = Object.hasOwn(kind.parameters, key) ? kind.parameters[key] : undefined;
    if (parameter !== undefined) return parameter.about;
  }
  let candidates: readonly JsonSchema[] = [schemas.manifest];
  for (const step of path) {
    candidates = candidates.flatMap((schema) => stepInto(schema, step));
  }
  return candidates
    .map((schema) => schema.description ?? resolveSchema(schema).schema.description)
    .find(Boolean);
}

function stepInto(written: JsonSchema, step: string | number): JsonSchema[] {
  const { schema } = resolveSchema(written);
  const alternatives = (schema.anyOf ?? []).flatMap((branch) => stepInto(branch, step));
  if (typeof step === 'number')
    return schema.items === undefined ? alternatives : [schema.items, ...alternatives];
  const properties = schema.properties ?? {};
  if (Object.hasOwn(properties, step))
    return [...[properties[step]].flatMap((one) => one ?? []), ...alternatives];
  const free = schema.additionalProperties;
  return typeof free === 'object' ? [free, ...alternatives] : alternatives;
}
