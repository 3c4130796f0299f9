/** Which sketches a path leads to, with and without a manifest, on real folders. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ceilingOf, createTextReader, findProjects, findSketches } from '../../server/src/files';

let base = '';
beforeEach(() => {
  base = mkdtempSync(join(tmpdir(), 'sketches-test-'));
});
afterEach(() => {
  rmSync(base, { recursive: true, force: true });
});

const WHOLE = 'void setup() {}\nvoid loop() {}\n';
const CORE = '#include <Arduino.h>\n';

function put(path: string, text = WHOLE): void {
  mkdirSync(dirname(join(base, path)), { recursive: true });
  writeFileSync(join(base, path), text);
}

function find(...paths: string[]) {
  const { sketches, problems, notes } = findSketches(paths, base, createTextReader());
  const named = sketches.map(({ folder, only }) => (only ?? folder).slice(base.length + 1));
  return { named, problems, notes };
}

test('every folder with a sketch in it is one, and what lies in its src is its own', () => {
  put('a/a.ino');
  put('a/src/main.cpp', CORE);
  put('a/examples/b/b.ino');
  put('c/other-name.ino');
  put('c/tab.ino', 'void help() {}');
  put('wired/hardware.jsonc', '{}');
  put('wired/src/main.cpp', '');
  put('node_modules/x/x.ino');
  put('.git/y/y.ino');
  symlinkSync(base, join(base, 'a/round'));
  expect(find('.')).toEqual({ named: ['a', 'a/examples/b', 'c', 'wired'], problems: [], notes: [] });
});

test('several whole tabs, none named like the folder, are a sketch each; a tab without setup() is said', () => {
  put('loose/one.ino');
  put('loose/two.ino', '// void setup() is below\n\n  void setup(void)\n{}');
  put('loose/half.ino', 'void help() {}');
  expect(find('loose')).toEqual({
    named: ['loose/one.ino', 'loose/two.ino'],
    problems: [],
    notes: [
      `${join(base, 'loose/half.ino')} defines no setup() and belongs to none of the 2 sketches beside it.`,
    ],
  });
  expect(find('loose/two.ino').named).toEqual(['loose/two.ino']);
  put('loose/loose.ino');
  expect(find('loose/two.ino', 'loose').named).toEqual(['loose']);
});

test('a plain project needs the core header, by whatever way, or a manifest', () => {
  put('beside/main.cpp', CORE);
  put('below/src/main.cpp', '#include "app.h"\n');
  put('below/include/app.h', CORE);
  put('desktop/main.cpp', '#include <iostream>\n');
  expect(find('.').named).toEqual(['below', 'beside']);
  expect(find('below/src/main.cpp', 'below/include/app.h').named).toEqual(['below']);
  // Somebody who names the file itself knows what it is.
  expect(find('desktop/main.cpp').named).toEqual(['desktop/main.cpp']);
});

test('a file below src stands for the sketch above it, for builds too', () => {
  put('a/hardware.jsonc', '{}');
  put('a/a.ino');
  put('a/src/deep/x.cpp', '');
  expect(find('a/src/deep/x.cpp', 'a/hardware.jsonc').named).toEqual(['a']);
  expect(findProjects(['a/src/deep/x.cpp'], base).folders).toEqual([join(base, 'a')]);
});

test('what leads to no sketch is said with the path as it was named', () => {
  put('empty/readme.txt', '');
  expect(find('gone', 'empty', 'empty/readme.txt').problems).toEqual([
    { path: 'gone', why: 'does not exist' },
    { path: 'empty', why: 'has no sketch in it or below it' },
    { path: 'empty/readme.txt', why: 'is neither a source file of a sketch nor a hardware.jsonc' },
  ]);
});

test('the ceiling is the outermost named folder that holds the sketch, else its own', () => {
  expect(ceilingOf('/w/a/b', ['/w/a', '/w', '/elsewhere'], '/w')).toBe('/w');
  expect(ceilingOf('/w/a/b', ['a/b/b.ino'], '/w')).toBe('/w/a/b');
  expect(ceilingOf('/w/abc', ['/w/a'], '/w')).toBe('/w/abc');
});
