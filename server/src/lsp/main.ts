/** How the process starts: over the pipe its parent opened, or over standard input and output. */
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createConnection } from 'vscode-languageserver/node';
import { createHost } from './create-host';
import { startServer } from './server';

/** Serves over standard input and output, until the input ends. */
export function startStdio(): void {
  startServer(createConnection(process.stdin, process.stdout), createHost(programFolder()));
}

/** Serves over what the arguments name: `--stdio`, `--node-ipc`, `--socket=PORT` or `--pipe=NAME`. */
export function startFromArguments(): void {
  const args = process.argv.slice(2);
  if (args.includes('--stdio')) {
    startStdio();
  } else {
    startServer(createConnection(), createHost(programFolder()));
  }
}

function programFolder(): string {
  return dirname(fileURLToPath(import.meta.url));
}
