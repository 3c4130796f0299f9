/** The lines of the sketch that changed between two revisions, file by file. */
import { compareLines } from './compare-lines';
import type { Block, Source } from './paper';
import { linesOf } from './sketch-lines';

/** Files are paired by name; a main tab that was renamed with its folder by being the only one of its kind. */
export function sketchBlocks(before: readonly Source[], after: readonly Source[]): readonly Block[] {
  const lone = (list: readonly Source[], others: readonly Source[]) =>
    list.filter(({ file }) => file.endsWith('.ino') && !others.some((other) => other.file === file));
  const [oldLone, newLone] = [lone(before, after), lone(after, before)];
  const renamed = oldLone.length === 1 && newLone.length === 1 ? oldLone[0] : undefined;
  const partnerOf = (source: Source) =>
    before.find(({ file }) => file === source.file) ?? (source === newLone[0] ? renamed : undefined);
  const used = new Set(after.map((source) => partnerOf(source)));
  const files = [
    ...after.map((source) => ({ name: source.file, old: partnerOf(source)?.text, fresh: source.text })),
    ...before
      .filter((source) => !used.has(source))
      .map(({ file, text }) => ({ name: file, old: text, fresh: undefined })),
  ];
  return files.flatMap(({ name, old, fresh }): Block[] => {
    const lines = compareLines(
      old === undefined ? [] : linesOf(old),
      fresh === undefined ? [] : linesOf(fresh),
    );
    if (lines.length === 0) return [];
    const what = old === undefined ? ' (new file)' : fresh === undefined ? ' (file gone)' : '';
    return [
      { kind: 'heading', text: `${name}${what}` },
      { kind: 'lines', lines },
    ];
  });
}
