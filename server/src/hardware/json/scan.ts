/**
 * The scanner's tokens, comments and white space included, as plain data. The parser reads values; everything that
 * has to keep the bytes between them (edits, the depth check) reads these.
 */
import { createScanner } from 'jsonc-parser';

export type TokenKind =
  | '{'
  | '}'
  | '['
  | ']'
  | ','
  | ':'
  | 'text'
  | 'scalar'
  | 'line-comment'
  | 'block-comment'
  | 'line-break'
  | 'space'
  | 'unknown';

export interface Token {
  readonly kind: TokenKind;
  readonly start: number;
  readonly end: number;
}

/** By jsonc-parser's SyntaxKind, a const enum that separate compilation cannot read. */
const kinds: readonly TokenKind[] = [
  'unknown',
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  'scalar',
  'scalar',
  'scalar',
  'text',
  'scalar',
  'line-comment',
  'block-comment',
  'line-break',
  'space',
];
const unknownKind = 16;
const endOfFile = 17;

/** All tokens of a text in order; together they cover it, but for a byte order mark. */
export function scanJson(text: string): Token[] {
  const tokens: Token[] = [];
  const marked = text.startsWith('\uFEFF');
  const scanner = createScanner(marked ? ` ${text.slice(1)}` : text, false);
  for (let kind: number = scanner.scan(); kind !== endOfFile; kind = scanner.scan()) {
    const start = scanner.getTokenOffset();
    const token = kinds[kind === unknownKind ? 0 : kind] ?? 'unknown';
    tokens.push({ kind: token, start, end: Math.min(start + scanner.getTokenLength(), text.length) });
  }
  const first = tokens[0];
  if (marked && first !== undefined) tokens[0] = { ...first, start: 1 };
  return tokens;
}

/** Offset of the first bracket that is nested more than `limit` deep; undefined where none is. */
export function findDeepNesting(text: string, limit: number): number | undefined {
  // Most texts have too few brackets for it: then the scan is saved.
  if ((text.match(/[[{]/g)?.length ?? 0) <= limit) return undefined;
  const scanner = createScanner(text, true);
  let depth = 0;
  for (let kind: number = scanner.scan(); kind !== endOfFile; kind = scanner.scan()) {
    const token = kinds[kind];
    if (token === '{' || token === '[') depth += 1;
    if (token === '}' || token === ']') depth -= 1;
    if (depth > limit) return scanner.getTokenOffset();
  }
  return undefined;
}
