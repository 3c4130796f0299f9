/** The one door to the disk, for lsp/ and cli/. */
export {
  DEEPEST,
  type FileProblem,
  type FoundProjects,
  findProjects,
  isProject,
  MOST_FOLDERS,
  projectOf,
} from './find-projects';
export { loadLibrary, schemasFolder } from './load-library';
export { type FileText, listSources, loadProject, type ProjectFiles } from './load-project';
export { compareText, isSource, MANIFEST_NAME, orderSources, slashed } from './names';
export { type Product, readProduct } from './product';
export { createTextReader, decodeText, LARGEST_FILE, type TextRead, type TextReader } from './read-text';
