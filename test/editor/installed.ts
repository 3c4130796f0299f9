/** The package as a user has it: installed into a home of its own, its server a process, its log a file. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { serverEntry } from './setup.mjs';

export const root = join(dirname(fileURLToPath(import.meta.url)), '../..');

/** What the editor is set to, so that nothing but our findings draws or moves. */
const settings = {
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.enableExperiments': false,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'editor.hover.delay': 200,
  'editor.minimap.enabled': false,
  'editor.cursorBlinking': 'solid',
  'extensions.autoUpdate': false,
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'git.enabled': false,
  'telemetry.telemetryLevel': 'off',
  'wiretrue.trace.server': 'messages',
};

/** A home of its own for one sitting, with the package installed the way a user does it. */
export interface Installed {
  readonly home: string;
  /** Folder of the installed extension. */
  readonly extension: string;
  readonly said: string;
}

export const places = (home: string) => [
  ...['--user-data-dir', join(home, 'data')],
  ...['--extensions-dir', join(home, 'extensions')],
];

export const environment = (home: string) => ({
  ...process.env,
  HOME: home,
  XDG_CONFIG_HOME: join(home, 'config'),
  // No shop for extensions: the test talks to this machine alone.
  EXTENSIONS_GALLERY: JSON.stringify({ serviceUrl: '' }),
});

/** Installs the one package that lies in dist/. */
export function installPackage(): Installed {
  const dist = join(root, 'dist');
  const [vsix, ...more] = readdirSync(dist).filter((name) => name.endsWith('.vsix'));
  if (vsix === undefined || more.length > 0) {
    throw new Error('dist/ must hold one package: run "npm run package"');
  }
  const home = mkdtempSync(join(tmpdir(), 'wiretrue-workbench-'));
  mkdirSync(join(home, 'data/User'), { recursive: true });
  writeFileSync(join(home, 'data/User/settings.json'), JSON.stringify(settings, null, 2));
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [serverEntry, ...places(home), '--install-extension', join(dist, vsix)],
    { encoding: 'utf8', env: environment(home) },
  );
  const folder = readdirSync(join(home, 'extensions')).find((name) => name.startsWith('wiretrue.'));
  if (status !== 0 || folder === undefined) {
    throw new Error(`the package cannot be installed: ${stdout}${stderr}`);
  }
  return { home, extension: join(home, 'extensions', folder), said: stdout };
}

/** The process that runs the server out of this sitting's own extensions folder. */
function serverProcess(home: string): number | undefined {
  for (const name of readdirSync('/proc').filter((entry) => /^\d+$/.test(entry))) {
    try {
      const command = readFileSync(`/proc/${name}/cmdline`, 'utf8');
      if (command.includes(home) && command.includes('server/dist/server.js')) {
        return Number(name);
      }
    } catch {
      // It ended while we looked.
    }
  }
  return undefined;
}

/** Ends the server the hard way and waits until it is gone. */
export async function killServer(home: string): Promise<void> {
  let victim: number | undefined;
  for (let attempt = 0; victim === undefined; attempt += 1) {
    if (attempt > 100) {
      throw new Error('no language server is running');
    }
    await sleep(200);
    victim = serverProcess(home);
  }
  process.kill(victim, 'SIGKILL');
  while (serverProcess(home) === victim) {
    await sleep(50);
  }
}

/** The extension's output channel, as the workbench keeps it on disk. */
export function serverLog(home: string): string {
  const logs = join(home, 'data/logs');
  return readdirSync(logs, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\d+-Wiretrue\.log$/.test(path))
    .map((path) => readFileSync(join(logs, path), 'utf8'))
    .join('');
}
