/** Whether a statement that was begun ends with its line: where the next line cannot go on with it. */
import type { MendState } from './state';
import {
  isCallOrMember,
  isDeclaration,
  isDefiningWord,
  isHead,
  isOpenWord,
  isStatementLine,
  isWhileNext,
  statementWords,
} from './words';

/** Asked at the first token of a line, outside of value brackets. */
export function endsBefore(state: MendState): boolean {
  const { statement, lexer, last, top, text } = state;
  if (statement === undefined || top?.kind === 'loose') return false;
  const inBlock = top?.kind === 'block';
  if (lexer.kind === 'mark') {
    if (lexer.word === '}') return top !== undefined;
    // `i` and below it `++count;`
    const isStep = (lexer.word === '++' || lexer.word === '--') && /[A-Za-z_]/.test(text[lexer.end] ?? '');
    return inBlock && isStep && state.after === undefined && isOperandEnd(state);
  }
  if (lexer.kind !== 'word') return false;
  if (top?.kind === 'type' && /^(public|private|protected)$/.test(lexer.word))
    return last.word !== ':' && last.word !== ',';
  if (state.after !== undefined) return state.after.word === 'do' && !hasWhile(text, lexer.start);
  // The parameters of a template may stand on lines of their own.
  if (statement.first === 'template') {
    const isOpen = statement.closed || !isAngleClosed(text, statement.start, last.end);
    if (isOpen && lexer.indent === 0 && isHead(text, lexer.start)) return true;
    const isBegun = last.word === 'template' || last.word === '<' || isOperandEnd(state);
    return isBegun && isDeclaration(text, lexer.start) && isStatementLine(text, lexer.start);
  }
  const isStatement = statementWords.has(lexer.word);
  const declares = isDeclaration(text, lexer.start);
  const calls = isCallOrMember(text, lexer.start);
  if (last.kind === 'word') {
    if (isDefiningWord(last.word) || last.word === 'case')
      return inBlock ? isStatement || declares || calls : declares;
    // `return` alone, and below it what stood there before: set in no further, it is no value.
    if (last.word === 'return')
      return inBlock && (calls || declares || isStatement) && lexer.indent <= indentOf(text, last.start);
    if (isOpenWord(last.word)) return false;
  }
  if (isOperandEnd(state)) {
    if (statement.onlyQualifiers) {
      if (inBlock && calls && !declares) return true;
      return isSized(last.word) && isOtherType(text, lexer.start);
    }
    if (inBlock) return true;
    if (last.word === ')' && /^(const|noexcept|override|final|throw)$/.test(lexer.word)) return false;
    if (/^(__attribute__|alignas)$/.test(statement.first)) return false;
    if (statement.first === 'extern' && last.kind === 'text') return false;
    // The return type may stand on a line of its own.
    return declares || isStatement;
  }
  if (last.word === '.' || last.word === '->' || last.word === '::') return inBlock || declares;
  if (last.word === ':') return false;
  if (last.word === '?' && inBlock && isStatementLine(text, lexer.start)) return !hasColon(text, lexer.start);
  if (last.word === ',') return isStatement || declares || (inBlock && calls);
  return isStatement || (declares && isPlainDeclaration(text, lexer.start));
}

/** Whether the last token ends an operand: a name cannot follow it. */
function isOperandEnd({ last }: MendState): boolean {
  if (last.kind !== 'mark') return true;
  return /^([)\]}]|\+\+|--)$/.test(last.word);
}

/** Two words with only blanks between: no product and no mask. */
function isPlainDeclaration(text: string, at: number): boolean {
  return /^[\w:<>,]+[ \t]+[A-Za-z_]/.test(text.slice(at, at + 120));
}

/** Whether the statement at `at` is followed by the `while` that ends a loop without braces. */
function hasWhile(text: string, at: number): boolean {
  const end = text.indexOf(';', at);
  return end >= 0 && isWhileNext(text, end + 1);
}

function isAngleClosed(text: string, start: number, end: number): boolean {
  let depth = 0;
  for (const char of text.slice(start, end)) if (char === '<' || char === '>') depth += char === '<' ? 1 : -1;
  return depth <= 0;
}

function hasColon(text: string, at: number): boolean {
  return /[^:]:(?!:)/.test(text.slice(at, text.indexOf(';', at)));
}

/** Columns of white space before the line of a place. */
function indentOf(text: string, at: number): number {
  const line = text.slice(text.lastIndexOf('\n', at - 1) + 1, at);
  const blanks = line.slice(0, line.length - line.trimStart().length);
  return blanks.replaceAll('\t', '    ').length;
}

const isSized = (word: string): boolean => /^(unsigned|signed|long|short)$/.test(word);

/** Two words of which the first is no number's: `unsigned` cannot stand before them. */
function isOtherType(text: string, at: number): boolean {
  return /^(?!(?:int|long|short|char|double|const|volatile)\b)[A-Za-z_]\w*\s[*&]?\w+\s*[=;,([{]/.test(
    text.slice(at, at + 120),
  );
}
