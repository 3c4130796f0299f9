/** The sentences for what a file's shape can be wrong in. */
import type { Problem } from '../base/read';
import type { Span } from '../base/span';
import type { ShapeError } from './generated/validators';
import { contentSpan, type JsonNode, nodeAt } from './json/node';
import { listNames, quoteName, unknownName } from './names';
import { resolveSchema } from './schema-lookup';

/** A value in the file, with the way to it from the top. */
export interface Place {
  readonly root: JsonNode;
  readonly node: JsonNode;
  readonly path: readonly (string | number)[];
}

/** What is wrong at a place; nothing where another error says more. */
export function describe(error: ShapeError, place: Place): Problem[] {
  const { params, parentSchema: schema } = error;
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
          span: headSpan(place),
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
      return [{ code: 'missing-key', message, span: headSpan(place) }];
    }
    default:
      // `not` and the parts of `allOf` and `oneOf` come along with an error that says more.
      return [];
  }
}

function primitiveTypes(): string[] {
  const { schema } = resolveSchema({ $ref: '#/definitions/primitive' });
  return (schema.oneOf ?? []).map((branch) => String(resolveSchema(branch).schema.properties?.type?.const));
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

export function wrongKind(kinds: readonly string[], place: Place): Problem {
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

export function wrongWord(words: readonly unknown[], place: Place): Problem {
  const { node } = place;
  const right = words.filter((word) => typeof word === 'string');
  if (typeof node.scalar === 'string' && right.length > 0) {
    const message = `${subject(place)} cannot be ${quoteName(node.scalar)}.`;
    return unknownName('unknown-word', message, contentSpan(node), node.scalar, right);
  }
  const wanted = words.map((word) => JSON.stringify(word));
  return { ...shapeProblem(place), message: `${subject(place)} must be ${wanted.join(' or ')}.` };
}

export function shapeProblem(place: Place): { code: string; span: Span } {
  return { code: 'wrong-value', span: contentSpan(place.node) };
}

/** What to point at for something missing: the key of the object that lacks it, or its opening bracket. */
function headSpan(place: Place): Span {
  const last = place.path.at(-1);
  const owner = nodeAt(place.root, place.path.slice(0, -1));
  const key = typeof last === 'string' ? owner?.entries.get(last)?.keySpan : undefined;
  const { file, start, end } = place.node.span;
  return key ?? { file, start, end: Math.min(end, start + 1) };
}

export function subject({ path }: Place): string {
  const last = path.at(-1);
  if (last === undefined) return 'The file';
  return typeof last === 'string' ? `"${last}"` : `Entry ${last + 1} of "${path.at(-2) ?? ''}"`;
}

function inside(place: Place): string {
  return place.path.length === 0 ? 'The file' : subject(place);
}
