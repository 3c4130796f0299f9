/** All bodies of a program with their notes, and who calls whom by name. */
import type { Platform } from '../../base/platform';
import type { Span } from '../../base/span';
import type { FunctionItem, Place, Variable } from '../form/ast';
import { type Program, type Site, spanAt } from '../values/model';
import { type NumberTypes, numberTypes } from '../values/number-types';
import type { Callable } from '../values/value';
import { type BodyNotes, notesOf } from './notes';

export interface Body {
  readonly item: FunctionItem;
  readonly site: Site;
  readonly name: string;
  readonly notes: BodyNotes;
  /** Fields of the class it belongs to. */
  readonly fields: readonly Variable[];
}

export interface GlobalVariable {
  readonly variable: Variable;
  readonly site: Site;
  /** The only one of its declaration. */
  readonly alone: boolean;
}

export class Bodies {
  readonly all: Body[] = [];
  readonly types: NumberTypes;
  private readonly named = new Map<string, Body[]>();
  private globalsKept: Map<string, GlobalVariable[]> | undefined;

  constructor(
    readonly program: Program,
    readonly platform: Platform,
    private readonly texts: ReadonlyMap<string, string>,
  ) {
    this.types = numberTypes(platform.intBits);
    for (const list of program.functions.values()) for (const one of list) this.add(one);
    for (const model of program.classes.values())
      for (const list of model.methods.values()) for (const one of list) this.add(one, model.fields);
  }

  /** Undefined for what has no body, and for what a macro makes: its places are not in the text. */
  bodyOf(
    { item, site }: Pick<Callable, 'item' | 'site'>,
    fields: readonly Variable[] = [],
  ): Body | undefined {
    if (item.body === undefined || site.fixed !== undefined) return undefined;
    const decides = item.directives.some(({ kind }) => kind === 'conditional');
    const notes = notesOf(item.body, decides ? (one) => this.program.branchOf(one, site) : undefined);
    return { item, site, name: item.name, notes, fields };
  }

  private add(callable: Callable, fields?: readonly Variable[]): void {
    const body = this.bodyOf(callable, fields);
    if (body === undefined) return;
    this.all.push(body);
    const list = this.named.get(body.name);
    if (list === undefined) this.named.set(body.name, [body]);
    else list.push(body);
  }

  of(name: string): readonly Body[] {
    return this.named.get(name) ?? [];
  }

  /** These and all they call. */
  closure(from: readonly Body[]): ReadonlySet<Body> {
    const seen = new Set<Body>(from);
    for (const body of seen)
      for (const name of body.notes.called.keys()) for (const one of this.of(name)) seen.add(one);
    return seen;
  }

  /** Variables outside of functions and classes, by name. */
  get globals(): ReadonlyMap<string, readonly GlobalVariable[]> {
    if (this.globalsKept !== undefined) return this.globalsKept;
    const globals = new Map<string, GlobalVariable[]>();
    for (const start of this.program.starts) {
      if (start.kind !== 'variables' || start.owner !== '' || start.site.fixed !== undefined) continue;
      for (const variable of start.variables) {
        const one = { variable, site: start.site, alone: start.variables.length === 1 };
        const list = globals.get(variable.name);
        if (list === undefined) globals.set(variable.name, [one]);
        else list.push(one);
      }
    }
    this.globalsKept = globals;
    return globals;
  }

  span(body: Body, place: Place): Span {
    return spanAt(body.site, place);
  }

  textOf(site: Site, place: Place): string {
    return this.texts.get(site.file)?.slice(site.base + place.start, site.base + place.end) ?? '';
  }

  /** Whether any file has such text. */
  hasText(test: RegExp): boolean {
    for (const text of this.texts.values()) if (test.test(text)) return true;
    return false;
  }
}
