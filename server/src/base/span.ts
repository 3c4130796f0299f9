/**
 * Places in text. Lines and columns exist only in lsp/ and cli/: rows differ between the C++ grammar and the
 * protocol where a lone CR stands in the text, offsets agree everywhere.
 */

/** A half-open range of UTF-16 offsets in one file. `file` is the path the host gave, with forward slashes. */
export interface Span {
  readonly file: string;
  readonly start: number;
  readonly end: number;
}

/** Replaces `text` for the characters from `start` to `end` (half-open UTF-16 offsets) of `file`. */
export interface Edit {
  readonly file: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** True where `offset` lies in the span or directly behind its last character (a cursor touches both sides). */
export function touches(span: Span, offset: number): boolean {
  return span.start <= offset && offset <= span.end;
}

/**
 * Applies edits of one file to its text.
 * @throws RangeError where two edits overlap or one lies outside the text.
 */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  const ordered = [...edits].sort((a, b) => a.start - b.start || a.end - b.end);
  let result = '';
  let at = 0;
  for (const edit of ordered) {
    if (edit.start < at || edit.end < edit.start || edit.end > text.length) {
      throw new RangeError(`edit ${edit.start}..${edit.end} overlaps another or leaves the text`);
    }
    result += text.slice(at, edit.start) + edit.text;
    at = edit.end;
  }
  return result + text.slice(at);
}
