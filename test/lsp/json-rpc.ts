/**
 * The built server as a process, talked to in raw JSON-RPC over its standard input and output: no protocol library on
 * this side, so that what goes over the wire is what the specification says and not what one library makes of it.
 */
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Diagnostic, PublishDiagnosticsParams } from 'vscode-languageserver/node';

export const root = fileURLToPath(new URL('../..', import.meta.url));
const serverPath = join(root, 'server/dist/server.js');

interface Message {
  readonly id?: number | string;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string };
}

export class RawServer {
  readonly published = new Map<string, PublishDiagnosticsParams>();
  readonly logged: string[] = [];
  /** Everything written to standard error. */
  complaints = '';
  exit: { readonly code: number | null } | undefined;
  private readonly process: ChildProcessWithoutNullStreams;
  private readonly answers = new Map<number, (message: Message) => void>();
  private readonly listeners = new Set<() => void>();
  private waiting = Buffer.alloc(0);
  private lastId = 0;

  constructor(program: string = serverPath, args: readonly string[] = ['--stdio']) {
    if (!existsSync(program)) {
      throw new Error(`${program} is missing: run "npm run build" first`);
    }
    this.process = spawn(process.execPath, [program, ...args], { stdio: 'pipe' });
    this.process.stdout.on('data', (data: Buffer) => this.receive(data));
    this.process.stderr.on('data', (data: Buffer) => {
      this.complaints += data.toString();
    });
    this.process.on('exit', (code) => {
      this.exit = { code };
      for (const give of this.answers.values()) {
        give({ error: { code: 0, message: `the server ended with ${code}\n${this.complaints}` } });
      }
      this.wake();
    });
    // Writing to a server that has ended must fail the test where it waits, not here.
    this.process.stdin.on('error', () => undefined);
  }

  request<T>(method: string, params: unknown): Promise<T> {
    this.lastId += 1;
    const id = this.lastId;
    return new Promise((resolve, reject) => {
      const give = (message: Message) => {
        if (message.error !== undefined) {
          reject(new Error(`${method}: ${message.error.code} ${message.error.message}`));
        } else {
          resolve(message.result as T);
        }
      };
      this.answers.set(id, give);
      this.send({ id, method, params });
    });
  }

  notify(method: string, params: unknown): void {
    this.send({ method, params });
  }

  async initialize(capabilities: object = {}): Promise<unknown> {
    const result = await this.request('initialize', { processId: process.pid, rootUri: null, capabilities });
    this.notify('initialized', {});
    return result;
  }

  open(uri: string, text: string, version = 1): void {
    this.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'cpp', version, text } });
  }

  /** Waits until `found` gives something; it is asked again after every message. */
  async until<T>(found: () => T | undefined, what: string): Promise<T> {
    for (;;) {
      const value = found();
      if (value !== undefined) {
        return value;
      }
      if (this.exit !== undefined) {
        throw new Error(
          `the server ended with ${this.exit.code} while waiting for ${what}\n${this.complaints}`,
        );
      }
      await new Promise<void>((resolve) => this.listeners.add(resolve));
    }
  }

  /**
   * What the client has of a document once everything sent so far is analysed: a request is answered behind the
   * findings of the text it is asked about. Undefined where nothing was ever published.
   */
  async findings(uri: string): Promise<readonly Diagnostic[] | undefined> {
    await this.request('textDocument/hover', { textDocument: { uri }, position: { line: 0, character: 0 } });
    return this.published.get(uri)?.diagnostics;
  }

  /** Ends the server as the specification says, and gives its exit code. */
  async stop(): Promise<number | null> {
    await this.request('shutdown', null);
    this.notify('exit', null);
    return this.until(() => this.exit, 'its end').then(
      ({ code }) => code,
      () => this.exit?.code ?? null,
    );
  }

  kill(): void {
    this.process.kill('SIGKILL');
  }

  /** Closes the server's input without a word, as an editor does that crashes. */
  hangUp(): void {
    this.process.stdin.end();
  }

  private send(message: object): void {
    const body = Buffer.from(JSON.stringify({ jsonrpc: '2.0', ...message }));
    this.process.stdin.write(`Content-Length: ${body.length}\r\n\r\n`);
    this.process.stdin.write(body);
  }

  private receive(data: Buffer): void {
    this.waiting = Buffer.concat([this.waiting, data]);
    for (;;) {
      const head = this.waiting.indexOf('\r\n\r\n');
      const length = /Content-Length: (\d+)/i.exec(this.waiting.toString('latin1', 0, Math.max(0, head)));
      const end = head + 4 + Number(length?.[1] ?? 0);
      if (head < 0 || length === null || this.waiting.length < end) {
        return;
      }
      const message = JSON.parse(this.waiting.toString('utf8', head + 4, end)) as Message;
      this.waiting = this.waiting.subarray(end);
      this.handle(message);
    }
  }

  private handle(message: Message): void {
    if (message.method === 'textDocument/publishDiagnostics') {
      const params = message.params as PublishDiagnosticsParams;
      this.published.set(params.uri, params);
    } else if (message.method === 'window/logMessage') {
      this.logged.push((message.params as { readonly message: string }).message);
    } else if (message.method !== undefined && message.id !== undefined) {
      this.send({ id: message.id, result: null });
    } else if (typeof message.id === 'number') {
      this.answers.get(message.id)?.(message);
      this.answers.delete(message.id);
    }
    this.wake();
  }

  private wake(): void {
    const listeners = [...this.listeners];
    this.listeners.clear();
    for (const listener of listeners) {
      listener();
    }
  }
}
