/**
 * Which message goes where. Every request is caught on its own and answers with nothing where it breaks: a fault in one
 * hover must not cost the others. Requests wait until the parser has loaded.
 */
import {
  CodeActionKind,
  CodeActionTriggerKind,
  type Connection,
  DidChangeWatchedFilesNotification,
  type InitializeParams,
  type InitializeResult,
  PositionEncodingKind,
  ResponseError,
  TextDocumentSyncKind,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { MANIFEST_NAME } from '../files';
import * as answers from './answers';
import { actionPath, codeActionsAt, resolveAction } from './code-actions';
import { diagnosticsOf, locationOf } from './diagnostics';
import {
  DRAFT_REQUEST,
  type DraftAnswer,
  type DraftParams,
  draftActions,
  draftFor,
  resolveDraft,
} from './draft';
import { type Features, readFeatures } from './features';
import { type Host, readStartOptions, type Severities, type StartOptions, severitiesOf } from './host';
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
  let severity: Severities = {};
  let ready: Promise<void> = Promise.resolve();

  connection.onInitialize((params: InitializeParams): InitializeResult => {
    features = readFeatures(params.capabilities);
    options = readStartOptions(params.initializationOptions);
    severity = options.severity ?? {};
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
        referencesProvider: true,
        renameProvider: { prepareProvider: true },
        completionProvider: { triggerCharacters: ['"', '(', '.'] },
        documentSymbolProvider: true,
        foldingRangeProvider: true,
        colorProvider: true,
        codeLensProvider: {},
        inlayHintProvider: true,
        codeActionProvider: {
          codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite],
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
      analyser: { ...analyser, analyse: (input) => analyser.analyse({ ...input, severity }) },
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

  /** A request about a document of a run; `none` where the document is in none. */
  const ask = <T>(what: string, uri: string, none: T, make: (asked: answers.Asked) => T) =>
    answer(what, none, () => {
      const found = projects.runFor(uri);
      const file = found?.run.files.get(found.path);
      return found === undefined || file === undefined ? none : make({ ...found, file });
    });

  connection.onCodeAction((params) =>
    answer('A code action', [], () => {
      const { uri } = params.textDocument;
      const { only, triggerKind } = params.context;
      const found = projects.runFor(uri);
      const file = found?.run.files.get(found.path);
      const fixes = found === undefined ? [] : codeActionsAt(params, found.path, found.run, features);
      // Kinds are a hierarchy, and '' is its root.
      if (only?.every((kind) => kind !== '' && !'refactor.rewrite'.startsWith(kind)) === true) return fixes;
      const asked = triggerKind !== CodeActionTriggerKind.Automatic;
      return [
        ...fixes,
        ...(found && file ? answers.guessActionsAt({ ...found, file }, params.range, features) : []),
        ...draftActions(projects, uri, found?.run, asked, features),
      ];
    }),
  );

  connection.onCodeActionResolve((action) =>
    answer('A fix', action, () => {
      const draft = resolveDraft(projects, action, features);
      if (draft !== undefined) return draft;
      const path = actionPath(action);
      return resolveAction(action, path === undefined ? undefined : projects.runForPath(path)?.run, features);
    }),
  );

  connection.onCompletion(({ textDocument: { uri }, position }) =>
    ask('A completion', uri, [], (asked) => answers.completionsAt(asked, position, features)),
  );
  connection.onDocumentSymbol(({ textDocument: { uri } }) => ask('An outline', uri, [], answers.symbolsOf));
  connection.onFoldingRanges(({ textDocument: { uri } }) => ask('A fold', uri, [], answers.foldsOf));
  connection.onReferences(({ textDocument: { uri }, position }) =>
    ask('A list of references', uri, [], (asked) => answers.referencesAt(asked, position)),
  );
  connection.onPrepareRename(({ textDocument: { uri }, position }) =>
    ask('A rename', uri, null, (asked) => answers.renameRangeAt(asked, position)),
  );
  connection.onRenameRequest(({ textDocument: { uri }, position, newName }) =>
    ask<WorkspaceEdit | null>('A rename', uri, null, (asked) =>
      answers.renameAt(asked, position, newName, features),
    ),
  );
  connection.onDocumentColor(({ textDocument: { uri } }) => ask('A colour', uri, [], answers.coloursOf));
  // A wire's colour is a word of the trade; a picked shade would be none.
  connection.onColorPresentation(() => []);
  connection.onCodeLens(({ textDocument: { uri } }) => ask('A lens', uri, [], answers.lensesOf));
  connection.languages.inlayHint.on(({ textDocument: { uri }, range }) =>
    ask('A hint', uri, [], (asked) => answers.hintsOf(asked, range)),
  );
  connection.onRequest(answers.PINS_REQUEST, ({ uri }: { readonly uri: string }) =>
    ask<answers.PinsAnswer | null>('The list of pins', uri, null, ({ run }) => answers.pinsOf(run)),
  );
  connection.onRequest(DRAFT_REQUEST, (params: DraftParams) =>
    answer<DraftAnswer>('A draft', { ok: false, why: 'The draft broke; the log says why.', boards: [] }, () =>
      draftFor(projects, params, features),
    ),
  );

  connection.onDidChangeConfiguration(({ settings }) => {
    const wished = severitiesOf(settings);
    if (wished !== undefined) {
      severity = wished;
      projects.touchAll();
    }
  });

  connection.onDidChangeWatchedFiles(({ changes }) => projects.changedOnDisk(changes.map(({ uri }) => uri)));

  projects.documents.listen(connection);
  connection.listen();
}
