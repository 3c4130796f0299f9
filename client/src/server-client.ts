/**
 * The language server's life: start, restart, and a clear word where it cannot be kept alive. The library under this
 * would restart a dying server in silence and then give up with a message that offers nothing to do.
 */
import * as vscode from 'vscode';
import {
  CloseAction,
  type DocumentSelector,
  ErrorAction,
  LanguageClient,
  RevealOutputChannelOn,
  TransportKind,
  type WorkspaceEdit,
} from 'vscode-languageclient/node';
import { DeathCount } from './death-count';

/**
 * Each run of the analysis leaves some megabytes of short-lived objects behind. The engine's own bound for those would let
 * the server grow past 200 MB over an hour's typing; with this one it stays at 140 to 170 MB.
 */
const memory = '--max-semi-space-size=4';

/** By pattern too: an editor may know `.ino` or `.jsonc` under another language, or under none. */
const documentSelector: DocumentSelector = [
  { scheme: 'file', language: 'cpp' },
  { scheme: 'file', language: 'c' },
  { scheme: 'file', pattern: '**/*.ino' },
  { scheme: 'file', pattern: '**/hardware.jsonc' },
];

/** Writes its errors into the log alone: the library's own pop-ups would come beside ours, and offer no way on. */
class QuietClient extends LanguageClient {
  override error(message: string, data?: unknown): void {
    super.error(message, data, false);
  }
}

export class ServerClient {
  private readonly channel = vscode.window.createOutputChannel('Wiretrue');
  private readonly deaths = new DeathCount();
  private client: LanguageClient | undefined;
  /** Ends the start that is under way; the library's own promise stays open where the server dies meanwhile. */
  private failStart: ((reason: Error) => void) | undefined;

  constructor(private readonly context: vscode.ExtensionContext) {
    context.subscriptions.push(this.channel);
  }

  /** Starts the server; where it does not start, says so with the ways on. Never rejects. */
  async start(): Promise<void> {
    const client = this.createClient();
    this.client = client;
    const death = new Promise<never>((_, reject) => {
      this.failStart = reject;
    });
    try {
      await Promise.race([client.start(), death]);
    } catch (error) {
      this.channel.appendLine(error instanceof Error ? (error.stack ?? error.message) : String(error));
      this.offer('Wiretrue could not start its language server, so nothing is being checked.');
    } finally {
      this.failStart = undefined;
    }
  }

  async stop(): Promise<void> {
    const { client } = this;
    this.client = undefined;
    if (client?.needsStop() === true) {
      try {
        await client.stop();
      } catch (error) {
        // A server that hangs or has died cannot say goodbye; the library ends its process.
        this.channel.appendLine(`The server did not stop in good order: ${String(error)}`);
      }
    }
  }

  async restart(): Promise<void> {
    await this.stop();
    this.deaths.forget();
    await this.start();
  }

  /** Asks the server; undefined where it does not run or fails, which the log says. */
  async request<T>(method: string, params: unknown): Promise<T | undefined> {
    if (this.client?.isRunning() !== true) {
      return undefined;
    }
    try {
      return await this.client.sendRequest<T>(method, params);
    } catch (error) {
      this.channel.appendLine(`${method} failed: ${String(error)}`);
      return undefined;
    }
  }

  /** An edit as the server writes it, as the editor's own. */
  async toEdit(edit: unknown): Promise<vscode.WorkspaceEdit | undefined> {
    return this.client?.protocol2CodeConverter.asWorkspaceEdit(edit as WorkspaceEdit);
  }

  showLog(): void {
    this.channel.show(true);
  }

  private createClient(): LanguageClient {
    const module = this.context.asAbsolutePath('server/dist/server.js');
    return new QuietClient(
      'wiretrue',
      'Wiretrue',
      {
        run: { module, transport: TransportKind.ipc, options: { execArgv: [memory] } },
        debug: {
          module,
          transport: TransportKind.ipc,
          options: { execArgv: [memory, '--nolazy', '--inspect=6009'] },
        },
      },
      {
        documentSelector,
        outputChannel: this.channel,
        initializationOptions: {
          severity: vscode.workspace.getConfiguration('wiretrue').get('severity', {}),
        },
        synchronize: { configurationSection: 'wiretrue' },
        middleware: {
          provideInlayHints: (document, range, token, next) =>
            vscode.workspace.getConfiguration('wiretrue', document).get('inlayHints.enabled', true)
              ? next(document, range, token)
              : [],
        },
        revealOutputChannelOn: RevealOutputChannelOn.Never,
        // Its message would come beside ours.
        initializationFailedHandler: () => false,
        errorHandler: {
          error: () => ({ action: ErrorAction.Continue, handled: true }),
          closed: () => this.onDeath(),
        },
      },
    );
  }

  private onDeath() {
    if (this.failStart !== undefined) {
      this.failStart(new Error('The server ended while it was starting.'));
      return { action: CloseAction.DoNotRestart, handled: true };
    }
    if (this.deaths.add(Date.now())) {
      this.channel.appendLine('The server has ended and is started again.');
      return { action: CloseAction.Restart, handled: true };
    }
    this.offer('The language server of Wiretrue keeps ending, so nothing is being checked.');
    return { action: CloseAction.DoNotRestart, handled: true };
  }

  private offer(message: string): void {
    const restart = 'Restart';
    const showLog = 'Show log';
    vscode.window.showErrorMessage(message, restart, showLog).then((choice) => {
      if (choice === restart) {
        void this.restart();
      } else if (choice === showLog) {
        this.showLog();
      }
    });
  }
}
