/** The clean builds on disk: what every seed starts from, and what must stay without an error or a warning. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export type Files = Readonly<Record<string, string>>;

export interface CleanBuild {
  /** The folder's name. */
  readonly name: string;
  /** Texts by file name; `hardware.jsonc` is among them. */
  readonly files: Files;
}

export const MANIFEST = 'hardware.jsonc';

/** @param root The folder of the project's package.json. */
export function loadBuilds(root: string): readonly CleanBuild[] {
  const folder = join(root, 'test/oracle/rules/builds');
  return readdirSync(folder)
    .sort()
    .map((name) => ({ name, files: readFolder(join(folder, name)) }));
}

function readFolder(folder: string): Files {
  return Object.fromEntries(
    readdirSync(folder)
      .sort()
      .map((file) => [file, readFileSync(join(folder, file), 'utf8')]),
  );
}

/** The sketch that is named as its folder: the file that an environment compiles first. */
export function mainSketch({ name, files }: CleanBuild): string {
  const file = `${name}.ino`;
  if (files[file] === undefined) throw new Error(`${name} has no ${file}`);
  return file;
}
