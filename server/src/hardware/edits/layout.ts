/**
 * How a hardware file is laid out: where its entries begin and end, where their commas stand, and what white space
 * and comments lie between. Insertion and deletion are worked out on this, because whatever they do not touch has to
 * survive byte for byte.
 */

import type { JsonPath } from '../json/node';
import { parseJson } from '../json/parse';
import { scanJson, type Token } from '../json/scan';

export interface Member {
  /** Key of an object's entry, undefined in a list. */
  readonly key: string | undefined;
  /** Begins with the key, or with the item of a list. */
  readonly start: number;
  /** The key with its quotes; undefined in a list. */
  readonly keyEnd: number | undefined;
  readonly end: number;
  /** Offset of the comma behind it. */
  readonly comma: number | undefined;
  readonly value: Value;
}

export interface Value {
  readonly kind: 'object' | 'list' | 'scalar';
  readonly start: number;
  readonly end: number;
  readonly members: readonly Member[];
}

export interface Layout {
  readonly text: string;
  readonly tokens: readonly Token[];
  /** Undefined where the text holds nothing but white space and comments. */
  readonly root: Value | undefined;
  readonly newline: string;
  /** One step of indentation. */
  readonly indent: string;
}

/** @returns undefined where the text has a syntax error: what is half typed is not edited. */
export function readLayout(text: string): Layout | undefined {
  const { problems } = parseJson('', text);
  if (problems.some((problem) => !['double-key', 'empty-file'].includes(problem.code))) return undefined;
  const tokens = scanJson(text);
  const significant = tokens.filter((token) => !isTrivia(token));
  const root = significant.length === 0 ? undefined : new LayoutReader(text, significant).value();
  const newline = /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';
  return { text, tokens, root, newline, indent: indentStep(text, root) };
}

export function isTrivia(token: Token): boolean {
  return isComment(token) || token.kind === 'line-break' || token.kind === 'space';
}

export function isComment(token: Token): boolean {
  return token.kind === 'line-comment' || token.kind === 'block-comment';
}

function indentStep(text: string, root: Value | undefined): string {
  for (const member of root?.members ?? []) {
    const indent = indentAt(text, member.start);
    if (indent !== undefined && indent !== '') return indent;
  }
  return '  ';
}

/** The white space from the beginning of the line up to `offset`; undefined where something else stands there. */
export function indentAt(text: string, offset: number): string | undefined {
  const before = /(?:^|[\r\n])([^\S\r\n]*)$/.exec(text.slice(0, offset));
  return before?.[1]?.replace('\uFEFF', '');
}

/** The white space that the line of `offset` begins with. */
export function lineIndent(text: string, offset: number): string {
  const line = /[^\r\n]*$/.exec(text.slice(0, offset))?.[0] ?? '';
  return /^\uFEFF?([^\S\r\n]*)/.exec(line)?.[1] ?? '';
}

class LayoutReader {
  #at = 0;

  constructor(
    readonly text: string,
    readonly tokens: readonly Token[],
  ) {}

  value(): Value {
    const first = this.#next();
    if (first.kind !== '{' && first.kind !== '[') {
      return { kind: 'scalar', start: first.start, end: first.end, members: [] };
    }
    const members: Member[] = [];
    const kind = first.kind === '{' ? 'object' : 'list';
    while (this.#peek() !== '}' && this.#peek() !== ']' && this.#at < this.tokens.length) {
      members.push(this.#member(kind));
    }
    return { kind, start: first.start, end: this.#next().end, members };
  }

  #member(kind: 'object' | 'list'): Member {
    const start = this.tokens[this.#at]?.start ?? 0;
    let key: string | undefined;
    let keyEnd: number | undefined;
    if (kind === 'object') {
      const token = this.#next();
      key = String(JSON.parse(this.text.slice(token.start, token.end)));
      keyEnd = token.end;
      this.#next();
    }
    const value = this.value();
    const comma = this.#peek() === ',' ? this.#next().start : undefined;
    return { key, start, keyEnd, end: value.end, comma, value };
  }

  #peek() {
    return this.tokens[this.#at]?.kind;
  }

  #next(): Token {
    const token = this.tokens[this.#at];
    this.#at += 1;
    return token ?? { kind: 'unknown', start: this.text.length, end: this.text.length };
  }
}

/** The value at a path; where a key is doubled the first one counts, as for the readers. */
export function valueAt(root: Value | undefined, path: JsonPath): Value | undefined {
  let current = root;
  for (const step of path) current = memberAt(current, step)?.value;
  return current;
}

export function memberAt(value: Value | undefined, step: string | number): Member | undefined {
  if (typeof step === 'number') return value?.kind === 'list' ? value.members[step] : undefined;
  return value?.kind === 'object' ? value.members.find((member) => member.key === step) : undefined;
}

/** The tokens from `start` up to `end`. */
export function tokensIn(layout: Layout, start: number, end: number): Token[] {
  return layout.tokens.filter((token) => token.start >= start && token.end <= end);
}

/** True where a line break stands in front of `offset`, with nothing but white space between. */
export function startsLine(layout: Layout, offset: number): boolean {
  return indentAt(layout.text, offset) !== undefined;
}

/** The end of the white space and comments that begin on the line of `offset`, white space at the end left out. */
export function endOfRemarks(layout: Layout, offset: number): number {
  let end = offset;
  for (const token of layout.tokens) {
    if (token.start < offset) continue;
    if (isComment(token)) end = token.end;
    else if (token.kind !== 'space') break;
  }
  return end;
}
