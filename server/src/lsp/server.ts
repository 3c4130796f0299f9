/**
 * Which message goes where. Every request is caught on its own and answers with nothing where it breaks: a fault in one
 * hover must not cost the others. Requests wait until the parser has loaded.
 */
import {
  CodeActionKind,
  type Connection,
  DidChangeWatchedFilesNotification,
  type InitializeParams,
  type InitializeResult,
  PositionEncodingKind,
  ResponseError,
  TextDocumentSyncKind,
} from 'vscode-languageserver';
import { MANIFEST_NAME } from '../files';
import { actionPath, codeActionsAt, resolveAction } from './code-actions';
import { diagnosticsOf, locationOf } from './diagnostics';
import { type Features, readFeatures } from './features';
import { type Host, readStartOptions, type StartOptions } from './host';
import { toMarkup } from './markup';
import { rangeOf } from './places';
import { explain, type Log, Projects } from './projects';
import { Publisher } from './publisher';

/** What a client that watches files is asked to watch. Board files of the user's own may have any name. */
const WATCHED: readonly string[] = [`**/${MANIFEST_NAME}`, '**/*.{ino,cpp,c,h,hpp}', '**/*.json'];

/** Serves one client until the connection ends. Works over any pair of streams. */
export function startServer(connection: Connection, host: Host): void {
  const log: Log = {
    info: (text) => connection.console.info(text),
    error: (text) => connection.console.error(text),
  };
  const projects = new Projects(host, log);
  let features: Features = readFeatures({});
  let options: StartOptions = {};
  let ready: Promise<void> = Promise.resolve();

  connection.onInitialize((params: InitializeParams): InitializeResult => {
    features = readFeatures(params.capabilities);
    options = readStartOptions(params.initializationOptions);
    projects.setRoots(
      params.workspaceFolders?.map(({ uri }) => uri) ?? [params.rootUri ?? ''].filter(Boolean),
    );
    ready = start().catch((error: unknown) => {
      log.error(`The server cannot check anything. ${explain(error)}`);
      connection.window.showErrorMessage(
        `Wiretrue cannot check anything: ${error instanceof Error ? error.message : String(error)}`,
      );
    });
    return {
      serverInfo: { name: 'wiretrue' },
      capabilities: {
        positionEncoding: PositionEncodingKind.UTF16,
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
        hoverProvider: true,
        definitionProvider: true,
        codeActionProvider: {
          codeActionKinds: [CodeActionKind.QuickFix],
          resolveProvider: features.lateEdits,
        },
      },
    };
  });

  async function start(): Promise<void> {
    const parser = await host.createParser(log.info);
    const analyser = host.createAnalyser(options, projects.readText);
    log.info(`Checking with the ${parser.engine} parser.`);
    projects.start({
      parser,
      analyser,
      publisher: new Publisher((params) => {
        connection.sendDiagnostics(params).catch((error: unknown) => log.error(explain(error)));
      }, projects),
      diagnosticsOf: (run) => diagnosticsOf(run, features, options.rulePages),
    });
  }

  connection.onInitialized(() => {
    if (features.watchesFiles) {
      connection.client
        .register(DidChangeWatchedFilesNotification.type, {
          watchers: WATCHED.map((globPattern) => ({ globPattern })),
        })
        .catch((error: unknown) => log.error(`Files are not watched. ${explain(error)}`));
    }
  });

  /** Answers a request once everything has loaded; one that breaks is logged and answers `none`. */
  async function answer<T>(what: string, none: T, make: () => T): Promise<T> {
    await ready;
    try {
      return make();
    } catch (error) {
      if (error instanceof ResponseError) {
        throw error;
      }
      log.error(`${what} broke. ${explain(error)}`);
      return none;
    }
  }

  connection.onHover(({ textDocument, position }) =>
    answer('A hover', null, () => {
      const found = projects.runFor(textDocument.uri);
      const file = found?.run.files.get(found.path);
      if (found === undefined || file === undefined) {
        return null;
      }
      const hover = found.run.snapshot.hover(found.path, file.lines.offsetAt(position));
      return hover === undefined
        ? null
        : { contents: toMarkup(hover.markdown, features), range: rangeOf(file.lines, hover.span) };
    }),
  );

  connection.onDefinition(({ textDocument, position }) =>
    answer('A definition', [], () => {
      const found = projects.runFor(textDocument.uri);
      const file = found?.run.files.get(found.path);
      if (found === undefined || file === undefined) {
        return [];
      }
      const { run, path } = found;
      return run.snapshot
        .definition(path, file.lines.offsetAt(position))
        .map((span) => locationOf(span, run))
        .filter((location) => location !== undefined);
    }),
  );

  connection.onCodeAction((params) =>
    answer('A code action', [], () => {
      const found = projects.runFor(params.textDocument.uri);
      return found === undefined ? [] : codeActionsAt(params, found.path, found.run, features);
    }),
  );

  connection.onCodeActionResolve((action) =>
    answer('A fix', action, () => {
      const path = actionPath(action);
      return resolveAction(action, path === undefined ? undefined : projects.runForPath(path)?.run, features);
    }),
  );

  connection.onDidChangeWatchedFiles(({ changes }) => projects.changedOnDisk(changes.map(({ uri }) => uri)));

  projects.documents.listen(connection);
  connection.listen();
}
