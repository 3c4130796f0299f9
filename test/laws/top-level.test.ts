/** The top level holds what a newcomer expects and nothing else. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { root } from '../fixture/bench';

const allowed = new Set([
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'README.md',
  'DEVELOPERS.md',
  'LICENSE',
  'CHANGELOG.md',
  'client',
  'server',
  'hardware-schemas',
  'test',
]);

it('has no other files and folders than those agreed, dot files aside', () => {
  const tracked = execFileSync('git', ['-C', root, 'ls-files'], { encoding: 'utf8' }).trim().split('\n');
  const top = [...new Set(tracked.map((file) => file.split('/')[0] ?? ''))];
  expect(top.length).toBeGreaterThan(8);
  expect(top.filter((name) => !allowed.has(name) && !name.startsWith('.'))).toEqual([]);
});

it('opens the README with one paragraph that states the job', () => {
  const [title, paragraph] = readFileSync(join(root, 'README.md'), 'utf8').split('\n\n');
  expect(title).toMatch(/^# Wiretrue$/);
  expect(paragraph).toMatch(/^Wiretrue keeps a firmware sketch true/);
});
