// Made by server/scripts/schema-sources.mjs, as is the code beside it.
export interface ShapeError {
  readonly keyword: string;
  /** The piece of schema that holds the keyword. */
  readonly parentSchema?: JsonSchema;
  /** JSON pointer to the value in the checked data. */
  readonly instancePath: string;
  readonly params: Readonly<Record<string, unknown>>;
}
/** As much of a JSON Schema as messages and hovers need. */
export interface JsonSchema {
  readonly $id?: string;
  readonly $ref?: string;
  readonly title?: string;
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly additionalProperties?: JsonSchema | boolean;
  readonly required?: readonly string[];
  readonly items?: JsonSchema;
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
  readonly allOf?: readonly JsonSchema[];
  readonly definitions?: Readonly<Record<string, JsonSchema>>;
}
export interface Validator {
  (data: unknown): boolean;
  readonly errors?: readonly ShapeError[] | null;
}
export declare const validateManifest: Validator;
export declare const validateBoard: Validator;
export declare const validatePart: Validator;
/** Validators of the schemas' definitions, by `$id` and pointer. */
export declare const definitions: Readonly<Record<string, Validator>>;
/** The schemas themselves. */
export declare const schemas: Readonly<Record<'manifest' | 'board' | 'part', JsonSchema>>;
