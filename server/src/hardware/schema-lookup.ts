/** Finds its way about the schemas: what a reference points to, and which piece of a schema an error came from. */
import { type JsonSchema, type ShapeError, schemas } from './generated/validators';

/** Resolves a `$ref` met in `document`. */
export function resolveSchema(
  schema: JsonSchema | undefined,
  document: JsonSchema,
): [JsonSchema, JsonSchema] {
  let current = schema ?? {};
  let home = document;
  // A part of a schema that only adds a description to a reference is written as an `allOf` of one.
  for (let steps = 0; steps < 16; steps++) {
    const reference = current.$ref ?? (current.allOf?.length === 1 ? current.allOf[0]?.$ref : undefined);
    if (reference === undefined) break;
    const [file = '', pointer = ''] = reference.split('#');
    home = Object.values(schemas).find((other) => file !== '' && other.$id?.endsWith(`/${file}`)) ?? home;
    const target = home.definitions?.[pointer.slice('/definitions/'.length)];
    if (target === undefined) break;
    current = target;
  }
  return [current, home];
}

/**
 * The piece of schema that holds the keyword of an error.
 * @param start What "#" stands for in the error: the schema whose validator was called.
 * @param document The file that schema is in; references inside a file are told from its top.
 */
export function schemaOf(error: ShapeError, start: JsonSchema, document: JsonSchema): JsonSchema | undefined {
  const [file = '', pointer = ''] = error.schemaPath.split('#');
  const named = Object.values(schemas).filter((one) => file !== '' && one.$id?.endsWith(`/${file}`));
  const others = Object.values(schemas).filter((one) => one !== document);
  for (const candidate of file === '' ? [start, document, ...others] : named) {
    let current: unknown = candidate;
    for (const step of pointer.split('/').slice(1, -1)) {
      current = (current as Record<string, unknown> | undefined)?.[step.replaceAll('~1', '/').replaceAll('~0', '~')];
    }
    if (current !== undefined && (current as Record<string, unknown>)[error.keyword] !== undefined) {
      return current as JsonSchema;
    }
  }
  return undefined;
}

/** Kinds of node that a schema takes at its top. */
export function kindsOf(schema: JsonSchema): string[] {
  const types =
    schema.type ?? (schema.enum ?? [schema.const]).map((value) => (value === null ? 'null' : typeof value));
  return [types].flat().map((type) => (type === 'integer' ? 'number' : type));
}
