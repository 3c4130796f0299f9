/**
 * The pins and parts that a wire of the manifest names, whether or not it could be read. A wire with one bad end is
 * left out; what its other ends go to is then not to be called unwired.
 */
import { childOf, textOf } from '../json/node';
import { parseJson } from '../json/parse';

/** Names in the wire entries at these indices, without terminals and positions: `beacon`, `D7`. */
export function namesInWires(text: string, indices: ReadonlySet<number>): readonly string[] {
  if (indices.size === 0) return [];
  const { value: root } = parseJson('', text);
  const names = new Set<string>();
  for (const [index, wire] of (childOf(root, 'wires')?.items ?? []).entries()) {
    if (!indices.has(index)) continue;
    const ends = [childOf(wire, 'from'), childOf(wire, 'to'), ...(childOf(wire, 'path')?.items ?? [])];
    for (const end of ends) {
      const name = textOf(end);
      if (name !== undefined) names.add(name.replace(/[.@].*$/s, ''));
    }
  }
  return [...names];
}
