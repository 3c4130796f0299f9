/** One cursor walk over a tree gives the file's plain form; clean units of the walk before are taken over by their text. */
import type { Mended } from '../mend/mend';
import type { Cursor, Engine, SyntaxTree } from './engine';
import { lostIn } from './lost';
import { type FileForm, maximumDepth, type PlacedUnit, type PlainNode, type Unit } from './plain-tree';

const noChildren: readonly PlainNode[] = [];
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

/** Walks the children of one top-level node. */
class UnitWalk {
  cut = false;

  constructor(
    private readonly engine: Engine,
    private readonly cursor: Cursor,
    private readonly mended: Mended,
    private readonly base: number,
  ) {}

  /** The node under the cursor; undefined for one without use (punctuation, or a missing token of no width). */
  node(depth: number): PlainNode | undefined {
    const { engine, cursor } = this;
    const typeId = cursor.nodeTypeId;
    let named = engine.named[typeId];
    if (named === undefined) {
      named = cursor.nodeIsNamed;
      engine.named[typeId] = named;
    }
    const fieldId = cursor.currentFieldId;
    if (!named && !fieldId) return undefined;
    const start = this.mended.toSource(cursor.startIndex) - this.base;
    const end = this.mended.toSource(cursor.endIndex) - this.base;
    if (start === end) return undefined;
    let type = engine.typeNames[typeId];
    if (type === undefined) {
      type = cursor.nodeType;
      engine.typeNames[typeId] = type;
    }
    if (type === 'comment') return undefined;
    const children = depth < maximumDepth ? this.children(depth) : this.leaveOut();
    if (!fieldId) return { type, start, end, children };
    let field = engine.fieldNames[fieldId];
    if (field === undefined) {
      field = cursor.currentFieldName ?? '';
      engine.fieldNames[fieldId] = field;
    }
    return { type, field, start, end, children };
  }

  private children(depth: number): readonly PlainNode[] {
    const { cursor } = this;
    if (!cursor.gotoFirstChild()) return noChildren;
    const children: PlainNode[] = [];
    do {
      const child = this.node(depth + 1);
      if (child !== undefined) children.push(child);
    } while (cursor.gotoNextSibling());
    cursor.gotoParent();
    return children;
  }

  private leaveOut(): readonly PlainNode[] {
    this.cut = true;
    return noChildren;
  }
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
  const cursor = tree.walk();
  const faulty = cursor.currentNode.hasError;
  const add = (start: number, end: number, clean: boolean) => {
    const walk = new UnitWalk(engine, cursor, mended, start);
    const node = walk.node(0);
    if (node === undefined) return;
    const unitText = ownCopy(text.slice(start, end));
    const unit = { text: unitText, node, clean, cut: walk.cut, lost: clean ? none : lostIn(node, unitText) };
    if (clean) known.set(unit.text, unit);
    units.push({ start, unit });
  };
  if (faulty && cursor.nodeType === 'ERROR') {
    // Nothing of the text could be put together at the top: it is one unit, and its pieces are salvaged together.
    add(mended.toSource(cursor.startIndex), mended.toSource(cursor.endIndex), false);
  } else if (cursor.gotoFirstChild()) {
    do {
      const start = mended.toSource(cursor.startIndex);
      const end = mended.toSource(cursor.endIndex);
      if (start === end) continue;
      const isWhole = !faulty || !cursor.currentNode.hasError;
      const clean = isWhole && (mended.isWhole || !mended.touches(start, end));
      const old = clean ? known.get(text.slice(start, end)) : undefined;
      if (old !== undefined && engine.typeNames[cursor.nodeTypeId] === old.node.type) {
        units.push({ start, unit: old });
      } else add(start, end, clean);
    } while (cursor.gotoNextSibling());
  }
  cursor.delete?.();
  return mended.lost.length === 0 ? { units } : { units, lost: mended.lost };
}
