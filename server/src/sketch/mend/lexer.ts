/** Tokens of a text that may be broken anywhere: no token runs over the end of its line unless it is whole. */

export type TokenKind = 'word' | 'number' | 'text' | 'mark' | 'directive' | 'end';

export interface LexerEvents {
  /** A comment that is never closed opens here. */
  openComment(at: number): void;
  /** A comment in which, on a later line, another one opens: from the one to the other. */
  doubtfulComment(start: number, end: number): void;
  /** A string that its line does not close ends here. */
  openString(end: number): void;
  /** A quote that opens no character. */
  looseQuote(at: number): void;
}

enum Char {
  tab = 9,
  feed = 10,
  carriageReturn = 13,
  space = 32,
  doubleQuote = 34,
  hash = 35,
  quote = 39,
  star = 42,
  dot = 46,
  slash = 47,
  backslash = 92,
}

const isDigit = (code: number) => code >= 48 && code <= 57;
const isWordStart = (code: number) =>
  (code >= 97 && code <= 122) || (code >= 65 && code <= 90) || code === 95 || code === 36 || code > 127;
const number = /\.?\d(?:[eEpP][-+]|'(?=\w)|[\w.])*/y;
const rawString = /"([^()\\\s]{0,16})\(/y;
const pairs = new Set(':: -> ++ -- == != <= >= += -= *= /= %= &= |= ^='.split(' '));

/** `:`, `>`, `+`, `-` or `=`. */
const isPairEnd = (code: number) => code === 58 || code === 61 || code === 62 || code === 43 || code === 45;

/** Steps of a tabulator, in columns: only the comparison of two lines counts. */
const tabWidth = 4;

export class Lexer {
  kind: TokenKind = 'end';
  start = 0;
  end = 0;
  /** The token as written; of strings and numbers nothing. */
  word = '';
  /** First token of its line. */
  first = false;
  lineStart = 0;
  /** Columns of white space before the line's first token. */
  indent = 0;
  private atLineStart = true;

  constructor(
    readonly text: string,
    private readonly events: LexerEvents,
  ) {}

  /** Goes on at `offset`, which is the start of a line where `atLineStart`. */
  rewind(offset: number, atLineStart: boolean): void {
    this.end = offset;
    this.atLineStart = atLineStart;
    this.first = false;
    if (atLineStart) this.lineStart = Math.max(this.text.lastIndexOf('\n', offset - 1) + 1, 0);
  }

  next(): void {
    this.skipBlanks();
    const { text, end: at } = this;
    this.start = at;
    this.first = this.atLineStart;
    if (this.first) this.indent = this.columns(at);
    this.word = '';
    if (at >= text.length) {
      this.kind = 'end';
      return;
    }
    const code = text.charCodeAt(at);
    if (code === Char.hash && this.atLineStart) {
      this.kind = 'directive';
      this.end = this.directiveEnd(at);
      return;
    }
    this.atLineStart = false;
    if (isWordStart(code)) this.readWord(at);
    else if (isDigit(code) || (code === Char.dot && isDigit(text.charCodeAt(at + 1)))) {
      number.lastIndex = at;
      this.kind = 'number';
      this.end = number.test(text) ? number.lastIndex : at + 1;
    } else if (code === Char.doubleQuote) this.readString(at);
    else if (code === Char.quote) this.readCharacter(at);
    else {
      this.kind = 'mark';
      const isPair = isPairEnd(text.charCodeAt(at + 1)) && pairs.has(text.slice(at, at + 2));
      this.word = isPair ? text.slice(at, at + 2) : (text[at] ?? '');
      this.end = at + this.word.length;
    }
  }

  private readWord(at: number): void {
    const { text } = this;
    let end = at + 1;
    for (let code = text.charCodeAt(end); isWordStart(code) || isDigit(code); code = text.charCodeAt(end))
      end += 1;
    this.kind = 'word';
    this.word = text.slice(at, end);
    this.end = end;
    if (text.charCodeAt(end) !== Char.doubleQuote || !/^(?:u8|[uUL])?R$/.test(this.word)) return;
    rawString.lastIndex = end;
    const match = rawString.exec(text);
    const close = match === null ? -1 : text.indexOf(`)${match[1] ?? ''}"`, rawString.lastIndex);
    if (close < 0) return;
    this.kind = 'text';
    this.word = '';
    this.end = text.indexOf('"', close) + 1;
  }

  private readString(at: number): void {
    this.kind = 'text';
    const close = this.closingQuote(at, Char.doubleQuote);
    if (close >= 0) {
      this.end = close + 1;
      return;
    }
    this.end = at + this.text.slice(at, this.lineEnd(at)).trimEnd().length;
    this.events.openString(this.end);
  }

  private readCharacter(at: number): void {
    const close = this.closingQuote(at, Char.quote);
    this.kind = 'text';
    this.end = close >= 0 ? close + 1 : at + 1;
    if (close >= 0) return;
    this.events.looseQuote(at);
    this.next();
  }

  /** Place of the quote that closes, on the same line or on one that a backslash joins to it; -1 for none. */
  private closingQuote(at: number, quote: number): number {
    const { text } = this;
    for (let here = at + 1; here < text.length; here += 1) {
      const code = text.charCodeAt(here);
      if (code === quote) return here;
      if (code === Char.feed || code === Char.carriageReturn) return -1;
      if (code === Char.backslash) {
        here += 1;
        if (text.charCodeAt(here) === Char.carriageReturn && text.charCodeAt(here + 1) === Char.feed)
          here += 1;
      }
    }
    return -1;
  }

  private lineEnd(at: number): number {
    const end = this.text.indexOf('\n', at);
    return end < 0 ? this.text.length : end;
  }

  private directiveEnd(at: number): number {
    const { text } = this;
    let end = this.lineEnd(at);
    while (end < text.length && /\\\r?$/.test(text.slice(Math.max(at, end - 2), end)))
      end = this.lineEnd(end + 1);
    const line = text.slice(at, end);
    // A comment that goes on below is no part of the directive.
    const comment = line.lastIndexOf('/*');
    const isOpen = comment >= 0 && line.indexOf('*/', comment) < 0 && text.indexOf('*/', end) >= 0;
    return at + (isOpen ? line.slice(0, comment) : line).trimEnd().length;
  }

  private columns(at: number): number {
    let columns = 0;
    for (let here = this.lineStart; here < at; here += 1)
      columns += this.text.charCodeAt(here) === Char.tab ? tabWidth : 1;
    return columns;
  }

  private skipBlanks(): void {
    const { text } = this;
    let at = this.end;
    for (;;) {
      const code = text.charCodeAt(at);
      if (code === Char.feed || code === Char.carriageReturn) {
        at += 1;
        this.lineStart = at;
        this.atLineStart = true;
      } else if (
        code === Char.space ||
        code === Char.tab ||
        code === 0xfeff ||
        code === 0xa0 ||
        code === 12
      ) {
        at += 1;
      } else if (code === Char.backslash && /[\r\n]/.test(text[at + 1] ?? '')) at += 2;
      else if (code === Char.slash && text.charCodeAt(at + 1) === Char.slash) at = this.lineEnd(at);
      else if (code === Char.slash && text.charCodeAt(at + 1) === Char.star) at = this.skipComment(at);
      else break;
    }
    this.end = at;
  }

  private skipComment(at: number): number {
    const { text } = this;
    const close = text.indexOf('*/', at + 2);
    if (close < 0) {
      this.events.openComment(at);
      return this.lineEnd(at);
    }
    const inside = text.slice(at + 2, close);
    const line = inside.lastIndexOf('\n');
    if (line >= 0) {
      this.lineStart = at + 2 + line + 1;
      this.atLineStart = true;
      const other = inside.indexOf('/*', inside.indexOf('\n'));
      if (other >= 0) this.events.doubtfulComment(at, at + 2 + other);
    }
    return close + 2;
  }
}
