/** Texts in, plain forms out. The trees stay in here, and each is freed as soon as nothing needs it. */
import { type Mended, mend } from '../mend/mend';
import { blankAttributes, blankDead, difference } from './blanks';
import type { Engine, Point, SyntaxTree } from './engine';
import { loadEngine } from './engine';
import { type FileForm, maximumLength } from './plain-tree';
import { formOf } from './walk';

/** Replaces the characters from `start` to `end` (half-open UTF-16 offsets in the text before this change). */
export interface TextChange {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

export interface ParsedFile {
  readonly file: string;
  readonly text: string;
  /** Plain data that stays valid after `dispose`. */
  readonly form: FileForm;
  /** Frees the tree. A later `reparse` from this file is a whole parse. */
  dispose(): void;
}

export interface SketchParser {
  readonly engine: 'native' | 'wasm';
  parse(file: string, text: string): ParsedFile;
  /**
   * Parses `text`, which is the previous text after `changes`, one after the other. Frees the previous tree. Changes
   * that do not lead to `text` are survived: the text is parsed from nothing.
   */
  reparse(previous: ParsedFile, text: string, changes: readonly TextChange[]): ParsedFile;
}

export interface ParserOptions {
  /** Asks for one engine; without it the WebAssembly one is tried first. */
  readonly engine?: 'native' | 'wasm';
  /** Folder of the two .wasm files where they do not lie in their packages. */
  readonly wasmFolder?: string;
  /** Gets a sentence where the WebAssembly engine does not load. */
  readonly log?: (text: string) => void;
}

const empty: FileForm = { units: [] };
const tooLong: FileForm = { units: [], tooLong: true };

/** Row and column as the grammar counts them: only a line feed ends a row. */
function pointAt(text: string, offset: number): Point {
  let row = 0;
  let lineStart = 0;
  for (let at = text.indexOf('\n'); at !== -1 && at < offset; at = text.indexOf('\n', at + 1)) {
    row += 1;
    lineStart = at + 1;
  }
  return { row, column: offset - lineStart };
}

class Parsed implements ParsedFile {
  constructor(
    readonly file: string,
    readonly text: string,
    readonly form: FileForm,
    private tree: SyntaxTree | undefined,
    /** The text as the tree has it. */
    readonly parsedText: string,
  ) {}

  /** Gives the tree away; the caller frees it. */
  takeTree(): SyntaxTree | undefined {
    const tree = this.tree;
    this.tree = undefined;
    return tree;
  }

  dispose(): void {
    this.takeTree()?.delete?.();
  }
}

class Parser implements SketchParser {
  constructor(private readonly core: Engine) {}

  get engine(): 'native' | 'wasm' {
    return this.core.name;
  }

  parse(file: string, text: string): ParsedFile {
    return this.read(file, text, prepare(text), undefined, undefined);
  }

  reparse(previous: ParsedFile, text: string, changes: readonly TextChange[]): ParsedFile {
    const tree = previous instanceof Parsed ? previous.takeTree() : undefined;
    const mended = prepare(text);
    const follows =
      tree !== undefined && previous instanceof Parsed && follow(tree, previous, text, mended.text, changes);
    const parsed = this.read(previous.file, text, mended, follows ? tree : undefined, previous.form);
    tree?.delete?.();
    return parsed;
  }

  private read(
    file: string,
    text: string,
    mended: Mended,
    old: SyntaxTree | undefined,
    form: FileForm | undefined,
  ): ParsedFile {
    if (text.length > maximumLength) return new Parsed(file, text, tooLong, undefined, '');
    const tree = this.core.parse(mended.text, old);
    if (tree === undefined) return new Parsed(file, text, empty, undefined, '');
    return new Parsed(file, text, formOf(this.core, tree, text, mended, form), tree, mended.text);
  }
}

/** The text as the grammar gets it. */
function prepare(text: string): Mended {
  return mend(text.length > maximumLength ? '' : blankAttributes(blankDead(text)));
}

/** Tells the tree what changed. Where a blanked word or a mended place came or went, that is more than was typed. */
function follow(
  tree: SyntaxTree,
  previous: Parsed,
  text: string,
  next: string,
  changes: readonly TextChange[],
): boolean {
  const { parsedText } = previous;
  if (parsedText === previous.text && next === text) return applyToTree(tree, parsedText, next, changes);
  return applyToTree(tree, parsedText, next, [difference(parsedText, next)]);
}

/** Tells the tree what changed. False where the changes do not lead to the text: the tree is of no use then. */
function applyToTree(
  tree: SyntaxTree,
  before: string,
  after: string,
  changes: readonly TextChange[],
): boolean {
  let text = before;
  for (const change of changes) {
    if (change.start < 0 || change.end < change.start || change.end > text.length) return false;
    const startPosition = pointAt(text, change.start);
    const oldEndPosition = pointAt(text, change.end);
    text = text.slice(0, change.start) + change.text + text.slice(change.end);
    const newEndIndex = change.start + change.text.length;
    tree.edit({
      startIndex: change.start,
      oldEndIndex: change.end,
      newEndIndex,
      startPosition,
      oldEndPosition,
      newEndPosition: pointAt(text, newEndIndex),
    });
  }
  return text === after;
}

/**
 * A parser for sketch texts.
 * @throws Error where no engine loads (both packages are missing or broken).
 */
export async function createSketchParser(options: ParserOptions = {}): Promise<SketchParser> {
  return new Parser(await loadEngine(options.engine, options.wasmFolder, options.log ?? (() => {})));
}
