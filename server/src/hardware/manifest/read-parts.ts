/** The manifest's parts: each entry and its kind together make a part with terminals and figures. */
import type { Part, Primitive, Terminal } from '../../base/build';
import type { Problem } from '../../base/read';
import type { Span } from '../../base/span';
import type { ParameterValue, ParameterValues } from '../figures';
import type { PartParameter } from '../generated/part';
import { childOf, contentSpan, type JsonEntry, type JsonNode, textOf } from '../json/node';
import { quoteName, unknownName, withArticle } from '../names';
import { type PartKind, whyWrongValue } from '../part-kind';
import { conditionHolds, resolvePrimitive } from '../primitives';
import type { StockTexts } from './stock';

const commonKeys: readonly string[] = ['kind', 'purpose', 'note', 'subassembly', 'mount'];

/**
 * The parts of the manifest. Those of an unknown kind are left out; `declared` knows their names all the same, since
 * a wire to one of them is no second mistake.
 */
export function readParts(
  node: JsonNode | undefined,
  kinds: Pick<ReadonlyMap<string, PartKind>, 'get' | 'keys'>,
  stock: StockTexts,
  problems: Problem[],
): { readonly parts: Part[]; readonly declared: ReadonlySet<string> } {
  const entries = [...(node?.entries.values() ?? [])];
  const parts = entries.flatMap((entry) => {
    if (/[\s.@]/.test(entry.key) || entry.key === '' || entry.key.startsWith('~')) {
      const message = `The part name ${quoteName(entry.key)} cannot be written in a wire.`;
      const hint = 'Leave out spaces, dots and "@", and do not begin with "~".';
      problems.push({ code: 'wrong-part-name', message, span: entry.keySpan, hint });
    }
    const kindNode = childOf(entry.value, 'kind');
    const name = textOf(kindNode);
    if (kindNode === undefined || name === undefined) return [];
    const kind = kinds.get(name);
    if (kind !== undefined) return [readPart(entry, kind, stock, problems)];
    const message = `There is no kind of part called ${quoteName(name)}.`;
    problems.push(
      unknownName('unknown-kind', message, contentSpan(kindNode), name, [...kinds.keys()].sort()),
    );
    return [];
  });
  return { parts, declared: new Set(entries.map((entry) => entry.key)) };
}

function readPart(entry: JsonEntry, kind: PartKind, stock: StockTexts, problems: Problem[]): Part {
  const found: Problem[] = [];
  const parameters = new Map(Object.entries(kind.parameters ?? {}));
  const valueSpans: [string, Span][] = [];
  const values = new Map<string, ParameterValue>();
  for (const [key, { value: node, keySpan }] of entry.value.entries) {
    if (commonKeys.includes(key)) continue;
    const parameter = parameters.get(key);
    if (parameter === undefined) {
      const free = [...parameters.keys(), ...commonKeys].filter((name) => !entry.value.entries.has(name));
      const message = `${quoteName(entry.key)} is ${withArticle(kind.title)}, which has no key ${quoteName(key)}.`;
      found.push(unknownName('unknown-key', message, keySpan, key, free));
      continue;
    }
    const problem = readValue(parameter, key, node, values);
    if (problem !== undefined) found.push(problem);
    valueSpans.push([key, contentSpan(node)]);
  }
  for (const [key, parameter] of parameters) {
    if (values.has(key) || entry.value.entries.has(key)) continue;
    const fallback = defaultOf(parameter, stock);
    if (fallback !== undefined) values.set(key, fallback);
    else if (parameter.required === true) {
      const message = `${quoteName(entry.key)} is ${withArticle(kind.title)} and needs the key "${key}".`;
      const hint = parameter.about;
      found.push({
        code: 'missing-key',
        message,
        span: entry.keySpan,
        ...(hint === undefined ? {} : { hint }),
      });
    }
  }
  const inside = resolveInside(entry, kind, values, found);
  problems.push(...found);
  const terminals = kind.terminals.filter((one) => conditionHolds(one.when, values)).map(makeTerminal);
  const series = seriesOf(kind, terminals);
  const present = new Set(terminals.map(({ id }) => id));
  const joined = (kind.joined ?? [])
    .map((group) => group.filter((id) => present.has(id)))
    .filter((group) => group.length > 1);
  const purpose = textOf(childOf(entry.value, 'purpose'));
  const note = textOf(childOf(entry.value, 'note'));
  const subassembly = textOf(childOf(entry.value, 'subassembly'));
  const mount = textOf(childOf(entry.value, 'mount'));
  return {
    id: entry.key,
    kind: kind.kind,
    title: kind.title,
    ...(purpose === undefined ? {} : { purpose }),
    ...(note === undefined ? {} : { note }),
    ...(subassembly === undefined ? {} : { subassembly }),
    ...(mount === undefined ? {} : { mount }),
    terminals,
    ...(series === undefined ? {} : { series }),
    ...(joined.length === 0 ? {} : { joined }),
    ...(kind.caution === undefined ? {} : { caution: kind.caution }),
    inside,
    parameters: Object.fromEntries([...values].map(([key, value]) => [key, String(value)])),
    span: entry.keySpan,
    entry: entry.span,
    valueSpans: Object.fromEntries(valueSpans),
  };
}

function readValue(
  parameter: PartParameter,
  key: string,
  node: JsonNode,
  values: Map<string, ParameterValue>,
): Problem | undefined {
  const { scalar } = node;
  // Anything but a scalar was told with the shape of the file.
  if (scalar === null) return undefined;
  const why = whyWrongValue(parameter, scalar);
  if (why === undefined) {
    values.set(key, parameter.type === 'choice' ? String(scalar) : scalar);
    return undefined;
  }
  const span = contentSpan(node);
  if (parameter.type === 'choice' && typeof scalar === 'string') {
    const message = `"${key}" cannot be ${quoteName(scalar)}.`;
    return unknownName('unknown-word', message, span, scalar, parameter.choices ?? []);
  }
  return { code: 'wrong-figure', message: `"${key}" cannot be used: ${why}.`, span };
}

function defaultOf(parameter: PartParameter, stock: StockTexts): ParameterValue | undefined {
  const { default: fallback } = parameter;
  return typeof fallback === 'object' ? stock[fallback.stock] : fallback;
}

function resolveInside(
  entry: JsonEntry,
  kind: PartKind,
  values: ParameterValues,
  found: Problem[],
): Primitive[] {
  const inside: Primitive[] = [];
  const reasons = new Set<string>();
  for (const written of kind.inside) {
    const result = resolvePrimitive(written, values);
    if (!result.ok) reasons.add(result.why);
    else if (result.value !== undefined) inside.push(result.value);
  }
  // A wrong or missing value of the entry is told at its place; only what has no such place is told here.
  if (found.every((problem) => problem.code === 'unknown-key')) {
    for (const why of reasons) {
      const message = `${quoteName(entry.key)} is left out of the sums: ${why}.`;
      found.push({ code: 'incomplete-part', message, span: entry.keySpan });
    }
  }
  return inside;
}

function makeTerminal(written: PartKind['terminals'][number]): Terminal {
  const { id, names = [], tell, polarity, roles, optional } = written;
  return {
    id,
    names,
    ...(tell === undefined ? {} : { tell }),
    ...(polarity === undefined ? {} : { polarity }),
    ...(roles === undefined ? {} : { roles }),
    ...(optional === undefined ? {} : { optional }),
  };
}

function seriesOf(kind: PartKind, terminals: readonly Terminal[]): readonly [string, string] | undefined {
  if (kind.series === false) return undefined;
  const ids = terminals.map((terminal) => terminal.id);
  const [first, second, ...more] = kind.series ?? ids;
  if (first === undefined || second === undefined || more.length > 0) return undefined;
  return ids.includes(first) && ids.includes(second) ? [first, second] : undefined;
}
