/**
 * Offsets inside, lines and columns outside. The protocol counts UTF-16 units and takes LF, CRLF and a lone CR as line
 * ends; the library's document does the counting.
 */
import type { Range } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';

/** A text with its lines. The lines are counted on first use. */
export type Lines = TextDocument;

export function linesOf(text: string): Lines {
  return TextDocument.create('', '', 0, text);
}

/** The protocol's range of a half-open span of offsets; what lies outside the text is brought to its edge. */
export function rangeOf(lines: Lines, span: { readonly start: number; readonly end: number }): Range {
  return { start: lines.positionAt(span.start), end: lines.positionAt(Math.max(span.start, span.end)) };
}

/** Half-open offsets of a range of the protocol. */
export function offsetsOf(lines: Lines, range: Range): { readonly start: number; readonly end: number } {
  const start = lines.offsetAt(range.start);
  const end = lines.offsetAt(range.end);
  return start <= end ? { start, end } : { start: end, end: start };
}
