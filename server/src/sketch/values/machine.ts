/**
 * The state of the analysis while it follows a program: where it is, what it knows, what it may still spend. The steps
 * themselves are functions over this object, one file for each kind.
 */

import type { CallFacts, LibraryFacts, Platform } from '../../base/platform';
import type { Problem } from '../../base/read';
import type { Span } from '../../base/span';
import type { Expression, Place, Variable } from '../form/ast';
import { type LibraryTables, tablesOf } from './library-tables';
import type { Macro, MacroBody } from './macros';
import type { Program, Site } from './model';
import { type NumberTypes, numberTypes } from './number-types';
import { type Path, stepTo } from './paths';
import { PinStates } from './pin-states';
import { Ports } from './registers';
import { Scope } from './scope';
import { type Delta, State } from './state';
import type { Callable, Cell, Definition, FunctionValue, Known, ObjectValue, Value } from './value';

/** How a statement may end; several at once where a branch is undecided. */
export const Flow = { next: 1, break: 2, continue: 4, return: 8 } as const;

export type Phase = 'setup' | 'loop' | 'interrupt';

export type { Path };

/** A loop or switch that break and continue may leave. */
export interface Breakable {
  mark: number;
  readonly breaks: Delta[];
  /** Undefined for a switch. */
  readonly continues: Delta[] | undefined;
  /** Where the present round of the loop began. */
  roundMark: number;
}

export interface Frame {
  readonly callable: Callable;
  readonly name: string;
  readonly self: ObjectValue | undefined;
  readonly mark: number;
  readonly path: Path;
  readonly returns: Delta[];
  readonly values: Value[];
  readonly breakables: Breakable[];
}

/** One thing done to a pin, as met. */
export interface MetUse {
  /** The call in the syntax: met again on the same path, it is the same use. */
  readonly node: object;
  readonly facts: CallFacts;
  /** Absent where the call names none. */
  readonly pin: Value | undefined;
  readonly value: Value | undefined;
  readonly path: Path;
  readonly certain: boolean;
}

/** What stays the same however often a use is met. */
export interface UseDetails {
  readonly call: string;
  readonly span: Span;
  readonly callSpan: Span;
  readonly valueSpan: Span | undefined;
  readonly terminal?: string;
  readonly function: string;
  readonly phase: Phase;
}

/** Where uses go. */
export interface UseSink {
  /** `first`: a use that was not met before, to be described at once; `more`: one that got a further pin. */
  meet(use: MetUse): 'first' | 'more' | 'same';
  /** Describes the use that was met last. */
  describe(details: UseDetails): void;
}

/** A body that runs by itself: an interrupt handler, or a function handed to a library. */
export interface Handler {
  readonly callable: Callable;
}

/** The limits below are for a text of so many characters; a longer one gets more, up to so many times as much. */
const shortText = 50_000;
const mostTimes = 20;
/** Evaluations that are made exactly; beyond it loops are no longer followed round by round. */
const softLimit = 80_000;
/** Evaluations beyond which no loop is followed round by round. */
const wornLimit = 110_000;
/** Evaluations after which everything stops. */
const hardLimit = 200_000;
const deepest = 480;

export class Machine {
  readonly types: NumberTypes;
  private readonly share: number;
  readonly state = new State();
  readonly globals = new Map<string, readonly Cell[]>();
  readonly statics = new Map<Variable, Map<number, readonly Cell[]>>();
  /** By the place of the name in the syntax: one for each declaration. */
  readonly definitions = new Map<Place, Definition>();
  /** Uses of macros whose text was replaced. */
  readonly expandedMacros = new Map<Expression, MacroBody>();
  readonly literalMacros = new Map<Macro, Known>();
  readonly tables: LibraryTables;
  readonly pinStates = new PinStates();
  readonly ports: Ports;
  /** Numbers of the board's pins. */
  readonly pinNumbers: ReadonlySet<number>;
  /** Pins given to functions that later calls speak of, by the function's name. */
  readonly given = new Map<string, readonly Value[]>();
  /** Objects that libraries make themselves, once they are named. */
  readonly libraryObjects = new Map<string, readonly Cell[]>();
  readonly handlers: Handler[] = [];
  readonly problems: Problem[] = [];
  readonly boardNames = new Map<string, Known>();
  frame: Frame | undefined;
  scope = new Scope(undefined);
  site: Site = { file: '', base: 0, order: -1, prefix: '' };
  certain = true;
  phase: Phase = 'setup';
  /** setup() was entered: before it, everything starts from zero. */
  begun = false;
  /** Uses are met but not told: while something is only tried. */
  quiet = false;
  stopped = false;
  /** A call to a pin was met that does not say which. */
  damaged = false;
  /** Counts uses and pins that were new when they were met. */
  news = 0;
  /** Rounds that long loops took so far, beyond what every loop may take. */
  readonly longRounds = new Map<object, number>();
  /** Objects inside objects that are being made. */
  objects = 0;
  private readonly expansions = new Map<object | undefined, Map<object, object>>();
  private spent = 0;
  private depth = 0;
  private paths = 0;
  private readonly told = new Set<string>();

  constructor(
    readonly program: Program,
    readonly platform: Platform,
    libraries: readonly LibraryFacts[],
    private readonly sink: UseSink,
    characters: number,
  ) {
    this.share = Math.min(mostTimes, Math.max(1, characters / shortText));
    this.types = numberTypes(platform.intBits);
    this.tables = tablesOf(libraries, platform);
    this.ports = new Ports(platform.ports);
    this.pinNumbers = new Set(Object.values(platform.ports));
  }

  get functionFacts(): LibraryTables['functions'] {
    return this.tables.functions;
  }

  get classFacts(): LibraryTables['methods'] {
    return this.tables.methods;
  }

  /** One object for a piece of a macro's body at one place where the macro stands: it is met anew at each. */
  expansionOf(node: object): object {
    const { expansion } = this.site;
    let inside = this.expansions.get(expansion);
    if (inside === undefined) {
      inside = new Map();
      this.expansions.set(expansion, inside);
    }
    let one = inside.get(node);
    if (one === undefined) {
      one = { node };
      inside.set(node, one);
    }
    return one;
  }

  /** A new way with nothing on it. */
  entryPath(): Path {
    this.paths += 1;
    return { id: this.paths, steps: [], next: new Map() };
  }

  pathTo(from: Path, span: Span, name: string): Path {
    const path = stepTo(from, span, name, this.paths + 1);
    this.paths = Math.max(this.paths, path.id);
    return path;
  }

  /** Meets a use. True where it has to be described now. */
  use(at: object, facts: CallFacts, pin: Value | undefined, value: Value | undefined): boolean {
    const { frame, certain } = this;
    if (this.quiet || this.stopped || frame === undefined) return false;
    const node = this.site.expansion === undefined ? at : this.expansionOf(at);
    const met = this.sink.meet({ node, facts, pin, value, path: frame.path, certain });
    if (met !== 'same' && pin !== undefined) this.news += 1;
    return met === 'first';
  }

  describe(details: Omit<UseDetails, 'function' | 'phase'>): void {
    this.sink.describe({ ...details, function: this.frame?.name ?? '', phase: this.phase });
  }

  /** Goes one level deeper. False where nothing more is to be followed; then there is no `leave`. */
  enter(): boolean {
    this.spent += 1;
    if (this.stopped) return false;
    if (this.spent > hardLimit * this.share) {
      this.stopped = true;
      this.tell(
        'analysis-stopped',
        'The sketch takes more steps to follow than the analysis may spend; what comes later in it is not seen.',
        this.here,
        'Shorten loops and calls that call each other.',
      );
      return false;
    }
    if (this.depth >= deepest) {
      this.tell(
        'nested-too-deep',
        'Calls or expressions are nested too deep here to be followed.',
        this.here,
        'Split the expression, or end the recursion earlier.',
      );
      return false;
    }
    this.depth += 1;
    return true;
  }

  leave(): void {
    this.depth -= 1;
  }

  /** Charges work that is more than one step. */
  spend(steps: number): void {
    this.spent += steps;
  }

  get spentSteps(): number {
    return this.spent;
  }

  /** Loops are followed only a few rounds. */
  get tired(): boolean {
    return this.spent > softLimit * this.share;
  }

  /** Loops are not followed round by round any more. */
  get worn(): boolean {
    return this.spent > wornLimit * this.share;
  }

  private get here(): Span {
    const { site } = this;
    return site.fixed ?? { file: site.file, start: site.base, end: site.base };
  }

  /** A said limit, once for each place. */
  tell(code: string, message: string, span: Span, hint: string): void {
    const key = `${code} ${span.start} ${span.file}`;
    if (this.told.has(key) || this.told.size >= 100) return;
    this.told.add(key);
    this.problems.push({ code, message, span, hint });
  }

  /** Runs something at another place of the text and in another scope. */
  at<T>(site: Site, scope: Scope, run: () => T): T {
    const oldSite = this.site;
    const oldScope = this.scope;
    this.site = site;
    this.scope = scope;
    const result = run();
    this.site = oldSite;
    this.scope = oldScope;
    return result;
  }

  addHandlers(value: FunctionValue): void {
    for (const callable of value.options) {
      if (!this.handlers.some((one) => one.callable.item === callable.item)) this.handlers.push({ callable });
    }
  }
}
