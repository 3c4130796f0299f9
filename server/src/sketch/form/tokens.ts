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

/** Every name of a text with its places, comments and strings left out. */
export function occurrences(text: string): readonly NamePlaces[] {
  const found = new Map<string, Occurrence[]>();
  let before = '';
  pattern.lastIndex = 0;
  while (pattern.lastIndex < text.length) {
    const start = pattern.lastIndex;
    const match = pattern.exec(text);
    if (match === null) break;
    if (match[1] !== undefined) continue;
    if (match[2] !== undefined) {
      const places = found.get(match[2]);
      const place = { start, qualified: before === '.' || before === '->' || before === '::' };
      if (places === undefined) found.set(match[2], [place]);
      else places.push(place);
    }
    before = match[0];
  }
  return [...found].map(([name, places]) => ({ name, places }));
}
