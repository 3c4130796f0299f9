/** Edits of the manifest that keep every comment and all layout of the user's. */
export { composeEdits, type EditStep } from './compose';
export { formatJson, type JsonObject, type JsonValue } from './format';
export { insertItem, insertPart, removeKey, removePart, renameKey, renamePart, replaceValue } from './parts';
export { insertIntoPath, insertIntoWire, insertWire, removeWire, reversePath } from './wires';
