/**
 * Remembers what the client has, so that a list goes out only where it changed, and sends with each list the version it
 * was made from. A list made from a version that has passed is not sent: the next run, which is scheduled already, sends
 * its own.
 */
import type { Diagnostic, PublishDiagnosticsParams } from 'vscode-languageserver';
import type { OpenFiles, Run } from './project';
import { uriOfPath } from './uris';

export class Publisher {
  /** What the client has: by path, the JSON of its list. */
  private readonly sent = new Map<string, string>();
  /** Files a folder's findings were published for. */
  private readonly filesOf = new Map<string, ReadonlySet<string>>();

  constructor(
    private readonly send: (params: PublishDiagnosticsParams) => void,
    private readonly open: OpenFiles,
  ) {}

  /** Publishes the lists of one run, and takes back what its folder has no findings for any more. */
  publish(folder: string, lists: ReadonlyMap<string, readonly Diagnostic[]>, run: Run): void {
    for (const [path, list] of lists) {
      const made = run.files.get(path)?.open;
      const now = this.open.byPath(path);
      if (made?.uri === now?.uri && made?.version === now?.version) {
        this.put(path, list);
      }
    }
    for (const path of this.filesOf.get(folder) ?? []) {
      if (!lists.has(path)) {
        this.put(path, []);
      }
    }
    this.filesOf.set(folder, new Set(lists.keys()));
  }

  /** Takes back everything that was published for the folder. */
  clear(folder: string): void {
    for (const path of this.filesOf.get(folder) ?? []) {
      this.put(path, []);
      this.sent.delete(path);
    }
    this.filesOf.delete(folder);
  }

  /** Forgets what the client has of a file: some clients drop a document's findings when it opens or closes. */
  forget(path: string): void {
    this.sent.delete(path);
  }

  private put(path: string, list: readonly Diagnostic[]): void {
    const json = JSON.stringify(list);
    if (this.sent.get(path) === json) {
      return;
    }
    this.sent.set(path, json);
    const open = this.open.byPath(path);
    this.send({
      uri: open?.uri ?? uriOfPath(path),
      ...(open === undefined ? {} : { version: open.version }),
      diagnostics: [...list],
    });
  }
}
