/** What a place that the grammar did not understand may have held: names that read as calls and became none. */
import type { PlainNode } from './plain-tree';

const names = /"(?:\\.|[^"\\\n])*"|\/\/[^\n]*|\/\*[\s\S]*?\*\/|([A-Za-z_]\w*)\s*\(/g;
const words = /^(?:if|for|while|switch|return|sizeof|__\w+)$/;

/** Names followed by a round bracket in the errors of a tree, without those that a call or a function took. */
export function lostIn(node: PlainNode, text: string): readonly string[] {
  const lost: string[] = [];
  const taken = new Set<number>();
  const take = (at: PlainNode) => {
    const callee = at.children.find(({ field }) => field === 'function' || field === 'declarator');
    if (callee !== undefined && /^(call_expression|function_declarator)$/.test(at.type))
      taken.add(callee.end);
    for (const child of at.children) take(child);
  };
  const search = (at: PlainNode) => {
    if (at.type !== 'ERROR') {
      for (const child of at.children) search(child);
      return;
    }
    take(at);
    for (const match of text.slice(at.start, at.end).matchAll(names)) {
      const [, name] = match;
      if (name === undefined || words.test(name)) continue;
      if (!taken.has(at.start + match.index + name.length)) lost.push(name);
    }
  };
  search(node);
  return lost;
}
