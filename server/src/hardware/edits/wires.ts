/** Edits of the manifest's wires. All of them return no edit where the text is half typed. */
import type { Edit } from '../../base/span';
import { composeEdits, type EditStep } from './compose';
import type { JsonObject, JsonValue } from './format';
import { type Layout, memberAt, readLayout, type Value, valueAt } from './layout';
import { insertEntry, insertItem, readText, replaceValue } from './parts';
import { removeMember } from './remove';

/** Adds an entry at the end of `wires`. The section is made where it is missing. */
export function insertWire(text: string, entry: JsonObject, file: string): Edit[] {
  return insertEntry(text, 'wires', undefined, entry, file);
}

export function removeWire(text: string, wireIndex: number, file: string): Edit[] {
  const layout = readLayout(text);
  const wires = valueAt(layout?.root, ['wires']);
  return layout === undefined || wires?.kind !== 'list' ? [] : removeMember(layout, wires, wireIndex, file);
}

/**
 * Puts an end into a path, before the item that has this index now. The wire that is split makes two; the new one has
 * its colour and length, so that the lists keep their count.
 */
export function insertIntoPath(
  text: string,
  wireIndex: number,
  itemIndex: number,
  value: string,
  file: string,
): Edit[] {
  const layout = readLayout(text);
  const wire = valueAt(layout?.root, ['wires', wireIndex]);
  const path = memberAt(wire, 'path')?.value;
  if (layout === undefined || path === undefined) return [];
  const at = Math.min(Math.max(itemIndex, 0), path.members.length);
  const steps: EditStep[] = [(now) => insertItem(now, ['wires', wireIndex, 'path'], at, value, file)];
  for (const key of ['colours', 'lengths']) {
    const list = memberAt(wire, key)?.value;
    // Only a list that was complete can be kept complete.
    if (list?.kind !== 'list' || list.members.length !== path.members.length - 1) continue;
    const neighbour = list.members[Math.min(Math.max(at - 1, 0), list.members.length - 1)];
    const literal = neighbour && scalarOf(layout, neighbour.value);
    const place = Math.min(at, list.members.length);
    if (literal !== undefined)
      steps.push((now) => insertItem(now, ['wires', wireIndex, key], place, literal, file));
  }
  return composeEdits(text, file, ...steps);
}

/**
 * Puts a part with two terminals into one piece of a wire: into a path as an item, a plain wire becomes two.
 * @param series Terminals by which the run enters and leaves the part.
 */
export function insertIntoWire(
  text: string,
  wireIndex: number,
  piece: number,
  part: string,
  series: readonly [string, string],
  file: string,
): Edit[] {
  const layout = readLayout(text);
  const wire = valueAt(layout?.root, ['wires', wireIndex]);
  if (layout === undefined || wire === undefined) return [];
  if (memberAt(wire, 'path') !== undefined) return insertIntoPath(text, wireIndex, piece + 1, part, file);
  const to = memberAt(wire, 'to')?.value;
  const end = to && readText(layout, to);
  if (end === undefined) return [];
  const entry: Record<string, JsonValue> = { from: `${part}.${series[1]}`, to: end };
  for (const key of ['colour', 'length']) {
    const value = memberAt(wire, key)?.value;
    const literal = value && scalarOf(layout, value);
    if (literal !== undefined) entry[key] = literal;
  }
  return composeEdits(
    text,
    file,
    (now) => replaceValue(now, ['wires', wireIndex, 'to'], `${part}.${series[0]}`, file),
    (now) => insertItem(now, ['wires'], wireIndex + 1, entry, file),
  );
}

/** Turns a path round: every item and colour changes places with its counterpart, comments stay where they are. */
export function reversePath(text: string, wireIndex: number, file: string): Edit[] {
  const layout = readLayout(text);
  const wire = valueAt(layout?.root, ['wires', wireIndex]);
  if (layout === undefined || wire === undefined) return [];
  return ['path', 'colours', 'lengths'].flatMap((key) => {
    const members = memberAt(wire, key)?.value.members ?? [];
    return members.flatMap(({ value }, index) => {
      const other = members[members.length - 1 - index]?.value;
      if (other === undefined || other === value) return [];
      return [{ file, start: value.start, end: value.end, text: layout.text.slice(other.start, other.end) }];
    });
  });
}

function scalarOf(layout: Layout, value: Value): JsonValue | undefined {
  return value.kind === 'scalar'
    ? (JSON.parse(layout.text.slice(value.start, value.end)) as JsonValue)
    : undefined;
}
