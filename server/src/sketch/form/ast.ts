/**
 * The program as the value analysis reads it: expressions, and items (statements and declarations, which a broken or
 * half-typed text mixes freely). Plain data; offsets count from the start of the unit that the item stands in.
 */

export interface Place {
  readonly start: number;
  readonly end: number;
}

/** A type as written: the name with its qualifiers, and what the declarator adds to it. */
export interface TypeName {
  /** `int`, `unsigned long`, `pins::Lamp`, `auto`; empty where none was written (constructors). */
  readonly name: string;
  readonly constant: boolean;
  /** Pointer levels. */
  readonly pointers: number;
  readonly reference: boolean;
  /** Array sizes, outermost first; undefined for `[]`. */
  readonly sizes: readonly (Expression | undefined)[];
  /** Arguments in angle brackets. */
  readonly arguments?: readonly (Expression | TypeName)[];
  /** Where it stands as an argument in angle brackets: a name there may be a constant. */
  readonly place?: Place;
}

/** What kind of literal a number was, for the type it has. */
export type LiteralType = 'int' | 'unsigned' | 'long' | 'unsigned long' | 'float' | 'char' | 'bool';

export type Expression = Place &
  (
    | { readonly kind: 'number'; readonly value: number; readonly type: LiteralType }
    | { readonly kind: 'text'; readonly length: number }
    | { readonly kind: 'name'; readonly name: string; readonly arguments?: TypeName['arguments'] }
    | { readonly kind: 'this' }
    | { readonly kind: 'unary'; readonly operator: string; readonly operand: Expression }
    | { readonly kind: 'step'; readonly by: 1 | -1; readonly prefix: boolean; readonly operand: Expression }
    | {
        readonly kind: 'binary';
        readonly operator: string;
        readonly left: Expression;
        readonly right: Expression;
      }
    | {
        readonly kind: 'assign';
        /** The operator before `=`; empty for a plain assignment. */
        readonly operator: string;
        readonly target: Expression;
        readonly value: Expression;
      }
    | {
        readonly kind: 'choice';
        readonly test: Expression;
        readonly yes: Expression;
        readonly no: Expression;
      }
    | { readonly kind: 'comma'; readonly left: Expression; readonly right: Expression }
    | { readonly kind: 'call'; readonly callee: Expression; readonly arguments: readonly Expression[] }
    | { readonly kind: 'index'; readonly base: Expression; readonly index: Expression }
    | {
        readonly kind: 'member';
        readonly base: Expression;
        readonly name: string;
        readonly namePlace: Place;
        readonly arguments?: TypeName['arguments'];
      }
    | { readonly kind: 'cast'; readonly type: TypeName; readonly operand: Expression }
    | { readonly kind: 'size'; readonly type?: TypeName; readonly operand?: Expression }
    | ListExpression
    | { readonly kind: 'lambda'; readonly definition: FunctionItem }
    | { readonly kind: 'new'; readonly type: TypeName; readonly arguments: readonly Expression[] }
    | { readonly kind: 'let'; readonly variables: readonly Variable[] }
    /** Something not understood: its parts are evaluated for the calls in them, and its value is unknown. */
    | { readonly kind: 'opaque'; readonly parts: readonly Expression[] }
  );

/** A brace list, possibly with the type in front of it. */
export interface ListExpression extends Place {
  readonly kind: 'list';
  readonly type?: TypeName;
  readonly items: readonly ListEntry[];
  /** All values, where they are plain numbers in order: a table is not evaluated entry by entry. */
  readonly numbers?: readonly number[];
}

export interface ListEntry {
  readonly value: Expression;
  /** `.name = …` */
  readonly field?: string;
  /** `[n] = …` */
  readonly index?: Expression;
}

export interface Variable extends Place {
  readonly name: string;
  readonly namePlace: Place;
  readonly type: TypeName;
  /** The initialiser behind `=`, or a brace list. */
  readonly value?: Expression;
  /** Arguments in round brackets. */
  readonly arguments?: readonly Expression[];
  /** The class of a static member that is defined outside: `Bus` for `int Bus::line = 3;` */
  readonly owner?: string;
  readonly isStatic: boolean;
  readonly isExtern: boolean;
  readonly isVolatile: boolean;
}

export interface Parameter {
  readonly name: string;
  readonly namePlace: Place;
  readonly type: TypeName;
  readonly value?: Expression;
  /** `Rest... rest`: takes any number of arguments, which are not followed. */
  readonly pack?: true;
}

export interface MemberStart {
  readonly name: string;
  readonly arguments: readonly Expression[];
}

export interface FunctionItem extends Place {
  readonly kind: 'function';
  /** Without qualifiers; empty for a lambda. */
  readonly name: string;
  readonly namePlace: Place;
  /** `Probe` for `void Probe::begin()`. */
  readonly owner: string;
  readonly type: TypeName;
  readonly parameters: readonly Parameter[];
  readonly members: readonly MemberStart[];
  readonly body?: readonly Item[];
  /** Offset behind the opening brace of the body. */
  readonly bodyStart?: number;
  readonly templateNames: readonly string[];
  readonly isStatic: boolean;
  /** Directives inside the body, in order. */
  readonly directives: readonly Directive[];
  /** Names declared anywhere inside: parameters and locals. */
  readonly locals: readonly string[];
}

export interface ClassItem extends Place {
  readonly kind: 'class';
  readonly name: string;
  readonly bases: readonly TypeName[];
  readonly members: readonly Item[];
  readonly templateNames: readonly string[];
}

export interface EnumItem extends Place {
  readonly kind: 'enum';
  readonly name: string;
  readonly scoped: boolean;
  readonly entries: readonly { readonly name: string; readonly place: Place; readonly value?: Expression }[];
}

export interface DefineItem extends Place {
  readonly kind: 'define';
  readonly name: string;
  readonly namePlace: Place;
  readonly parameters?: readonly string[];
  readonly body: string;
}

export interface Branch {
  /** Text of the condition; undefined for `#else`. */
  readonly condition: string | undefined;
  readonly items: readonly Item[];
  readonly directives: readonly Directive[];
}

/** `#if` and its relatives; `#ifdef X` becomes `defined(X)`. */
export interface ConditionalItem extends Place {
  readonly kind: 'conditional';
  readonly branches: readonly Branch[];
}

export type Directive =
  | DefineItem
  | (Place & { readonly kind: 'undef'; readonly name: string })
  | (Place & { readonly kind: 'include'; readonly path: string; readonly system: boolean })
  | ConditionalItem;

export type Item =
  | Directive
  | FunctionItem
  | ClassItem
  | EnumItem
  | (Place & { readonly kind: 'variables'; readonly variables: readonly Variable[] })
  /** `Probe probe(LED);` reads as a prototype and as an object: which, is known when the names are. */
  | (Place & {
      readonly kind: 'prototype';
      readonly variable: Variable;
      /** For `void Probe::begin(int);` */
      readonly owner: string;
      readonly parameters: readonly Parameter[];
    })
  | (Place & { readonly kind: 'alias'; readonly name: string; readonly type: TypeName })
  | (Place & { readonly kind: 'namespace'; readonly name: string; readonly items: readonly Item[] })
  | (Place & { readonly kind: 'expression'; readonly expression: Expression })
  | (Place & { readonly kind: 'block'; readonly items: readonly Item[] })
  | (Place & { readonly kind: 'if'; readonly test: Expression; readonly yes: Item; readonly no?: Item })
  | (Place & { readonly kind: 'while'; readonly test: Expression; readonly body: Item })
  | (Place & { readonly kind: 'do'; readonly test: Expression; readonly body: Item })
  | (Place & {
      readonly kind: 'for';
      readonly first?: Item;
      readonly test?: Expression;
      readonly step?: Expression;
      readonly body: Item;
    })
  | (Place & {
      readonly kind: 'each';
      readonly variable: Variable;
      readonly range: Expression;
      readonly body: Item;
    })
  | (Place & { readonly kind: 'switch'; readonly test: Expression; readonly cases: readonly Case[] })
  | (Place & { readonly kind: 'return'; readonly value?: Expression })
  | (Place & { readonly kind: 'break' })
  | (Place & { readonly kind: 'continue' });

export interface Case {
  /** Undefined for `default`. */
  readonly value: Expression | undefined;
  readonly items: readonly Item[];
}
