/** What is open at a place of the text, and how it is closed where it was left unfinished. */
import { Lexer, type LexerEvents, type TokenKind } from './lexer';
import type { Patch } from './patches';
import { calledNames, isDefiningWord, isStatementLine } from './words';

export interface Token {
  kind: TokenKind;
  word: string;
  start: number;
  end: number;
}

/** A statement or declaration that was begun and not ended. */
export interface Statement {
  readonly start: number;
  readonly first: string;
  words: number;
  onlyQualifiers: boolean;
  /** A round bracket was closed in it. */
  closed: boolean;
  equals: boolean;
  /** Behind the colon of a constructor's members. */
  members: boolean;
  /** What a brace opens after its words: a class or namespace, or a list of constants. */
  defines: 'type' | 'list' | undefined;
}

/** Head of a control statement: its word, and where that stands. */
export interface Head {
  readonly word: string;
  readonly at: number;
}

export interface Bracket {
  /** `loose` is a brace that may hold values as well as statements. */
  readonly kind: 'round' | 'square' | 'list' | 'block' | 'type' | 'loose';
  readonly at: number;
  /** Columns before the first token of its line, and where that line starts. */
  readonly indent: number;
  readonly line: number;
  readonly outer: Statement | undefined;
  /** Of a round bracket: the control statement it belongs to. Of a block: the `do` before it. */
  readonly head: Head | undefined;
  /** The token before it. */
  readonly behind: string;
  semicolons: number;
  /** Line ends passed inside: the token before, and the start of the line's first token. */
  breaks: { readonly last: Readonly<Token>; readonly next: number }[] | undefined;
  /** End of the last token that is inside by its indentation. */
  extent: number | undefined;
}

interface Directive {
  readonly start: number;
  readonly end: number;
}

/** An `#if` that waits for its end. */
export interface Conditional extends Directive {
  readonly stack: readonly Bracket[];
  readonly statement: Statement | undefined;
  readonly others: readonly Directive[];
  /** Without the condition that it needs. */
  readonly bare: boolean;
}

/** A place where nothing but the stack was open: reading may start again here. */
export interface Region {
  readonly at: number;
  readonly stack: readonly Bracket[];
  readonly conditionals: readonly Conditional[];
  readonly lost: number;
}

/** A brace that closed the last open one. */
export interface Close {
  readonly at: number;
  readonly suspect: boolean;
  /** The region that it ended. */
  readonly region: Region;
  readonly indent: number;
  /** Columns before the line that follows. */
  next: number | undefined;
}

/** Words that a round bracket has to follow. */
export const controlWords: ReadonlySet<string> = new Set(['if', 'for', 'while', 'switch']);

const operators = /[-+*/%=<>!&|^~?,.:]+\s*$/;

/** Deeper or longer damage is no half-typed line: such a text is left as it is. */
const mostBrackets = 300;
const mostPatches = 2000;

export abstract class MendState implements LexerEvents {
  /** Whether a condition ends at the depth of brackets where it began: read so where the conditions do not fit. */
  abstract readonly byDepth: boolean;
  readonly lexer: Lexer;
  stack: Bracket[] = [];
  statement: Statement | undefined;
  /** The token before; one object that changes, for there are thousands. */
  readonly last: Token = { kind: 'end', word: '', start: 0, end: 0 };
  /** Set directly behind the head of a control statement, and behind `else`, `do` and `try`. */
  after: Head | undefined;
  patches: Patch[] = [];
  lost: string[] = [];
  conditionals: Conditional[] = [];
  /** Set where an end or another branch came without its condition. */
  isUnfit = false;
  /** What stood before the round bracket that was closed last. */
  closedBehind = '';

  constructor(readonly text: string) {
    this.lexer = new Lexer(text, this);
  }

  get top(): Bracket | undefined {
    return this.stack[this.stack.length - 1];
  }

  get isBeyondMending(): boolean {
    return this.stack.length > mostBrackets || this.patches.length > mostPatches;
  }

  /** Whether statements stand here: not between round or square brackets, and not in a list. */
  get isAtStatements(): boolean {
    return !isValueBracket(this.top);
  }

  insert(at: number, text: string): void {
    this.patches.push({ at, length: 0, text });
  }

  blank(start: number, end: number): void {
    if (end <= start) return;
    const text = this.text.slice(start, end).replace(/[^\r\n]/g, ' ');
    this.patches.push({ at: start, length: end - start, text });
  }

  /** Blanks text that may have been meant as code, and keeps the names it calls. */
  giveUp(start: number, end: number): void {
    this.lost.push(...calledNames(this.text.slice(start, end)));
    this.blank(start, end);
  }

  openComment(at: number): void {
    // Up to the end of its line: the text below was code a keystroke ago.
    this.patches.push({ at, length: 2, text: '//' });
  }

  doubtfulComment(start: number, end: number): void {
    this.lost.push(...calledNames(this.text.slice(start, end)));
  }

  openString(end: number): void {
    this.insert(end, '"');
  }

  looseQuote(at: number): void {
    this.blank(at, at + 1);
  }

  /** Blanks an operator at the end of a token: it waits for an operand that is not there. */
  private blankOperator(last: Token): void {
    if (last.kind !== 'mark') return;
    const match = operators.exec(this.text.slice(Math.max(0, last.end - 3), last.end));
    if (match === null || /^(\+\+|--)$/.test(match[0])) return;
    this.blank(last.end - match[0].length, last.end);
  }

  /** Ends the open statement behind the last token. */
  finishStatement(): void {
    const { statement, last, after } = this;
    if (statement === undefined) return;
    const isEmptyWord = last.kind === 'word' && isDefiningWord(last.word);
    const isTemplate = statement.first === 'template' && !statement.closed;
    if (isEmptyWord || isTemplate || (statement.onlyQualifiers && last.kind === 'word'))
      this.giveUp(statement.start, last.end);
    else if (after?.word === 'do') this.blank(after.at, after.at + 2);
    else {
      // `while (x)` at the end of a block is no loop yet.
      if (after?.word === 'while') this.blank(after.at, after.at + after.word.length);
      if (last.kind === 'word' && controlWords.has(last.word)) this.blank(last.start, last.end);
      if (after === undefined) this.blankOperator(last);
      const isLabel = /^(case|default)$/.test(statement.first);
      const isAccess = /^(public|private|protected)$/.test(statement.first);
      this.insert(last.end, isLabel ? ':;' : isAccess ? ':' : ';');
    }
    this.ended(last.end);
  }

  /** Nothing is open at this level any more. */
  ended(at: number): void {
    this.statement = undefined;
    this.after = undefined;
    this.pass('mark', ';', at, at);
  }

  /** Goes past a token. */
  pass(kind: TokenKind, word: string, start: number, end: number): void {
    const { last } = this;
    last.kind = kind;
    last.word = word;
    last.start = start;
    last.end = end;
  }

  /**
   * Closes the round and square brackets and lists that are open here, at the end of the last line that can belong to
   * them, and goes on reading from there.
   */
  closeRun(): void {
    const { stack, lexer } = this;
    let base = stack.length;
    while (base > 0 && isValueBracket(stack[base - 1])) base -= 1;
    const inner = stack[stack.length - 1];
    const outer = stack[base];
    if (inner === undefined || outer === undefined) return;
    const found = inner.breaks?.find(({ next }) => isStatementLine(this.text, next));
    const last = found?.last ?? this.last;
    if (found !== undefined) this.patches = this.patches.filter(({ at }) => at <= last.end);
    if (last.end > inner.at + 1) this.blankOperator(last);
    let closers = '';
    const { head } = outer;
    if (head !== undefined) {
      // A head without its end is no head yet; what stands in it is read as statements.
      this.blank(head.at, head.at + head.word.length);
      this.blank(outer.at, outer.at + 1);
    }
    for (let at = stack.length - 1; at >= base; at -= 1) {
      if (at > base || head === undefined) closers += closerOf(stack[at]);
    }
    const isEnded = found === undefined && lexer.word === ';' && lexer.kind === 'mark';
    this.insert(last.end, isEnded ? closers : `${closers};`);
    stack.length = base;
    if (found === undefined) lexer.rewind(lexer.start, lexer.first);
    else lexer.rewind(last.end, false);
    this.ended(last.end);
  }

  /** Closes the innermost bracket, a brace that has no end of its own, where its indentation ends. */
  closeBrace(): void {
    const { stack } = this;
    const brace = this.top;
    if (brace === undefined) return;
    if (brace.extent === undefined) this.finishStatement();
    const end = Math.max(brace.extent ?? this.last.end, brace.at + 1);
    stack.pop();
    if (brace.kind === 'block' && brace.outer === undefined && stack.length === 0) {
      this.blank(brace.at, brace.at + 1);
    } else {
      const isNamespace = brace.kind === 'type' && /^(namespace|extern)$/.test(brace.outer?.first ?? '');
      const isStatement = brace.kind === 'block' && brace.outer?.equals !== true;
      this.insert(end, isStatement || isNamespace ? '}' : '};');
      if (brace.head !== undefined) this.blank(brace.head.at, brace.head.at + brace.head.word.length);
    }
    this.statement = undefined;
    this.after = undefined;
  }
}

export function isValueBracket(bracket: Bracket | undefined): boolean {
  return bracket?.kind === 'round' || bracket?.kind === 'square' || bracket?.kind === 'list';
}

function closerOf(bracket: Bracket | undefined): string {
  if (bracket?.kind === 'round') return ')';
  return bracket?.kind === 'square' ? ']' : '}';
}
