/**
 * The other end of the wire: a protocol connection over two in-memory streams, with the server's clock in the test's
 * hands, and with a recorded parser and analysis, so that what is tested is the server alone.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import {
  type ClientCapabilities,
  createConnection,
  createProtocolConnection,
  type InitializeResult,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
  type TextDocumentContentChangeEvent,
} from 'vscode-languageserver/node';
import { createTextReader, listSources, slashed } from '../../server/src/files';
import type { Host } from '../../server/src/lsp/host';
import { startServer } from '../../server/src/lsp/server';
import { uriOfPath } from '../../server/src/lsp/uris';
import { analyserOf, type Ledger, parserOf } from './recorded-analysis';

/** Every capability the server looks for. */
export const able: ClientCapabilities = {
  textDocument: {
    publishDiagnostics: { relatedInformation: true, codeDescriptionSupport: true, dataSupport: true },
    codeAction: {
      codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } },
      dataSupport: true,
      isPreferredSupport: true,
      resolveSupport: { properties: ['edit'] },
    },
    hover: { contentFormat: ['markdown', 'plaintext'] },
  },
  workspace: {
    workspaceEdit: { documentChanges: true },
    didChangeWatchedFiles: { dynamicRegistration: true },
  },
};

/** A change that puts `text` between two characters. */
export const insert = (line: number, character: number, text: string) => ({
  range: { start: { line, character }, end: { line, character } },
  text,
});

export interface TestClient {
  readonly folder: string;
  readonly connection: ProtocolConnection;
  readonly ledger: Ledger;
  readonly published: PublishDiagnosticsParams[];
  readonly logged: string[];
  readonly registered: unknown[];
  readonly initialized: InitializeResult;
  uri(name: string): string;
  write(name: string, text: string): void;
  open(name: string, text: string, version?: number): Promise<void>;
  change(name: string, version: number, changes: TextDocumentContentChangeEvent[]): Promise<void>;
  close(name: string): Promise<void>;
  /** Waits until the server has read everything sent so far. */
  settle(): Promise<void>;
  /** Lets the server's clock run: the jobs it put off, now. Waits until what they send has arrived. */
  tick(): Promise<void>;
  /** Jobs the server has put off. */
  waiting(): number;
  /** The last list published for a file, as messages. */
  shown(name: string): string[] | undefined;
  dispose(): void;
}

export async function connect(
  capabilities: ClientCapabilities,
  initializationOptions?: unknown,
  /** Workspace folders, given the client's own folder. */
  workspace: (folder: string) => readonly string[] = () => [],
): Promise<TestClient> {
  const folder = slashed(mkdtempSync(join(tmpdir(), 'wiretrue lsp ä-')));
  const toServer = new PassThrough();
  const toClient = new PassThrough();
  const jobs: (() => void)[] = [];
  const ledger: Ledger = { inputs: [], parsed: [], reparsed: [], trees: 0, fault: undefined, ruleFaults: [] };
  startServer(
    createConnection(new StreamMessageReader(toServer), new StreamMessageWriter(toClient)),
    hostOf(jobs, ledger),
  );
  const connection = createProtocolConnection(
    new StreamMessageReader(toClient),
    new StreamMessageWriter(toServer),
  );
  const published: PublishDiagnosticsParams[] = [];
  const logged: string[] = [];
  const registered: unknown[] = [];
  connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
    published.push(params);
  });
  connection.onNotification('window/logMessage', ({ message }: { message: string }) => {
    logged.push(message);
  });
  connection.onRequest('client/registerCapability', (params) => {
    registered.push(params);
    return null;
  });
  connection.listen();
  const initialized: InitializeResult = await connection.sendRequest('initialize', {
    processId: null,
    rootUri: null,
    workspaceFolders: workspace(folder).map((path) => ({ uri: uriOfPath(path), name: 'workspace' })),
    capabilities,
    initializationOptions,
  });
  await connection.sendNotification('initialized', {});

  const uri = (name: string) => uriOfPath(`${folder}/${name}`);
  // A request is answered behind everything sent before it; this one asks about a document nobody opened.
  const settle = async () => {
    await connection.sendRequest('textDocument/hover', {
      textDocument: { uri: 'untitled:nothing' },
      position: { line: 0, character: 0 },
    });
  };
  return {
    folder,
    connection,
    ledger,
    published,
    logged,
    registered,
    initialized,
    uri,
    write: (name, text) => writeFileSync(join(folder, name), text),
    open: (name, text, version = 1) =>
      connection.sendNotification('textDocument/didOpen', {
        textDocument: { uri: uri(name), languageId: 'cpp', version, text },
      }),
    change: (name, version, contentChanges) =>
      connection.sendNotification('textDocument/didChange', {
        textDocument: { uri: uri(name), version },
        contentChanges,
      }),
    close: (name) =>
      connection.sendNotification('textDocument/didClose', { textDocument: { uri: uri(name) } }),
    settle,
    tick: async () => {
      await settle();
      for (const job of jobs.splice(0)) {
        job();
      }
      await settle();
    },
    waiting: () => jobs.length,
    shown: (name) =>
      published
        .filter((params) => params.uri === uri(name))
        .at(-1)
        ?.diagnostics.map(({ message }) => message),
    dispose: () => {
      connection.dispose();
      rmSync(folder, { recursive: true });
    },
  };
}

function hostOf(jobs: (() => void)[], ledger: Ledger): Host {
  return {
    later: (job) => void jobs.push(job),
    reader: createTextReader(),
    listSources,
    createParser: async () => parserOf(ledger),
    createAnalyser: () => analyserOf(ledger),
  };
}
