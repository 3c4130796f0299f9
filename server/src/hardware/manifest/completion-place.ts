/** What could be written at an offset of a manifest, half typed or whole: the ground of completion. */
import { getLocation } from 'jsonc-parser';
import { type JsonSchema, schemas } from '../generated/validators';
import { resolveSchema } from '../schema-lookup';

export interface WritingPlace {
  /** Path of the value; of a key that is being written: the object's path and the key so far. */
  readonly path: readonly (string | number)[];
  readonly isKey: boolean;
  /** What a completion replaces, quotes included. */
  readonly start: number;
  readonly end: number;
  /** Text between the quotes in front of the offset. */
  readonly typed: string;
  /** A colon stands behind already. */
  readonly hasColon: boolean;
}

export function writingPlaceAt(text: string, offset: number): WritingPlace {
  const { path, isAtPropertyKey, previousNode } = getLocation(text, offset);
  const within =
    previousNode !== undefined &&
    previousNode.offset <= offset &&
    offset <= previousNode.offset + previousNode.length;
  const start = within ? previousNode.offset : offset;
  // An open quote runs to the end of its line: what stands behind the offset is not part of it.
  const literal = within ? text.slice(start, start + previousNode.length) : '';
  // A quote that was just opened pairs up with the next text's; what then stands between them is a comma or a bracket.
  const swallows = /^"\s*[,}\]]/.test(literal);
  const closed = !swallows && /^"(?:[^"\\\r\n]|\\.)*"$/.test(literal);
  const end = within && (closed || !literal.startsWith('"')) ? start + literal.length : offset;
  const typed = text.slice(start, offset).replace(/^"/, '');
  return { path, isKey: isAtPropertyKey, start, end, typed, hasColon: /^\s*:/.test(text.slice(end)) };
}

/** Keys that an object at a path can have, with what is said about each. */
export function manifestKeys(
  path: readonly (string | number)[],
): readonly { readonly key: string; readonly about: string }[] {
  let found: readonly JsonSchema[] = [schemas.manifest];
  for (const step of path) found = found.flatMap((schema) => inside(schema, step));
  const all = new Map<string, string>();
  for (const schema of found.flatMap(alternatives)) {
    for (const [key, written] of Object.entries(schema.properties ?? {})) {
      if (!all.has(key)) all.set(key, written.description ?? resolveSchema(written).schema.description ?? '');
    }
  }
  return [...all].map(([key, about]) => ({ key, about }));
}

function alternatives(written: JsonSchema): readonly JsonSchema[] {
  const { schema } = resolveSchema(written);
  return [schema, ...(schema.anyOf ?? []).flatMap(alternatives)];
}

function inside(written: JsonSchema, step: string | number): readonly JsonSchema[] {
  return alternatives(written).flatMap((schema): readonly JsonSchema[] => {
    if (typeof step === 'number') return schema.items === undefined ? [] : [schema.items];
    const own = Object.hasOwn(schema.properties ?? {}, step) ? schema.properties?.[step] : undefined;
    if (own !== undefined) return [own];
    return typeof schema.additionalProperties === 'object' ? [schema.additionalProperties] : [];
  });
}
