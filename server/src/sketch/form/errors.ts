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
export function salvage(build: BuildContext, loose_: readonly PlainNode[], end: number): readonly Item[] {
  const nodes = callsIn(build, loose_);
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

/** Puts a call together whose closing bracket is missing: a name, a bracket, and what stands between commas. */
function callsIn(build: BuildContext, nodes: readonly PlainNode[]): readonly PlainNode[] {
  const result: PlainNode[] = [];
  const between = (from: PlainNode, to: PlainNode) => build.text.slice(from.end, to.start).trim();
  for (let at = 0; at < nodes.length; at += 1) {
    const name = nodes[at];
    const first = nodes[at + 1];
    if (name === undefined) continue;
    const opens = first !== undefined && name.type === 'identifier' && between(name, first) === '(';
    if (!opens || /statement|definition|declaration|declarator/.test(first.type)) {
      result.push(name);
      continue;
    }
    const list = [first];
    for (let next = nodes[at + 2]; next !== undefined; next = nodes[at + list.length + 1]) {
      const last = list[list.length - 1] ?? first;
      if (between(last, next) !== ',' || /statement|definition|declaration/.test(next.type)) break;
      list.push(next);
    }
    at += list.length;
    const end = list[list.length - 1]?.end ?? first.end;
    const callee = { ...name, field: 'function' };
    const given = { type: 'argument_list', field: 'arguments', start: first.start, end, children: list };
    result.push({
      type: 'call_expression',
      field: undefined,
      start: name.start,
      end,
      children: [callee, given],
    });
  }
  return result;
}
