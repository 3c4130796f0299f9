/** One walk over a tree gives the file's plain form; clean units of the walk before are taken over by their text. */
import type { Mended } from '../mend/mend';
import type { Engine, SyntaxTree } from './engine';
import { lostIn } from './lost';
import type { FileForm, PlacedUnit, Unit } from './plain-tree';
import type { TopNode } from './tree-reader';

const none: readonly string[] = [];

/** Units of a form that may be taken over, by their text. */
function unitsByText(form: FileForm | undefined): Map<string, Unit> {
  const units = new Map<string, Unit>();
  for (const { unit } of form?.units ?? []) if (unit.clean) units.set(unit.text, unit);
  return units;
}

/** A copy that does not keep the whole file's text alive, as a slice of it would. */
function ownCopy(text: string): string {
  return ` ${text}`.slice(1);
}

/** The plain form of a tree over the mended text; all offsets are those of `text`. */
export function formOf(
  engine: Engine,
  tree: SyntaxTree,
  text: string,
  mended: Mended,
  previous?: FileForm,
): FileForm {
  const known = unitsByText(previous);
  const units: PlacedUnit[] = [];
  const add = (top: TopNode, start: number, end: number, clean: boolean) => {
    const { node, cut } = top.plain(mended, start);
    if (node === undefined) return;
    const unitText = ownCopy(text.slice(start, end));
    const unit = { text: unitText, node, clean, cut, lost: clean ? none : lostIn(node, unitText) };
    if (clean) known.set(unit.text, unit);
    units.push({ start, unit });
  };
  engine.reader.visit(tree, (top) => {
    const start = mended.toSource(top.start);
    const end = mended.toSource(top.end);
    if (start === end) return;
    // Where nothing of the text could be put together, the root is one unit, and its pieces are salvaged together.
    const clean = (mended.isWhole || !mended.touches(start, end)) && !top.faulty;
    const old = clean ? known.get(text.slice(start, end)) : undefined;
    if (old !== undefined && top.type === old.node.type) units.push({ start, unit: old });
    else add(top, start, end, clean);
  });
  return mended.lost.length === 0 ? { units } : { units, lost: mended.lost };
}
