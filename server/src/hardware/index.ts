/** The hardware layer as the layers above see it. */
export type { BoardSource, FindBoard } from './board/extend';
export { readBoard } from './board/read-board';
export * from './edits';
export type { JsonPath } from './json/node';
export { manifestKeys, type WritingPlace, writingPlaceAt } from './manifest/completion-place';
export { pinNames } from './manifest/ends';
export { describeKey, type ManifestPlace, manifestPathAt } from './manifest/manifest-path';
export { type HardwareLibrary, readManifest, severitySpan } from './manifest/read-manifest';
export { namesInWires } from './manifest/wire-names';
export { listNames, nearestName, quoteName, unknownName } from './names';
export { type PartKind, readPartKind } from './part-kind';
export { freePins, freePosition, holesOf, ordinal, positionWords } from './positions';
