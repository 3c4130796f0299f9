/** Results in files: whole or not at all, and every reason in words. */
import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createProgress } from '../../server/src/cli/check/progress';
import { writeWhole } from '../../server/src/files';
import { CLEAN, LAMP, openWorkshop, type Workshop } from './program';

let shop: Workshop;
beforeEach(() => {
  shop = openWorkshop();
  shop.putBuild('lamp', LAMP);
});
afterEach(() => shop.clear());

const at = (path: string) => join(shop.base, path);

test('a file holds what would have been printed, and nothing is printed', () => {
  const printed = shop.wiretrue(['check', 'lamp']);
  const written = shop.wiretrue(['check', '-o', 'out.txt', 'lamp']);
  expect(written).toEqual({ status: printed.status, stdout: '', stderr: '' });
  expect(readFileSync(at('out.txt'), 'utf8')).toBe(printed.stdout);
  for (const args of [
    ['boards'],
    ['explain', 'lamp-unlimited'],
    ['bands', '4k7'],
    ['uses', 'lamp'],
    ['completion', 'bash'],
  ]) {
    expect(shop.wiretrue([...args, '-o', 'x']).stdout).toBe('');
    expect(readFileSync(at('x'), 'utf8')).toBe(shop.wiretrue(args).stdout);
  }
});

test('what cannot be written is said, with exit code 2, and leaves nothing behind', () => {
  mkdirSync(at('folder'));
  const why = (output: string) => {
    const { status, stdout, stderr } = shop.wiretrue(['check', '-o', output, 'lamp']);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    return stderr;
  };
  expect(why('folder')).toBe('wiretrue: folder: is a folder; name a file\n');
  expect(why('no/such/place.txt')).toBe(
    'wiretrue: no/such/place.txt: cannot be written: its folder does not exist\n',
  );
  expect(why('lamp/lamp.ino/x')).toBe(
    'wiretrue: lamp/lamp.ino/x: cannot be written: its folder does not exist\n',
  );
  expect(why('n'.repeat(300))).toMatch(/cannot be written: the name is too long\n$/);
  if (existsSync('/dev/full')) {
    expect(why('/dev/full')).toBe('wiretrue: /dev/full: cannot be written: the disk is full\n');
  }
  expect(readdirSync(shop.base).sort()).toEqual(['folder', 'lamp']);
  expect(readdirSync(at('folder'))).toEqual([]);
});

test('a folder that may not be written leaves the old file as it was', () => {
  mkdirSync(at('shut'));
  writeFileSync(at('shut/old.txt'), 'old');
  chmodSync(at('shut'), 0o500);
  const written = writeWhole(at('shut/old.txt'), 'new');
  if (process.getuid?.() === 0) {
    // Root may write everywhere.
    expect(written).toEqual({ ok: true });
  } else {
    expect(written).toEqual({ ok: false, why: 'may not be written by this user' });
    expect(readFileSync(at('shut/old.txt'), 'utf8')).toBe('old');
  }
  chmodSync(at('shut'), 0o700);
  expect(readdirSync(at('shut'))).toEqual(['old.txt']);
});

test('an old file is replaced with its rights kept; a link stays one', () => {
  writeFileSync(at('old.txt'), 'old');
  chmodSync(at('old.txt'), 0o640);
  symlinkSync('old.txt', at('link.txt'));
  expect(writeWhole(at('link.txt'), 'größer\n')).toEqual({ ok: true });
  expect(lstatSync(at('link.txt')).isSymbolicLink()).toBe(true);
  expect(readFileSync(at('old.txt'), 'utf8')).toBe('größer\n');
  expect(statSync(at('old.txt')).mode & 0o777).toBe(0o640);
  expect(readdirSync(shop.base).sort()).toEqual(['lamp', 'link.txt', 'old.txt']);
});

test('progress: nothing in the first half second, then at most ten times a second, and wiped in the end', () => {
  let now = 0;
  const said: string[] = [];
  const progress = createProgress(
    (text) => said.push(text),
    () => now,
  );
  for (let done = 1; done <= 1000; done += 1) {
    now += 2;
    progress.show(done, 1000);
  }
  progress.clear();
  expect(said[0]).toBe('\r250 of 1000 sketches checked');
  expect(said.length).toBeLessThanOrEqual(17);
  expect(said.at(-1)).toMatch(/^\r +\r$/);
  const quick: string[] = [];
  const short = createProgress(
    (text) => quick.push(text),
    () => 0,
  );
  short.show(1, 2);
  short.clear();
  expect(quick).toEqual([]);
});

test('a manifest of a newer format is an error with a way out, and the rest is still checked', () => {
  shop.putBuild('newer', CLEAN.replace('"format": 1', '"format": 2'));
  const { status, stdout } = shop.wiretrue(['check', 'newer']);
  expect(status).toBe(1);
  expect(stdout).toMatch(
    /newer\/hardware\.jsonc:2:\d+ error manifest-fault\n {2}This manifest has format 2; .* Update the program\./,
  );
});
