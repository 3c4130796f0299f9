// From the start of a process to its first findings, beside a process that loads the parser and parses the same sketch.
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { millis, printTable, quantile } from './figures.mjs';

/** One message of the protocol: header and body. */
function frame(message) {
  const body = JSON.stringify({ jsonrpc: '2.0', ...message });
  return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
}

/** Cuts a stream into messages. */
function createReader(onMessage) {
  let waiting = Buffer.alloc(0);
  return (chunk) => {
    waiting = Buffer.concat([waiting, chunk]);
    for (;;) {
      const end = waiting.indexOf('\r\n\r\n');
      const length = Number(
        /Content-Length: (\d+)/i.exec(waiting.toString('latin1', 0, Math.max(0, end)))?.[1],
      );
      if (end < 0 || waiting.length < end + 4 + length) {
        return;
      }
      onMessage(JSON.parse(waiting.toString('utf8', end + 4, end + 4 + length)));
      waiting = waiting.subarray(end + 4 + length);
    }
  };
}

/** Milliseconds from spawn to the first published findings that are not empty. */
function startServer(root, folder) {
  return new Promise((resolve, reject) => {
    const started = performance.now();
    const server = spawn(process.execPath, [join(root, 'server/dist/server.js'), '--stdio'], {
      stdio: ['pipe', 'pipe', 'ignore'],
    });
    const tooLong = setTimeout(() => {
      server.kill();
      reject(new Error('the server published no findings within 30 seconds'));
    }, 30_000);
    const send = (message) => server.stdin.write(frame(message));
    const file = mainOf(folder);
    server.stdout.on(
      'data',
      createReader((message) => {
        if (message.id === 1 && message.method === undefined) {
          send({ method: 'initialized', params: {} });
          const textDocument = {
            uri: pathToFileURL(file).href,
            languageId: 'cpp',
            version: 1,
            text: readFileSync(file, 'utf8'),
          };
          send({ method: 'textDocument/didOpen', params: { textDocument } });
        } else if (message.method !== undefined && message.id !== undefined) {
          send({ id: message.id, result: null });
        } else if (
          message.method === 'textDocument/publishDiagnostics' &&
          message.params.diagnostics.length > 0
        ) {
          clearTimeout(tooLong);
          const took = performance.now() - started;
          server.kill();
          resolve(took);
        }
      }),
    );
    server.on('error', reject);
    send({
      id: 1,
      method: 'initialize',
      params: {
        processId: process.pid,
        rootUri: pathToFileURL(folder).href,
        workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'build' }],
        capabilities: {},
      },
    });
  });
}

function mainOf(folder) {
  return join(folder, `${folder.split(/[\\/]/).at(-1)}.ino`);
}

function timeProcess(args, expected) {
  const started = performance.now();
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  const took = performance.now() - started;
  if (!expected.includes(status)) {
    throw new Error(`${args.join(' ')} ended with ${status}: ${stderr}`);
  }
  return took;
}

/** Prints the table of cold starts. */
export async function benchColdStart(root, { short }) {
  const folder = join(root, 'hardware-schemas/examples/harbour-faulty');
  const sketch = mainOf(folder);
  const aside = mkdtempSync(join(tmpdir(), 'bench-'));
  const bareProgram = join(aside, 'bare.cjs');
  writeFileSync(
    bareProgram,
    `const { createRequire } = require('node:module');
const load = createRequire(${JSON.stringify(join(root, 'package.json'))});
const Parser = load('tree-sitter');
const parser = new Parser();
parser.setLanguage(load('tree-sitter-cpp'));
parser.parse(require('node:fs').readFileSync(${JSON.stringify(sketch)}, 'utf8'));
`,
  );
  const runs = short ? 5 : 15;
  const times = { empty: [], bare: [], check: [], server: [] };
  try {
    for (let run = 0; run < runs; run += 1) {
      times.empty.push(timeProcess(['-e', '0'], [0]));
      times.bare.push(timeProcess([bareProgram], [0]));
      times.check.push(timeProcess([join(root, 'server/dist/cli.js'), 'check', folder], [1]));
      times.server.push(await startServer(root, folder));
    }
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
  console.log(`\ncold start on the faulty harbour model, milliseconds (${runs} runs each)`);
  printTable(
    ['process', 'median', 'worst'],
    [
      ['Node.js alone', times.empty],
      ['bare parse', times.bare],
      ['wiretrue check', times.check],
      ['server to first findings', times.server],
    ].map(([name, each]) => [name, millis(quantile(each, 0.5)), millis(Math.max(...each))]),
  );
}
