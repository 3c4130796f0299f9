/** Papers that lsp/ and cli/ can ask for, and the forms they are written in. */

export { addendumPaper } from './addendum-paper';
export { type Completeness, checkGuide } from './check-guide';
export { type BuildChanges, compareBuilds } from './compare-builds';
export { fileNameOf } from './escape';
export { guidePaper } from './guide-paper';
export { type HookupRow, listHookup } from './hookup-list';
export { hookupPaper, writeHookup } from './hookup-paper';
export { type Kept, keepOwnText } from './markers';
export {
  formsOf,
  gatherPaperInput,
  type Paper,
  type PaperId,
  type PaperInput,
  type Picture,
  type Source,
} from './paper';
export { partsPaper } from './parts-paper';
export { testsPaper } from './tests-paper';
export { writeCsv } from './write-csv';
export { writeHtml } from './write-html';
export { writeMarkdown } from './write-markdown';
