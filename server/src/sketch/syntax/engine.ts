/**
 * Two builds of the same parser behind one small interface: the native module, and its WebAssembly twin for places
 * where a native module cannot load. The declarations below are our own, and hold only what is used.
 */
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

/** A cursor over a tree. Every member is a call across the border. */
export interface Cursor {
  readonly nodeTypeId: number;
  readonly nodeType: string;
  readonly nodeIsNamed: boolean;
  readonly currentFieldId: number;
  readonly currentFieldName: string | null | undefined;
  readonly startIndex: number;
  readonly endIndex: number;
  readonly currentNode: { readonly hasError: boolean };
  gotoFirstChild(): boolean;
  gotoNextSibling(): boolean;
  gotoParent(): boolean;
  delete?(): void;
}

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
  /** Names by number, filled as they are met. */
  readonly typeNames: (string | undefined)[];
  readonly named: (boolean | undefined)[];
  readonly fieldNames: (string | undefined)[];
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

interface WasmPackage {
  readonly Parser: {
    new (): WasmParser;
    init(options?: { locateFile(name: string): string }): Promise<void>;
  };
  readonly Language: { load(file: string): Promise<unknown> };
}

// The product is bundled to CommonJS, where import.meta is empty; in tests this is an ES module, without __filename.
const load = createRequire(typeof __filename === 'string' ? __filename : import.meta.url);

const noNames = () => ({ typeNames: [], named: [], fieldNames: [] });

/** Text goes over in pieces: the native module refuses long strings. */
const piece = 16384;

function loadNative(): Engine {
  const Parser = load('tree-sitter') as new () => NativeParser;
  const parser = new Parser();
  parser.setLanguage(load('tree-sitter-cpp'));
  return {
    name: 'native',
    parse: (text, previous) => parser.parse((at) => text.slice(at, at + piece), previous) ?? undefined,
    ...noNames(),
  };
}

async function loadWasm(folder: string | undefined): Promise<Engine> {
  const { Parser, Language } = load('web-tree-sitter') as WasmPackage;
  const place = (name: string, inPackage: string) =>
    folder === undefined ? load.resolve(inPackage) : join(folder, name);
  const runtime = place('web-tree-sitter.wasm', 'web-tree-sitter/web-tree-sitter.wasm');
  await Parser.init({
    locateFile: (name) => (name.endsWith('.wasm') ? runtime : join(dirname(runtime), name)),
  });
  const parser = new Parser();
  parser.setLanguage(
    await Language.load(place('tree-sitter-cpp.wasm', 'tree-sitter-cpp/tree-sitter-cpp.wasm')),
  );
  return {
    name: 'wasm',
    parse: (text, previous) => parser.parse(text, previous) ?? undefined,
    ...noNames(),
  };
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
