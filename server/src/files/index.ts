/** The one door to the disk, for lsp/ and cli/. */
export {
  type Arrangement,
  arrangeSketch,
  ceilingOf,
  type FileText,
  MOST_CHARACTERS,
  MOST_SOURCES,
  type SketchPlace,
} from './arrange-sketch';
export { type FoundProjects, findProjects, homesOf, isProject, projectOf } from './find-projects';
export { type FoundSketches, findSketches } from './find-sketches';
export { type Includes, rememberIncludes, scanIncludes } from './includes';
export { countsInSketch, DEEPEST_SOURCE_FOLDER, listSources, MOST_SOURCE_FOLDERS } from './list-sources';
export { loadLibrary, schemasFolder } from './load-library';
export { loadProject, loadSketch, type ProjectFiles } from './load-project';
export { compareText, isBelow, isSource, MANIFEST_NAME, slashed } from './names';
export { type Product, readProduct } from './product';
export {
  createTextReader,
  decodeText,
  type FileProblem,
  LARGEST_FILE,
  type TextRead,
  type TextReader,
} from './read-text';
export { DEEPEST, MOST_FOLDERS } from './walk-folders';
export { type FolderWatcher, MOST_WATCHED, type WatchWish, watchFolders } from './watch-folders';
export { type Written, writeWhole } from './write-whole';
