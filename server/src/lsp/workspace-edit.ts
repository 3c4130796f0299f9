/** Fixes as the protocol's edits. They may lie in several files, of which some are closed. */
import type { TextDocumentEdit, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { Edit } from '../base/span';
import type { Features } from './features';
import { rangeOf } from './places';
import type { Run } from './project';
import { uriOfPath } from './uris';

/**
 * The edits of one fix against the files of the run they were made from. Where the client can, each open document's
 * edits name its version, so that they do not land in a text that has moved on; a closed file has none to name.
 * @throws Error where an edit is for a file that the run did not read: half a fix is worse than none.
 */
export function toWorkspaceEdit(edits: readonly Edit[], run: Run, features: Features): WorkspaceEdit {
  const byPath = new Map<string, Edit[]>();
  for (const edit of edits) {
    byPath.set(edit.file, [...(byPath.get(edit.file) ?? []), edit]);
  }
  const documentChanges: TextDocumentEdit[] = [];
  for (const [path, own] of byPath) {
    const file = run.files.get(path);
    if (file === undefined) {
      throw new Error(`a fix edits ${path}, which was not read`);
    }
    const uri = file.open?.uri ?? uriOfPath(path);
    const textEdits: TextEdit[] = own.map((edit) => ({
      range: rangeOf(file.lines, edit),
      newText: edit.text,
    }));
    documentChanges.push({ textDocument: { uri, version: file.open?.version ?? null }, edits: textEdits });
  }
  if (features.versionedEdits) {
    return { documentChanges };
  }
  const changes: Record<string, TextEdit[]> = {};
  for (const change of documentChanges) {
    changes[change.textDocument.uri] = change.edits as TextEdit[];
  }
  return { changes };
}
