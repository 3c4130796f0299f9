/**
 * What a person sees: the faulty example in the real workbench, from the first squiggle to a repaired manifest on disk.
 * Pictures of each step go to .test-output/editor.
 */
import { cpSync, existsSync, mkdtempSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { requireOracle } from '../oracle/oracle';
import { isReady, setUp } from './setup.mjs';
import { chromiumPath, startWorkbench, type Workbench } from './workbench';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const rule = 'lamp-unlimited';

let folder = '';
let missing = '';
let workbench: Workbench | undefined;

beforeAll(async () => {
  if (!existsSync(chromiumPath)) {
    missing = chromiumPath;
    return;
  }
  try {
    setUp();
  } catch (error) {
    missing = `the workbench (${String(error)})`;
  }
  if (!isReady()) {
    return;
  }
  // A space and a letter beyond ASCII: the path has to survive the way through URIs.
  folder = mkdtempSync(join(tmpdir(), 'wiretrue käfer '));
  cpSync(join(root, 'hardware-schemas/examples/harbour-faulty'), folder, { recursive: true });
  workbench = await startWorkbench(folder);
});

afterEach(async ({ task }) => {
  if (task.result?.state === 'fail' && workbench !== undefined) {
    await workbench.picture(`failed ${task.name.slice(0, 40)}`);
    console.log(workbench.log().slice(-8000));
  }
});

afterAll(async () => {
  await workbench?.stop();
  if (folder !== '') {
    rmSync(folder, { recursive: true, force: true });
  }
});

const text = (name: string) => readFileSync(join(folder, name), 'utf8');

/** Line and column, both from 1, of the first place of `word` behind `before`. */
function placeOf(name: string, before: string, word: string): readonly [line: number, column: number] {
  const whole = text(name);
  const at = whole.indexOf(word, whole.indexOf(before));
  const lines = whole.slice(0, at).split('\n');
  return [lines.length, (lines.at(-1)?.length ?? 0) + 2];
}

test('findings are underlined, a hover explains the pin, a fix repairs the manifest', async (context) => {
  requireOracle(context, missing, missing === '');
  if (workbench === undefined) {
    throw new Error('the workbench did not start');
  }
  const { page, open, squiggles, hoverAt, hover, fix, picture, problems, goTo } = workbench;

  await open('harbour-faulty.ino');
  await squiggles().first().waitFor({ timeout: 60_000 });
  await picture('1 sketch with findings');
  expect(await squiggles().count()).toBeGreaterThan(3);
  const finding = await hover(squiggles().first());
  await picture('2 hover on a finding');
  expect(finding).toContain('wiretrue(');
  const pin = await hoverAt(...placeOf('harbour-faulty.ino', 'void setup', 'beacon'));
  await picture('3 hover on a pin');
  expect(pin).toMatch(/D7/);

  // From the pin in the sketch to its wire in the manifest, which is not open yet.
  await page.keyboard.press('Escape');
  await page.keyboard.press('F12');
  await page.locator('.tab.active', { hasText: 'hardware.jsonc' }).waitFor();
  const [wireLine] = placeOf('hardware.jsonc', '"wires"', '"D7"');
  await page.locator('.statusbar', { hasText: `Ln ${wireLine}, ` }).waitFor();

  await open('hardware.jsonc');
  await squiggles().first().waitFor();
  await picture('4 manifest with findings');
  const before = await problems();
  const manifest = text('hardware.jsonc');
  const [line, column] = placeOf('hardware.jsonc', '"parts"', 'beacon');
  expect(await hoverAt(line, column)).toContain(rule);
  await goTo(line, column);
  const titles = await fix(/resistor.*beacon/, '5 fixes offered');
  expect(titles.length).toBeGreaterThan(0);
  await expect.poll(problems, { timeout: 20_000 }).toEqual({ ...before, errors: before.errors - 1 });
  await picture('6 after the fix');
  expect(await hoverAt(line, column)).not.toContain(rule);

  await page.keyboard.press('Control+S');
  await expect.poll(() => text('hardware.jsonc'), { timeout: 20_000 }).not.toBe(manifest);
  expect(text('hardware.jsonc')).toMatch(/\["D7", "R\d+", "beacon", "GND@right\.12"\]/);
  const comments = (whole: string) => whole.match(/^\s*\/\/.*$/gm);
  expect(comments(text('hardware.jsonc'))).toEqual(comments(manifest));
});

test('typing in the sketch is followed at once', async (context) => {
  requireOracle(context, missing, missing === '');
  if (workbench === undefined) {
    throw new Error('the workbench did not start');
  }
  const { page, open, problems, picture, goTo } = workbench;
  await open('harbour-faulty.ino');
  const before = await problems();
  const [line] = placeOf('harbour-faulty.ino', 'void setup', 'pinMode');
  await goTo(line, 1);
  await page.keyboard.type('  pinMode(77, OUTPUT);\n');
  await expect.poll(problems, { timeout: 20_000 }).not.toEqual(before);
  await picture('7 a pin the board does not have');
  for (let step = 0; step < 60 && (await problems()).errors !== before.errors; step += 1) {
    await page.keyboard.press('Control+Z');
  }
  await expect.poll(problems, { timeout: 20_000 }).toEqual(before);
});

test('a server that dies comes back; one that keeps dying is told, with ways on', async (context) => {
  requireOracle(context, missing, missing === '');
  if (workbench === undefined) {
    throw new Error('the workbench did not start');
  }
  const { page, open, squiggles, problems, picture, killServer, serverLog } = workbench;
  await open('harbour-faulty.ino');
  await squiggles().first().waitFor({ timeout: 60_000 });
  const before = await problems();
  const told = page.locator('.notification-toast', { hasText: 'keeps ending' });
  const starts = () => serverLog().match(/Checking with the (native|wasm) parser\./g)?.length;
  for (let death = 1; death <= 5; death += 1) {
    await expect.poll(starts, { timeout: 30_000 }).toBe(death);
    await killServer();
  }
  await told.getByRole('button', { name: 'Show log' }).waitFor({ timeout: 30_000 });
  await picture('8 the server keeps ending');
  await told.getByRole('button', { name: 'Restart' }).click();
  await told.waitFor({ state: 'hidden' });
  // After the first start and four after deaths that were borne, the one that was asked for.
  await expect.poll(starts, { timeout: 30_000 }).toBe(6);
  await expect.poll(problems, { timeout: 30_000 }).toEqual(before);
});

test('a server that cannot start is told, and the log is at hand', async (context) => {
  requireOracle(context, missing, missing === '');
  if (workbench === undefined) {
    throw new Error('the workbench did not start');
  }
  const { page, open, squiggles, problems, picture, command, extension } = workbench;
  await open('harbour-faulty.ino');
  await squiggles().first().waitFor({ timeout: 60_000 });
  const before = await problems();
  const program = join(extension, 'server/dist/server.js');
  renameSync(program, `${program}.away`);
  await command('Wiretrue: Restart the Language Server');
  const told = page.locator('.notification-toast', { hasText: 'could not start' });
  await told.getByRole('button', { name: 'Show log' }).waitFor({ timeout: 30_000 });
  await picture('9 the server cannot start');
  expect(await page.locator('.notification-toast').count()).toBe(1);
  await told.getByRole('button', { name: 'Show log' }).click();
  await page.locator('.panel .pane-body, .panel .output-view').first().waitFor();
  await picture('10 the log');
  renameSync(`${program}.away`, program);
  await command('Wiretrue: Restart the Language Server');
  await expect.poll(problems, { timeout: 30_000 }).toEqual(before);
});
