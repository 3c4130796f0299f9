/** Finds its way about the schemas: what a reference points to, and which values a piece of schema takes. */
import { type JsonSchema, schemas } from './generated/validators';

/** A piece of schema that a reference led to. */
export interface Definition {
  readonly schema: JsonSchema;
  /** `$id` and pointer; undefined where there was no reference. */
  readonly id?: string;
}

/** Follows the references of a piece of schema. A name that the file at hand does not define is looked for in all. */
export function resolveSchema(written: JsonSchema): Definition {
  let found: Definition = { schema: written };
  for (let steps = 0; steps < 16; steps++) {
    const { schema } = found;
    // A reference that gets a description of its own is written as an `allOf` of one.
    const reference = schema.$ref ?? (schema.allOf?.length === 1 ? schema.allOf[0]?.$ref : undefined);
    const next = reference === undefined ? undefined : findDefinition(reference);
    if (next === undefined) break;
    found = next;
  }
  return found;
}

function findDefinition(reference: string): Definition | undefined {
  const name = reference.slice(reference.lastIndexOf('/') + 1);
  for (const { $id, definitions = {} } of Object.values(schemas)) {
    const schema = Object.hasOwn(definitions, name) ? definitions[name] : undefined;
    if (schema !== undefined) return { schema, id: `${$id}#/definitions/${name}` };
  }
  return undefined;
}

/** Kinds of node that a schema takes at its top. */
export function kindsOf(schema: JsonSchema): string[] {
  const types =
    schema.type ?? (schema.enum ?? [schema.const]).map((value) => (value === null ? 'null' : typeof value));
  return [types].flat().map((type) => (type === 'integer' ? 'number' : type));
}
