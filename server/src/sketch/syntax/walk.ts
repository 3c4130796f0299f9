/** One cursor walk over a tree gives the file's plain form; clean units of the walk before are taken over by their text. */
import type { Cursor, Engine, SyntaxTree } from './engine';
import { type FileForm, maximumDepth, type PlacedUnit, type PlainNode, type Unit } from './plain-tree';

const noChildren: readonly PlainNode[] = [];

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
    const start = cursor.startIndex - this.base;
    const end = cursor.endIndex - this.base;
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

/** The plain form of a tree over `text`. */
export function formOf(engine: Engine, tree: SyntaxTree, text: string, previous?: FileForm): FileForm {
  const known = unitsByText(previous);
  const units: PlacedUnit[] = [];
  const cursor = tree.walk();
  const faulty = cursor.currentNode.hasError;
  if (faulty && cursor.nodeType === 'ERROR') {
    // Nothing of the text could be put together at the top: it is one unit, and its pieces are salvaged together.
    const start = cursor.startIndex;
    const walk = new UnitWalk(engine, cursor, start);
    const node = walk.node(0);
    const unitText = ownCopy(text.slice(start, start + (node?.end ?? 0)));
    cursor.delete?.();
    return {
      units:
        node === undefined ? [] : [{ start, unit: { text: unitText, node, clean: false, cut: walk.cut } }],
    };
  }
  if (cursor.gotoFirstChild()) {
    do {
      const start = cursor.startIndex;
      const end = cursor.endIndex;
      if (start === end) continue;
      const clean = !faulty || !cursor.currentNode.hasError;
      const slice = text.slice(start, end);
      const old = clean ? known.get(slice) : undefined;
      const type = cursor.nodeTypeId;
      if (old !== undefined && engine.typeNames[type] === old.node.type) {
        units.push({ start, unit: old });
        continue;
      }
      const walk = new UnitWalk(engine, cursor, start);
      const node = walk.node(0);
      if (node === undefined) continue;
      const unit: Unit = { text: ownCopy(slice), node, clean, cut: walk.cut };
      if (clean) known.set(unit.text, unit);
      units.push({ start, unit });
    } while (cursor.gotoNextSibling());
  }
  cursor.delete?.();
  return { units };
}
