/** Which file of the sketch an `#include` means, and which files are read only where they are included. */
import type { Directive, Item } from '../form/ast';
import { itemsOfUnit } from '../form/program';
import type { FileForm, Unit } from '../syntax/plain-tree';

interface Named {
  readonly file: string;
  readonly form: FileForm;
}

/** `a/./b/../c.h` → `a/c.h` */
function straight(path: string): string {
  const parts: string[] = [];
  for (const part of path.split('/')) {
    if (part === '..' && parts.length > 0 && parts[parts.length - 1] !== '..') parts.pop();
    else if (part !== '.') parts.push(part);
  }
  return parts.join('/');
}

/** The file beside the including one, else the first whose path ends so. */
export function includedFile<T extends { readonly file: string }>(
  files: readonly T[],
  path: string,
  from: string,
): T | undefined {
  const folder = from.slice(0, from.lastIndexOf('/') + 1);
  const beside = straight(folder + path.replaceAll('\\', '/'));
  const bare = straight(path.replaceAll('\\', '/'));
  return (
    files.find(({ file }) => file === beside) ??
    files.find(({ file }) => file === bare || file.endsWith(`/${bare}`))
  );
}

const known = new WeakMap<Unit, readonly string[]>();

function pathsIn(unit: Unit): readonly string[] {
  const ready = known.get(unit);
  if (ready !== undefined) return ready;
  const paths: string[] = [];
  const look = (item: Item | Directive) => {
    if (item.kind === 'include') paths.push(item.path);
    else if (item.kind === 'conditional') for (const branch of item.branches) branch.items.forEach(look);
    else if (item.kind === 'function') item.directives.forEach(look);
    else if (item.kind === 'namespace') item.items.forEach(look);
  };
  itemsOfUnit(unit).forEach(look);
  known.set(unit, paths);
  return paths;
}

/** Files that the build does not compile by themselves: headers, and what another file includes. */
export function onlyIncluded<T extends Named>(files: readonly T[]): ReadonlySet<T> {
  const found = new Set<T>();
  if (files.length < 2) return found;
  for (const source of files) {
    if (/\.(h|hh|hpp|hxx|inc|ipp|tpp)$/i.test(source.file)) found.add(source);
    for (const { unit } of source.form.units) {
      for (const path of pathsIn(unit)) {
        const target = includedFile(files, path, source.file);
        if (target !== undefined && target !== source) found.add(target);
      }
    }
  }
  const [main] = files;
  if (main !== undefined) found.delete(main);
  return found;
}
