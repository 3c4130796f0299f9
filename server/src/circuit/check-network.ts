/**
 * Looks a network over before any sum is done: loops that nothing limits, nodes that nothing ties to ground. What is
 * found here would otherwise come out as a singular matrix, which tells nobody anything.
 */
import { type CoreElement, isInner, nodesOf, ownerOf, tiedNodesOf } from './core';
import { makeUnion, type Union } from './union';

/** Resistances below this are counted as this, so that closed switches side by side share their current. Ohms. */
export const LEAST_OHMS = 1e-6;

/** A part of the network that touches the rest at ground only. */
export interface Piece {
  /** Without ground, in the order of first mention. */
  readonly nodes: readonly string[];
  readonly elements: readonly CoreElement[];
  /** One node of each group that nothing ties to ground: it is taken as 0 V. */
  readonly ties: readonly string[];
}

export interface CheckedNetwork {
  /** Whole sentences; where there is one, no sum can be done. */
  readonly faults: readonly string[];
  readonly notes: readonly string[];
  readonly pieces: readonly Piece[];
  /** Ids of current elements that nothing feeds: they carry no current and stand in no piece. */
  readonly idle: readonly string[];
}

/** A network of core elements. */
export interface CoreNetwork {
  readonly ground: string;
  readonly elements: readonly CoreElement[];
  /** Nodes to look at besides those of the elements: what only an open contact touches. */
  readonly nodes?: readonly string[];
}

export function checkNetwork(network: CoreNetwork): CheckedNetwork {
  const faults = loopFaults(network.elements);
  if (faults.length > 0) {
    return { faults, notes: [], pieces: [], idle: [] };
  }
  const notes: string[] = [];
  const tied = makeUnion();
  const joined = makeUnion();
  tied.find(network.ground);
  for (const element of network.elements) {
    const nodes = nodesOf(element);
    for (const node of nodes) {
      tied.find(node);
    }
    joinAll(tied, tiedNodesOf(element));
    joinAll(
      joined,
      nodes.filter((node) => node !== network.ground),
    );
  }
  for (const node of network.nodes ?? []) {
    tied.find(node);
  }
  const ties = floatingGroups(network.ground, tied).map((group) => {
    const first = group[0] ?? '';
    notes.push(
      `Nothing ties ${group.filter((node) => !isInner(node)).join(', ')} to ${network.ground}; voltages there are counted from ${ownerOf(first)}.`,
    );
    return first;
  });
  const idle: string[] = [];
  for (const element of network.elements) {
    if (element.type === 'current' && tied.find(element.from) !== tied.find(element.to)) {
      // A load behind an open switch: its current has no way back, so there is none.
      idle.push(element.id);
      notes.push(`Nothing feeds ${element.id}; it is counted without current.`);
    }
  }
  return { faults, notes, pieces: splitPieces(network, joined, ties, new Set(idle)), idle };
}

function joinAll(union: Union, names: readonly string[]): void {
  const [first] = names;
  for (const name of names) {
    union.join(first ?? name, name);
  }
}

function floatingGroups(ground: string, tied: Union): readonly (readonly string[])[] {
  return tied.groups().filter((group) => !group.includes(ground));
}

function splitPieces(
  network: CoreNetwork,
  joined: Union,
  ties: readonly string[],
  idle: ReadonlySet<string>,
): readonly Piece[] {
  const pieces = new Map<string, { nodes: Set<string>; elements: CoreElement[] }>();
  for (const element of network.elements) {
    const inner = nodesOf(element).filter((node) => node !== network.ground);
    const key = inner[0] === undefined ? '' : joined.find(inner[0]);
    // Elements with both ends on ground have nothing to do with anything and form a piece of their own.
    const name = inner.length === 0 ? 'ground' : `node ${key}`;
    const piece = pieces.get(name) ?? { nodes: new Set<string>(), elements: [] };
    pieces.set(name, piece);
    for (const node of inner) {
      piece.nodes.add(node);
    }
    if (!idle.has(element.id)) {
      piece.elements.push(element);
    }
  }
  return [...pieces.values()].map((piece) => ({
    nodes: [...piece.nodes],
    elements: piece.elements,
    ties: ties.filter((node) => piece.nodes.has(node)),
  }));
}

/** Sources that a loop without any resistance shorts, or sets against another source. */
function loopFaults(elements: readonly CoreElement[]): readonly string[] {
  const short = makeUnion();
  for (const element of elements) {
    if (element.type === 'resistor' && element.ohms.min < LEAST_OHMS) {
      short.join(element.a, element.b);
    }
  }
  const faults: string[] = [];
  for (const element of elements) {
    if (element.type === 'source' && element.ohms.min < LEAST_OHMS) {
      if (short.find(element.plus) === short.find(element.minus)) {
        faults.push(
          `Nothing limits the current of ${ownerOf(element.id)}: a loop without resistance closes over it.`,
        );
      }
      short.join(element.plus, element.minus);
    }
  }
  return faults;
}
