/**
 * Fixes offered where the cursor is. They are made from the present run, never kept from an earlier one: a finding is
 * known again by the key its diagnostic carries.
 */
import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type Diagnostic,
  LSPErrorCodes,
  ResponseError,
} from 'vscode-languageserver';
import type { Finding } from '../base/finding';
import { keyOf } from './diagnostics';
import type { Features } from './features';
import { offsetsOf } from './places';
import type { Run, SeenFile } from './project';
import { toWorkspaceEdit } from './workspace-edit';

/** What an offered action carries until it is chosen. */
interface ActionData {
  readonly path: string;
  readonly key: string;
  readonly title: string;
}

/** The fixes of all findings that the selection touches or that the client names. */
export function codeActionsAt(
  params: CodeActionParams,
  path: string,
  run: Run,
  features: Features,
): CodeAction[] {
  const file = run.files.get(path);
  if (!features.codeActions || file === undefined || !wantsFixes(params.context.only)) {
    return [];
  }
  const named = new Set(params.context.diagnostics.map(keyOf));
  const selection = offsetsOf(file.lines, params.range);
  return run.snapshot.findings
    .filter(
      ({ span, key }) =>
        span.file === path &&
        (named.has(key) || (span.start <= selection.end && selection.start <= span.end)),
    )
    .flatMap((finding) => actionsOf(finding, path, file, params.context.diagnostics, run, features));
}

function actionsOf(
  finding: Finding,
  path: string,
  file: SeenFile,
  shown: readonly Diagnostic[],
  run: Run,
  features: Features,
): CodeAction[] {
  const made = features.lateEdits ? undefined : run.snapshot.fixes(finding.key);
  const offered = made ?? finding.fixes;
  const diagnostics = shown.filter((diagnostic) => isOf(diagnostic, finding, file));
  const preferred = offered.findIndex((fix) => fix.trust === 'safe');
  return offered.map((fix, index): CodeAction => {
    const edits = made?.[index]?.edits;
    const data: ActionData = { path, key: finding.key, title: fix.title };
    return {
      title: fix.title,
      kind: CodeActionKind.QuickFix,
      ...(diagnostics.length === 0 ? {} : { diagnostics }),
      ...(features.preferredActions && index === preferred ? { isPreferred: true } : {}),
      ...(edits === undefined ? { data } : { edit: toWorkspaceEdit(edits, run, features) }),
    };
  });
}

/** A client that keeps no data gives back a diagnostic without its key: then the rule and the place decide. */
function isOf(diagnostic: Diagnostic, finding: Finding, file: SeenFile): boolean {
  const key = keyOf(diagnostic);
  if (key !== undefined) {
    return key === finding.key;
  }
  const { start, end } = offsetsOf(file.lines, diagnostic.range);
  return diagnostic.code === finding.rule && start === finding.span.start && end === finding.span.end;
}

function wantsFixes(only: readonly string[] | undefined): boolean {
  // Kinds are a hierarchy, and '' is its root.
  return only === undefined || only.some((kind) => kind === '' || kind === CodeActionKind.QuickFix);
}

/** The file an offered action belongs to; undefined where the action is not one of ours. */
export function actionPath(action: CodeAction): string | undefined {
  return readData(action.data)?.path;
}

/**
 * The chosen action with its edit, made from the present texts.
 * @throws ResponseError ContentModified where the finding or this fix of it is gone.
 */
export function resolveAction(action: CodeAction, run: Run | undefined, features: Features): CodeAction {
  const data = readData(action.data);
  const fix = data && run?.snapshot.fixes(data.key).find(({ title }) => title === data.title);
  if (run === undefined || fix === undefined) {
    throw new ResponseError(LSPErrorCodes.ContentModified, `No longer needed: ${action.title}`);
  }
  return { ...action, edit: toWorkspaceEdit(fix.edits, run, features) };
}

function readData(data: unknown): ActionData | undefined {
  if (typeof data !== 'object' || data === null || !('path' in data && 'key' in data && 'title' in data)) {
    return undefined;
  }
  const { path, key, title } = data;
  return typeof path === 'string' && typeof key === 'string' && typeof title === 'string'
    ? { path, key, title }
    : undefined;
}
