/**
 * Bytes to text, the same way for the command line and the server, so that both see the same offsets. A file that is
 * not UTF-8 is still read: a wrong byte becomes U+FFFD and the rest of the file counts.
 */
import { readFileSync, statSync } from 'node:fs';

/** The largest file that is read, bytes. A sketch is some kilobytes; what is larger than this is no sketch. */
export const LARGEST_FILE = 20 * 1024 * 1024;

/** Something that could not be looked at, for people. */
export interface FileProblem {
  readonly path: string;
  /** A phrase that goes behind the path and a colon. */
  readonly why: string;
}

/** The text of a file, or why there is none, as a phrase that goes behind the file's name and a colon. */
export type TextRead =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly missing: boolean; readonly why: string };

/** Reads files and keeps their texts for as long as size and time of change stay the same. */
export interface TextReader {
  read(path: string): TextRead;
  /** Drops every kept text whose path is not in `paths`: a server calls it when a folder closes. */
  keepOnly(paths: ReadonlySet<string>): void;
}

/**
 * Decodes the bytes of a file. A byte order mark is taken off, as editors do, so offsets agree with an open document;
 * the mark of UTF-16 is honoured.
 */
export function decodeText(bytes: Uint8Array): string {
  const label =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? 'utf-16le'
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? 'utf-16be'
        : 'utf-8';
  return new TextDecoder(label).decode(bytes);
}

/** A reader that never throws: what goes wrong comes back in words. */
export function createTextReader(): TextReader {
  const kept = new Map<string, { readonly size: number; readonly changed: number; readonly text: string }>();
  return {
    read(path) {
      try {
        const stat = statSync(path);
        if (stat.isDirectory()) {
          return { ok: false, missing: false, why: 'is a folder, not a file' };
        }
        // A pipe or a device may never end.
        if (!stat.isFile()) {
          return { ok: false, missing: false, why: 'is not a regular file' };
        }
        if (stat.size > LARGEST_FILE) {
          kept.delete(path);
          return { ok: false, missing: false, why: tooLarge(stat.size) };
        }
        const before = kept.get(path);
        if (before !== undefined && before.size === stat.size && before.changed === stat.mtimeMs) {
          return { ok: true, text: before.text };
        }
        const text = decodeText(readFileSync(path));
        kept.set(path, { size: stat.size, changed: stat.mtimeMs, text });
        return { ok: true, text };
      } catch (error) {
        kept.delete(path);
        return { ok: false, missing: isMissing(error), why: explainFileError(error) };
      }
    },
    keepOnly(paths) {
      for (const path of kept.keys()) {
        if (!paths.has(path)) {
          kept.delete(path);
        }
      }
    },
  };
}

function tooLarge(bytes: number): string {
  const megabytes = (bytes / 1024 / 1024).toFixed(1);
  return `is ${megabytes} MB large; files over ${LARGEST_FILE / 1024 / 1024} MB are not read`;
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}

function isMissing(error: unknown): boolean {
  const code = codeOf(error);
  return code === 'ENOENT' || code === 'ENOTDIR';
}

/** An error of the file system as a phrase for people. */
export function explainFileError(error: unknown): string {
  switch (codeOf(error)) {
    case 'ENOENT':
    case 'ENOTDIR':
      return 'does not exist';
    case 'EACCES':
    case 'EPERM':
      return 'may not be read by this user';
    case 'ELOOP':
      return 'is a symbolic link that leads round in a circle';
    default:
      return `cannot be read (${error instanceof Error ? error.message : String(error)})`;
  }
}
