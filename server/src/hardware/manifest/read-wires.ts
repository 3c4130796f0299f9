/** The manifest's wires: every entry becomes the pieces of hookup wire that somebody solders. */
import type { Board, End, Position, Wire } from '../../base/build';
import { parseQuantity } from '../../base/quantity';
import type { Problem } from '../../base/read';
import { childOf, contentSpan, type JsonNode, textOf } from '../json/node';
import { quoteName } from '../names';
import { assignPositions, type PinPlace } from '../positions';
import type { EndReader, Item, RawEnd } from './ends';
import { readGauge, readStrip } from './gauge';
import { readFigure } from './stock';

interface RawWire extends Omit<Wire, 'ends'> {
  readonly ends: readonly [RawEnd, RawEnd];
}

/** The wires; an entry with an end that could not be read is left out as a whole. */
export function readWires(
  node: JsonNode | undefined,
  ends: EndReader,
  board: Board | undefined,
  problems: Problem[],
): Wire[] {
  const raw = (node?.items ?? []).flatMap((entry, index) => readEntry(entry, index, ends, problems));
  if (board === undefined) return [];
  const places = raw.flatMap((wire) => wire.ends).filter((end) => end.kind === 'pin');
  const positions = assignPositions(board, [...new Set(places)]);
  return raw.map((wire) => ({
    ...wire,
    ends: [finish(wire.ends[0], positions), finish(wire.ends[1], positions)],
  }));
}

function finish(end: RawEnd, positions: ReadonlyMap<PinPlace, Position | undefined>): End {
  if (end.kind === 'terminal') return end;
  const position = positions.get(end);
  return { kind: 'pin', pin: end.pin, ...(position === undefined ? {} : { position }), span: end.span };
}

function readEntry(entry: JsonNode, index: number, ends: EndReader, problems: Problem[]): RawWire[] {
  const path = childOf(entry, 'path');
  const isPath = path !== undefined;
  const nodes = isPath ? path.items : [childOf(entry, 'from'), childOf(entry, 'to')];
  const items = nodes.map((node) => (node === undefined ? undefined : ends.read(node, isPath)));
  const colours = readColours(entry, isPath, nodes.length - 1, problems);
  const lengths = readLengths(entry, isPath, nodes.length - 1, problems);
  if (items.length < 2 || items.includes(undefined)) return [];
  const known = items.filter((item) => item !== undefined);
  if (hasDoubleEnd(known, nodes, problems)) return [];
  const note = textOf(childOf(entry, 'note'));
  const gauge = readGauge(childOf(entry, 'gauge'), problems);
  const strip = readStrip(childOf(entry, 'strip'), problems);
  const wires: RawWire[] = [];
  for (const [piece, item] of known.slice(0, -1).entries()) {
    const next = known[piece + 1];
    if (next === undefined) continue;
    const colour = colours[piece];
    const length = lengths[piece];
    wires.push({
      id: isPath ? `w${index + 1}.${piece + 1}` : `w${index + 1}`,
      entry: index,
      piece,
      ends: [item.leave, next.enter],
      ...(colour === undefined ? {} : { colour }),
      ...(length === undefined ? {} : { length }),
      ...(gauge === undefined ? {} : { gauge }),
      ...(strip === undefined ? {} : { strip }),
      ...(note === undefined ? {} : { note }),
      span: entry.span,
    });
  }
  return wires;
}

/** One entry never comes to the same place twice: such a wire shorts what it runs through, or nothing at all. */
function hasDoubleEnd(
  items: readonly Item[],
  nodes: readonly (JsonNode | undefined)[],
  problems: Problem[],
): boolean {
  const seen = new Map<string, number>();
  for (const [index, item] of items.entries()) {
    for (const key of new Set([keyOf(item.enter), keyOf(item.leave)])) {
      const before = seen.get(key);
      seen.set(key, index);
      if (before === undefined || before === index) continue;
      const node = nodes[index];
      if (node === undefined) continue;
      const name = quoteName(textOf(node) ?? '');
      const direct = before === index - 1 && items.length === 2;
      problems.push({
        code: direct ? 'wire-to-itself' : 'end-twice',
        message: direct
          ? `This wire starts and ends at ${name}.`
          : `This path comes to ${name} a second time.`,
        span: contentSpan(node),
        hint: 'The whole entry is left out until it goes somewhere else.',
      });
      return true;
    }
  }
  return false;
}

function keyOf(end: RawEnd): string {
  if (end.kind === 'terminal') return JSON.stringify([end.part, end.terminal]);
  return `${end.pin}@${end.declared === undefined ? '' : `${end.declared.header}.${end.declared.index}`}`;
}

function readColours(
  entry: JsonNode,
  isPath: boolean,
  pieces: number,
  problems: Problem[],
): (string | undefined)[] {
  if (!isPath) return [textOf(childOf(entry, 'colour'))];
  const list = childOf(entry, 'colours');
  checkCount(list, 'colours', pieces, problems);
  return (list?.items ?? []).map(textOf);
}

function readLengths(
  entry: JsonNode,
  isPath: boolean,
  pieces: number,
  problems: Problem[],
): (number | undefined)[] {
  const metres = (node: JsonNode | undefined) =>
    readFigure(node, (text) => parseQuantity(text, 'm'), problems);
  if (!isPath) return [metres(childOf(entry, 'length'))];
  const list = childOf(entry, 'lengths');
  checkCount(list, 'lengths', pieces, problems);
  return (list?.items ?? []).map(metres);
}

function checkCount(list: JsonNode | undefined, key: string, pieces: number, problems: Problem[]) {
  if (list?.kind !== 'array' || pieces < 1 || list.items.length === pieces) return;
  const message = `"${key}" has ${list.items.length} entries, but the path is made of ${pieces} wires.`;
  const hint = 'Name one for each wire, in the order of the path.';
  problems.push({ code: 'wrong-count', message, span: list.span, hint });
}
