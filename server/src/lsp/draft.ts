/** The draft of a manifest: as a code action on a sketch that has none, and as a request that other clients can send too. */
import { type CodeAction, CodeActionKind, type WorkspaceEdit } from 'vscode-languageserver';
import type { Draft } from '../analysis';
import type { Features } from './features';
import { linesOf, rangeOf } from './places';
import type { Run } from './project';
import type { Projects } from './projects';
import { uriOfPath } from './uris';

/** Asks for a draft: `{ uri, board? }`, answered by a `DraftAnswer`. */
export const DRAFT_REQUEST = 'wiretrue/draft';

export interface DraftParams {
  readonly uri: string;
  /** An id of the board library; without it the manifest's or a guess. */
  readonly board?: string;
}

export type DraftAnswer =
  | {
      readonly ok: true;
      /** Absent where there is nothing to add. */
      readonly edit?: WorkspaceEdit;
      readonly manifest: string;
      readonly board: string;
      readonly added: number;
      readonly left: readonly { readonly pins: readonly string[]; readonly why: string }[];
    }
  | {
      readonly ok: false;
      readonly why: string;
      readonly boards: readonly { readonly id: string; readonly title: string }[];
    };

export function draftFor(projects: Projects, { uri, board }: DraftParams, features: Features): DraftAnswer {
  const found = makeDraft(projects, uri, board);
  if (found === undefined) return { ok: false, why: 'This file belongs to no sketch.', boards: [] };
  const { draft, version, manifestUri, text } = found;
  if (!draft.ok) return draft;
  const { edits, added, left, board: chosen } = draft;
  const nothing = edits.length === 0;
  if (!nothing && text === undefined && !features.createsFiles) {
    return {
      ok: false,
      why: 'This editor lets nobody make files; make an empty hardware.jsonc first.',
      boards: [],
    };
  }
  const edit = nothing ? {} : { edit: editOf(draft, text, version, manifestUri, features) };
  return { ok: true, ...edit, manifest: manifestUri, board: chosen, added: added.length, left };
}

/** So many boards are offered where the sketch does not say which. */
const mostBoards = 4;

/** What an offered draft carries until it is chosen. */
interface DraftData {
  readonly draft: string;
  readonly board?: string;
}

/**
 * Actions that draft. Nothing is drafted to offer one: a client asks at every move of the cursor. Only where a person
 * asks is it looked up for which boards the sketch may be.
 */
export function draftActions(
  projects: Projects,
  uri: string,
  run: Run | undefined,
  asked: boolean,
  features: Features,
): CodeAction[] {
  if (!features.codeActions) return [];
  if (run !== undefined) {
    const lacks = run.snapshot.findings.some(({ rule }) => rule === 'unwired-pin');
    return lacks ? offer(projects, 'Draft what hardware.jsonc lacks', { draft: uri }, asked, features) : [];
  }
  const found = projects.projectFor(uri);
  if (found === undefined || !features.createsFiles) return [];
  if (projects.readText(found.project.manifestPath) !== undefined) return [];
  if (!asked)
    return offer(projects, 'Draft hardware.jsonc from this sketch', { draft: uri }, asked, features);
  const made = makeDraft(projects, uri, undefined)?.draft;
  if (made?.ok === true) {
    return offer(projects, `Draft hardware.jsonc for ${made.board}`, { draft: uri }, asked, features);
  }
  return (made?.boards ?? [])
    .slice(0, mostBoards)
    .flatMap(({ id, title }) =>
      offer(projects, `Draft hardware.jsonc for ${title}`, { draft: uri, board: id }, asked, features),
    );
}

function offer(
  projects: Projects,
  title: string,
  data: DraftData,
  asked: boolean,
  features: Features,
): CodeAction[] {
  const action: CodeAction = { title, kind: CodeActionKind.RefactorRewrite, data };
  if (features.lateEdits) return [action];
  const edit = asked ? editFor(projects, data, features) : undefined;
  return edit === undefined ? [] : [{ title, kind: CodeActionKind.RefactorRewrite, edit }];
}

/** An offered draft with its edit, made now; undefined where the action is none of these. */
export function resolveDraft(
  projects: Projects,
  action: CodeAction,
  features: Features,
): CodeAction | undefined {
  const data: unknown = action.data;
  if (typeof data !== 'object' || data === null || !('draft' in data) || typeof data.draft !== 'string') {
    return undefined;
  }
  const board = 'board' in data && typeof data.board === 'string' ? { board: data.board } : {};
  const edit = editFor(projects, { draft: data.draft, ...board }, features);
  return edit === undefined ? action : { ...action, edit };
}

/** Where nobody said the board and the sketch does not either, the likeliest is taken. */
function editFor(
  projects: Projects,
  { draft: uri, board }: DraftData,
  features: Features,
): WorkspaceEdit | undefined {
  let made = makeDraft(projects, uri, board);
  if (made?.draft.ok === false) made = makeDraft(projects, uri, made.draft.boards[0]?.id ?? '');
  if (made?.draft.ok !== true) return undefined;
  return editOf(made.draft, made.text, made.version, made.manifestUri, features);
}

function makeDraft(projects: Projects, uri: string, board: string | undefined) {
  const found = projects.projectFor(uri);
  if (found === undefined) return undefined;
  const { project, engine } = found;
  const { sources } = project.readBare(engine.parser);
  const text = projects.readText(project.manifestPath);
  const open = projects.byPath(project.manifestPath);
  const draft = engine.analyser.draft({
    file: project.manifestPath,
    sources,
    ...(text !== undefined && { text }),
    ...(board !== undefined && { board }),
  });
  const manifestUri = open?.uri ?? uriOfPath(project.manifestPath);
  return { draft, text, version: open?.version ?? null, manifestUri };
}

function editOf(
  draft: Extract<Draft, { ok: true }>,
  text: string | undefined,
  version: number | null,
  uri: string,
  features: Features,
): WorkspaceEdit {
  const lines = linesOf(text ?? '');
  const edits = draft.edits.map((edit) => ({ range: rangeOf(lines, edit), newText: edit.text }));
  if (text !== undefined && !features.versionedEdits) return { changes: { [uri]: edits } };
  const change = { textDocument: { uri, version }, edits };
  if (text !== undefined) return { documentChanges: [change] };
  // Never over a file that has come meanwhile.
  return {
    documentChanges: [{ kind: 'create', uri, options: { overwrite: false, ignoreIfExists: false } }, change],
  };
}
