/** The part of the product that the benchmarks bundle and call: texts in, findings out. */
export { createAnalyser, openLibrary } from '../../server/src/analysis';
export { loadLibrary } from '../../server/src/files';
export { createSketchParser, readSketch } from '../../server/src/sketch';
export { loadEngine } from '../../server/src/sketch/syntax/engine';
