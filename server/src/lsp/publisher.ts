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
  /** The last lists of each folder by path. A header that two sketches share has the findings of both. */
  private readonly listsOf = new Map<string, ReadonlyMap<string, readonly Diagnostic[]>>();

  constructor(
    private readonly send: (params: PublishDiagnosticsParams) => void,
    private readonly open: OpenFiles,
  ) {}

  /** Publishes the lists of one run, and takes back what its folder has no findings for any more. */
  publish(folder: string, lists: ReadonlyMap<string, readonly Diagnostic[]>, run: Run): void {
    const before = this.listsOf.get(folder);
    this.listsOf.set(folder, lists);
    for (const path of lists.keys()) {
      const made = run.files.get(path)?.open;
      const now = this.open.byPath(path);
      if (made?.uri === now?.uri && made?.version === now?.version) {
        this.put(path);
      }
    }
    for (const path of before?.keys() ?? []) {
      if (!lists.has(path)) {
        this.put(path);
      }
    }
  }

  /** Takes back everything that was published for the folder. */
  clear(folder: string): void {
    const before = this.listsOf.get(folder);
    this.listsOf.delete(folder);
    for (const path of before?.keys() ?? []) {
      this.put(path);
      if (![...this.listsOf.values()].some((lists) => lists.has(path))) {
        this.sent.delete(path);
      }
    }
  }

  /** Forgets what the client has of a file: some clients drop a document's findings when it opens or closes. */
  forget(path: string): void {
    this.sent.delete(path);
  }

  private put(path: string): void {
    const all = [...this.listsOf.values()].flatMap((lists) => lists.get(path) ?? []);
    // What both say is said once.
    const list = [...new Map(all.map((each) => [JSON.stringify(each), each])).values()];
    const json = JSON.stringify(list);
    if (this.sent.get(path) === json) {
      return;
    }
    this.sent.set(path, json);
    const open = this.open.byPath(path);
    this.send({
      uri: open?.uri ?? uriOfPath(path),
      ...(open === undefined ? {} : { version: open.version }),
      diagnostics: list,
    });
  }
}
