/** Reads a tree through its cursor, node by node: the way that every build of the parser has. */
import type { SyntaxTree } from './engine';
import { maximumDepth, type PlainNode } from './plain-tree';
import type { Placing, TopNode, TreeReader } from './tree-reader';

/** A cursor over a tree. Every member is a call across the border. */
export interface Cursor {
  readonly nodeTypeId: number;
  readonly nodeType: string;
  readonly nodeIsNamed: boolean;
  readonly currentFieldId: number;
  readonly currentFieldName: string | null | undefined;
  readonly startIndex: number;
  readonly endIndex: number;
  readonly currentNode: { readonly hasError: boolean };
  gotoFirstChild(): boolean;
  gotoNextSibling(): boolean;
  gotoParent(): boolean;
  delete?(): void;
}

const noChildren: readonly PlainNode[] = [];

/** Tokens that the grammar never gives children, by name: the cursor need not try. */
const leaves = new Set([
  'identifier',
  'field_identifier',
  'type_identifier',
  'namespace_identifier',
  'statement_identifier',
  'number_literal',
  'primitive_type',
  'string_content',
  'true',
  'false',
]);

/** Names of the grammar by number, filled as they are met. */
class Names {
  readonly types: (string | undefined)[] = [];
  readonly named: (boolean | undefined)[] = [];
  readonly leaf: (boolean | undefined)[] = [];
  readonly fields: (string | undefined)[] = [];

  typeAt(cursor: Cursor): string {
    const id = cursor.nodeTypeId;
    let type = this.types[id];
    if (type === undefined) {
      type = cursor.nodeType;
      this.types[id] = type;
    }
    return type;
  }
}

class Walk {
  cut = false;

  constructor(
    private readonly names: Names,
    private readonly cursor: Cursor,
    private readonly placing: Placing,
    private readonly base: number,
  ) {}

  /** The node under the cursor; undefined for one without use (punctuation, or a missing token of no width). */
  node(depth: number): PlainNode | undefined {
    const { names, cursor, placing } = this;
    const id = cursor.nodeTypeId;
    let named = names.named[id];
    if (named === undefined) {
      named = cursor.nodeIsNamed;
      names.named[id] = named;
      names.leaf[id] = leaves.has(names.typeAt(cursor));
    }
    const fieldId = cursor.currentFieldId;
    if (!named && !fieldId) return undefined;
    const start = placing.toSource(cursor.startIndex) - this.base;
    const end = placing.toSource(cursor.endIndex) - this.base;
    if (start === end) return undefined;
    const type = names.types[id] ?? names.typeAt(cursor);
    if (type === 'comment') return undefined;
    let field: string | undefined;
    if (fieldId) {
      field = names.fields[fieldId];
      if (field === undefined) {
        field = cursor.currentFieldName ?? '';
        names.fields[fieldId] = field;
      }
    }
    const children = names.leaf[id] === true ? noChildren : this.children(depth);
    return { type, field, start, end, children };
  }

  private children(depth: number): readonly PlainNode[] {
    const { cursor } = this;
    if (depth >= maximumDepth) {
      this.cut = true;
      return noChildren;
    }
    if (!cursor.gotoFirstChild()) return noChildren;
    const children: PlainNode[] = [];
    do {
      const child = this.node(depth + 1);
      if (child !== undefined) children.push(child);
    } while (cursor.gotoNextSibling());
    cursor.gotoParent();
    return children;
  }
}

class CursorTop implements TopNode {
  constructor(
    private readonly names: Names,
    private readonly cursor: Cursor,
    /** Something in the whole tree is faulty. */
    private readonly rootFaulty: boolean,
  ) {}

  get type(): string {
    return this.names.typeAt(this.cursor);
  }

  get start(): number {
    return this.cursor.startIndex;
  }

  get end(): number {
    return this.cursor.endIndex;
  }

  get faulty(): boolean {
    return this.rootFaulty && this.cursor.currentNode.hasError;
  }

  plain(placing: Placing, base: number) {
    const walk = new Walk(this.names, this.cursor, placing, base);
    const node = walk.node(0);
    return { node, cut: walk.cut };
  }
}

export class CursorReader implements TreeReader {
  private readonly names = new Names();

  visit(tree: SyntaxTree, visit: (top: TopNode) => void): void {
    const cursor = tree.walk();
    const faulty = cursor.currentNode.hasError;
    const top = new CursorTop(this.names, cursor, faulty);
    if (faulty && top.type === 'ERROR') visit(top);
    else if (cursor.gotoFirstChild()) {
      do visit(top);
      while (cursor.gotoNextSibling());
    }
    cursor.delete?.();
  }
}
