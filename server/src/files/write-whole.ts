/**
 * Writing a result so that nobody ever sees half of it: into a file beside the target first, which then takes its name.
 * A full disk or a cut run leaves what was there before.
 */
import {
  chmodSync,
  closeSync,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';

/** Whether it was written; else a phrase that goes behind the file's name and a colon. */
export type Written = { readonly ok: true } | { readonly ok: false; readonly why: string };

let count = 0;

/** Writes a text as UTF-8. Links are followed; pipes and devices are written straight, for they keep nothing. */
export function writeWhole(path: string, text: string): Written {
  try {
    const before = statSync(path, { throwIfNoEntry: false });
    if (before?.isDirectory()) {
      return { ok: false, why: 'is a folder; name a file' };
    }
    if (before !== undefined && !before.isFile()) {
      writeFileSync(path, text);
      return { ok: true };
    }
    replaceFile(before === undefined ? path : realpathSync(path), text, before?.mode);
    return { ok: true };
  } catch (error) {
    return { ok: false, why: explainWriteError(error) };
  }
}

function replaceFile(path: string, text: string, mode: number | undefined): void {
  count += 1;
  const draft = join(dirname(path), `.${basename(path).slice(0, 100)}.${process.pid}.${count}.tmp`);
  try {
    const file = openSync(draft, 'wx');
    try {
      const bytes = Buffer.from(text, 'utf8');
      for (let at = 0; at < bytes.length; ) {
        at += writeSync(file, bytes, at);
      }
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    if (mode !== undefined) {
      chmodSync(draft, mode & 0o777);
    }
    renameSync(draft, path);
  } catch (error) {
    rmSync(draft, { force: true });
    throw error;
  }
}

function explainWriteError(error: unknown): string {
  const code = error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return 'cannot be written: its folder does not exist';
    case 'EACCES':
    case 'EPERM':
      return 'may not be written by this user';
    case 'EROFS':
      return 'cannot be written: the disk is read-only';
    case 'ENOSPC':
    case 'EDQUOT':
      return 'cannot be written: the disk is full';
    case 'ENAMETOOLONG':
      return 'cannot be written: the name is too long';
    default:
      return `cannot be written (${error instanceof Error ? error.message : String(error)})`;
  }
}
