/** What this client can do, read once from its capabilities: everything it does not name, it cannot. */
import { type ClientCapabilities, MarkupKind } from 'vscode-languageserver';

export interface Features {
  /** Findings may carry places in other files. */
  readonly relatedPlaces: boolean;
  readonly codeDescription: boolean;
  /** Code actions as objects; without it there are only commands, and we have none. */
  readonly codeActions: boolean;
  /** The edit of a code action may follow when it is chosen. */
  readonly lateEdits: boolean;
  readonly preferredActions: boolean;
  /** Edits may name the version of the document they are for. */
  readonly versionedEdits: boolean;
  readonly markdown: boolean;
  /** An edit may make a file. */
  readonly createsFiles: boolean;
  readonly snippets: boolean;
  /** The client watches files if it is asked to. */
  readonly watchesFiles: boolean;
}

export function readFeatures(capabilities: ClientCapabilities): Features {
  const { textDocument, workspace } = capabilities;
  const action = textDocument?.codeAction;
  return {
    relatedPlaces: textDocument?.publishDiagnostics?.relatedInformation === true,
    codeDescription: textDocument?.publishDiagnostics?.codeDescriptionSupport === true,
    codeActions: action?.codeActionLiteralSupport !== undefined,
    lateEdits: action?.dataSupport === true && action.resolveSupport?.properties.includes('edit') === true,
    preferredActions: action?.isPreferredSupport === true,
    versionedEdits: workspace?.workspaceEdit?.documentChanges === true,
    markdown: textDocument?.hover?.contentFormat?.includes(MarkupKind.Markdown) === true,
    // Who makes files takes lists of changes, whether or not it says so.
    createsFiles: workspace?.workspaceEdit?.resourceOperations?.includes('create') === true,
    snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    watchesFiles: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
  };
}
