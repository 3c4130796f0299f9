/** The program as collected from all its files: which names it has, and where each piece of syntax stands. */
import type { Span } from '../../base/span';
import type {
  ClassItem,
  ConditionalItem,
  Expression,
  Item,
  Parameter,
  Place,
  TypeName,
  Variable,
} from '../form/ast';
import type { Macros } from './macros';
import type { Callable } from './value';

/** An argument of a macro: read where the macro stands, not where it is defined. */
export interface MacroArgument {
  readonly expression: Expression;
  readonly site: Site;
}

/** Where syntax stands: offsets of an item count from `base` in `file`. */
export interface Site {
  readonly file: string;
  readonly base: number;
  /** Position among all items of the program, in the order the compiler reads them. */
  readonly order: number;
  /** Names in front of `::` that are tried for a bare name, innermost last: `hw::`. */
  readonly prefix: string;
  /** Inside a macro: where it stands in the sketch. */
  readonly fixed?: Span;
  /** Inside a macro: offset of its use, for macros that are redefined later. */
  readonly fixedOffset?: number;
  readonly expanding?: readonly string[];
  /** Inside a macro: one object for each place where it stands. */
  readonly expansion?: object;
  readonly macroArguments?: ReadonlyMap<string, MacroArgument>;
}

export function spanAt(site: Site, place: Place): Span {
  if (site.fixed !== undefined) return site.fixed;
  return { file: site.file, start: site.base + place.start, end: site.base + place.end };
}

export interface ClassModel {
  readonly name: string;
  readonly item: ClassItem;
  readonly site: Site;
  readonly bases: readonly TypeName[];
  readonly fields: readonly Variable[];
  readonly methods: Map<string, Callable[]>;
  /** Prototypes by name, for default arguments and to know that a definition is a method. */
  readonly prototypes: Map<string, readonly Parameter[]>;
}

/** A step of what happens before setup(), in the order of the text. */
export type Start =
  | {
      readonly kind: 'variables';
      readonly variables: readonly Variable[];
      readonly site: Site;
      readonly owner: string;
    }
  | {
      readonly kind: 'enum';
      readonly item: Extract<Item, { kind: 'enum' }>;
      readonly site: Site;
      readonly owner: string;
    }
  | { readonly kind: 'loose'; readonly item: Item; readonly site: Site };

export interface Alias {
  readonly type: TypeName;
  readonly site: Site;
}

export interface Program {
  readonly macros: Macros;
  readonly functions: Map<string, Callable[]>;
  readonly prototypes: Map<string, readonly Parameter[]>;
  readonly classes: Map<string, ClassModel>;
  readonly aliases: Map<string, Alias>;
  /** Names of enumerations: they are numbers. */
  readonly enums: Set<string>;
  /** Namespaces, each with `::` behind it. */
  readonly namespaces: Set<string>;
  /** Headers that are included and are no file of the sketch. */
  readonly headers: Set<string>;
  readonly starts: Start[];
  /** Bodies that the chip runs by itself. */
  readonly handlers: Callable[];
  /** Which branch of a conditional is compiled: its index, -1 for none, undefined for undecided. */
  branchOf(item: ConditionalItem, site: Site): number | undefined;
  /** The text of a place; undefined inside of macros. */
  textAt(site: Site, place: Place): string | undefined;
}
