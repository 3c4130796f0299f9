/**
 * The real workbench in a real browser: a VS Code server on a free local port with the packed extension installed, and
 * Chromium on it. Everything is done as a person does it: keys, mouse, eyes on what the page shows.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { type Browser, chromium, type Locator, type Page } from 'playwright-core';
import { environment, installPackage, killServer, places, root, serverLog } from './installed';
import { serverEntry } from './setup.mjs';

const pictures = join(root, '.test-output/editor');

export const chromiumPath = '/usr/bin/chromium';

export interface Workbench {
  readonly page: Page;
  /** Folder of the installed extension. */
  readonly extension: string;
  /** Runs a command by its title, from the palette. */
  command(title: string): Promise<void>;
  /** Opens a file of the folder by name and waits for its text. */
  open(name: string): Promise<void>;
  /** Underlined places of the active editor: errors and warnings. */
  squiggles(): Locator;
  /** Rests the mouse on the middle of a place and waits for what the editor says there. */
  hover(place: Locator): Promise<string>;
  /** The same for a line and a column, both counted from 1. Says '' where the editor says nothing. */
  hoverAt(line: number, column: number): Promise<string>;
  /** What the status bar counts. */
  problems(): Promise<{ readonly errors: number; readonly warnings: number }>;
  /** Ends the language server's process the hard way and waits until it is gone. */
  killServer(): Promise<void>;
  /** What the language server has logged in this sitting. */
  serverLog(): string;
  /** Puts the cursor on a line, counted from 1, and at a column. */
  goTo(line: number, column: number): Promise<void>;
  /** Opens the quick fixes at the cursor, takes the one whose title matches, and gives all titles. */
  fix(title: RegExp, picture: string): Promise<readonly string[]>;
  picture(name: string): Promise<void>;
  /** Everything the workbench's server and the page's console have said. */
  log(): string;
  stop(): Promise<void>;
}

/** Installs the package and opens `folder` in the workbench. */
export async function startWorkbench(folder: string): Promise<Workbench> {
  const { home, extension, said: installed } = installPackage();
  const said: string[] = [installed];
  const port = await freePort();
  const server = spawn(
    process.execPath,
    [
      serverEntry,
      ...places(home),
      ...['--auth', 'none', '--bind-addr', `127.0.0.1:${port}`],
      ...['--disable-telemetry', '--disable-update-check', '--disable-workspace-trust'],
    ],
    { env: environment(home), stdio: ['ignore', 'pipe', 'pipe'] },
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
    const log = () => `${said.join('')}\n${serverLog(home)}`;
    const kill = () => killServer(home);
    return { page, extension, stop, log, killServer: kill, serverLog: () => serverLog(home), ...hands(page) };
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
    // What has just appeared may still be sliding in.
    await page.waitForTimeout(400);
    await page.screenshot({ path: join(pictures, `${name}.png`) });
  };
  const goTo = async (line: number, column: number) => {
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+G');
    await page.locator('.quick-input-widget input').first().fill(`:${line}:${column}`);
    await page.keyboard.press('Enter');
    await page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
  };
  const editor = page.locator('.editor-group-container.active .monaco-editor').first();
  return {
    async open(name: string) {
      await page.keyboard.press('Control+P');
      await page.locator('.quick-input-widget input').first().fill(name);
      await page.locator('.quick-input-list .monaco-list-row', { hasText: name }).first().click();
      await page.locator('.tab.active', { hasText: name }).waitFor();
      await editor.locator('.view-line').first().waitFor();
      // Where the list was, a tab's tooltip may come up under the mouse.
      await page.mouse.move(700, 890);
    },
    async command(title: string) {
      await page.keyboard.press('F1');
      await page.locator('.quick-input-widget input').first().fill(`>${title}`);
      await page.locator('.quick-input-list .monaco-list-row', { hasText: title }).first().click();
      await page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
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
    async hoverAt(line: number, column: number) {
      await goTo(line, column);
      await page.keyboard.press('Control+K');
      await page.keyboard.press('Control+I');
      const shown = page.locator('.monaco-resizable-hover .monaco-hover');
      const text = await shown.waitFor({ timeout: 5000 }).then(
        async () => {
          await shown.getByText('Loading...').waitFor({ state: 'hidden' });
          return (await shown.allInnerTexts()).join('\n').trim();
        },
        () => '',
      );
      return text;
    },
    async problems() {
      const label = (await page.locator('[id="status.problems"] a').getAttribute('aria-label')) ?? '';
      const count = (word: string) => Number(new RegExp(`${word}: (\\d+)`).exec(label)?.[1] ?? 0);
      return { errors: count('Errors'), warnings: count('Warnings') };
    },
    goTo,
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
