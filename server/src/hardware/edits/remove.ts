/**
 * Takes an entry out of an object or a list: with its comma and what is remarked on its own line, and with nothing
 * else. Comments on lines of their own stay, also those above the entry: they are the user's text, and the user can
 * delete them where they have no more sense.
 */

import type { Edit } from '../../base/span';
import type { Token } from '../json/scan';
import { isComment, isTrivia, type Layout, type Member, startsLine, tokensIn, type Value } from './layout';

interface Span {
  readonly start: number;
  readonly end: number;
}

/** The edits that take out the member at `index`; none where there is no such member. */
export function removeMember(layout: Layout, container: Value, index: number, file: string): Edit[] {
  const member = container.members[index];
  if (member === undefined) return [];
  const spans: Span[] = [];
  const previous = container.members[index - 1];
  // Without a comma of its own it is the last: the comma in front of it would be left over.
  if (member.comma === undefined && previous?.comma !== undefined) {
    spans.push({ start: previous.comma, end: previous.comma + 1 });
  }
  spans.push(...entrySpans(layout, container, member));
  return join(layout, spans).map((span) => ({ file, ...span, text: '' }));
}

function entrySpans(layout: Layout, container: Value, member: Member): Span[] {
  const behind = tokensIn(layout, (member.comma ?? member.end - 1) + 1, layout.text.length);
  const between = member.comma === undefined ? [] : tokensIn(layout, member.end, member.comma);
  const spans: Span[] = [{ start: member.start, end: member.end }];
  if (member.comma !== undefined) spans.push({ start: member.comma, end: member.comma + 1 });
  if (!startsLine(layout, member.start)) return [...spans, ...spaceBeside(layout, container, member)];

  const remarks = [...remarksOf(layout, between), ...remarksOf(layout, behind)];
  const rest = behind.find((token) => token.kind !== 'space' && !remarks.includes(token));
  const alone = rest === undefined || rest.kind === 'line-break';
  if (!alone && !isClosing(rest, container)) return [...spans, ...spaceBeside(layout, container, member)];

  const inFront = tokensIn(layout, 0, member.start);
  const lineBreak = inFront.findLast((token) => token.kind !== 'space');
  const neighbour = inFront.findLast((token) => !isTrivia(token) || isComment(token));
  // What would be drawn up behind a line comment would become part of it.
  if (!alone && neighbour?.kind === 'line-comment') return [...spans, ...remarks];
  const lineStart = lineBreak?.kind === 'line-break' ? lineBreak.start : member.start;
  const result = [{ start: lineStart, end: member.start }, ...spans, ...remarks];
  // An object or list that is left with nothing closes on the line where it opens.
  if (
    container.members.length === 1 &&
    neighbour?.start === container.start &&
    isClosing(nextOf(behind, remarks), container)
  ) {
    const close = container.end - 1;
    result.push({ start: lastEnd(result), end: close });
  }
  return result;
}

function nextOf(behind: readonly Token[], remarks: readonly Token[]): Token | undefined {
  return behind.find(
    (token) => token.kind !== 'space' && token.kind !== 'line-break' && !remarks.includes(token),
  );
}

function lastEnd(spans: readonly Span[]): number {
  return Math.max(...spans.map((span) => span.end));
}

function isClosing(token: Token | undefined, container: Value): boolean {
  return token?.start === container.end - 1;
}

/** Comments that begin and end on the line where these tokens begin. */
function remarksOf(layout: Layout, tokens: readonly Token[]): Token[] {
  const found: Token[] = [];
  for (const token of tokens) {
    if (isComment(token) && !/[\r\n]/.test(layout.text.slice(token.start, token.end))) found.push(token);
    else if (token.kind !== 'space') break;
  }
  return found;
}

/** Inside a line the space on one side goes along, so that one remains where there were two. */
function spaceBeside(layout: Layout, container: Value, member: Member): Span[] {
  const { text } = layout;
  const end = (member.comma ?? member.end - 1) + 1;
  const behind = /^[^\S\r\n]*/.exec(text.slice(end))?.[0] ?? '';
  const front = /[^\S\r\n]*$/.exec(text.slice(0, member.start))?.[0] ?? '';
  if (member.comma === undefined && (container.members.length > 1 || front === '')) return [];
  // In front of a last entry with a comma stands the space that came with it.
  const isLast = container.members.length > 1 && container.members.at(-1) === member;
  if (isLast) return [{ start: member.start - front.length, end: member.start }];
  return behind === '' ? [] : [{ start: end, end: end + behind.length }];
}

/** Spans in order, grown together where only spaces lie between. */
function join(layout: Layout, spans: readonly Span[]): Span[] {
  const joined: Span[] = [];
  for (const span of spans.toSorted((a, b) => a.start - b.start)) {
    const last = joined.at(-1);
    if (last !== undefined && /^[^\S\r\n]*$/.test(layout.text.slice(last.end, span.start))) {
      joined[joined.length - 1] = { start: last.start, end: Math.max(last.end, span.end) };
    } else if (span.end > span.start) joined.push({ start: span.start, end: span.end });
  }
  return joined;
}
