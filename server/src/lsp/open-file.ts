/**
 * One version of an open document. Objects of this class never change, so what an analysis saw stays what it was while
 * the editor types on. All versions between open and close share one journal: the changes since the last parse, which
 * lets the parser re-use the old tree.
 */
import type { TextDocumentContentChangeEvent } from 'vscode-languageserver';
import type { TextChange } from '../sketch';
import { type Lines, linesOf, offsetsOf } from './places';
import { pathOfUri } from './uris';

export class OpenFile {
  /** Path with forward slashes; undefined for a document that is no file. */
  readonly path: string | undefined;
  readonly lines: Lines;

  private constructor(
    /** As the client writes it. */
    readonly uri: string,
    readonly version: number,
    readonly text: string,
    readonly journal: Journal,
  ) {
    this.path = pathOfUri(uri);
    this.lines = linesOf(text);
  }

  static open(uri: string, _languageId: string, version: number, text: string): OpenFile {
    return new OpenFile(uri, version, text, new Journal());
  }

  static update(
    before: OpenFile,
    changes: readonly TextDocumentContentChangeEvent[],
    version: number,
  ): OpenFile {
    let { text, lines } = before;
    for (const change of changes) {
      if ('range' in change) {
        const { start, end } = offsetsOf(lines, change.range);
        before.journal.add({ start, end, text: change.text });
        text = text.slice(0, start) + change.text + text.slice(end);
      } else {
        before.journal.forget();
        text = change.text;
      }
      lines = linesOf(text);
    }
    return new OpenFile(before.uri, version, text, before.journal);
  }
}

/** Changes since the last parse, or the knowledge that they are not known. */
export class Journal {
  private changes: TextChange[] = [];
  private known = false;

  add(change: TextChange): void {
    if (this.known) {
      this.changes.push(change);
    }
  }

  /** The text was replaced as a whole: the next parse starts from nothing. */
  forget(): void {
    this.changes = [];
    this.known = false;
  }

  /** The changes since the last call, in sequence; undefined where the next parse has to start from nothing. */
  take(): readonly TextChange[] | undefined {
    const changes = this.known ? this.changes : undefined;
    this.changes = [];
    this.known = true;
    return changes;
  }
}
