/** The part of the product that the benchmarks bundle and call: texts in, findings out. */
export { createAnalyser } from '../../server/src/analysis';
export { loadLibrary } from '../../server/src/files';
export { createSketchParser } from '../../server/src/sketch';
