/**
 * Puts an entry into an object or a list. A list library would re-print the neighbours and move their comments; here
 * text is only ever added, in the layout that the neighbours have.
 */
import type { Edit } from '../../base/span';
import { endOfRemarks, indentAt, type Layout, lineIndent, startsLine, tokensIn, type Value } from './layout';

/**
 * @param index Place of the new entry; beyond the last it is added at the end.
 * @param entry Text of the entry, with its key in an object.
 * @param file File of the edits.
 */
export function insertMember(
  layout: Layout,
  container: Value,
  index: number,
  entry: string,
  file: string,
): Edit[] {
  const { members } = container;
  const add = (offset: number, text: string): Edit => ({ file, start: offset, end: offset, text });
  const [first] = members;
  if (first === undefined) return [insertFirst(layout, container, entry, add)];
  const before = members[Math.min(index, members.length) - 1];
  if (before === undefined) {
    if (!startsLine(layout, first.start))
      return [add(first.start, `${entry},${gapBehind(layout, container)}`)];
    const text = `${layout.newline}${indentAt(layout.text, first.start)}${entry},`;
    return [add(endOfRemarks(layout, container.start + 1), text)];
  }
  const after = members[index];
  // The layout is that of the neighbour which keeps its place in the line: the one behind, or the last one.
  const model = after ?? before;
  const ownLine = startsLine(layout, model.start);
  const indent = indentAt(layout.text, model.start) ?? '';
  if (before.comma !== undefined) {
    const behind = before.comma + 1;
    if (ownLine) return [add(endOfRemarks(layout, behind), `${layout.newline}${indent}${entry},`)];
    const gap =
      after === undefined ? gapBehind(layout, container) : /^[^\S\r\n]*/.exec(layout.text.slice(behind))?.[0];
    return [add(behind, `${gap ?? ''}${entry},`)];
  }
  if (!ownLine) return [add(before.end, `,${gapBehind(layout, container)}${entry}`)];
  const lineEnd = endOfRemarks(layout, before.end);
  const line = `${layout.newline}${indent}${entry}`;
  return lineEnd === before.end ? [add(lineEnd, `,${line}`)] : [add(before.end, ','), add(lineEnd, line)];
}

/** The white space between a comma and the next entry of the line, as this container has it. */
function gapBehind(layout: Layout, container: Value): string {
  for (const [index, member] of container.members.entries()) {
    const next = container.members[index + 1];
    if (member.comma === undefined || next === undefined) continue;
    const gap = layout.text.slice(member.comma + 1, next.start);
    if (/^[^\S\r\n]*$/.test(gap)) return gap;
  }
  return ' ';
}

function insertFirst(
  layout: Layout,
  container: Value,
  entry: string,
  add: (offset: number, text: string) => Edit,
): Edit {
  const { text, newline } = layout;
  const inside = tokensIn(layout, container.start + 1, container.end - 1);
  const remarks = inside.filter((token) => token.kind !== 'space' && token.kind !== 'line-break');
  const broken = inside.some((token) => token.kind === 'line-break');
  // A list of plain values is written in one line, as a path is.
  if (container.kind === 'list' && !broken && remarks.length === 0 && !entry.startsWith('{')) {
    return add(container.start + 1, entry);
  }
  const outer = lineIndent(text, container.start);
  const line = `${newline}${outer}${layout.indent}${entry}`;
  const last = remarks.at(-1);
  if (last === undefined) {
    if (broken) return add(container.start + 1, line);
    return add(container.end - 1, `${line}${newline}${outer}`);
  }
  const behind = tokensIn(layout, last.end, container.end - 1);
  if (behind.some((token) => token.kind === 'line-break')) return add(last.end, line);
  // The comment and the brackets share a line, and so does the entry.
  return add(container.end - 1, behind.length > 0 ? `${entry} ` : entry);
}
