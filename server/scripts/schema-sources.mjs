// The types and validators of the hardware files follow from their JSON Schemas and are never written by hand. This
// script makes both as texts, so that one caller can write them and a test can compare them. Run directly, it writes
// them below server/src/hardware/generated.
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import standalone from 'ajv/dist/standalone/index.js';
import { compile } from 'json-schema-to-typescript';

const generated = 'server/src/hardware/generated';
const schemaNames = ['manifest', 'board', 'part'];

/**
 * Makes the generated sources of the hardware layer.
 * @param {string} root Folder of the repository.
 * @returns {Promise<Map<string, string>>} Text by path relative to `root`.
 */
export async function makeSchemaSources(root) {
  const folder = join(root, 'hardware-schemas');
  const schemas = new Map();
  for (const name of schemaNames) {
    schemas.set(name, JSON.parse(await readFile(join(folder, `${name}.schema.json`), 'utf8')));
  }
  const sources = new Map();
  for (const [name, schema] of schemas) {
    sources.set(`${generated}/${name}.ts`, await makeTypes(name, schema, folder));
  }
  sources.set(`${generated}/validators.js`, makeValidators(schemas));
  sources.set(`${generated}/validators.d.ts`, validatorTypes());
  return sources;
}

async function makeTypes(name, schema, folder) {
  const text = await compile(dropBareRequirements(schema), name, {
    cwd: folder,
    additionalProperties: false,
    bannerComment: `// Made from hardware-schemas/${name}.schema.json by server/scripts/schema-sources.mjs.`,
    style: { singleQuote: true, printWidth: 110, tabWidth: 2, semi: true, trailingComma: 'all' },
    unreachableDefinitions: false,
  });
  return text.replaceAll('\r\n', '\n');
}

// "At least one of these keys" cannot be said in a TypeScript interface; left in, it would turn the whole interface
// into an intersection that accepts any key.
function dropBareRequirements(node) {
  if (Array.isArray(node)) return node.map(dropBareRequirements);
  if (typeof node !== 'object' || node === null) return node;
  const copy = {};
  for (const [key, value] of Object.entries(node)) {
    if ((key === 'anyOf' || key === 'allOf') && Array.isArray(value) && value.every(isBareRequirement))
      continue;
    copy[key] = dropBareRequirements(value);
  }
  return copy;
}

function isBareRequirement(node) {
  const keys = Object.keys(node);
  if (keys.length !== 1) return false;
  if (keys[0] === 'required') return true;
  return keys[0] === 'anyOf' && node.anyOf.every(isBareRequirement);
}

function makeValidators(schemas) {
  const ajv = new Ajv({
    allErrors: true,
    discriminator: true,
    // Errors carry the piece of schema they come from: their path is told from the top of whatever was referenced.
    verbose: true,
    inlineRefs: false,
    strict: true,
    allowUnionTypes: true,
    strictRequired: false,
    strictTypes: false,
    schemas: [...schemas.values()],
    code: { source: true, esm: true },
  });
  const references = {};
  const definitions = [];
  for (const [name, schema] of schemas) {
    references[validatorName(name)] = schema.$id;
    for (const definition of separateDefinitions(schema)) {
      const id = `${schema.$id}#/definitions/${definition}`;
      references[`${name}_${definition}`] = id;
      definitions.push(`  ${JSON.stringify(id)}: ${name}_${definition},`);
    }
  }
  const code = standalone(ajv, references);
  if (code.includes('require('))
    throw new Error('the validators need code of ajv at run time: simplify the schema');
  return `// Made from hardware-schemas/*.schema.json by server/scripts/schema-sources.mjs.
${code}
export const definitions = {
${definitions.join('\n')}
};
export const schemas = ${JSON.stringify(Object.fromEntries(schemas))};
`;
}

// The definitions that stand as alternatives in an `anyOf` have a validator each: a message about a value that fits
// none of them says what is wrong with the one that was meant. So has a primitive, since one that is wrong is left out.
function separateDefinitions(schema) {
  const found = new Set('primitive' in schema.definitions ? ['primitive'] : []);
  const search = (node) => {
    if (typeof node !== 'object' || node === null) return;
    for (const branch of Array.isArray(node.anyOf) ? node.anyOf : []) {
      if (branch.$ref?.startsWith('#/definitions/')) found.add(branch.$ref.slice('#/definitions/'.length));
    }
    Object.values(node).forEach(search);
  };
  search(schema);
  return [...found].sort();
}

function validatorName(name) {
  return `validate${name[0].toUpperCase()}${name.slice(1)}`;
}

function validatorTypes() {
  const functions = schemaNames.map((name) => `export declare const ${validatorName(name)}: Validator;`);
  return `// Made by server/scripts/schema-sources.mjs, as is the code beside it.
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
${functions.join('\n')}
/** Validators of the schemas' definitions, by \`$id\` and pointer. */
export declare const definitions: Readonly<Record<string, Validator>>;
/** The schemas themselves. */
export declare const schemas: Readonly<Record<${schemaNames.map((name) => `'${name}'`).join(' | ')}, JsonSchema>>;
`;
}

const thisFile = fileURLToPath(import.meta.url);
if (process.argv[1] !== undefined && resolve(process.argv[1]) === thisFile) {
  const root = resolve(dirname(thisFile), '../..');
  for (const [path, text] of await makeSchemaSources(root)) {
    await mkdir(dirname(join(root, path)), { recursive: true });
    await writeFile(join(root, path), text);
  }
}
