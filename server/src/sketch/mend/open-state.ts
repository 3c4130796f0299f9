/** What each token opens or goes on with: statements, their heads, and the kinds of brackets. */
import { type Bracket, controlWords, type Head, isValueBracket, MendState } from './state';
import { isQualifier } from './words';

export abstract class OpenState extends MendState {
  /** Set between the body of a `do` and the `while` that ends it. */
  protected tailWhile = false;

  /** Notes the token as a part of the statement that it stands in. */
  protected note(): void {
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

  protected noteEquals(): void {
    const { statement, last } = this;
    if (statement === undefined || !this.isAtStatements || last.word === 'operator') return;
    // The parameters of a template may have defaults.
    if (statement.first !== 'template') statement.equals = true;
  }

  protected push(kind: Bracket['kind'], head: Head | undefined): void {
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
  protected headBefore(): Head | undefined {
    const { last } = this;
    if (last.kind !== 'word' || !controlWords.has(last.word)) return undefined;
    if (last.word === 'while' && this.tailWhile) {
      this.tailWhile = false;
      return undefined;
    }
    return { word: last.word, at: last.start };
  }

  protected openBrace(after: Head | undefined): void {
    const kind = this.kindOfBrace(after);
    this.push(kind, after?.word === 'do' ? after : undefined);
    if (kind !== 'list') this.statement = undefined;
  }

  protected kindOfBrace(after: Head | undefined): Bracket['kind'] {
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
  protected closeValue(kind: 'round' | 'square'): boolean {
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

  protected colon(): void {
    const { statement } = this;
    if (!this.isAtStatements || statement === undefined) return;
    if (statement.closed) statement.members = true;
    const isLabel = /^(case|default|public|private|protected)$/.test(statement.first);
    if (isLabel || (statement.words === 1 && this.last.kind === 'word')) this.statement = undefined;
  }

  /** Notes which open brackets end above this line, by its indentation. */
  protected noteExtents(): void {
    const { stack, lexer } = this;
    // Members' labels stand as far out as their class.
    if (/^(public|private|protected)$/.test(lexer.word)) return;
    for (let at = stack.length - 1; at >= 0; at -= 1) {
      const bracket = stack[at];
      if (bracket === undefined || bracket.indent < lexer.indent) return;
      if (at === stack.length - 1 && lexer.word !== '}') this.finishStatement();
      bracket.extent ??= this.last.end;
    }
  }
}
