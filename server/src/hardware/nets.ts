/** Which ends are one conductor. Nets are never declared: they follow from the wires. */
import type { Board, End, Net, Part, Wire } from '../base/build';

type Terminal = Net['terminals'][number];

interface Group {
  readonly ends: Map<string, End>;
  /** Terminals that no wire reaches, joined inside their part to one that a wire does reach. */
  readonly inner: Terminal[];
  readonly wires: string[];
}

/**
 * Nets in the order in which their first wire is declared. Pins and terminals without a wire are on none, but for
 * terminals that their part joins to a wired one.
 */
export function deriveNets(board: Board, wires: readonly Wire[], parts: readonly Part[]): Net[] {
  const parents = new Map<string, string>();
  const find = (key: string): string => {
    let root = key;
    for (let up = parents.get(root); up !== undefined && up !== root; up = parents.get(root)) root = up;
    parents.set(key, root);
    return root;
  };
  for (const wire of wires) parents.set(find(keyOf(wire.ends[0])), find(keyOf(wire.ends[1])));
  const joins = parts.flatMap(({ id, joined = [] }) =>
    joined.map((group) => group.map((terminal) => ({ part: id, terminal }))),
  );
  for (const [first, ...others] of joins) {
    if (!first) continue;
    for (const other of others) parents.set(find(terminalKey(other)), find(terminalKey(first)));
  }

  const groups = new Map<string, Group>();
  for (const wire of wires) {
    const root = find(keyOf(wire.ends[0]));
    const group: Group = groups.get(root) ?? { ends: new Map(), inner: [], wires: [] };
    groups.set(root, group);
    group.wires.push(wire.id);
    for (const end of wire.ends) if (!group.ends.has(keyOf(end))) group.ends.set(keyOf(end), end);
  }
  for (const terminal of joins.flat()) {
    const key = terminalKey(terminal);
    const group = groups.get(find(key));
    if (group && !group.ends.has(key)) group.inner.push(terminal);
  }
  const rank = new Map(board.pins.map((pin, index) => [pin.id, pinRank(pin.type) * 10_000 + index]));
  return [...groups.values()].map((group) => makeNet(group, rank));
}

/** Ground and supplies name a net before the pins that happen to hang on them. */
function pinRank(type: string): number {
  if (type === 'ground') return 0;
  if (type === 'supply') return 1;
  return type === 'reset' ? 2 : 3;
}

function makeNet(group: Group, rank: ReadonlyMap<string, number>): Net {
  const ends = [...group.ends.values()];
  const pins = ends
    .flatMap((end) => (end.kind === 'pin' ? [end.pin] : []))
    .sort((a, b) => (rank.get(a) ?? 0) - (rank.get(b) ?? 0));
  const wired = ends.flatMap((end) =>
    end.kind === 'terminal' ? [{ part: end.part, terminal: end.terminal }] : [],
  );
  const terminals = [...wired, ...group.inner];
  const first = terminals[0];
  return {
    id: pins[0] ?? (first ? `${first.part}.${first.terminal}` : ''),
    pins,
    terminals,
    wires: group.wires,
  };
}

/** Pins of one id are one conductor, at whichever header position a wire sits. */
function keyOf(end: End): string {
  return end.kind === 'pin' ? `pin ${end.pin}` : terminalKey(end);
}

function terminalKey({ part, terminal }: Terminal): string {
  return `${JSON.stringify(part)}.${terminal}`;
}
