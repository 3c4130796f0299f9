#!/usr/bin/env node
/** The entry of the bundle `cli.js`: ties the program to this process, and is the file that its threads run. */
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { isMainThread } from 'node:worker_threads';
import { runAsWorker } from './check/worker';
import { PLAIN } from './print/paint';
import { run } from './run';

if (isMainThread) {
  runAsProgram();
} else {
  void runAsWorker();
}

function runAsProgram(): void {
  // A reader that has seen enough closes the pipe; that is no fault.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') {
      process.exit();
    }
    throw error;
  });
  const terminal = process.stdout.isTTY === true;
  const { NO_COLOR, TERM } = process.env;
  run(process.argv.slice(2), {
    base: process.cwd(),
    home: __dirname,
    worker: __filename,
    style: {
      colours: terminal && (NO_COLOR ?? '') === '' && TERM !== 'dumb',
      columns: terminal ? process.stdout.columns : PLAIN.columns,
    },
    errorTerminal: process.stderr.isTTY === true,
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    // The server is a bundle of its own beside this one, so that a check does not load the protocol.
    serve: () => void createRequire(__filename)(join(__dirname, 'server.js')),
    interrupted: () =>
      new Promise((resolve) => {
        for (const signal of ['SIGINT', 'SIGTERM'] as const) {
          process.once(signal, () => resolve());
        }
      }),
  }).then(
    (code) => {
      // Not process.exit: a pipe may still hold output.
      if (code !== undefined) {
        process.exitCode = code;
      }
    },
    (error: unknown) => {
      process.stderr.write(`wiretrue: ${error instanceof Error ? error.message : String(error)}\n`);
      process.exitCode = 2;
    },
  );
}
