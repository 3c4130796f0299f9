/** `check --watch`: what is checked again when something changes, and how it ends. */
import type { ChildProcess } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { CLEAN, LAMP, openWorkshop, type Workshop } from './program';

let shop: Workshop;
let running: ChildProcess | undefined;

beforeEach(() => {
  shop = openWorkshop();
});
afterEach(() => {
  running?.kill('SIGKILL');
  shop.clear();
});

/** The program's streams, and a way to wait for what it says. */
function watching(args: readonly string[]) {
  const process = shop.start(['check', '--watch', ...args]);
  running = process;
  let said = '';
  let wake = () => {};
  for (const stream of [process.stdout, process.stderr]) {
    stream?.setEncoding('utf8').on('data', (text: string) => {
      said += text;
      wake();
    });
  }
  const ended = new Promise<number | null>((resolve) => process.on('close', resolve));
  return {
    /** Waits until a text comes that fits; what was said until then is gone afterwards. */
    async until(pattern: RegExp): Promise<string> {
      for (;;) {
        const match = pattern.exec(said);
        if (match !== null) {
          const before = said.slice(0, match.index + match[0].length);
          said = said.slice(match.index + match[0].length);
          return before;
        }
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
      }
    },
    said: () => said,
    end(signal: NodeJS.Signals): Promise<number | null> {
      process.kill(signal);
      return ended;
    },
  };
}

test('a manifest that is mended, a sketch that comes, one that goes', async () => {
  shop.putBuild('a', LAMP);
  shop.putBuild('b', CLEAN);
  const watch = watching(['.']);
  expect(await watch.until(/watching 2 sketches; Ctrl\+C ends\n/)).toContain('1 error in 2 sketches');
  shop.put('a/hardware.jsonc', CLEAN);
  expect(await watch.until(/checked 1 of 2 again in \d+ ms\n/)).toContain('No findings in 2 sketches');
  shop.putBuild('deep/er/c', LAMP);
  // Folder, manifest and sketch come one after the other: the last look has all of them.
  expect(await watch.until(/1 error in 3 sketches\n/)).toContain('deep/er/c/hardware.jsonc:6:');
  rmSync(join(shop.base, 'deep'), { recursive: true });
  await watch.until(/No findings in 2 sketches\n/);
  expect(await watch.end('SIGINT')).toBe(0);
});

test('a header beside the sketch that others share, also when it comes only later', async () => {
  shop.putBuild(
    'one',
    CLEAN,
    '#include "../shared/pins.h"\nvoid setup() { pinMode(LAMP, OUTPUT); }\nvoid loop() { digitalWrite(LAMP, HIGH); }\n',
  );
  shop.putBuild('two', CLEAN);
  shop.put('shared/other.h', '');
  const watch = watching(['.']);
  await watch.until(/watching 2 sketches/);
  shop.put('shared/pins.h', '#define LAMP 8\n');
  expect(await watch.until(/checked 1 of 2 again/)).toContain('unwired-pin');
  shop.put('shared/pins.h', '#define LAMP 7\n');
  expect(await watch.until(/checked 1 of 2 again/)).toContain('No findings in 2 sketches');
  expect(await watch.end('SIGTERM')).toBe(0);
});

test('a report is written anew beside the sketch without waking the watch, and the exit code is the last one', async () => {
  shop.putBuild('a', CLEAN);
  const watch = watching(['--format', 'json', '-o', 'a/report.json', 'a']);
  await watch.until(/watching 1 sketch;/);
  const errors = () =>
    (JSON.parse(readFileSync(join(shop.base, 'a/report.json'), 'utf8')) as { summary: { errors: number } })
      .summary.errors;
  expect(existsSync(join(shop.base, 'a/report.json'))).toBe(true);
  expect(errors()).toBe(0);
  shop.put('a/hardware.jsonc', LAMP);
  await watch.until(/checked 1 of 1 again/);
  expect(errors()).toBe(1);
  // A change afterwards is the next thing that is heard of: nothing ran for the report's own sake.
  shop.put('a/a.ino', 'void setup() { pinMode(7, OUTPUT); }\nvoid loop() { digitalWrite(7, LOW); }\n');
  expect(await watch.until(/checked 1 of 1 again in \d+ ms\n/)).toMatch(
    /^ in \d+ ms\nwiretrue: checked 1 of 1 again/,
  );
  expect(await watch.end('SIGINT')).toBe(1);
});

test('what cannot be watched is refused', () => {
  shop.putBuild('a', CLEAN);
  expect(shop.wiretrue(['check', '--watch', '--format', 'json', 'a'])).toEqual({
    status: 2,
    stdout: '',
    stderr: 'wiretrue: --watch prints text; say with --output which file the json goes into.\n',
  });
  expect(shop.wiretrue(['check', '--watch', '--shard', '1/2', 'a']).status).toBe(2);
});
