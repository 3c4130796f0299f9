/** What the builders of the form share: the unit's text, the list that directives go to, and small tree helpers. */
import type { PlainNode } from '../syntax/plain-tree';
import type { Directive, Item, Place } from './ast';

export class BuildContext {
  /** Directives of the function body or branch that is being built. */
  directives: Directive[] = [];
  /** Names declared in the function that is being built. */
  locals: string[] = [];

  /** How many function bodies are around. */
  bodies = 0;
  /**
   * Functions and classes that stand in a body. A local class is found by its name; a function there means that a
   * brace is missing above, and that it is meant to stand at the top.
   */
  readonly hoisted: Item[] = [];

  constructor(readonly text: string) {}

  textOf(node: PlainNode): string {
    return this.text.slice(node.start, node.end);
  }

  /** Runs `build` with a fresh list of directives, and returns both. */
  collecting<T>(build: () => T): { readonly value: T; readonly directives: readonly Directive[] } {
    const outer = this.directives;
    this.directives = [];
    const value = build();
    const { directives } = this;
    this.directives = outer;
    return { value, directives };
  }
}

export function field(node: PlainNode, name: string): PlainNode | undefined {
  for (const child of node.children) if (child.field === name) return child;
  return undefined;
}

export function fields(node: PlainNode, name: string): readonly PlainNode[] {
  return node.children.filter((child) => child.field === name);
}

export function childOfType(node: PlainNode, type: string): PlainNode | undefined {
  for (const child of node.children) if (child.type === type) return child;
  return undefined;
}

export function placeOf(node: PlainNode): Place {
  return { start: node.start, end: node.end };
}
