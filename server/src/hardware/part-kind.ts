/**
 * Reads a part kind's file. A kind may come from a user's workspace, so everything the schema cannot say is checked
 * here once, and making a part of the kind later meets no surprise.
 */
import type { Problem, Read } from '../base/read';
import { figureUnits, literalRange, ownValue, parseFigure } from './figures';
import type { Condition, Figure, PartFile, PartParameter, PartPrimitive } from './generated/part';
import { contentSpan, type JsonNode, type JsonPath, nodeAt, plainValue } from './json/node';
import { isHalfTyped, parseJson } from './json/parse';
import { quoteName, unknownName } from './names';
import { figuresOf, touchedNames } from './primitives';
import { checkShape, isPartFile } from './shape';

/** A kind of part: the checked content of its file. */
export interface PartKind extends Readonly<PartFile> {
  readonly file: string;
}

/** The unit a quantity parameter is typed in. */
export function unitOf(parameter: PartParameter) {
  return parameter.type === 'quantity' ? (parameter.unit ?? 'number') : 'number';
}

/** @returns The kind, undefined where its file does not follow the schema or contradicts itself. Never throws. */
export function readPartKind(file: string, text: string): Read<PartKind | undefined> {
  const { value: root, problems: syntax } = parseJson(file, text);
  if (root === undefined) return { value: undefined, problems: syntax };
  const shape = checkShape('part', root);
  const problems = [...syntax, ...shape];
  // A key too many does no harm once it is left out; anything else would be met again by every part of this kind.
  const extra = shape
    .filter((problem) => problem.code === 'unknown-key')
    .map((problem) => problem.span.start);
  const part = plainValue(root, new Set(extra));
  if (isHalfTyped(syntax) || !isPartFile(part)) return { value: undefined, problems };
  const meaning = new MeaningCheck(part, root).run();
  problems.push(...meaning);
  return { value: meaning.length > 0 ? undefined : { ...part, file }, problems };
}

/** What a figure, a condition or an end refers to has to exist. */
class MeaningCheck {
  readonly #problems: Problem[] = [];
  readonly #terminals: string[];

  constructor(
    readonly part: PartFile,
    readonly root: JsonNode,
  ) {
    this.#terminals = [...new Set(part.terminals.map((terminal) => terminal.id))];
  }

  run(): Problem[] {
    this.#checkTerminals();
    for (const [name, parameter] of Object.entries(this.part.parameters ?? {}))
      this.#checkParameter(name, parameter);
    const ids = new Set<string>();
    for (const [index, primitive] of this.part.inside.entries()) {
      this.#checkPrimitive(primitive, ['inside', index]);
      // Variants of one piece share its id.
      const variant = JSON.stringify([primitive.id, primitive.when ?? null]);
      if (ids.has(variant)) {
        this.#add('double-id', `The id ${quoteName(primitive.id)} stands twice.`, ['inside', index, 'id']);
      }
      ids.add(variant);
    }
    return this.#problems;
  }

  #checkTerminals() {
    const variants = new Set<string>();
    for (const [index, terminal] of this.part.terminals.entries()) {
      const variant = JSON.stringify([terminal.id, terminal.when ?? null]);
      if (variants.has(variant)) {
        this.#add('double-id', `The terminal ${quoteName(terminal.id)} stands twice.`, [
          'terminals',
          index,
          'id',
        ]);
      }
      variants.add(variant);
      this.#checkCondition(terminal.when, ['terminals', index, 'when']);
    }
    const series: readonly string[] = this.part.series || [];
    for (const [index, id] of series.entries()) this.#checkTerminal(id, ['series', index]);
    for (const [group, ids] of (this.part.joined ?? []).entries()) {
      for (const [index, id] of ids.entries()) this.#checkTerminal(id, ['joined', group, index]);
    }
  }

  #checkTerminal(id: string, path: JsonPath) {
    if (this.#terminals.includes(id)) return;
    this.#unknown(
      'unknown-terminal',
      `This part has no terminal ${quoteName(id)}.`,
      path,
      id,
      this.#terminals,
    );
  }

  #checkParameter(name: string, parameter: PartParameter) {
    const path = ['parameters', name];
    if (parameter.type === 'choice' && parameter.choices === undefined) {
      this.#add('missing-choices', `The choice ${quoteName(name)} has no "choices".`, path);
    }
    if (parameter.type === 'quantity' && parameter.unit === undefined) {
      this.#add('missing-unit', `The quantity ${quoteName(name)} has no "unit".`, path);
    }
    this.#checkSource(parameter, path);
    const fallback = parameter.default;
    if (fallback === undefined || typeof fallback === 'object') return;
    const why = whyWrongValue(parameter, fallback);
    if (why !== undefined)
      this.#add('wrong-default', `This default does not fit: ${why}.`, [...path, 'default']);
  }

  #checkPrimitive(primitive: PartPrimitive, path: JsonPath) {
    for (const name of touchedNames(primitive)) {
      if (!name.startsWith('~')) this.#checkTerminal(name, [...path, ...pathOfName(primitive, name)]);
    }
    for (const [key, figure] of figuresOf(primitive)) this.#checkFigure(figure, key, [...path, key]);
    this.#checkCondition(primitive.when, [...path, 'when']);
    if (primitive.type !== 'switch') return;
    this.#checkChoice(primitive.action, ['momentary', 'latching'], [...path, 'action']);
    this.#checkChoice(primitive.rest, ['open', 'closed'], [...path, 'rest']);
    const switches = this.part.inside.filter((other) => other.type === 'switch' && other !== primitive);
    this.#checkPartner(
      primitive.movesWith,
      switches.map((other) => other.id),
      [...path, 'movesWith'],
    );
    const movers = this.part.inside.filter((other) => ['coil', 'load', 'diode'].includes(other.type));
    const coils = movers.map((coil) => coil.id);
    const coil = primitive.operatedBy;
    if (coil !== undefined && !coils.includes(coil)) {
      this.#unknown(
        'unknown-coil',
        `This part has no coil ${quoteName(coil)}.`,
        [...path, 'operatedBy'],
        coil,
        coils,
      );
    }
  }

  #checkPartner(id: string | undefined, switches: readonly string[], path: JsonPath) {
    if (id === undefined || switches.includes(id)) return;
    const message = `This part has no other switch ${quoteName(id)}.`;
    this.#unknown('unknown-switch', message, path, id, switches);
  }

  #checkChoice(choice: string | { parameter: string }, words: readonly string[], path: JsonPath) {
    const parameter =
      typeof choice === 'object' ? this.#parameter(choice.parameter, [...path, 'parameter']) : undefined;
    const given = typeof choice === 'object' ? (parameter?.choices ?? []) : [choice];
    for (const word of given) {
      if (!words.includes(word)) {
        this.#unknown('unknown-word', `This cannot be ${quoteName(word)}.`, path, word, words);
      }
    }
  }

  #checkFigure(figure: Figure, key: string, path: JsonPath) {
    const unit = figureUnits[key] ?? 'number';
    if (typeof figure === 'object' && 'parameter' in figure) {
      const parameter = this.#parameter(figure.parameter, [...path, 'parameter']);
      const wanted = figure.times === undefined ? unit : 'number';
      if (parameter !== undefined && unitOf(parameter) !== wanted) {
        this.#add('wrong-unit', `The parameter ${quoteName(figure.parameter)} is not in ${wanted}.`, path);
      }
      const { tolerance, times } = figure;
      if (typeof tolerance === 'object')
        this.#parameter(tolerance.parameter, [...path, 'tolerance', 'parameter']);
      if (times !== undefined) this.#checkFigure(times, key, [...path, 'times']);
      if (figure.otherwise !== undefined) this.#checkFigure(figure.otherwise, key, [...path, 'otherwise']);
      return;
    }
    if (typeof figure === 'object' && 'table' in figure) {
      const parameter = this.#parameter(figure.by, [...path, 'by']);
      const choices: readonly string[] =
        parameter?.choices ?? (parameter?.type === 'flag' ? ['true', 'false'] : []);
      for (const [word, row] of Object.entries(figure.table)) {
        if (parameter !== undefined && !choices.includes(word)) {
          this.#add('unknown-word', `${quoteName(word)} is no choice of ${quoteName(figure.by)}.`, [
            ...path,
            'table',
            word,
          ]);
        }
        this.#checkFigure(row, key, [...path, 'table', word]);
      }
      const missing = choices.filter((word) => ownValue(figure.table, word) === undefined);
      if (missing.length > 0 && figure.otherwise === undefined) {
        this.#add('missing-row', `The table has no row for ${quoteName(missing[0] ?? '')}.`, [
          ...path,
          'table',
        ]);
      }
      if (figure.otherwise !== undefined) this.#checkFigure(figure.otherwise, key, [...path, 'otherwise']);
      return;
    }
    const read = literalRange(figure, unit);
    if (!read.ok) this.#add('wrong-figure', `This figure cannot be used: ${read.why}.`, path);
    if (typeof figure === 'object') this.#checkSource(figure, path);
  }

  #checkCondition(condition: Condition | undefined, path: JsonPath) {
    for (const [name, wanted] of Object.entries(condition ?? {})) {
      const parameter = this.#parameter(name, [...path, name]);
      for (const word of [wanted].flat()) {
        if (parameter?.choices !== undefined && !parameter.choices.includes(String(word))) {
          const message = `${quoteName(name)} is never ${quoteName(String(word))}.`;
          this.#unknown('unknown-word', message, [...path, name], String(word), parameter.choices);
        }
      }
    }
  }

  #checkSource(holder: { readonly source?: string }, path: JsonPath) {
    const keys = Object.keys(this.part.sources ?? {});
    if (holder.source === undefined || keys.includes(holder.source)) return;
    const message = `"sources" has no ${quoteName(holder.source)}.`;
    this.#unknown('unknown-source', message, [...path, 'source'], holder.source, keys);
  }

  #parameter(name: string, path: JsonPath): PartParameter | undefined {
    const parameters = this.part.parameters ?? {};
    const found = ownValue(parameters, name);
    if (found === undefined) {
      const message = `This part has no parameter ${quoteName(name)}.`;
      this.#unknown('unknown-parameter', message, path, name, Object.keys(parameters));
    }
    return found;
  }

  #add(code: string, message: string, path: JsonPath) {
    this.#problems.push({ code, message, span: contentSpan(nodeAt(this.root, path) ?? this.root) });
  }

  #unknown(code: string, message: string, path: JsonPath, name: string, candidates: readonly string[]) {
    const span = contentSpan(nodeAt(this.root, path) ?? this.root);
    this.#problems.push(unknownName(code, message, span, name, candidates));
  }
}

function pathOfName(primitive: PartPrimitive, name: string): JsonPath {
  const index = primitive.ends.indexOf(name);
  if (index >= 0) return ['ends', index];
  const keys = { potentiometer: 'wiper', transistor: 'control', source: 'from' } as const;
  return [primitive.type in keys ? keys[primitive.type as keyof typeof keys] : 'supply'];
}

/** Why a parameter cannot have a value, as a clause; undefined where it can. */
export function whyWrongValue(
  parameter: PartParameter,
  value: string | number | boolean,
): string | undefined {
  switch (parameter.type) {
    case 'flag':
      return typeof value === 'boolean' ? undefined : 'it must be true or false, without quotes';
    case 'text':
      return typeof value === 'string' ? undefined : 'it must be text in quotes';
    case 'choice':
      return parameter.choices?.includes(String(value)) === false
        ? `it must be one of ${parameter.choices.join(', ')}`
        : undefined;
    default: {
      if (typeof value === 'boolean') return 'it must be a figure';
      const read = parseFigure(value, unitOf(parameter));
      return read.ok ? undefined : read.why;
    }
  }
}
