/** Edits of the manifest's parts and of single values. All of them return no edit where the text is half typed. */
import type { Edit } from '../../base/span';
import type { JsonPath } from '../json/node';
import { composeEdits, type EditStep } from './compose';
import { formatJson, type JsonObject, type JsonValue } from './format';
import { insertMember } from './insert';
import { type Layout, memberAt, readLayout, type Value, valueAt } from './layout';
import { removeMember } from './remove';

/** Adds a part at the end of `parts`; no edit where the name is taken. The section is made where it is missing. */
export function insertPart(text: string, id: string, entry: JsonObject, file: string): Edit[] {
  return insertEntry(text, 'parts', id, entry, file);
}

export function removePart(text: string, id: string, file: string): Edit[] {
  return removeKey(text, ['parts', id], file);
}

/** Gives a part another name, in `parts` and in every wire that goes to it. */
export function renamePart(text: string, id: string, newId: string, file: string): Edit[] {
  const layout = readLayout(text);
  const parts = valueAt(layout?.root, ['parts']);
  if (layout === undefined || memberAt(parts, newId) !== undefined) return [];
  const edits = renameKey(text, ['parts', id], newId, file);
  if (edits.length === 0) return [];
  for (const wire of valueAt(layout.root, ['wires'])?.members ?? []) {
    const ends = [memberAt(wire.value, 'from')?.value, memberAt(wire.value, 'to')?.value];
    ends.push(...(memberAt(wire.value, 'path')?.value.members.map((item) => item.value) ?? []));
    for (const end of ends) {
      const name = end && readText(layout, end);
      if (end === undefined || name === undefined || (name !== id && !name.startsWith(`${id}.`))) continue;
      const renamed = JSON.stringify(newId + name.slice(id.length));
      edits.push({ file, start: end.start, end: end.end, text: renamed });
    }
  }
  return edits;
}

/**
 * Sets the value at a path. The literal is replaced where there is one; a key that is missing is added to its object.
 * Objects on the way to it are not made.
 */
export function replaceValue(text: string, path: JsonPath, value: JsonValue, file: string): Edit[] {
  const layout = readLayout(text);
  const last = path.at(-1);
  if (layout === undefined || last === undefined) return [];
  const container = valueAt(layout.root, path.slice(0, -1));
  const member = memberAt(container, last);
  if (member !== undefined) {
    return [{ file, start: member.value.start, end: member.value.end, text: formatJson(value) }];
  }
  if (container?.kind !== 'object' || typeof last !== 'string') return [];
  const entry = `${JSON.stringify(last)}: ${formatJson(value)}`;
  return insertMember(layout, container, container.members.length, entry, file);
}

/** Gives an entry another key; no edit where the object has that key already. */
export function renameKey(text: string, path: JsonPath, key: string, file: string): Edit[] {
  const layout = readLayout(text);
  const container = valueAt(layout?.root, path.slice(0, -1));
  const member = memberAt(container, path.at(-1) ?? '');
  if (member?.keyEnd === undefined || memberAt(container, key) !== undefined) return [];
  return [{ file, start: member.start, end: member.keyEnd, text: JSON.stringify(key) }];
}

/** Takes an entry out of an object. */
export function removeKey(text: string, path: JsonPath, file: string): Edit[] {
  const layout = readLayout(text);
  const container = valueAt(layout?.root, path.slice(0, -1));
  const member = memberAt(container, path.at(-1) ?? '');
  if (layout === undefined || container === undefined || member === undefined) return [];
  return removeMember(layout, container, container.members.indexOf(member), file);
}

/** Puts an item into the list at a path, before the one that has this index now. */
export function insertItem(
  text: string,
  path: JsonPath,
  index: number,
  value: JsonValue,
  file: string,
): Edit[] {
  const layout = readLayout(text);
  const list = valueAt(layout?.root, path);
  if (layout === undefined || list?.kind !== 'list') return [];
  return insertMember(layout, list, index, formatJson(value), file);
}

/** Adds an entry to a section of the manifest, which is made where it is missing. `key` is undefined for a list. */
export function insertEntry(
  text: string,
  section: 'parts' | 'wires',
  key: string | undefined,
  entry: JsonValue,
  file: string,
): Edit[] {
  const layout = readLayout(text);
  if (layout === undefined) return [];
  if (layout.root === undefined) {
    const empty: EditStep = () => [makeRoot(layout, file)];
    return composeEdits(text, file, empty, (made) => insertEntry(made, section, key, entry, file));
  }
  if (layout.root.kind !== 'object') return [];
  const container = valueAt(layout.root, [section]);
  const written = `${key === undefined ? '' : `${JSON.stringify(key)}: `}${formatJson(entry)}`;
  if (container !== undefined) {
    const kind = key === undefined ? 'list' : 'object';
    if (container.kind !== kind || (key !== undefined && memberAt(container, key) !== undefined)) return [];
    const entryText = key === undefined ? written : alignValue(layout, container, written);
    return insertMember(layout, container, container.members.length, entryText, file);
  }
  const empty: EditStep = () => insertSection(layout, layout.root, section, file);
  return composeEdits(text, file, empty, (made) => insertEntry(made, section, key, entry, file));
}

/** Where all values of an object stand in one column, the new one does as well, if its key is short enough. */
function alignValue(layout: Layout, container: Value, entry: string): string {
  const columns = new Set(container.members.map((member) => member.value.start - member.start));
  const [column = 0] = columns;
  const padded = container.members.some((member) => {
    return /^:[^\S\r\n]{2,}$/.test(layout.text.slice(member.keyEnd ?? member.start, member.value.start));
  });
  const value = entry.indexOf('": ') + 3;
  return columns.size === 1 && padded && value < column
    ? entry.slice(0, value).padEnd(column) + entry.slice(value)
    : entry;
}

/** Parts are declared before the wires that go to them. */
function insertSection(
  layout: Layout,
  root: Value | undefined,
  section: 'parts' | 'wires',
  file: string,
): Edit[] {
  if (root === undefined) return [];
  const wires = memberAt(root, 'wires');
  const index =
    section === 'parts' && wires !== undefined ? root.members.indexOf(wires) : root.members.length;
  return insertMember(layout, root, index, section === 'parts' ? '"parts": {}' : '"wires": []', file);
}

function makeRoot(layout: Layout, file: string): Edit {
  const { text, newline } = layout;
  const end = text.length;
  const lead = text === '' || /[\r\n\uFEFF]$/.test(text) ? '' : newline;
  return { file, start: end, end, text: `${lead}{}${newline}` };
}

/** The text that a literal stands for, undefined where it is none. */
export function readText(layout: Layout, value: Value): string | undefined {
  const literal = layout.text.slice(value.start, value.end);
  return literal.startsWith('"') ? String(JSON.parse(literal)) : undefined;
}
