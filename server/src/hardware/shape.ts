/**
 * Turns what the validators made from the JSON Schemas say into located problems in plain sentences. The validators
 * decide; this file only finds the place and the words.
 */
import type { Problem } from '../base/read';
import type { Span } from '../base/span';
import {
  definitions,
  type JsonSchema,
  type ShapeError,
  schemas,
  type Validator,
  validateBoard,
  validateManifest,
  validatePart,
} from './generated/validators';
import { contentSpan, type JsonNode, nodeAt, plainValue } from './json/node';
import { listNames, quoteName, unknownName } from './names';

export type SchemaName = keyof typeof schemas;

const validators: Readonly<Record<SchemaName, Validator>> = {
  manifest: validateManifest,
  board: validateBoard,
  part: validatePart,
};

/** A half-typed file can break every rule of its schema at once; nobody reads more than these. */
const mostProblems = 100;

/** Everything in which a file differs from its schema. */
export function checkShape(name: SchemaName, root: JsonNode): Problem[] {
  return checkNode(validators[name], schemas[name], root, root, []).slice(0, mostProblems);
}

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

interface Place {
  readonly node: JsonNode;
  readonly path: readonly (string | number)[];
}

function checkNode(
  validator: Validator,
  home: JsonSchema,
  root: JsonNode,
  node: JsonNode,
  path: readonly (string | number)[],
): Problem[] {
  if (validator(plainValue(node))) return [];
  const errors = validator.errors ?? [];
  const unions = errors.filter(isUnion);
  const problems: Problem[] = [];
  for (const error of errors) {
    const steps = stepsOf(error.instancePath, node);
    const place = { node: nodeAt(node, steps) ?? node, path: [...path, ...steps] };
    const union = unions.find((other) => covers(other.instancePath, error.instancePath));
    // What the alternatives say one by one is replaced by what the one that was meant says.
    if (union === undefined) problems.push(...describe(error, home, root, place));
    else if (union === error) problems.push(...describeUnion(error, errors, home, root, place));
  }
  return problems;
}

function isUnion(error: ShapeError): boolean {
  return (
    error.keyword === 'anyOf' && !/\/(allOf|anyOf)\/\d+\/anyOf$/.test(error.schemaPath) && !isBare(error)
  );
}

/** "At least one of these keys": a plain sentence tells it, so it is no choice between alternatives. */
function isBare(error: ShapeError): boolean {
  const schema = schemaOf(error);
  return (
    schema?.anyOf?.every((branch) => branch.required !== undefined && branch.type === undefined) ?? false
  );
}

function covers(outer: string, inner: string): boolean {
  return inner === outer || inner.startsWith(`${outer}/`);
}

/** The schema that holds the keyword of an error. */
function schemaOf(error: ShapeError, home?: JsonSchema): JsonSchema | undefined {
  const [file = '', pointer = ''] = error.schemaPath.split('#');
  const candidates = Object.values(schemas).filter((one) => file === '' || one.$id?.endsWith(`/${file}`));
  const ordered = home === undefined || file !== '' ? candidates : [home, ...candidates];
  for (const candidate of ordered) {
    let current: unknown = candidate;
    for (const step of pointer.split('/').slice(1, -1)) {
      current = (current as Record<string, unknown> | undefined)?.[
        decodeURIComponent(step.replaceAll('~1', '/'))
      ];
    }
    if (current !== undefined && (current as Record<string, unknown>)[error.keyword] !== undefined) {
      return current as JsonSchema;
    }
  }
  return undefined;
}

/** The steps of a JSON pointer; a step is an index where the node it enters is a list. */
function stepsOf(pointer: string, node: JsonNode): (string | number)[] {
  const steps: (string | number)[] = [];
  let current: JsonNode | undefined = node;
  for (const raw of pointer.split('/').slice(1)) {
    const key = raw.replaceAll('~1', '/').replaceAll('~0', '~');
    const step: string | number = current?.kind === 'array' ? Number(key) : key;
    current = nodeAt(current, [step]);
    steps.push(step);
  }
  return steps;
}

function describeUnion(
  error: ShapeError,
  errors: readonly ShapeError[],
  home: JsonSchema,
  root: JsonNode,
  place: Place,
): Problem[] {
  const branches = (schemaOf(error, home)?.anyOf ?? []).map((branch) => {
    const [schema, branchHome] = resolveSchema(branch, home);
    const id =
      branch.$ref === undefined
        ? undefined
        : `${branchHome.$id}${branch.$ref.slice(branch.$ref.indexOf('#'))}`;
    return { schema, home: branchHome, id };
  });
  const fitting = branches.filter(({ schema }) => kindsOf(schema).includes(place.node.kind));
  const meant = fitting.toSorted(
    (a, b) => likeness(b.schema, place.node) - likeness(a.schema, place.node),
  )[0];
  if (meant === undefined) {
    const kinds = [...new Set(branches.flatMap(({ schema }) => kindsOf(schema)))].filter(
      (kind) => kind !== 'null',
    );
    return [wrongKind(kinds, place)];
  }
  const validator = meant.id === undefined ? undefined : definitions[meant.id];
  if (validator !== undefined) return checkNode(validator, meant.home, root, place.node, place.path);
  if (meant.schema.enum !== undefined) return [wrongWord(meant.schema.enum, place)];
  const below = errors.filter((other) => covers(`${error.instancePath}/`, other.instancePath));
  const deeper = below.flatMap((other) => {
    const steps = stepsOf(other.instancePath.slice(error.instancePath.length), place.node);
    const node = nodeAt(place.node, steps) ?? place.node;
    return describe(other, home, root, { node, path: [...place.path, ...steps] });
  });
  return deeper.length > 0
    ? deeper
    : [{ ...shapeProblem(place), message: `${subject(place)} is not right here.` }];
}

/** Kinds of node that a schema takes at its top. */
function kindsOf(schema: JsonSchema): string[] {
  const types =
    schema.type ?? (schema.enum ?? [schema.const]).map((value) => (value === null ? 'null' : typeof value));
  return [types].flat().map((type) => (type === 'integer' ? 'number' : type));
}

/** How many keys of an object a schema knows, the required ones first. */
function likeness(schema: JsonSchema, node: JsonNode): number {
  let score = 0;
  for (const key of node.entries.keys()) {
    if (Object.hasOwn(schema.properties ?? {}, key)) score += schema.required?.includes(key) ? 100 : 1;
  }
  return score;
}

function describe(error: ShapeError, home: JsonSchema, root: JsonNode, place: Place): Problem[] {
  const { params } = error;
  const schema = schemaOf(error, home);
  switch (error.keyword) {
    case 'additionalProperties': {
      const key = String(params.additionalProperty);
      const span = place.node.entries.get(key)?.keySpan ?? place.node.span;
      const free = Object.keys(schema?.properties ?? {}).filter((name) => !place.node.entries.has(name));
      const message = `${inside(place)} has no key ${quoteName(key)}.`;
      return [unknownName('unknown-key', message, span, key, free)];
    }
    case 'required': {
      const key = String(params.missingProperty);
      // Where the key is mistyped, the unknown key says it already and offers the name.
      const message = `${inside(place)} lacks the key "${key}".`;
      const about = schema?.properties?.[key]?.description;
      return [
        {
          code: 'missing-key',
          message,
          span: headSpan(root, place),
          ...(about === undefined ? {} : { hint: about }),
        },
      ];
    }
    case 'type':
      return [wrongKind([params.type].flat().map(String), place)];
    case 'enum':
      return [wrongWord(schema?.enum ?? [], place)];
    case 'const':
      return [wrongWord([params.allowedValue], place)];
    case 'minItems':
      return [
        { ...shapeProblem(place), message: `${subject(place)} must hold at least ${params.limit} entries.` },
      ];
    case 'maxItems':
      return [
        { ...shapeProblem(place), message: `${subject(place)} must hold at most ${params.limit} entries.` },
      ];
    case 'minimum':
      return [{ ...shapeProblem(place), message: `${subject(place)} must not be below ${params.limit}.` }];
    case 'discriminator':
      return [wrongWord(primitiveTypes(), { ...place, node: nodeAt(place.node, ['type']) ?? place.node })];
    case 'pattern':
      return [
        { ...shapeProblem(place), message: `${subject(place)} has a character that is not allowed here.` },
      ];
    case 'propertyNames': {
      const key = String(params.propertyName);
      const span = place.node.entries.get(key)?.keySpan ?? place.node.span;
      return [{ code: 'wrong-key', message: `${quoteName(key)} cannot be a key here.`, span }];
    }
    case 'anyOf': {
      const keys = (schema?.anyOf ?? []).flatMap((branch) => branch.required ?? []);
      const message = `${inside(place)} needs one of the keys ${listNames(keys)}.`;
      return [{ code: 'missing-key', message, span: headSpan(root, place) }];
    }
    default:
      // `not` and the parts of `allOf` and `oneOf` come along with an error that says more.
      return [];
  }
}

function primitiveTypes(): string[] {
  const document = schemas.part;
  return (document.definitions?.primitive?.oneOf ?? []).map((branch) =>
    String(resolveSchema(branch, document)[0].properties?.type?.const),
  );
}

const kindWords: Readonly<Record<string, string>> = {
  object: 'an object { ... }',
  array: 'a list [ ... ]',
  string: 'text in quotes',
  number: 'a number',
  integer: 'a whole number',
  boolean: 'true or false',
  null: 'null',
};

function wrongKind(kinds: readonly string[], place: Place): Problem {
  const words = kinds.map((kind) => kindWords[kind] ?? kind);
  const wanted = words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
  const problem = {
    ...shapeProblem(place),
    code: 'wrong-type',
    message: `${subject(place)} must be ${wanted}.`,
  };
  const { node } = place;
  if (!kinds.includes('string') || (node.kind !== 'number' && node.kind !== 'boolean')) return problem;
  const { file, start, end } = node.span;
  const edits = [
    { file, start, end: start, text: '"' },
    { file, start: end, end, text: '"' },
  ];
  return { ...problem, fix: { title: 'Put it in quotes', edits } };
}

function wrongWord(words: readonly unknown[], place: Place): Problem {
  const { node } = place;
  const right = words.filter((word) => typeof word === 'string');
  if (typeof node.scalar === 'string' && right.length > 0) {
    const message = `${subject(place)} cannot be ${quoteName(node.scalar)}.`;
    return unknownName('unknown-word', message, contentSpan(node), node.scalar, right);
  }
  const wanted = words.map((word) => JSON.stringify(word));
  return { ...shapeProblem(place), message: `${subject(place)} must be ${wanted.join(' or ')}.` };
}

function shapeProblem(place: Place): { code: string; span: Span } {
  return { code: 'wrong-value', span: contentSpan(place.node) };
}

/** What to point at for something missing: the key of the object that lacks it, or its opening bracket. */
function headSpan(root: JsonNode, place: Place): Span {
  const last = place.path.at(-1);
  const owner = nodeAt(root, place.path.slice(0, -1));
  const key = typeof last === 'string' ? owner?.entries.get(last)?.keySpan : undefined;
  const { file, start, end } = place.node.span;
  return key ?? { file, start, end: Math.min(end, start + 1) };
}

function subject({ path }: Place): string {
  const last = path.at(-1);
  if (last === undefined) return 'The file';
  return typeof last === 'string' ? `"${last}"` : `Entry ${last + 1} of "${path.at(-2) ?? ''}"`;
}

function inside(place: Place): string {
  return place.path.length === 0 ? 'The file' : subject(place);
}
