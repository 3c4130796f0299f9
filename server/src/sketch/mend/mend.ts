/**
 * Half-typed text made whole before the grammar sees it: what a line leaves open is closed at the line's end, so that
 * the lines below keep their meaning. Works on tokens and indentation alone; a text whose brackets, strings,
 * statements and conditions are whole comes back unchanged.
 */
import { dropConditional, readDirective } from './conditionals';
import { OpenState } from './open-state';
import { Mended } from './patches';
import { endsBefore } from './splits';
import { type Bracket, type Close, type Head, isValueBracket, type Region } from './state';
import { isHead, isWhileNext, statementWords } from './words';

class Mender extends OpenState {
  private region: Region = { at: 0, stack: [], conditionals: [], lost: 0 };
  private closes: Close[] = [];
  /** Set while a region is read again because its braces do not fit: indentation decides then. */
  private byIndent = false;
  private limit = Number.POSITIVE_INFINITY;

  constructor(
    text: string,
    readonly byDepth: boolean,
  ) {
    super(text);
  }

  run(): Mended {
    const { lexer, text } = this;
    let left = 20 * text.length + 1000;
    for (;;) {
      lexer.next();
      left -= 1;
      if (left < 0 || this.isBeyondMending) return Mended.of(text, [], []);
      if (lexer.kind === 'end' || lexer.start >= this.limit) {
        if (this.finish()) break;
      } else if (lexer.kind === 'directive') this.directive();
      else if (!lexer.first || !this.startLine()) this.token();
    }
    if (!this.byDepth && (this.conditionals.length > 0 || this.isUnfit)) return new Mender(text, true).run();
    for (const open of this.conditionals) dropConditional(this, open);
    return Mended.of(text, this.patches, this.lost);
  }

  private directive(): void {
    const name = /^#\s*(\w*)/.exec(this.text.slice(this.lexer.start, this.lexer.end))?.[1];
    if (this.stack.length === 0 && (name === 'include' || name === 'define')) this.finishStatement();
    readDirective(this);
    if (this.stack.length === 0 && this.statement === undefined) this.beginRegion();
  }

  private beginRegion(): void {
    const { lexer, stack, conditionals, lost } = this;
    this.region = { at: lexer.end, stack: [...stack], conditionals: [...conditionals], lost: lost.length };
  }

  /** Reads the region again by its indentation, up to `limit`. */
  private readAgain(limit: number): void {
    const { region } = this;
    this.patches = this.patches.filter(({ at }) => at < region.at);
    this.lost.length = region.lost;
    this.stack = region.stack.map((bracket) => ({ ...bracket }));
    this.conditionals = [...region.conditionals];
    this.ended(region.at);
    this.byIndent = true;
    this.limit = limit;
    this.goTo(region.at);
  }

  private goTo(at: number): void {
    const line = this.text.slice(this.text.lastIndexOf('\n', at - 1) + 1, at);
    this.lexer.rewind(at, line.trim() === '');
  }

  /** Classes and namespaces around everything: functions may stand in them. */
  private get leadingTypes(): number {
    const first = this.stack.findIndex(({ kind }) => kind !== 'type');
    return first < 0 ? this.stack.length : first;
  }

  /** At the end of the text or of a region. False where reading goes on. */
  private finish(): boolean {
    const { lexer, text, stack } = this;
    if (isValueBracket(this.top)) {
      this.closeRun();
      return false;
    }
    if (stack.length > 0 && !this.byIndent) {
      this.readAgain(text.length + 1);
      return false;
    }
    const atEnd = lexer.kind === 'end';
    if (this.byIndent && !atEnd && lexer.first) this.noteExtents();
    const kept = atEnd ? 0 : this.leadingTypes;
    if (stack.length > kept) {
      this.closeBrace();
      lexer.rewind(lexer.start, lexer.first);
      return false;
    }
    this.finishStatement();
    if (atEnd) return true;
    const at = this.limit;
    this.byIndent = false;
    this.limit = Number.POSITIVE_INFINITY;
    this.goTo(at);
    this.beginRegion();
    return false;
  }

  /** At the first token of a line. True where reading goes on from another place. */
  private startLine(): boolean {
    const { lexer, text, stack } = this;
    const close = this.closes[this.closes.length - 1];
    if (stack.length === 0 && close !== undefined) close.next ??= lexer.indent;
    const isOpen = stack.length > 0 || this.statement !== undefined;
    if (isOpen && lexer.kind === 'word' && lexer.indent === 0 && isHead(text, lexer.start)) {
      if (stack.length > this.leadingTypes) {
        if (this.byIndent) this.noteExtents();
        if (isValueBracket(this.top)) this.closeRun();
        else if (this.byIndent) {
          this.closeBrace();
          lexer.rewind(lexer.start, true);
        } else this.readAgain(lexer.start);
        return true;
      }
    }
    const { top } = this;
    if (top !== undefined && isValueBracket(top)) {
      top.breaks ??= [];
      top.breaks.push({ last: { ...this.last }, next: lexer.start });
      if (lexer.kind !== 'word' || !statementWords.has(lexer.word)) return false;
      this.closeRun();
      return true;
    }
    if (endsBefore(this)) this.finishStatement();
    if (this.byIndent) this.noteExtents();
    return false;
  }

  private token(): void {
    const { lexer, after } = this;
    const { kind, word, start, end } = lexer;
    this.after = undefined;
    if (kind === 'mark') {
      switch (word) {
        case '(':
        case '[':
          this.note();
          this.push(word === '(' ? 'round' : 'square', word === '(' ? this.headBefore() : undefined);
          break;
        case '{':
          // A function begins: braces above are no longer in doubt.
          if (this.stack.length === 0 && lexer.indent === 0 && this.statement?.closed === true)
            this.closes = [];
          this.openBrace(after);
          break;
        case ')':
        case ']':
          if (!this.closeValue(word === ')' ? 'round' : 'square')) return;
          break;
        case '}':
          if (!this.closeAny(after)) return;
          break;
        case ';':
          if (!this.semicolon()) return;
          break;
        case ':':
          this.colon();
          break;
        default:
          this.note();
          if (word === '=') this.noteEquals();
      }
    } else {
      this.note();
      if (kind === 'word' && (word === 'else' || word === 'do' || word === 'try'))
        this.after = { word, at: start };
    }
    this.pass(kind, word, start, end);
  }

  private closeAny(after: Head | undefined): boolean {
    const { top, lexer, stack } = this;
    if (top === undefined) {
      return this.closeNothing();
    }
    const isUnfit =
      this.byIndent &&
      lexer.first &&
      top.indent > lexer.indent &&
      stack.some(({ indent, kind }) => indent === lexer.indent && kind !== 'round' && kind !== 'square');
    if (top.kind === 'round' || top.kind === 'square' || (top.kind === 'list' && isUnfit)) {
      this.closeRun();
      return false;
    }
    if (isUnfit) {
      this.after = after;
      this.closeBrace();
      lexer.rewind(lexer.start, true);
      return false;
    }
    if (this.byIndent && lexer.indent > top.indent && lexer.lineStart !== top.line) {
      // Set in further than what it would close.
      this.finishStatement();
      this.blank(lexer.start, lexer.end);
      return true;
    }
    if (top.kind === 'block' || top.kind === 'type') {
      this.after = after;
      this.finishStatement();
    }
    this.close(top);
    return true;
  }

  private close(brace: Bracket): void {
    const { stack, lexer } = this;
    stack.pop();
    if (brace.kind === 'loose') this.statement = brace.outer;
    else if (brace.kind === 'type') {
      this.statement = /^(namespace|extern|inline)$/.test(brace.outer?.first ?? '') ? undefined : brace.outer;
    } else if (brace.kind === 'block') {
      const isValue =
        brace.outer?.equals === true || brace.outer?.first === 'return' || isValueBracket(this.top);
      this.statement = isValue ? brace.outer : undefined;
      if (brace.head !== undefined) {
        this.tailWhile = isWhileNext(this.text, lexer.end);
        if (!this.tailWhile) this.blank(brace.head.at, brace.head.at + brace.head.word.length);
      }
    }
    if (stack.length > 0) return;
    const suspect = lexer.indent > brace.indent && lexer.lineStart !== brace.line;
    this.closes.push({
      at: lexer.start,
      suspect,
      region: this.region,
      indent: brace.indent,
      next: undefined,
    });
    if (this.statement === undefined) this.beginRegion();
  }

  /** A closing brace too many: where an earlier one stands in the wrong column, that one is it. */
  private closeNothing(): boolean {
    const { lexer } = this;
    this.finishStatement();
    const wrong = this.closes.findLast(
      ({ suspect, indent, next }) => suspect || (next !== undefined && next > indent),
    );
    if (wrong?.suspect === true && !this.byIndent) {
      this.region = wrong.region;
      this.closes = [];
      this.readAgain(lexer.end);
      return false;
    }
    const at = wrong?.at ?? lexer.start;
    this.blank(at, at + 1);
    this.closes = [];
    this.beginRegion();
    return true;
  }

  private semicolon(): boolean {
    const { top } = this;
    if (isValueBracket(top) && top !== undefined) {
      top.semicolons += 1;
      if (top.head?.word === 'for' && top.semicolons <= 2) return true;
      this.closeRun();
      return false;
    }
    this.statement = undefined;
    if (this.stack.length === 0) this.beginRegion();
    return true;
  }
}

/** Mends a text. */
export function mend(text: string): Mended {
  return new Mender(text, false).run();
}

export type { Mended };
