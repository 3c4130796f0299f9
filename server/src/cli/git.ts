/**
 * Files as they were at a revision, asked of git itself. It is started without a shell, and what somebody typed reaches it
 * only as a revision to look up: everything after that goes by the hash that came back.
 */
import { spawnSync } from 'node:child_process';
import { relative, resolve } from 'node:path';
import {
  arrangeSketch,
  compareText,
  countsInSketch,
  decodeText,
  isBelow,
  LARGEST_FILE,
  MANIFEST_NAME,
  slashed,
} from '../files';
import type { BuildFiles } from './open-build';
import { Refusal } from './spec';

/** What git printed; or undefined where it ended otherwise. @throws Refusal where there is no git. */
function git(folder: string, args: readonly string[]): Buffer | undefined {
  const { status, stdout, error } = spawnSync('git', ['-C', folder, ...args], {
    maxBuffer: 4 * LARGEST_FILE,
    stdio: ['ignore', 'pipe', 'ignore'],
    // Neither a pager nor a question for a password.
    env: { ...process.env, GIT_PAGER: 'cat', GIT_TERMINAL_PROMPT: '0', GIT_OPTIONAL_LOCKS: '0' },
  });
  if (error !== undefined && 'code' in error && error.code === 'ENOENT') {
    throw new Refusal('The program git, which keeps the revisions, is not installed.');
  }
  return error === undefined && status === 0 ? stdout : undefined;
}

/** The hash of the commit that a revision means in the repository around a folder; undefined where there is none. */
export function findRevision(folder: string, revision: string): string | undefined {
  if (revision.startsWith('-') || revision.includes('\0')) {
    return undefined;
  }
  const found = git(folder, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`]);
  const hash = found?.toString('ascii').trim();
  return hash !== undefined && /^[0-9a-f]{40,64}$/.test(hash) ? hash : undefined;
}

/**
 * The build of a folder as it was.
 * @param folder Absolute, forward slashes; it has to be there today, what lies in it may have been another.
 * @throws Refusal in words where there is no repository, no such revision or no manifest in it.
 */
export function readRevision(folder: string, revision: string): BuildFiles {
  const top = git(folder, ['rev-parse', '--show-toplevel'])
    ?.toString('utf8')
    .replace(/\r?\n$/, '');
  if (top === undefined || top === '') {
    throw new Refusal(`${folder} lies in no git repository, so it has no revision "${revision}".`);
  }
  const hash = findRevision(folder, revision);
  if (hash === undefined) {
    throw new Refusal(`The repository of ${folder} has no revision "${revision}".`);
  }
  // git says where links lead; the folder is looked for by the way from its own top.
  const inside =
    git(folder, ['rev-parse', '--show-prefix'])
      ?.toString('utf8')
      .replace(/\r?\n$/, '') ?? '';
  const root = slashed(resolve(folder, relative(inside === '' ? '.' : inside, '.')));
  const listed = listFiles(root, hash, inside, folder);
  const texts = new Map<string, string | undefined>();
  const readText = (path: string): string | undefined => {
    const file = slashed(resolve(path));
    if (!isBelow(root, file)) {
      return undefined;
    }
    if (!texts.has(file)) {
      const bytes = git(folder, [
        'cat-file',
        'blob',
        `${hash}:${file.slice(root.length).replace(/^\//, '')}`,
      ]);
      texts.set(file, bytes === undefined || bytes.length > LARGEST_FILE ? undefined : decodeText(bytes));
    }
    return texts.get(file);
  };
  const file = `${folder}/${MANIFEST_NAME}`;
  const text = readText(file);
  if (text === undefined) {
    throw new Refusal(`At the revision "${revision}" ${folder} had no ${MANIFEST_NAME}.`);
  }
  // Headers above the sketch are read as well: the repository is one project.
  const { sources, notes } = arrangeSketch({ folder, ceiling: root }, listed, readText);
  return { title: revision, folder, manifest: { file, text }, sources, notes, readText };
}

/** The source files of the sketch at that revision, absolute. */
function listFiles(root: string, hash: string, inside: string, folder: string): readonly string[] {
  const listing = git(root, [
    'ls-tree',
    '-r',
    '-z',
    '--name-only',
    '--full-tree',
    hash,
    ...(inside === '' ? [] : ['--', inside]),
  ]);
  const names = (listing?.toString('utf8') ?? '').split('\0').filter((name) => name !== '');
  return names
    .map((name) => slashed(resolve(root, name)))
    .filter((path) => isBelow(folder, path) && countsInSketch(folder, path))
    .sort(compareText);
}
