/** The sketch layer: from C++ text to what it does to pins. */
export {
  createSketchParser,
  type ParsedFile,
  type ParserOptions,
  type SketchParser,
  type TextChange,
} from './syntax/parser';
export type { FileForm } from './syntax/plain-tree';
export { readSketch, type SketchFile } from './uses/facts';
