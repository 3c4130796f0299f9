/**
 * What firmware libraries know, by name. The tables are made once for each list of libraries and platform, because
 * there are hundreds of classes and a sketch names a handful.
 */
import type { CallFacts, ClassFacts, LibraryFacts, Platform } from '../../base/platform';

type Methods = ReadonlyMap<string, readonly CallFacts[]>;

/** A class of a library with all that it has from its bases. */
export interface LibraryClass {
  /** As the data names it. */
  readonly name: string;
  /** Its own name and those of its bases. */
  readonly line: readonly string[];
  readonly constructors: readonly CallFacts[];
  readonly methods: Methods;
}

export class LibraryTables {
  readonly functions = new Map<string, readonly CallFacts[]>();
  /** Numbers by the names that libraries give them. */
  readonly names = new Map<string, number>();
  /** Methods of each class by its name, those of its bases left out. */
  readonly methods = new Map<string, Methods>();
  private readonly classes = new Map<string, ClassFacts>();
  /** By what stands behind the star of `*_Strip`. */
  private readonly endings = new Map<string, ClassFacts>();
  private readonly objects = new Map<string, ClassFacts>();
  private readonly whole = new Map<ClassFacts, LibraryClass>();
  private readonly named = new Map<string, LibraryClass | undefined>();

  constructor(libraries: readonly LibraryFacts[], platform: Platform) {
    for (const library of libraries) {
      addFacts(this.functions, library.functions);
      for (const [name, number] of Object.entries(library.names ?? {})) this.names.set(name, number);
      for (const facts of library.classes) {
        const { macros } = facts;
        if (macros?.some((macro) => Object.hasOwn(platform.macros, macro)) === false) continue;
        this.classes.set(facts.name, facts);
        if (facts.name.startsWith('*')) this.endings.set(facts.name.slice(1), facts);
        for (const object of facts.objects ?? []) this.objects.set(object, facts);
        const methods = new Map<string, readonly CallFacts[]>();
        addFacts(methods, facts.methods);
        this.methods.set(facts.name, methods);
      }
    }
  }

  classNamed(name: string): LibraryClass | undefined {
    if (this.named.has(name)) return this.named.get(name);
    const facts = this.classes.get(name) ?? this.byEnding(name);
    const found = facts === undefined ? undefined : this.wholeOf(facts);
    if (this.named.size >= 2000) this.named.clear();
    this.named.set(name, found);
    return found;
  }

  /** The class of an object that the library makes itself. */
  objectNamed(name: string): LibraryClass | undefined {
    const facts = this.objects.get(name);
    return facts === undefined ? undefined : this.wholeOf(facts);
  }

  private byEnding(name: string): ClassFacts | undefined {
    if (this.endings.size === 0) return undefined;
    for (let at = name.indexOf('_', 1); at !== -1; at = name.indexOf('_', at + 1)) {
      const facts = this.endings.get(name.slice(at));
      if (facts !== undefined) return facts;
    }
    return undefined;
  }

  private wholeOf(facts: ClassFacts): LibraryClass {
    const ready = this.whole.get(facts);
    if (ready !== undefined) return ready;
    const methods = new Map<string, readonly CallFacts[]>();
    const line: string[] = [];
    const waiting = [facts];
    for (let at = waiting.shift(); at !== undefined && line.length < 16; at = waiting.shift()) {
      line.push(at.name);
      for (const [name, list] of this.methods.get(at.name) ?? []) {
        if (!methods.has(name)) methods.set(name, list);
      }
      for (const base of at.bases ?? []) {
        const next = this.classes.get(base) ?? this.byEnding(base);
        if (next !== undefined && !line.includes(next.name)) waiting.push(next);
      }
    }
    const made = { name: facts.name, line, constructors: facts.constructors ?? [], methods };
    this.whole.set(facts, made);
    return made;
  }
}

function addFacts(table: Map<string, readonly CallFacts[]>, facts: readonly CallFacts[]): void {
  for (const fact of facts) table.set(fact.name, [...(table.get(fact.name) ?? []), fact]);
}

const made = new WeakMap<readonly LibraryFacts[], WeakMap<Platform, LibraryTables>>();

export function tablesOf(libraries: readonly LibraryFacts[], platform: Platform): LibraryTables {
  let byPlatform = made.get(libraries);
  if (byPlatform === undefined) {
    byPlatform = new WeakMap();
    made.set(libraries, byPlatform);
  }
  let tables = byPlatform.get(platform);
  if (tables === undefined) {
    tables = new LibraryTables(libraries, platform);
    byPlatform.set(platform, tables);
  }
  return tables;
}
