/** The analysis' answers to an editor's questions as the protocol's: one function a request, no decisions. */
import {
  type CodeAction,
  CodeActionKind,
  type CodeLens,
  type ColorInformation,
  type CompletionItem,
  CompletionItemKind,
  type DocumentSymbol,
  ErrorCodes,
  type FoldingRange,
  type InlayHint,
  InsertTextFormat,
  type Location,
  type Range,
  ResponseError,
  SymbolKind,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type { Completion, Outline, PinRow } from '../analysis';
import { wirePaints } from '../documents/colours';
import { locationOf } from './diagnostics';
import type { Features } from './features';
import { toMarkup } from './markup';
import { type Lines, offsetsOf, rangeOf } from './places';
import type { Run, SeenFile } from './project';
import { toWorkspaceEdit } from './workspace-edit';

/** A document in its run. */
export interface Asked {
  readonly run: Run;
  readonly path: string;
  readonly file: SeenFile;
}

type Position = Range['start'];

const kinds: Readonly<Record<Completion['kind'], CompletionItemKind>> = {
  key: CompletionItemKind.Property,
  value: CompletionItemKind.EnumMember,
  pin: CompletionItemKind.Constant,
  part: CompletionItemKind.Variable,
  colour: CompletionItemKind.Color,
  snippet: CompletionItemKind.Snippet,
};

export function completionsAt(
  { run, path, file }: Asked,
  position: Position,
  features: Features,
): CompletionItem[] {
  const found = run.snapshot.ask?.complete(path, file.lines.offsetAt(position)) ?? [];
  return found
    .filter(({ snippet }) => !snippet || features.snippets)
    .map(
      (each, index): CompletionItem => ({
        label: each.label,
        kind: kinds[each.kind],
        // The order is ours: free pins before those in use.
        sortText: String(index).padStart(4, '0'),
        filterText: each.kind === 'snippet' ? each.label : each.text.replace(/: $/, ''),
        ...(each.detail === '' ? {} : { detail: each.detail }),
        ...(each.about === undefined ? {} : { documentation: toMarkup(each.about, features) }),
        insertTextFormat: each.snippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
        textEdit: { range: rangeOf(file.lines, each), newText: each.text },
      }),
    );
}

const symbolKinds = {
  section: SymbolKind.Namespace,
  part: SymbolKind.Object,
  wire: SymbolKind.Interface,
} as const;

export function symbolsOf({ run, path, file }: Asked): DocumentSymbol[] {
  return path === run.snapshot.build?.file
    ? (run.snapshot.ask?.outline() ?? []).map((each) => toSymbol(each, file.lines))
    : [];
}

function toSymbol({ name, detail, kind, span, nameSpan, children }: Outline, lines: Lines): DocumentSymbol {
  const selectionRange = rangeOf(lines, { ...nameSpan, end: Math.max(nameSpan.start, nameSpan.end) });
  return {
    name: name === '' ? '?' : name,
    detail,
    kind: symbolKinds[kind],
    range: rangeOf(lines, span),
    selectionRange,
    children: children.map((child) => toSymbol(child, lines)),
  };
}

export function foldsOf(asked: Asked): FoldingRange[] {
  return symbolsOf(asked)
    .map(({ range }) => ({ startLine: Math.max(0, range.start.line - 1), endLine: range.end.line }))
    .filter(({ startLine, endLine }) => endLine > startLine);
}

export function referencesAt({ run, path, file }: Asked, position: Position): Location[] {
  const spans = run.snapshot.ask?.references(path, file.lines.offsetAt(position)) ?? [];
  return spans.map((span) => locationOf(span, run)).filter((location) => location !== undefined);
}

export function renameRangeAt({ run, path, file }: Asked, position: Position): Range | null {
  const span = run.snapshot.ask?.renamable(path, file.lines.offsetAt(position));
  return span ? rangeOf(file.lines, span) : null;
}

/** @throws ResponseError with the reason where the name cannot be taken. */
export function renameAt(
  { run, path, file }: Asked,
  position: Position,
  name: string,
  features: Features,
): WorkspaceEdit {
  const edits =
    run.snapshot.ask?.rename(path, file.lines.offsetAt(position), name) ?? 'There is nothing to rename.';
  if (typeof edits === 'string') throw new ResponseError(ErrorCodes.InvalidParams, edits);
  return toWorkspaceEdit(edits, run, features);
}

export function coloursOf({ run, path, file }: Asked): ColorInformation[] {
  if (path !== run.snapshot.build?.file) return [];
  return (run.snapshot.ask?.colours() ?? []).flatMap(({ span, colour }) => {
    const [paint] = wirePaints(colour);
    const part = (from: number) => Number.parseInt(paint?.slice(from, from + 2) ?? '0', 16) / 255;
    const color = { red: part(1), green: part(3), blue: part(5), alpha: 1 };
    return paint === undefined ? [] : [{ range: rangeOf(file.lines, span), color }];
  });
}

export function lensesOf({ run, path, file }: Asked): CodeLens[] {
  if (path !== run.snapshot.build?.file) return [];
  return (run.snapshot.ask?.lenses() ?? []).map(({ span, text }) => ({
    range: rangeOf(file.lines, span),
    command: { title: text, command: '' },
  }));
}

export function hintsOf({ run, path, file }: Asked, range: Range): InlayHint[] {
  const { start, end } = offsetsOf(file.lines, range);
  return (run.snapshot.ask?.hints(path, start, end) ?? []).map(({ span, text }) => ({
    position: file.lines.positionAt(span.end),
    label: text,
    paddingLeft: true,
  }));
}

/** Confirm and change guesses. */
export function guessActionsAt({ run, path, file }: Asked, range: Range, features: Features): CodeAction[] {
  if (path !== run.snapshot.build?.file || !features.codeActions) return [];
  const { start, end } = offsetsOf(file.lines, range);
  return (run.snapshot.ask?.guesses(start, end) ?? []).map(({ title, edits }) => ({
    title,
    kind: CodeActionKind.RefactorRewrite,
    edit: toWorkspaceEdit(edits, run, features),
  }));
}

/** Asks for the pins of a document's sketch: `{ uri }`, answered by a `PinsAnswer`. */
export const PINS_REQUEST = 'wiretrue/pins';

export interface PinsAnswer {
  readonly board: string;
  readonly counts: Readonly<Record<'error' | 'warning' | 'information' | 'hint', number>>;
  readonly pins: readonly (Omit<PinRow, 'place'> & { readonly location?: Location })[];
}

export function pinsOf(run: Run): PinsAnswer | null {
  const { build, ask, findings } = run.snapshot;
  if (build === undefined || ask === undefined) return null;
  const counts = { error: 0, warning: 0, information: 0, hint: 0 };
  for (const { severity } of findings) counts[severity] += 1;
  const pins = ask.pins().map(({ place, ...row }) => {
    const location = place && locationOf(place, run);
    return { ...row, ...(location && { location }) };
  });
  return { board: build.board.title, counts, pins };
}
