/**
 * What can be saved out of a place the grammar did not understand: a half-typed text must keep the pin uses that its
 * whole parts have. The place itself is never reported; that is the compiler's to do.
 */
import type { PlainNode } from '../syntax/plain-tree';
import type { Item } from './ast';
import type { BuildContext } from './context';
import { looseFunction } from './functions';
import { itemsOf } from './items';

/** Items out of the loose children of an error; a function's head takes what follows it as its body. */
export function salvage(build: BuildContext, nodes: readonly PlainNode[], end: number): readonly Item[] {
  const items: Item[] = [];
  let head: PlainNode | undefined;
  let loose: PlainNode[] = [];
  const close = () => {
    const start = head === undefined ? -1 : openingBrace(build, head, loose[0]?.start ?? end);
    const last = loose[loose.length - 1]?.end ?? head?.end ?? end;
    const built =
      head === undefined || start < 0 ? undefined : looseFunction(build, head, loose, start, last);
    items.push(...(built === undefined ? itemsOf(build, loose) : [built]));
    head = undefined;
    loose = [];
  };
  for (const node of nodes) {
    if (node.type === 'function_declarator' && openingBrace(build, node, end) >= 0) {
      close();
      head = node;
    } else if (
      node.type === 'function_definition' ||
      /^preproc_(def|function_def|include|call)$/.test(node.type)
    ) {
      // A whole definition cannot stand inside the body that broke.
      if (node.type === 'function_definition') close();
      loose.push(node);
      if (node.type === 'function_definition') close();
    } else loose.push(node);
  }
  close();
  return items;
}

/** Offset behind the brace that follows a function's head; -1 where something else follows. */
function openingBrace(build: BuildContext, head: PlainNode, limit: number): number {
  const between = build.text.slice(head.end, Math.max(limit, head.end));
  const match = /^(?:\s|\/\/[^\n]*|\/\*[\s\S]*?\*\/)*\{/.exec(between);
  return match === null ? -1 : head.end + match[0].length;
}
