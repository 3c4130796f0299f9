/**
 * Reads a board file, with all that it extends, into the board the other layers know. What a board needs for the
 * checks is asked for here, after merging: a file that extends another need not repeat it.
 */
import type { Board, BoardReset, Header, OnBoardLamp, OnBoardPart } from '../../base/build';
import type { Read } from '../../base/read';
import type { Span } from '../../base/span';
import { childOf, contentSpan, integerOf, type JsonNode, plainValue, textOf } from '../json/node';
import { listNames, quoteName, unknownName } from '../names';
import { resolvePrimitive, touchedNames } from '../primitives';
import { isPrimitive } from '../shape';
import { type BoardSource, extendBoard, type FindBoard } from './extend';
import { readAnalog, readLimits, readSupplyInputs } from './limits';
import { readPins } from './pins';
import { readPlatform } from './platform';
import { BoardReading, optional, truthOf, wordOf } from './reading';

/**
 * @param find Finds the board that a board extends.
 * @param known Ids of the library's boards, offered where that board is not found.
 * @returns The board, undefined where something is missing that every board needs. Never throws.
 */
export function readBoard(
  source: BoardSource,
  find: FindBoard,
  known: readonly string[] = [],
): Read<Board | undefined> {
  const extended = extendBoard(source, find, known);
  const problems = [...extended.problems];
  if (extended.root === undefined) return { value: undefined, problems };
  const value = assembleBoard(new BoardReading(extended.root, extended.sources, problems));
  return { value, problems };
}

function assembleBoard(reading: BoardReading): Board | undefined {
  const { root } = reading;
  const missing: string[] = [];
  const pins = readPins(reading);
  const logicRail = reading.pinId(childOf(root, 'logicRail'));
  const headers = readHeaders(reading);
  const onBoard = readOnBoard(reading);
  const supplyInputs = readSupplyInputs(reading);
  const limits = readLimits(reading, missing);
  const analog = readAnalog(reading);
  const reset = readReset(reading);
  const platformNode = childOf(root, 'platform');
  const platform = readPlatform(platformNode, pins);
  for (const key of ['id', 'title', 'chip', 'logicRail']) if (!textOf(childOf(root, key))) missing.push(key);
  if (pins.length === 0) missing.push('pins');
  if (integerOf(childOf(platformNode, 'intBits')) === undefined) missing.push('platform.intBits');
  if (missing.length > 0) {
    const message = `This board lacks ${listNames(missing)}.`;
    reading.add('incomplete-board', message, headSpan(root), 'Write it, or extend a board that has it.');
  }
  if (limits === undefined || logicRail === undefined || missing.length > 0) return undefined;
  return {
    id: textOf(childOf(root, 'id')) ?? '',
    title: textOf(childOf(root, 'title')) ?? '',
    chip: textOf(childOf(root, 'chip')) ?? '',
    logicRail,
    pins,
    headers,
    onBoard,
    ...optional('supplyInputs', supplyInputs),
    limits,
    ...optional('analog', analog),
    ...optional('reset', reset),
    platform,
  };
}

function readHeaders(reading: BoardReading): Header[] {
  return [...(childOf(reading.root, 'headers')?.entries ?? [])].flatMap(([id, { value: node }]) => {
    const places = childOf(node, 'positions')?.items ?? [];
    // A wrong name keeps its place, or all that follow would be miscounted.
    const positions = places.map((place) => reading.pinId(place) ?? textOf(place) ?? '');
    const title = textOf(childOf(node, 'title'));
    const landmark = textOf(childOf(node, 'landmark'));
    const side = wordOf(childOf(node, 'side'), ['left', 'right'] as const);
    if (title === undefined || landmark === undefined) return [];
    return [{ id, title, landmark, ...optional('side', side), positions }];
  });
}

function readOnBoard(reading: BoardReading): OnBoardPart[] {
  const parts: OnBoardPart[] = [];
  for (const [id, { value: node }] of childOf(reading.root, 'onBoard')?.entries ?? []) {
    const inside = (childOf(node, 'inside')?.items ?? []).flatMap((item) => {
      const written = plainValue(item);
      // One that does not follow the schema was told with the shape of its file.
      if (!isPrimitive(written)) return [];
      const unknown = touchedNames(written).find(
        (name) => !name.startsWith('~') && !reading.pinIds.includes(name),
      );
      if (unknown !== undefined) {
        const message = `This board has no pin ${quoteName(unknown)}.`;
        reading.problems.push(unknownName('unknown-pin', message, contentSpan(item), unknown, []));
        return [];
      }
      const result = resolvePrimitive(written, new Map());
      if (!result.ok)
        reading.add('wrong-figure', `This piece cannot be used: ${result.why}.`, contentSpan(item));
      return result.ok && result.value !== undefined ? [result.value] : [];
    });
    const title = textOf(childOf(node, 'title')) ?? id;
    const lamp = readLamp(reading, childOf(node, 'lamp'));
    parts.push({ id, title, inside, ...optional('lamp', lamp), source: reading.sourceOf(node) });
  }
  return parts;
}

function readLamp(reading: BoardReading, node: JsonNode | undefined): OnBoardLamp | undefined {
  const pin = reading.pinId(childOf(node, 'pin'));
  const litBy = wordOf(childOf(node, 'litBy'), ['high', 'low', 'data'] as const);
  if (pin === undefined || litBy === undefined) return undefined;
  return { pin, litBy, direct: truthOf(childOf(node, 'direct')) ?? false };
}

function readReset(reading: BoardReading): BoardReset | undefined {
  const node = childOf(reading.root, 'reset');
  if (node === undefined) return undefined;
  const pin = reading.pinId(childOf(node, 'pin'));
  const pullUpOhms = reading.figure(childOf(node, 'pullUpOhms'), 'ohm');
  const assertVolts = reading.figure(childOf(node, 'assertVolts'), 'V');
  if (pin !== undefined && pullUpOhms !== undefined && assertVolts !== undefined) {
    const couplingFarads = reading.figure(childOf(node, 'couplingFarads'), 'F');
    return { pin, pullUpOhms, assertVolts, ...optional('couplingFarads', couplingFarads) };
  }
  const message = 'The reset line needs "pin", "pullUpOhms" and "assertVolts".';
  reading.add('incomplete-reset', message, contentSpan(node));
  return undefined;
}

function headSpan(root: JsonNode): Span {
  const id = childOf(root, 'id');
  const { file, start } = root.span;
  return id === undefined ? { file, start, end: start + 1 } : contentSpan(id);
}
