/**
 * Turns what the validators made from the JSON Schemas say into located problems in plain sentences. The validators
 * decide; this file only finds the place and the words.
 */
import type { Problem } from '../base/read';
import type { PartFile, PartPrimitive } from './generated/part';
import {
  definitions,
  type JsonSchema,
  type ShapeError,
  type schemas,
  type Validator,
  validateBoard,
  validateManifest,
  validatePart,
} from './generated/validators';
import { type JsonNode, nodeAt, plainValue } from './json/node';
import { kindsOf, resolveSchema } from './schema-lookup';
import { describe, type Place, shapeProblem, subject, wrongKind, wrongWord } from './shape-words';

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
  return runCheck(validators[name], { root, node: root, path: [] }).slice(0, mostProblems);
}

export function isPartFile(value: unknown): value is PartFile {
  return validatePart(value);
}

/** True where a value is a primitive as part kinds and boards write it. */
export function isPrimitive(value: unknown): value is PartPrimitive {
  const { id } = resolveSchema({ $ref: '#/definitions/primitive' });
  return id !== undefined && definitions[id]?.(value) === true;
}

function runCheck(validator: Validator, top: Place): Problem[] {
  if (validator(plainValue(top.node))) return [];
  const errors = validator.errors ?? [];
  // The outermost first; of two at one place the validators tell the outer one last.
  const unions = errors.filter(isUnion).reverse();
  unions.sort((a, b) => a.instancePath.length - b.instancePath.length);
  return errors.flatMap((error) => {
    const place = placeOf(error.instancePath, top);
    const union = unions.find((other) => covers(other.instancePath, error.instancePath));
    // What the alternatives say one by one is replaced by what the one that was meant says.
    if (union === undefined) return describe(error, place);
    return union === error ? describeUnion(error, errors, place) : [];
  });
}

function placeOf(pointer: string, { root, node, path }: Place): Place {
  const steps = stepsOf(pointer, node);
  return { root, node: nodeAt(node, steps) ?? node, path: [...path, ...steps] };
}

/** "At least one of these keys" is no choice between alternatives: a plain sentence tells it. */
function isUnion(error: ShapeError): boolean {
  if (error.keyword !== 'anyOf') return false;
  const branches = error.parentSchema?.anyOf ?? [];
  return !branches.every((branch) => branch.required !== undefined && branch.type === undefined);
}

function covers(outer: string, inner: string): boolean {
  return inner === outer || inner.startsWith(`${outer}/`);
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

function describeUnion(error: ShapeError, errors: readonly ShapeError[], place: Place): Problem[] {
  const branches = (error.parentSchema?.anyOf ?? []).map(resolveSchema);
  const fitting = branches.filter(({ schema }) => kindsOf(schema).includes(place.node.kind));
  const [meant] = fitting.toSorted((a, b) => likeness(b.schema, place.node) - likeness(a.schema, place.node));
  if (meant === undefined) {
    const kinds = new Set(branches.flatMap(({ schema }) => kindsOf(schema)));
    return [
      wrongKind(
        [...kinds].filter((kind) => kind !== 'null'),
        place,
      ),
    ];
  }
  const validator = meant.id === undefined ? undefined : definitions[meant.id];
  if (validator !== undefined) return runCheck(validator, place);
  if (meant.schema.enum !== undefined) return [wrongWord(meant.schema.enum, place)];
  // An alternative that is written out on the spot: what was told below this place is about its pieces.
  const below = errors.filter((other) => other.instancePath.startsWith(`${error.instancePath}/`));
  const problems = below.flatMap((other) =>
    describe(other, placeOf(other.instancePath.slice(error.instancePath.length), place)),
  );
  if (problems.length > 0) return problems;
  return [{ ...shapeProblem(place), message: `${subject(place)} is not right here.` }];
}

/** How many keys of an object a schema knows, the required ones first. */
function likeness(schema: JsonSchema, node: JsonNode): number {
  let score = 0;
  for (const key of node.entries.keys()) {
    if (Object.hasOwn(schema.properties ?? {}, key)) score += schema.required?.includes(key) ? 100 : 1;
  }
  return score;
}
