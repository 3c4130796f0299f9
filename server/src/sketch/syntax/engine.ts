/**
 * Two builds of the same parser behind one small interface: the native module, and its WebAssembly twin for places
 * where a native module cannot load. The declarations below are our own, and hold only what is used.
 */
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type Cursor, CursorReader } from './cursor-reader';
import { GrammarTables } from './grammar-tables';
import { MemoryReader, type WasmMemory } from './memory-reader';
import { readsAlike } from './reader-trial';
import type { TreeReader } from './tree-reader';

export interface Point {
  readonly row: number;
  readonly column: number;
}

export interface TreeEdit {
  readonly startIndex: number;
  readonly oldEndIndex: number;
  readonly newEndIndex: number;
  readonly startPosition: Point;
  readonly oldEndPosition: Point;
  readonly newEndPosition: Point;
}

/** A tree outside the JavaScript heap. The wasm build has `delete`; native trees are freed by the collector. */
export interface SyntaxTree {
  walk(): Cursor;
  edit(edit: TreeEdit): unknown;
  delete?(): void;
}

export interface Engine {
  readonly name: 'native' | 'wasm';
  /** @returns undefined where the parser gave up. */
  parse(text: string, previous?: SyntaxTree): SyntaxTree | undefined;
  readonly reader: TreeReader;
}

interface NativeParser {
  setLanguage(language: unknown): void;
  parse(input: (offset: number) => string, previous?: SyntaxTree): SyntaxTree | null;
}

interface WasmParser {
  setLanguage(language: unknown): unknown;
  parse(
    text: string | ((offset: number) => string | undefined),
    previous?: SyntaxTree | null,
  ): SyntaxTree | null;
}

/** Objects of that package keep their address in the parser's memory under this key. */
interface Addressed {
  readonly 0: number;
}

interface WasmPackage {
  readonly Parser: {
    new (): WasmParser;
    init(options: { locateFile(name: string): string; wasmMemory: WasmMemory }): Promise<void>;
  };
  readonly Language: { load(file: string): Promise<Addressed> };
}

// The product is bundled to CommonJS, where import.meta is empty; in tests this is an ES module, without __filename.
const load = createRequire(typeof __filename === 'string' ? __filename : import.meta.url);

/** Part of every Node.js, but not of its type declarations. */
declare const WebAssembly: {
  readonly Memory: new (size: { initial: number; maximum: number }) => WasmMemory;
};

/** Text goes over in pieces: the native module refuses long strings. */
const piece = 16384;

function loadNative(): Engine {
  const Parser = load('tree-sitter') as new () => NativeParser;
  const parser = new Parser();
  parser.setLanguage(load('tree-sitter-cpp'));
  return {
    name: 'native',
    parse: (text, previous) => parser.parse((at) => text.slice(at, at + piece), previous) ?? undefined,
    reader: new CursorReader(),
  };
}

async function loadWasm(folder: string | undefined): Promise<Engine> {
  const { Parser, Language } = load('web-tree-sitter') as WasmPackage;
  const place = (name: string, inPackage: string) =>
    folder === undefined ? load.resolve(inPackage) : join(folder, name);
  const runtime = place('web-tree-sitter.wasm', 'web-tree-sitter/web-tree-sitter.wasm');
  // The parser's own default; handed in, so that trees can be read in it.
  const memory = new WebAssembly.Memory({ initial: 512, maximum: 32_768 });
  await Parser.init({
    locateFile: (name) => (name.endsWith('.wasm') ? runtime : join(dirname(runtime), name)),
    wasmMemory: memory,
  });
  const parser = new Parser();
  const language = await Language.load(place('tree-sitter-cpp.wasm', 'tree-sitter-cpp/tree-sitter-cpp.wasm'));
  parser.setLanguage(language);
  const parse = (text: string, previous?: SyntaxTree) => parser.parse(text, previous) ?? undefined;
  return { name: 'wasm', parse, reader: readerOf(memory, language, parse) };
}

function readerOf(
  memory: WasmMemory,
  language: Addressed,
  parse: (text: string) => SyntaxTree | undefined,
): TreeReader {
  const cursor = new CursorReader();
  try {
    const tables = new GrammarTables(memory.buffer, language[0]);
    const direct = new MemoryReader(memory, tables, (tree) => (tree as unknown as Addressed)[0]);
    return readsAlike(cursor, direct, parse) ? direct : cursor;
  } catch {
    return cursor;
  }
}

/**
 * Loads the engine that was asked for, or the native one and, where that fails, the other.
 * @param wasmFolder holds `web-tree-sitter.wasm` and `tree-sitter-cpp.wasm`; without it the packages are searched.
 * @throws Error where neither loads.
 */
export async function loadEngine(
  wanted: 'native' | 'wasm' | undefined,
  wasmFolder: string | undefined,
  log: (text: string) => void,
): Promise<Engine> {
  if (wanted !== 'wasm') {
    try {
      return loadNative();
    } catch (error) {
      if (wanted === 'native') throw error;
      log(`The native parser does not load (${firstLine(error)}); the WebAssembly parser is used instead.`);
    }
  }
  return loadWasm(wasmFolder);
}

function firstLine(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).split('\n')[0] ?? '';
}
