/** Macro definitions in the order of the text: a use sees the last one in front of it. */
import type { Expression, Item } from '../form/ast';
import { parseItems } from '../form/text-items';
import { parseExpression } from '../form/text-parser';
import type { Site } from './model';
import type { Definition } from './value';

export interface Macro {
  readonly name: string;
  readonly parameters: readonly string[] | undefined;
  readonly body: string;
  readonly definition: Definition;
}

interface MacroEvent {
  readonly order: number;
  readonly offset: number;
  /** Undefined after `#undef`. */
  readonly macro: Macro | undefined;
  /** Stands in a branch that cannot be decided. */
  readonly perhaps: boolean;
}

const longestList = 512;

const none: readonly (Macro | undefined)[] = [];

export class Macros {
  private readonly events = new Map<string, MacroEvent[]>();

  add(name: string, order: number, offset: number, macro: Macro | undefined, perhaps: boolean): void {
    const list = this.events.get(name);
    const event = { order, offset, macro, perhaps };
    if (list === undefined) this.events.set(name, [event]);
    else if (list.length < longestList) list.push(event);
  }

  has(name: string): boolean {
    return this.events.has(name);
  }

  /** The macros a name may stand for at a place, the likeliest first; none where it is no macro there. */
  find(name: string, site: Site, offset: number): readonly (Macro | undefined)[] {
    const list = this.events.get(name);
    if (list === undefined) return none;
    const at = site.fixedOffset ?? offset;
    const found: (Macro | undefined)[] = [];
    for (let index = list.length - 1; index >= 0; index -= 1) {
      const event = list[index];
      if (event === undefined || event.order > site.order) continue;
      if (event.order === site.order && event.offset > at) continue;
      found.push(event.macro);
      if (!event.perhaps) return found[0] === undefined && found.length === 1 ? [] : found;
    }
    if (found.length > 0) found.push(undefined);
    return found;
  }
}

/** Texts of macro bodies come again with every reading of a sketch. */
class Kept<T> {
  private readonly known = new Map<string, T>();

  constructor(private readonly read: (text: string) => T) {}

  get(text: string): T {
    const old = this.known.get(text);
    if (old !== undefined) return old;
    const value = this.read(text);
    if (this.known.size >= 2000) this.known.clear();
    this.known.set(text, value);
    return value;
  }
}

export interface MacroBody {
  readonly expression?: Expression;
  readonly items?: readonly Item[];
}

const bodies = new Kept<MacroBody>((text) => {
  const expression = parseExpression(text);
  if (expression !== undefined) return { expression };
  const items = parseItems(text);
  return items === undefined ? {} : { items };
});

const conditions = new Kept<{ readonly expression?: Expression }>((text) => {
  const expression = parseExpression(text.replace(/\bdefined\s+(\w+)/g, 'defined($1)'));
  return expression === undefined ? {} : { expression };
});

/** What a text is: an expression, else statements, else nothing. */
export function readBody(text: string): MacroBody {
  return bodies.get(text);
}

/** The body as an expression, else as statements, else nothing. */
export function bodyOf(macro: Macro): MacroBody {
  return bodies.get(macro.body);
}

export function conditionOf(text: string): Expression | undefined {
  return conditions.get(text).expression;
}
