/**
 * Finds the board and part files of the library for the tests here, as text and as plain data, and walks the figures
 * in them: one place, so that a new file is tested without being listed anywhere.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export interface LibraryFile<T> {
  /** Name without ending: the id or kind it has to have. */
  readonly name: string;
  readonly file: string;
  readonly text: string;
  readonly data: T;
}

/** All files of one folder of the library, sorted by name. */
export function libraryFiles<T>(folder: 'boards' | 'parts'): readonly LibraryFile<T>[] {
  const path = join('hardware-schemas', folder);
  return readdirSync(path)
    .filter((entry) => entry.endsWith('.json'))
    .sort()
    .map((entry) => {
      const file = join(path, entry);
      const text = readFileSync(file, 'utf8');
      return { name: entry.slice(0, -'.json'.length), file, text, data: JSON.parse(text) as T };
    });
}

/** Something in a file that says where it comes from, or has to. */
export interface Holder {
  /** Keys from the top, joined by dots. */
  readonly path: string;
  readonly value: Readonly<Record<string, unknown>>;
}

/** Every object of a file, each with its path. */
export function objectsOf(data: unknown, path: readonly string[] = []): readonly Holder[] {
  if (typeof data !== 'object' || data === null) {
    return [];
  }
  const below = Object.entries(data).flatMap(([key, value]) => objectsOf(value, [...path, key]));
  return Array.isArray(data)
    ? below
    : [{ path: path.join('.'), value: data as Readonly<Record<string, unknown>> }, ...below];
}

/** True for a figure written out by its lowest, usual or highest value. */
export function isFigure({ value }: Holder): boolean {
  return ['min', 'typ', 'max'].some((key) => key in value);
}

/** True where a source that the file lists, or memory, is named. */
export function saysWhereFrom({ value }: Holder, sources: Readonly<Record<string, unknown>>): boolean {
  const named = typeof value.source === 'string' && Object.hasOwn(sources, value.source);
  const claims = value.source !== undefined;
  return claims ? named : value.fromMemory === true;
}
