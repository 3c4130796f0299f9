/** Remarks in the user's files that let a finding be: `// wiretrue: ok RULE because …` on its line or on the one above. */
import type { Span } from './span';

export interface OkRemark {
  readonly rule: string;
  /** Absent where none is given: such a remark lets nothing be. */
  readonly because?: string;
  /** From "wiretrue" to the end of the remark. */
  readonly span: Span;
  /** The line that it speaks of. */
  readonly line: Span;
}

export function findOkRemarks(file: string, text: string): readonly OkRemark[] {
  if (!text.includes('wiretrue:')) return [];
  const found = text.matchAll(/\/\/[^\S\r\n]*(wiretrue:[^\S\r\n]*ok\b[^\S\r\n]*([\w-]*)([^\r\n]*))/g);
  return [...found].map((match): OkRemark => {
    const start = match.index + match[0].indexOf('wiretrue:');
    const because = /^[^\S\r\n]+because[^\S\r\n]+(\S[^\r\n]*)/.exec(match[3] ?? '')?.[1]?.trim();
    const span = { file, start, end: start + (match[1] ?? '').trimEnd().length };
    return {
      rule: match[2] ?? '',
      span,
      line: { file, ...lineOf(text, match.index) },
      ...(because && { because }),
    };
  });
}

/** The line of an offset; where nothing stands in front of the remark, the next line. */
function lineOf(text: string, offset: number): { readonly start: number; readonly end: number } {
  const start = Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
  const lineEnd = (from: number) => from + (/^[^\r\n]*/.exec(text.slice(from))?.[0].length ?? 0);
  if (/\S/.test(text.slice(start, offset).replace('\uFEFF', ''))) return { start, end: lineEnd(start) };
  const next = lineEnd(start) + (/^(?:\r\n|\r|\n)/.exec(text.slice(lineEnd(start)))?.[0].length ?? 0);
  return { start: next, end: lineEnd(next) };
}
