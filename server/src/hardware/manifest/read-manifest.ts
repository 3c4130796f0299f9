/**
 * Reads the manifest beside a sketch into the build that rules and papers work on. Whatever is wrong in one place is
 * told there, and the rest of the file still counts.
 */
import type { Board, Build } from '../../base/build';
import type { Severity } from '../../base/finding';
import type { Problem, Read } from '../../base/read';
import { childOf, contentSpan, entryAt, integerOf, type JsonNode, textOf } from '../json/node';
import { isHalfTyped, parseJson } from '../json/parse';
import { quoteName, unknownName } from '../names';
import { deriveNets } from '../nets';
import type { PartKind } from '../part-kind';
import { checkShape } from '../shape';
import { EndReader } from './ends';
import { readWireHabits } from './gauge';
import { readParts } from './read-parts';
import { readWires } from './read-wires';
import { readPolicy, readStock, stockTexts } from './stock';

/** The newest format of the manifest that this reader knows. */
const knownFormat = 1;

/** What a manifest can refer to. */
export interface HardwareLibrary {
  /** @returns undefined where there is no such board at all. */
  board(idOrPath: string, manifestFile: string): Read<Board | undefined> | undefined;
  readonly boardIds: readonly string[];
  /** Looked up by name; the names are listed only where one was mistyped. */
  readonly partKinds: Pick<ReadonlyMap<string, PartKind>, 'get' | 'keys'>;
}

/**
 * @param file Name of the manifest, with forward slashes; boards of one's own are found from it.
 * @returns The build, undefined where its board is unknown or the text holds no object. Never throws.
 */
export function readManifest(file: string, text: string, library: HardwareLibrary): Read<Build | undefined> {
  const { value: root, problems: syntax } = parseJson(file, text);
  const problems = [...syntax];
  if (root === undefined) return { value: undefined, problems };
  // In half-typed text a key may be missing because its value is.
  const halfTyped = isHalfTyped(syntax);
  const shape = checkShape('manifest', root);
  problems.push(...shape.filter((problem) => !halfTyped || problem.code !== 'missing-key'));
  if (root.kind !== 'object') return { value: undefined, problems };
  checkFormat(root, problems);
  const board = readBoardOf(root, file, library, problems);
  const stock = readStock(childOf(root, 'stock'), problems);
  const stockDefaults = stockTexts(childOf(root, 'stock'), stock);
  const { parts, declared } = readParts(childOf(root, 'parts'), library.partKinds, stockDefaults, problems);
  const ends = new EndReader(board, parts, declared, problems);
  ends.checkHiddenPins();
  const wires = readWires(childOf(root, 'wires'), ends, board, problems);
  if (board === undefined) return { value: undefined, problems };
  const revision = textOf(childOf(root, 'revision'));
  const boardNode = childOf(root, 'board');
  const wire = readWireHabits(childOf(root, 'wire'), problems);
  const build: Build = {
    file,
    title: textOf(childOf(root, 'title')) ?? 'Untitled build',
    ...(revision === undefined ? {} : { revision }),
    board,
    ...(boardNode === undefined ? {} : { boardSpan: contentSpan(boardNode) }),
    parts,
    wires,
    nets: deriveNets(board, wires, parts),
    stock,
    ...(wire && { wire }),
    policy: readPolicy(childOf(root, 'policy'), board, problems),
    severity: readSeverity(childOf(root, 'severity')),
  };
  return { value: build, problems };
}

function checkFormat(root: JsonNode, problems: Problem[]) {
  const node = childOf(root, 'format');
  const format = integerOf(node);
  if (node === undefined || format === undefined || format <= knownFormat) return;
  const message = `This manifest has format ${format}; this program knows formats up to ${knownFormat}.`;
  const hint = 'Update the program. Until then, what it does not know is told as unknown.';
  problems.push({ code: 'newer-format', message, span: contentSpan(node), hint });
}

function readBoardOf(
  root: JsonNode,
  file: string,
  library: HardwareLibrary,
  problems: Problem[],
): Board | undefined {
  const node = childOf(root, 'board');
  const name = textOf(node);
  if (node === undefined || name === undefined) return undefined;
  const span = contentSpan(node);
  const read = library.board(name, file);
  if (read === undefined) {
    const isPath = /[/\\]|\.jsonc?$/i.test(name);
    const message = isPath
      ? `There is no board file ${quoteName(name)}.`
      : `There is no board ${quoteName(name)}.`;
    problems.push(unknownName('unknown-board', message, span, name, library.boardIds));
    return undefined;
  }
  problems.push(...read.problems);
  if (read.value === undefined) {
    const message = `The board file of ${quoteName(name)} cannot be used.`;
    const hint = 'Its own problems say why.';
    problems.push({ code: 'unusable-board', message, span, hint });
  }
  return read.value;
}

const severities: readonly (Severity | 'off')[] = ['error', 'warning', 'information', 'hint', 'off'];

function readSeverity(node: JsonNode | undefined): Build['severity'] {
  const pairs = [...(node?.entries.values() ?? [])].flatMap(({ key, value }) => {
    const severity = severities.find((one) => one === textOf(value));
    return severity === undefined ? [] : [[key, severity] as const];
  });
  return Object.fromEntries(pairs);
}

/** The span of a rule's entry in `severity`, for whoever knows the rules and finds one unknown. */
export function severitySpan(file: string, text: string, rule: string) {
  const { value: root } = parseJson(file, text);
  return entryAt(root, ['severity', rule])?.keySpan;
}
