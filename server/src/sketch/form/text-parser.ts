/**
 * A parser for the short texts that the grammar leaves unread: macro bodies and conditions of directives. It reads
 * expressions and the statements that macros are made of; what it does not know makes it give up, never throw.
 */
import type { Expression, TypeName } from './ast';
import { readCharacter, readNumber } from './literals';
import { assignments, precedence, typeWord } from './operators';
import { type Token, tokens } from './tokens';

/** Thrown and caught in here: where reading stops. */
export class GiveUp extends Error {}

const maximumTokens = 2000;
const maximumNesting = 60;

export function plainType(name: string): TypeName {
  return { name, constant: false, pointers: 0, reference: false, sizes: [] };
}

export class TextParser {
  protected at = 0;
  private nesting = 0;

  constructor(private readonly list: readonly Token[]) {}

  get atEnd(): boolean {
    return this.at >= this.list.length;
  }

  protected peek(ahead = 0): string {
    return this.list[this.at + ahead]?.text ?? '';
  }

  protected kind(ahead = 0): Token['kind'] | undefined {
    return this.list[this.at + ahead]?.kind;
  }

  protected take(text: string): boolean {
    if (this.peek() !== text) return false;
    this.at += 1;
    return true;
  }

  protected expect(text: string): void {
    if (!this.take(text)) throw new GiveUp();
  }

  protected place(start: number): { start: number; end: number } {
    const last = this.list[this.at - 1];
    return { start, end: last === undefined ? start : last.start + last.text.length };
  }

  protected get start(): number {
    return this.list[this.at]?.start ?? 0;
  }

  protected nested<T>(read: () => T): T {
    if (this.nesting >= maximumNesting) throw new GiveUp();
    this.nesting += 1;
    const result = read();
    this.nesting -= 1;
    return result;
  }

  protected inBrackets(): Expression {
    this.expect('(');
    const inner = this.expression();
    this.expect(')');
    return inner;
  }

  expression(): Expression {
    const start = this.start;
    let left = this.assignment();
    while (this.take(',')) {
      const right = this.assignment();
      left = { kind: 'comma', left, right, ...this.place(start) };
    }
    return left;
  }

  assignment(): Expression {
    return this.nested(() => {
      const start = this.start;
      const target = this.choice();
      const sign = this.peek();
      if (!assignments.has(sign)) return target;
      this.at += 1;
      const value = this.assignment();
      return { kind: 'assign', operator: sign.slice(0, -1), target, value, ...this.place(start) };
    });
  }

  private choice(): Expression {
    const start = this.start;
    const test = this.binary(1);
    if (!this.take('?')) return test;
    const yes = this.assignment();
    this.expect(':');
    const no = this.assignment();
    return { kind: 'choice', test, yes, no, ...this.place(start) };
  }

  private binary(least: number): Expression {
    const start = this.start;
    let left = this.unary();
    for (;;) {
      const operator = this.peek();
      const rank = precedence[operator];
      if (rank === undefined || rank < least) return left;
      this.at += 1;
      const right = this.binary(rank + 1);
      left = { kind: 'binary', operator, left, right, ...this.place(start) };
    }
  }

  /** An operand alone: what stands in angle brackets. */
  protected operand(): Expression {
    return this.unary();
  }

  private unary(): Expression {
    return this.nested(() => {
      const start = this.start;
      const sign = this.peek();
      if (sign === '++' || sign === '--') {
        this.at += 1;
        const operand = this.unary();
        return { kind: 'step', by: sign === '++' ? 1 : -1, prefix: true, operand, ...this.place(start) };
      }
      if (['!', '~', '-', '+', '*', '&'].includes(sign)) {
        this.at += 1;
        return { kind: 'unary', operator: sign, operand: this.unary(), ...this.place(start) };
      }
      if (sign === 'sizeof') {
        this.at += 1;
        return { kind: 'size', operand: this.unary(), ...this.place(start) };
      }
      const type = this.castType();
      if (type !== undefined) return { kind: 'cast', type, operand: this.unary(), ...this.place(start) };
      return this.postfix();
    });
  }

  /** Takes `(type)` where a cast stands. */
  private castType(): TypeName | undefined {
    if (this.peek() !== '(') return undefined;
    const words: string[] = [];
    let pointers = 0;
    let ahead = 1;
    for (; this.peek(ahead) !== ')'; ahead += 1) {
      const token = this.list[this.at + ahead];
      if (token?.kind === 'name' && typeWord.test(token.text) && pointers === 0) words.push(token.text);
      else if (token?.text === '*' && words.length > 0) pointers += 1;
      else return undefined;
    }
    if (words.length === 0) return undefined;
    this.at += ahead + 1;
    const name = words.filter((word) => word !== 'const' && word !== 'volatile').join(' ');
    return { ...plainType(name), pointers };
  }

  private postfix(): Expression {
    const start = this.start;
    let base = this.primary();
    for (;;) {
      if (this.take('(')) {
        const list = this.listTo(')');
        base = { kind: 'call', callee: base, arguments: list, ...this.place(start) };
      } else if (this.take('[')) {
        const index = this.expression();
        this.expect(']');
        base = { kind: 'index', base, index, ...this.place(start) };
      } else if (this.peek() === '.' || this.peek() === '->') {
        this.at += 1;
        const namePlace = { start: this.start, end: this.start + this.peek().length };
        base = { kind: 'member', base, name: this.name(), namePlace, ...this.place(start) };
      } else if (this.peek() === '++' || this.peek() === '--') {
        const by = this.peek() === '++' ? 1 : -1;
        this.at += 1;
        base = { kind: 'step', by, prefix: false, operand: base, ...this.place(start) };
      } else return base;
    }
  }

  protected listTo(end: string): Expression[] {
    const list: Expression[] = [];
    while (!this.take(end)) {
      list.push(this.assignment());
      if (!this.take(',') && this.peek() !== end) throw new GiveUp();
    }
    return list;
  }

  protected name(): string {
    const token = this.list[this.at];
    if (token?.kind !== 'name') throw new GiveUp();
    this.at += 1;
    return token.text;
  }

  private primary(): Expression {
    const token = this.list[this.at];
    if (token === undefined) throw new GiveUp();
    const { start } = token;
    if (token.text === '(') return this.inBrackets();
    if (token.text === '{') {
      this.at += 1;
      const items = this.listTo('}').map((value) => ({ value }));
      return { kind: 'list', items, ...this.place(start) };
    }
    if (token.kind === 'name' || token.text === '::') {
      this.take('::');
      if (this.peek() === 'true' || this.peek() === 'false') {
        const value = this.name() === 'true' ? 1 : 0;
        return { kind: 'number', value, type: 'bool', ...this.place(start) };
      }
      let name = this.name();
      while (this.take('::')) name += `::${this.name()}`;
      return { kind: 'name', name, ...this.place(start) };
    }
    this.at += 1;
    if (token.kind === 'string') {
      while (this.list[this.at]?.kind === 'string') this.at += 1;
      return { kind: 'text', length: token.text.length - 2, ...this.place(start) };
    }
    const literal = token.kind === 'number' ? readNumber(token.text) : readCharacter(token.text);
    if (token.kind === 'sign' || literal === undefined) throw new GiveUp();
    return { kind: 'number', ...literal, ...this.place(start) };
  }
}

/** Reads a text with a parser; undefined where it is not what is looked for, or not whole. */
export function readText<P extends TextParser, T>(
  text: string,
  make: (list: readonly Token[]) => P,
  how: (parser: P) => T,
): T | undefined {
  const list = tokens(text, maximumTokens + 1);
  if (list.length > maximumTokens) return undefined;
  const parser = make(list);
  try {
    const result = how(parser);
    return parser.atEnd ? result : undefined;
  } catch (error) {
    if (error instanceof GiveUp) return undefined;
    throw error;
  }
}

/** The text as one expression; undefined where it is not one, or not one that this parser knows. */
export function parseExpression(text: string): Expression | undefined {
  return readText(
    text,
    (list) => new TextParser(list),
    (parser) => parser.expression(),
  );
}
