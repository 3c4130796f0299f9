/**
 * Reads a tree straight out of the WebAssembly parser's memory. Through the cursor every node costs several calls across
 * the border, in the end as much as the parse itself; numbers in memory cost next to nothing. The layout is that of
 * `Subtree` on a 32-bit machine, as the parser's own sources have it (lib/src/subtree.h). It is no promise of theirs:
 * the reader is used only after a trial (reader-trial.ts), and the cursor stays for where that fails.
 */
import type { SyntaxTree } from './engine';
import type { GrammarTables } from './grammar-tables';
import { maximumDepth, type PlainNode } from './plain-tree';
import type { Placing, TopNode, TreeReader } from './tree-reader';

/** Byte offsets in a subtree of the heap. Its children lie in front of it, `entryBytes` each. */
const heap = {
  padding: 4,
  size: 16,
  errorCost: 32,
  childCount: 36,
  symbol: 40,
  flags: 44,
  production: 66,
} as const;
const entryBytes = 8;

/** Flags of a subtree of the heap; those of an inline one stand one bit higher. */
const visible = 1;
const named = 2;
const extra = 4;
/** That of an inline one as it stands there. */
const missingInline = 32;

const errorSymbol = 65535;
const noChildren: readonly PlainNode[] = [];

/** Hidden nodes nest too: repetitions are balanced trees, so that this much is never reached by sound text. */
const deepestHidden = 2000;

/** The parser's memory. Its buffer is another one after it grew. */
export interface WasmMemory {
  readonly buffer: ArrayBuffer;
}

/** A node of the tree as its place in memory. */
class Top implements TopNode {
  type = '';
  start = 0;
  end = 0;
  /** Address of its entry, with the alias and the field that the production around gives it. */
  entry = 0;
  alias = 0;
  field: string | undefined;

  constructor(private readonly reader: MemoryReader) {}

  get faulty(): boolean {
    return this.reader.isFaulty(this.entry);
  }

  plain(placing: Placing, base: number) {
    return this.reader.plain(this, placing, base);
  }
}

export class MemoryReader implements TreeReader {
  private bytes = new Uint8Array();
  private shorts = new Uint16Array();
  private words = new Uint32Array();
  private placing: Placing = { isWhole: true, toSource: (offset) => offset };
  private isWhole = true;
  private base = 0;
  private cut = false;
  private hidden = 0;

  constructor(
    private readonly memory: WasmMemory,
    private readonly grammar: GrammarTables,
    /** Address of a tree. */
    private readonly addressOf: (tree: SyntaxTree) => number,
  ) {}

  visit(tree: SyntaxTree, visit: (top: TopNode) => void): void {
    const { buffer } = this.memory;
    if (this.words.buffer !== buffer) {
      this.bytes = new Uint8Array(buffer);
      this.shorts = new Uint16Array(buffer);
      this.words = new Uint32Array(buffer);
    }
    // A tree begins with its root.
    const root = this.addressOf(tree);
    const start = this.paddingOf(root);
    const top = new Top(this);
    if (this.symbolOf(root) === errorSymbol) {
      Object.assign(top, {
        type: 'ERROR',
        start: start >> 1,
        end: (start + this.sizeOf(root)) >> 1,
        entry: root,
      });
      visit(top);
      return;
    }
    this.visitChildren(root, start, undefined, top, visit);
  }

  private visitChildren(
    parent: number,
    from: number,
    inherited: string | undefined,
    top: Top,
    visit: (top: TopNode) => void,
  ): void {
    const pointer = this.words[parent >> 2] ?? 0;
    if ((pointer & 1) === 1) return;
    const count = this.words[(pointer + heap.childCount) >> 2] ?? 0;
    if (count === 0) return;
    const production = this.shorts[(pointer + heap.production) >> 1] ?? 0;
    const fields = this.grammar.fields[production];
    const aliases = this.grammar.aliases[production];
    let at = from;
    let place = 0;
    const first = pointer - count * entryBytes;
    for (let entry = first; entry < pointer; entry += entryBytes) {
      if (entry !== first) at += this.paddingOf(entry);
      const flags = this.flagsOf(entry);
      const isExtra = (flags & extra) !== 0;
      const alias = isExtra ? 0 : (aliases?.[place] ?? 0);
      const field = isExtra ? undefined : (fields?.[place] ?? inherited);
      const end = at + this.sizeOf(entry);
      if ((flags & visible) !== 0 || alias !== 0) {
        top.type = this.typeOf(entry, alias);
        top.start = at >> 1;
        top.end = end >> 1;
        top.entry = entry;
        top.alias = alias;
        top.field = field;
        visit(top);
      } else this.visitChildren(entry, at, field, top, visit);
      at = end;
      if (!isExtra) place += 1;
    }
  }

  plain(
    top: Top,
    placing: Placing,
    base: number,
  ): { readonly node: PlainNode | undefined; readonly cut: boolean } {
    this.placing = placing;
    this.isWhole = placing.isWhole;
    this.base = base;
    this.cut = false;
    this.hidden = 0;
    const isNamed =
      top.alias === 0 ? (this.flagsOf(top.entry) & named) !== 0 : this.grammar.namedAlias[top.alias] === true;
    const found: PlainNode[] = [];
    if (isNamed || top.field !== undefined)
      this.add(found, top.entry, top.start << 1, top.end << 1, top.type, top.field, 0);
    return { node: found[0], cut: this.cut };
  }

  private add(
    list: PlainNode[],
    entry: number,
    at: number,
    end: number,
    type: string,
    field: string | undefined,
    depth: number,
  ): void {
    const { isWhole, placing, base } = this;
    const from = (isWhole ? at >> 1 : placing.toSource(at >> 1)) - base;
    const to = (isWhole ? end >> 1 : placing.toSource(end >> 1)) - base;
    if (from === to || type === 'comment') return;
    let children = noChildren;
    const pointer = this.words[entry >> 2] ?? 0;
    if ((pointer & 1) === 0 && (this.words[(pointer + heap.childCount) >> 2] ?? 0) > 0) {
      if (depth >= maximumDepth) this.cut = true;
      else {
        const inside: PlainNode[] = [];
        this.addChildren(inside, pointer, at, undefined, depth + 1);
        if (inside.length > 0) children = inside;
      }
    }
    list.push({ type, field, start: from, end: to, children });
  }

  /** The children of the subtree at `pointer`, which starts at the byte `from`; hidden ones stand for theirs. */
  private addChildren(
    list: PlainNode[],
    pointer: number,
    from: number,
    inherited: string | undefined,
    depth: number,
  ): void {
    const { words, shorts, bytes, grammar } = this;
    const count = words[(pointer + heap.childCount) >> 2] ?? 0;
    if (count === 0) return;
    const production = shorts[(pointer + heap.production) >> 1] ?? 0;
    const fields = grammar.fields[production];
    const aliases = grammar.aliases[production];
    let at = from;
    let place = 0;
    const first = pointer - count * entryBytes;
    for (let entry = first; entry < pointer; entry += entryBytes) {
      const child = words[entry >> 2] ?? 0;
      const isInline = (child & 1) === 1;
      let flags: number;
      let symbol: number;
      let size: number;
      if (isInline) {
        flags = (child & 255) >> 1;
        symbol = (child >> 8) & 255;
        if (entry !== first) at += bytes[entry + 6] ?? 0;
        size = bytes[entry + 7] ?? 0;
      } else {
        flags = shorts[(child + heap.flags) >> 1] ?? 0;
        symbol = shorts[(child + heap.symbol) >> 1] ?? 0;
        if (entry !== first) at += words[(child + heap.padding) >> 2] ?? 0;
        size = words[(child + heap.size) >> 2] ?? 0;
      }
      const isExtra = (flags & extra) !== 0;
      const alias = isExtra || aliases === undefined ? 0 : (aliases[place] ?? 0);
      const field = isExtra ? undefined : (fields?.[place] ?? inherited);
      if (alias !== 0 || (flags & visible) !== 0) {
        const isNamed = alias === 0 ? (flags & named) !== 0 : grammar.namedAlias[alias] === true;
        if (isNamed || field !== undefined) {
          const shown = alias === 0 ? symbol : alias;
          const type = shown === errorSymbol ? 'ERROR' : (grammar.typeNames[shown] ?? '');
          this.add(list, entry, at, at + size, type, field, depth);
        }
      } else if (!isInline) {
        this.hidden += 1;
        if (this.hidden > deepestHidden) this.cut = true;
        else this.addChildren(list, child, at, field, depth);
        this.hidden -= 1;
      }
      at += size;
      if (!isExtra) place += 1;
    }
  }

  private typeOf(entry: number, alias: number): string {
    const symbol = alias === 0 ? this.symbolOf(entry) : alias;
    return symbol === errorSymbol ? 'ERROR' : (this.grammar.typeNames[symbol] ?? '');
  }

  private symbolOf(entry: number): number {
    const word = this.words[entry >> 2] ?? 0;
    return (word & 1) === 1 ? (word >> 8) & 255 : (this.shorts[(word + heap.symbol) >> 1] ?? 0);
  }

  private flagsOf(entry: number): number {
    const word = this.words[entry >> 2] ?? 0;
    return (word & 1) === 1 ? (word & 255) >> 1 : (this.shorts[(word + heap.flags) >> 1] ?? 0);
  }

  private paddingOf(entry: number): number {
    const word = this.words[entry >> 2] ?? 0;
    return (word & 1) === 1 ? (this.bytes[entry + 6] ?? 0) : (this.words[(word + heap.padding) >> 2] ?? 0);
  }

  private sizeOf(entry: number): number {
    const word = this.words[entry >> 2] ?? 0;
    return (word & 1) === 1 ? (this.bytes[entry + 7] ?? 0) : (this.words[(word + heap.size) >> 2] ?? 0);
  }

  /** An error inside, or a token that the grammar had to make up. */
  isFaulty(entry: number): boolean {
    const word = this.words[entry >> 2] ?? 0;
    if ((word & 1) === 1) return (word & missingInline) !== 0;
    const flags = this.shorts[(word + heap.flags) >> 1] ?? 0;
    return (flags & missingOnHeap) !== 0 || (this.words[(word + heap.errorCost) >> 2] ?? 0) > 0;
  }
}

const missingOnHeap = 512;
