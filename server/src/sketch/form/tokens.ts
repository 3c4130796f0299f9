/** A small lexer: for macro bodies, conditions, and for finding every place where a name stands. */

export type TokenKind = 'name' | 'number' | 'character' | 'string' | 'sign';

export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
  readonly start: number;
}

// One alternative a kind, sticky, in the order of trying. Comments, white space and continued lines are skipped by the first.
const pattern =
  /((?:\s+|\\\r?\n|\/\/(?:[^\n\\]+|\\\r?\n|\\)*|\/\*[\s\S]*?(?:\*\/|$))+)|([A-Za-z_$][\w$]*)|(\.?[0-9](?:[eE][-+]|[\w.'])*)|('(?:\\.|[^'\\\n])*'?)|("(?:\\.|[^"\\\n])*"?)|(<<=|>>=|\.\.\.|->|\+\+|--|<<|>>|<=|>=|==|!=|&&|\|\||::|##|[-+*/%&|^]=|[\s\S])/y;

const kinds: readonly TokenKind[] = ['name', 'number', 'character', 'string', 'sign'];

/** Cuts a text into at most `limit` tokens. */
export function tokens(text: string, limit = Number.POSITIVE_INFINITY): Token[] {
  const found: Token[] = [];
  pattern.lastIndex = 0;
  while (pattern.lastIndex < text.length && found.length < limit) {
    const start = pattern.lastIndex;
    const match = pattern.exec(text);
    if (match === null) break;
    if (match[1] !== undefined) continue;
    const kind = kinds.findIndex((_, index) => match[index + 2] !== undefined);
    found.push({ kind: kinds[kind] ?? 'sign', text: match[0], start });
  }
  return found;
}

/** A place where a name stands in code, with what stands before it. */
export interface Occurrence {
  readonly start: number;
  /** Behind `.`, `->` or `::`. */
  readonly qualified: boolean;
}

/** A name with its places. */
export interface NamePlaces {
  readonly name: string;
  readonly places: readonly Occurrence[];
}

const isNameStart = (code: number) =>
  (code >= 97 && code <= 122) || (code >= 65 && code <= 90) || code === 95 || code === 36;
const isDigit = (code: number) => code >= 48 && code <= 57;

/** Every name of a text with its places, comments and strings left out. */
export function occurrences(text: string): readonly NamePlaces[] {
  const found = new Map<string, NamePlaces & { readonly places: Occurrence[] }>();
  let qualified = false;
  let at = 0;
  // By hand: this looks at every character of a sketch, and a pattern takes four times as long.
  while (at < text.length) {
    const code = text.charCodeAt(at);
    const start = at;
    if (isNameStart(code)) {
      at += 1;
      for (let next = text.charCodeAt(at); isNameStart(next) || isDigit(next); next = text.charCodeAt(at))
        at += 1;
      const name = text.slice(start, at);
      const known = found.get(name);
      if (known === undefined) found.set(name, { name, places: [{ start, qualified }] });
      else known.places.push({ start, qualified });
      qualified = false;
    } else if (code <= 32 || code === 92) at += 1;
    else if (code === 47 && isComment(text.charCodeAt(at + 1))) at = commentEnd(text, at);
    else if (code === 46) {
      at = isDigit(text.charCodeAt(at + 1)) ? numberEnd(text, at) : at + 1;
      qualified = at === start + 1 && text.charCodeAt(start - 1) !== 46;
    } else {
      const next = text.charCodeAt(at + 1);
      qualified = (code === 45 && next === 62) || (code === 58 && next === 58);
      if (isDigit(code)) at = numberEnd(text, at);
      else if (code === 34 || code === 39) at = quoteEnd(text, at, code);
      else at += qualified ? 2 : 1;
    }
  }
  return [...found.values()];
}

const isComment = (code: number) => code === 47 || code === 42;

function commentEnd(text: string, at: number): number {
  if (text.charCodeAt(at + 1) === 42) {
    const close = text.indexOf('*/', at + 2);
    return close === -1 ? text.length : close + 2;
  }
  // A backslash at the end of its line takes the next line into the comment.
  let end = text.indexOf('\n', at);
  while (end !== -1 && /\\\r?$/.test(text.slice(Math.max(at, end - 2), end)))
    end = text.indexOf('\n', end + 1);
  return end === -1 ? text.length : end;
}

const numberPattern = /\.?[0-9](?:[eE][-+]|[\w.'])*/y;

function numberEnd(text: string, at: number): number {
  numberPattern.lastIndex = at;
  return numberPattern.test(text) ? numberPattern.lastIndex : at + 1;
}

/** Behind the closing quote, or at the end of the line where there is none. */
function quoteEnd(text: string, at: number, quote: number): number {
  for (let end = at + 1; end < text.length; end += 1) {
    const code = text.charCodeAt(end);
    if (code === quote) return end + 1;
    if (code === 10) return end;
    if (code === 92) end += 1;
  }
  return text.length;
}
