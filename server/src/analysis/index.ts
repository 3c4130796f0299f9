/** The façade that lsp/, cli/ and documents/ sit on. */
export type { Placed } from '../rules/subject';
export {
  type Analyser,
  createAnalyser,
  type Hover,
  type ProjectInput,
  type Snapshot,
} from './analyser';
export type { Outline, PinRow, Remark } from './complete/answers';
export type { Asker } from './complete/ask';
export type { Completion } from './complete/complete';
export type { GuessAction } from './draft/confirm';
export { type Draft, type Drafted, type DraftInput, draftManifest } from './draft/draft';
export { type LibraryTexts, type OpenLibrary, openLibrary } from './library';
export { ASSUMED_BOARD, type BoardChoice, chooseBoard, findBoard, readUses } from './uses';
export type { PinWorking, SolvedRegion, SolvedState, Workings } from './workings';
