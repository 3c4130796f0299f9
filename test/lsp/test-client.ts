/**
 * The other end of the wire: a protocol connection over two in-memory streams, with the server's clock in the test's
 * hands, and an analysis that finds the word BAD, so that what is tested here is the server alone.
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
import type { Analyser, ProjectInput, Snapshot } from '../../server/src/analysis';
import type { Finding, Fix } from '../../server/src/base/finding';
import { createTextReader, listSources, slashed } from '../../server/src/files';
import type { Host } from '../../server/src/lsp/host';
import { startServer } from '../../server/src/lsp/server';
import { uriOfPath } from '../../server/src/lsp/uris';
import type { ParsedFile, SketchParser, TextChange } from '../../server/src/sketch';

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

export interface Ledger {
  /** Inputs of all analyses. */
  readonly inputs: ProjectInput[];
  /** Files parsed from nothing, and files whose tree was re-used. */
  readonly parsed: string[];
  readonly reparsed: string[];
  /** Trees that exist now. */
  trees: number;
  /** Thrown by the next analyses while it is set. */
  fault: Error | undefined;
  /** Rules that throw, as the analysis tells them. */
  ruleFaults: Snapshot['faults'];
}

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

function parserOf(ledger: Ledger): SketchParser {
  const make = (file: string, text: string): ParsedFile => {
    let alive = true;
    ledger.trees += 1;
    // The analysis below reads the text alone.
    const form = {} as ParsedFile['form'];
    const dispose = () => {
      if (!alive) {
        throw new Error(`the tree of ${file} was freed twice`);
      }
      alive = false;
      ledger.trees -= 1;
    };
    return { file, text, form, dispose };
  };
  return {
    engine: 'wasm',
    parse(file, text) {
      ledger.parsed.push(file);
      return make(file, text);
    },
    reparse(previous, text, changes) {
      ledger.reparsed.push(previous.file);
      const replayed = changes.reduce(applyChange, previous.text);
      if (replayed !== text) {
        throw new Error(
          `the changes lead to ${JSON.stringify(replayed)}, the text is ${JSON.stringify(text)}`,
        );
      }
      previous.dispose();
      return make(previous.file, text);
    },
  };
}

function applyChange(text: string, change: TextChange): string {
  return text.slice(0, change.start) + change.text + text.slice(change.end);
}

/** Finds every BAD of the sources and of the manifest. The fix takes it out and notes that in the manifest. */
function analyserOf(ledger: Ledger): Analyser {
  return {
    analyse(input): Snapshot {
      if (ledger.fault !== undefined) {
        throw ledger.fault;
      }
      ledger.inputs.push(input);
      const manifest = input.manifest;
      const files = [...input.sources, ...(manifest === undefined ? [] : [manifest])];
      const found = files.flatMap(({ file, text }) =>
        [...text.matchAll(/BAD(\d*)/g)].map((match) => ({ file, start: match.index, word: match[0] })),
      );
      const findings = found.map(({ file, start, word }): Finding => {
        const span = { file, start, end: start + word.length };
        const related =
          manifest === undefined
            ? []
            : [{ message: 'Declared here', span: { file: manifest.file, start: 0, end: 1 } }];
        return {
          rule: 'bad-word',
          key: `bad-word:${word}`,
          severity: 'warning',
          message: `${word} is bad`,
          span,
          related,
          fixes: fixesOf(word, span, manifest?.file ?? '').map(({ title, trust }) => ({ title, trust })),
        };
      });
      return {
        findings,
        faults: ledger.ruleFaults,
        facts: { uses: [], pinNames: [], problems: [] },
        hover: (file, offset) => {
          const finding = findings.find(
            ({ span }) => span.file === file && span.start <= offset && offset <= span.end,
          );
          return (
            finding && { span: finding.span, markdown: `**${finding.message}**, see \`hardware.jsonc\`` }
          );
        },
        definition: (file) =>
          manifest === undefined
            ? []
            : [
                { file: manifest.file, start: 0, end: 1 },
                { file, start: 0, end: 0 },
              ],
        fixes: (key) =>
          findings
            .filter((finding) => finding.key === key)
            .flatMap(({ span }) => fixesOf(key.slice('bad-word:'.length), span, manifest?.file ?? '')),
      };
    },
  };
}

function fixesOf(word: string, span: Finding['span'], manifest: string): readonly Fix[] {
  return [
    { title: `Solder ${word} anew`, trust: 'ask', edits: [{ ...span, text: 'NEW' }] },
    {
      title: `Take ${word} out`,
      trust: 'safe',
      edits: [
        { ...span, text: '' },
        { file: manifest, start: 0, end: 0, text: `// no ${word}\n` },
      ],
    },
  ];
}
