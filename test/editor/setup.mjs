// Makes the workbench that the editor test drives, from packages alone: npm's packages of a VS Code server and of a
// browser driver; the browser is the system's. Native parts are compiled here, and only those that are needed. It does
// its work once: run it again and it sees that everything is there.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const folder = dirname(fileURLToPath(import.meta.url));
const server = join(folder, 'node_modules/code-server');
const workbench = join(server, 'lib/vscode');
const marker = join(folder, '.cache/ready.json');

/** Starts the workbench's server; undefined in `present` where it is not set up. */
export const serverEntry = join(server, 'out/node/entry.js');

/** @returns {boolean} True where the set-up is complete and belongs to the present package.json and Node. */
export function isReady() {
  return existsSync(marker) && existsSync(serverEntry) && readFileSync(marker, 'utf8') === wanted();
}

export function setUp() {
  if (isReady()) return;
  rmSync(marker, { force: true });
  const quiet = ['--no-audit', '--no-fund'];
  npm(folder, ['ci', '--ignore-scripts', ...quiet]);
  npm(workbench, ['install', '--omit=dev', '--ignore-scripts', '--no-package-lock', ...quiet]);
  // Its install scripts would build far more than a server without desktop needs, and fetch what npm does not have.
  npm(workbench, ['rebuild', 'node-pty', '@vscode/spdlog', 'native-watchdog']);
  npm(folder, ['rebuild', 'argon2']);
  const archive = join(workbench, 'node_modules.asar');
  if (!existsSync(archive)) symlinkSync('node_modules', archive);
  const { status, stdout, stderr } = spawnSync(process.execPath, [serverEntry, '--version'], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`the workbench does not start: ${stdout}${stderr}`);
  mkdirSync(dirname(marker), { recursive: true });
  writeFileSync(marker, wanted());
}

/** What the cached set-up has to match. */
function wanted() {
  const { dependencies } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  return JSON.stringify({ dependencies, node: process.version });
}

function npm(cwd, args) {
  console.log(`npm ${args.join(' ')}`);
  const { status, error } = spawnSync('npm', args, { cwd, stdio: ['ignore', 'inherit', 'inherit'] });
  if (status !== 0) throw new Error(`npm ${args[0]} ended with ${status ?? error} in ${cwd}`);
}

if (process.argv[1] !== undefined && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  setUp();
}
