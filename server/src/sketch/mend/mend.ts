/**
 * Half-typed text made whole before the grammar sees it: what a line leaves open is closed at the line's end, so that
 * the lines below keep their meaning. Works on tokens and indentation alone; a text whose brackets, strings,
 * statements and conditions are whole comes back unchanged.
 */
import { dropConditional, readDirective } from './conditionals';
import { Mended } from './patches';
import { endsBefore } from './splits';
import {
  type Bracket,
  type Conditional,
  type Head,
  isValueBracket,
  MendState,
  type Statement,
} from './state';
import { isHead, isQualifier, isWhileNext, statementWords } from './words';

/** A place where nothing but the stack was open: reading may start again here. */
interface Region {
  readonly at: number;
  readonly stack: readonly Bracket[];
  readonly conditionals: readonly Conditional[];
  readonly lost: number;
}

/** A brace that closed the last open one. */
interface Close {
  readonly at: number;
  readonly suspect: boolean;
  readonly indent: number;
  /** Columns before the line that follows. */
  next: number | undefined;
}

const controlWords = new Set(['if', 'for', 'while', 'switch']);

class Mender extends MendState {
  private region: Region = { at: 0, stack: [], conditionals: [], lost: 0 };
  private closes: Close[] = [];
  /** Set while a region is read again because its braces do not fit: indentation decides then. */
  private byIndent = false;
  private limit = Number.POSITIVE_INFINITY;
  private tailWhile = false;

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
    this.lexer.rewind(region.at, region.at === 0);
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
    lexer.rewind(at, true);
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
      top.breaks.push({ last: this.last, next: lexer.start });
      if (lexer.kind !== 'word' || !statementWords.has(lexer.word)) return false;
      this.closeRun();
      return true;
    }
    if (endsBefore(this)) this.finishStatement();
    if (this.byIndent) this.noteExtents();
    return false;
  }

  private noteExtents(): void {
    const { stack, lexer } = this;
    for (let at = stack.length - 1; at >= 0; at -= 1) {
      const bracket = stack[at];
      if (bracket === undefined || bracket.indent < lexer.indent) return;
      if (at === stack.length - 1 && lexer.word !== '}') this.finishStatement();
      bracket.extent ??= this.last.end;
    }
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
    this.last = { kind, word, start, end };
  }

  /** Notes the token as a part of the statement that it stands in. */
  private note(): void {
    if (!this.isAtStatements) return;
    const { kind, word, start } = this.lexer;
    this.statement ??= {
      start,
      first: word,
      words: 0,
      onlyQualifiers: true,
      closed: false,
      equals: false,
      members: false,
      defines: undefined,
    };
    const { statement } = this;
    if (kind !== 'word') {
      if (word !== '*' && word !== '&') statement.onlyQualifiers = false;
      return;
    }
    statement.words += 1;
    statement.onlyQualifiers &&= isQualifier(word);
    if (statement.closed || statement.equals) return;
    if (word === 'enum') statement.defines = 'list';
    else if (/^(class|struct|union|namespace)$/.test(word)) statement.defines ??= 'type';
  }

  private noteEquals(): void {
    const { statement, last } = this;
    if (statement === undefined || !this.isAtStatements || last.word === 'operator') return;
    // The parameters of a template may have defaults.
    if (statement.first !== 'template') statement.equals = true;
  }

  private push(kind: Bracket['kind'], head: Head | undefined): void {
    const { lexer, statement } = this;
    this.stack.push({
      kind,
      at: lexer.start,
      indent: lexer.indent,
      line: lexer.lineStart,
      outer: statement,
      head,
      behind: this.last.word,
      semicolons: 0,
      breaks: undefined,
      extent: undefined,
    });
  }

  /** The control statement whose head this bracket opens. */
  private headBefore(): Head | undefined {
    const { last } = this;
    if (last.kind !== 'word' || !controlWords.has(last.word)) return undefined;
    if (last.word === 'while' && this.tailWhile) {
      this.tailWhile = false;
      return undefined;
    }
    return { word: last.word, at: last.start };
  }

  private openBrace(after: Head | undefined): void {
    const kind = this.kindOfBrace(after);
    const { statement, stack, lexer } = this;
    if (stack.length === 0 && lexer.indent === 0 && statement?.closed === true) this.closes = [];
    this.push(kind, after?.word === 'do' ? after : undefined);
    if (kind !== 'list') this.statement = undefined;
  }

  private kindOfBrace(after: Head | undefined): Bracket['kind'] {
    const { statement, last } = this;
    const isLambda = last.word === ']' || (last.word === ')' && this.closedBehind === ']');
    if (!this.isAtStatements) {
      if (isLambda || last.word === 'mutable') return 'block';
      return last.word === ')' || last.kind === 'word' ? 'loose' : 'list';
    }
    if (statement === undefined || after !== undefined) return 'block';
    if (!statement.closed && !statement.equals) {
      if (statement.defines !== undefined) return statement.defines;
      if (statement.first === 'extern' && last.kind === 'text') return 'type';
    }
    if (last.kind === 'mark') {
      const isValue = statement.equals || statement.first === 'return';
      if (isLambda && isValue) return 'block';
      if (last.word === ')' || last.word === '}') return isValue ? 'loose' : 'block';
      return last.word === '=' || last.word === ',' ? 'list' : 'loose';
    }
    return statement.closed && !statement.equals && !statement.members ? 'block' : 'loose';
  }

  /** False where reading goes on from another place. */
  private closeValue(kind: 'round' | 'square'): boolean {
    const { stack, lexer } = this;
    let at = stack.length - 1;
    while (at >= 0 && isValueBracket(stack[at]) && stack[at]?.kind !== kind) at -= 1;
    const found = stack[at];
    if (found?.kind !== kind) {
      this.blank(lexer.start, lexer.end);
      return false;
    }
    for (let inner = stack.length - 1; inner > at; inner -= 1)
      this.insert(
        this.last.end,
        stack[inner]?.kind === 'square' ? ']' : stack[inner]?.kind === 'list' ? '}' : ')',
      );
    stack.length = at;
    this.after = found.head;
    this.closedBehind = found.behind;
    if (kind === 'round' && this.isAtStatements && this.statement !== undefined) this.statement.closed = true;
    return true;
  }

  private closeAny(after: Head | undefined): boolean {
    const { top, lexer, stack } = this;
    if (top === undefined) {
      this.closeNothing();
      return true;
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
    this.closes.push({ at: lexer.start, suspect, indent: brace.indent, next: undefined });
    if (this.statement === undefined) this.beginRegion();
  }

  /** A closing brace too many: where an earlier one stands in the wrong column, that one is it. */
  private closeNothing(): void {
    const { lexer } = this;
    this.finishStatement();
    const wrong = this.closes.findLast(
      ({ suspect, indent, next }) => suspect || (next !== undefined && next > indent),
    );
    const at = wrong?.at ?? lexer.start;
    this.blank(at, at + 1);
    this.closes = [];
    this.beginRegion();
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

  private colon(): void {
    const { statement } = this;
    if (!this.isAtStatements || statement === undefined) return;
    if (statement.closed) statement.members = true;
    const isLabel = /^(case|default|public|private|protected)$/.test(statement.first);
    if (isLabel || (statement.words === 1 && this.last.kind === 'word')) this.statement = undefined;
  }
}

/** Mends a text. */
export function mend(text: string): Mended {
  return new Mender(text, false).run();
}

export type { Mended, Statement };
