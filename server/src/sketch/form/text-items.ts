/** Statements and declarations in the text of macros. */
import type { Expression, FunctionItem, Item, Parameter, TypeName, Variable } from './ast';
import { GiveUp, plainType, readText, TextParser } from './text-parser';

const headWords = new Set([
  'const',
  'constexpr',
  'static',
  'volatile',
  'extern',
  'inline',
  'struct',
  'unsigned',
  'signed',
]);
const noTypes = new Set([
  'return',
  'new',
  'delete',
  'else',
  'case',
  'goto',
  'do',
  'if',
  'while',
  'for',
  'switch',
  'sizeof',
]);

interface Head {
  readonly words: readonly string[];
  readonly type: TypeName;
}

class ItemParser extends TextParser {
  items(): Item[] {
    const items: Item[] = [];
    while (!this.atEnd && this.peek() !== '}') {
      if (this.take(';')) continue;
      items.push(...this.nested(() => this.declarations() ?? [this.item()]));
    }
    return items;
  }

  private item(): Item {
    const start = this.start;
    if (this.take('{')) {
      const items = this.items();
      this.expect('}');
      return { kind: 'block', items, ...this.place(start) };
    }
    if (this.take('do')) {
      const body = this.inner();
      this.expect('while');
      const test = this.inBrackets();
      this.take(';');
      return { kind: 'do', test, body, ...this.place(start) };
    }
    if (this.take('if')) {
      const test = this.inBrackets();
      const yes = this.inner();
      if (!this.take('else')) return { kind: 'if', test, yes, ...this.place(start) };
      return { kind: 'if', test, yes, no: this.inner(), ...this.place(start) };
    }
    if (this.take('while')) {
      const test = this.inBrackets();
      return { kind: 'while', test, body: this.inner(), ...this.place(start) };
    }
    if (this.take('for')) return this.loop(start);
    if (this.take('break')) return { kind: 'break', ...this.place(start) };
    if (this.take('continue')) return { kind: 'continue', ...this.place(start) };
    if (this.take('return')) {
      const value = this.atEnd || this.peek() === ';' ? undefined : this.expression();
      this.take(';');
      return { kind: 'return', ...(value === undefined ? {} : { value }), ...this.place(start) };
    }
    const expression = this.expression();
    if (!this.take(';') && !this.atEnd && this.peek() !== '}') throw new GiveUp();
    return { kind: 'expression', expression, ...this.place(start) };
  }

  /** The one statement behind a head. */
  private inner(): Item {
    const start = this.start;
    if (this.take(';')) return { kind: 'block', items: [], ...this.place(start) };
    return this.nested(() => this.item());
  }

  private loop(start: number): Item {
    this.expect('(');
    const first = this.take(';') ? undefined : (this.declarations()?.[0] ?? this.item());
    const test = this.peek() === ';' ? undefined : this.expression();
    this.expect(';');
    const step = this.peek() === ')' ? undefined : this.expression();
    this.expect(')');
    const body = this.inner();
    return {
      kind: 'for',
      ...(first === undefined ? {} : { first }),
      ...(test === undefined ? {} : { test }),
      ...(step === undefined ? {} : { step }),
      body,
      ...this.place(start),
    };
  }

  /** A declaration, where one stands here: at least two words, the last of them what is declared. */
  private declarations(): Item[] | undefined {
    const { at, start } = this;
    const head = this.head();
    if (head === undefined) {
      this.at = at;
      return undefined;
    }
    const namePlace = { start: this.start, end: this.start + this.peek().length };
    const name = this.name();
    if (this.peek() === '(' && !head.words.includes('extern')) {
      const made = this.function(head, name, namePlace, start);
      if (made !== undefined) return [made];
    }
    const variables = [this.variable(head, name, namePlace)];
    while (this.take(',')) {
      const place = { start: this.start, end: this.start + this.peek().length };
      variables.push(this.variable(head, this.name(), place));
    }
    if (!this.take(';') && !this.atEnd && this.peek() !== '}') throw new GiveUp();
    return [{ kind: 'variables', variables, ...this.place(start) }];
  }

  /** The type in front of a name; undefined where no declaration stands here. */
  private head(): Head | undefined {
    const words: string[] = [];
    const names: string[] = [];
    let list: readonly (Expression | TypeName)[] | undefined;
    while (this.kind() === 'name' && headWords.has(this.peek())) words.push(this.name());
    if (this.kind() !== 'name' || noTypes.has(this.peek())) return undefined;
    const isSigned = words.some((word) => word === 'unsigned' || word === 'signed');
    if (!isSigned || this.kind(1) === 'name') {
      let name = this.name();
      while (this.take('::')) name += `::${this.name()}`;
      names.push(name);
      if (this.peek() === '<' && this.kind(1) !== 'sign') list = this.angles();
      while (/^(int|long|char|short)$/.test(this.peek())) names.push(this.name());
    }
    let pointers = 0;
    let reference = false;
    for (; this.peek() === '*' || this.peek() === '&' || this.peek() === 'const'; this.at += 1) {
      if (this.peek() === '*') pointers += 1;
      if (this.peek() === '&') reference = true;
    }
    if (this.kind() !== 'name' || noTypes.has(this.peek())) return undefined;
    if (!/^([=;,[({)]|)$/.test(this.peek(1))) return undefined;
    // `a * b;` multiplies.
    if (pointers > 0 && words.length === 0 && this.peek(1) !== '=') return undefined;
    const sign = words.filter((word) => word === 'unsigned' || word === 'signed');
    const type = {
      ...plainType([...sign, ...names].join(' ')),
      constant: words.includes('const') || words.includes('constexpr'),
      pointers,
      reference,
    };
    return { words, type: list === undefined ? type : { ...type, arguments: list } };
  }

  private angles(): readonly Expression[] | undefined {
    this.expect('<');
    const list: Expression[] = [];
    while (!this.take('>')) {
      list.push(this.operand());
      if (!this.take(',') && this.peek() !== '>') throw new GiveUp();
    }
    return list;
  }

  private variable(head: Head, name: string, namePlace: Variable['namePlace']): Variable {
    const { start } = namePlace;
    const sizes: (Expression | undefined)[] = [];
    while (this.take('[')) {
      sizes.push(this.peek() === ']' ? undefined : this.expression());
      this.expect(']');
    }
    let value: Expression | undefined;
    let list: readonly Expression[] | undefined;
    if (this.take('=')) value = this.assignment();
    else if (this.peek() === '{') value = this.assignment();
    else if (this.take('(')) list = this.listTo(')');
    return {
      name,
      namePlace,
      type: { ...head.type, sizes },
      isStatic: head.words.includes('static'),
      isExtern: head.words.includes('extern'),
      isVolatile: head.words.includes('volatile'),
      ...(value === undefined ? {} : { value }),
      ...(list === undefined ? {} : { arguments: list }),
      ...this.place(start),
    };
  }

  /** A function with its body; undefined where the brackets are something else, which is read again. */
  private function(
    head: Head,
    name: string,
    namePlace: Variable['namePlace'],
    start: number,
  ): FunctionItem | undefined {
    const { at } = this;
    let depth = 0;
    let end = 0;
    for (; this.peek(end) !== ''; end += 1) {
      if (this.peek(end) === '(') depth += 1;
      if (this.peek(end) === ')') depth -= 1;
      if (depth === 0) break;
    }
    if (this.peek(end + 1) !== '{') return undefined;
    this.expect('(');
    const parameters: Parameter[] = [];
    while (!this.take(')')) {
      if (this.peek() === 'void' && this.peek(1) === ')') {
        this.at += 1;
        continue;
      }
      const one = this.head();
      if (one === undefined) {
        this.at = at;
        return undefined;
      }
      const place = { start: this.start, end: this.start + this.peek().length };
      const parameter = { name: this.name(), namePlace: place, type: one.type };
      parameters.push(this.take('=') ? { ...parameter, value: this.assignment() } : parameter);
      this.take(',');
    }
    this.expect('{');
    const body = this.items();
    this.expect('}');
    return {
      kind: 'function',
      name,
      namePlace,
      owner: '',
      type: head.type,
      parameters,
      members: [],
      body,
      templateNames: [],
      isStatic: head.words.includes('static'),
      directives: [],
      locals: parameters.map((one) => one.name),
      ...this.place(start),
    };
  }
}

/** The text as statements and declarations. */
export function parseItems(text: string): readonly Item[] | undefined {
  return readText(
    text,
    (list) => new ItemParser(list),
    (parser) => parser.items(),
  );
}
