/**
 * The real workbench in a real browser: a VS Code server on a free local port with the packed extension installed, and
 * Chromium on it. Everything is done as a person does it: keys, mouse, eyes on what the page shows.
 */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Locator, type Page } from 'playwright-core';
import { serverEntry } from './setup.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const pictures = join(root, '.test-output/editor');

export const chromiumPath = '/usr/bin/chromium';

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

export interface Workbench {
  readonly page: Page;
  /** Opens a file of the folder by name and waits for its text. */
  open(name: string): Promise<void>;
  /** Underlined places of the active editor: errors and warnings. */
  squiggles(): Locator;
  /** Rests the mouse on the middle of a place and waits for what the editor says there. */
  hover(place: Locator): Promise<string>;
  /** Puts the cursor on a line, counted from 1, and at a column. */
  goTo(line: number, column: number): Promise<void>;
  /** Opens the quick fixes at the cursor, takes the one whose title matches, and gives all titles. */
  fix(title: RegExp, picture: string): Promise<readonly string[]>;
  picture(name: string): Promise<void>;
  /** Everything the workbench's server and the page's console have said. */
  log(): string;
  stop(): Promise<void>;
}

/** Installs the package anew and opens `folder` in the workbench. */
export async function startWorkbench(vsix: string, folder: string): Promise<Workbench> {
  const home = mkdtempSync(join(tmpdir(), 'wiretrue-workbench-'));
  mkdirSync(join(home, 'data/User'), { recursive: true });
  writeFileSync(join(home, 'data/User/settings.json'), JSON.stringify(settings, null, 2));
  const places = ['--user-data-dir', join(home, 'data'), '--extensions-dir', join(home, 'extensions')];
  const environment = {
    ...process.env,
    HOME: home,
    XDG_CONFIG_HOME: join(home, 'config'),
    // No shop for extensions: the test talks to this machine alone.
    EXTENSIONS_GALLERY: JSON.stringify({ serviceUrl: '' }),
  };
  const installed = spawnSync(process.execPath, [serverEntry, ...places, '--install-extension', vsix], {
    encoding: 'utf8',
    env: environment,
  });
  if (installed.status !== 0) {
    throw new Error(`the package cannot be installed: ${installed.stdout}${installed.stderr}`);
  }
  const said: string[] = [installed.stdout];
  const port = await freePort();
  const server = spawn(
    process.execPath,
    [
      serverEntry,
      ...places,
      ...['--auth', 'none', '--bind-addr', `127.0.0.1:${port}`],
      ...['--disable-telemetry', '--disable-update-check', '--disable-workspace-trust'],
    ],
    { env: environment, stdio: ['ignore', 'pipe', 'pipe'] },
  );
  for (const stream of [server.stdout, server.stderr]) {
    stream.on('data', (data) => said.push(String(data)));
  }
  const browser = await chromium.launch({
    executablePath: chromiumPath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
    ],
  });
  const stop = async () => {
    await browser.close();
    await end(server);
    rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  };
  try {
    const page = await openPage(
      browser,
      `http://127.0.0.1:${port}/?folder=${encodeURIComponent(folder)}`,
      said,
    );
    return { page, stop, log: () => said.join(''), ...hands(page) };
  } catch (error) {
    await stop();
    throw new Error(`${String(error)}\n${said.join('')}`);
  }
}

async function openPage(browser: Browser, address: string, said: string[]): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1400, height: 900 } });
  page.on('console', (message) => said.push(`[page] ${message.text()}\n`));
  // The server says when it listens; asking until it answers needs no guess about its words.
  for (let attempt = 0; ; attempt += 1) {
    try {
      await page.goto(address);
      break;
    } catch (error) {
      if (attempt >= 60) {
        throw error;
      }
      await page.waitForTimeout(500);
    }
  }
  await page.locator('.monaco-workbench .explorer-folders-view').waitFor({ timeout: 60_000 });
  return page;
}

function hands(page: Page) {
  const take = async (name: string) => {
    mkdirSync(pictures, { recursive: true });
    await page.screenshot({ path: join(pictures, `${name}.png`) });
  };
  const editor = page.locator('.editor-group-container.active .monaco-editor').first();
  return {
    async open(name: string) {
      await page.keyboard.press('Control+P');
      await page.locator('.quick-input-widget input').first().fill(name);
      await page.locator('.quick-input-list .monaco-list-row', { hasText: name }).first().click();
      await page.locator('.tab.active', { hasText: name }).waitFor();
      await editor.locator('.view-line').first().waitFor();
    },
    squiggles: () => editor.locator('.squiggly-error, .squiggly-warning'),
    async hover(place: Locator) {
      const box = await place.boundingBox();
      if (box === null) {
        throw new Error('the place is not on the page');
      }
      const shown = page.locator('.monaco-resizable-hover .monaco-hover');
      // The text lies over the underlining, so the mouse goes by coordinates, and moves: a jump is no hover.
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2 - 3, { steps: 5 });
      await shown.waitFor();
      await shown.getByText('Loading...').waitFor({ state: 'hidden' });
      return (await shown.allInnerTexts()).join('\n').trim();
    },
    async goTo(line: number, column: number) {
      await page.keyboard.press('Control+G');
      await page.locator('.quick-input-widget input').first().fill(`:${line}:${column}`);
      await page.keyboard.press('Enter');
    },
    async fix(title: RegExp, picture: string) {
      await page.keyboard.press('Control+.');
      const rows = page.locator('.action-widget .monaco-list-row.action');
      await rows.first().waitFor();
      const titles = await rows.allInnerTexts();
      await take(picture);
      // By keys: a shield lies over the list against clicks that were meant for what it covers.
      for (let step = 0; step <= titles.length; step += 1) {
        const focused = await page.locator('.action-widget .monaco-list-row.focused').allInnerTexts();
        if (focused.some((text) => title.test(text))) {
          await page.keyboard.press('Enter');
          await rows.first().waitFor({ state: 'hidden' });
          return titles;
        }
        await page.keyboard.press('ArrowDown');
      }
      throw new Error(`no fix like ${title} among ${titles.join(' | ')}`);
    },
    picture: take,
  };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() =>
        typeof address === 'object' && address !== null
          ? resolve(address.port)
          : reject(new Error('no port')),
      );
    });
  });
}

async function end(server: ChildProcess): Promise<void> {
  if (server.exitCode !== null || server.signalCode !== null) {
    return;
  }
  const ended = new Promise((resolve) => server.once('exit', resolve));
  server.kill('SIGTERM');
  const timer = setTimeout(() => server.kill('SIGKILL'), 5000);
  await ended;
  clearTimeout(timer);
}
