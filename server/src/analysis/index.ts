/** The façade that lsp/, cli/ and documents/ sit on. */
export {
  type Analyser,
  createAnalyser,
  type Hover,
  type ProjectInput,
  type Snapshot,
} from './analyser';
export type { LibraryTexts } from './library';
