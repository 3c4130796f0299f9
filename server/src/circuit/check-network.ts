/**
 * Looks a network over before any sum is done: figures that are none, loops that nothing limits, nodes that nothing
 * ties to ground. What is found here would otherwise come out as a singular matrix, which tells nobody anything.
 */
import type { Element, Network } from '../base/circuit';
import { exactly, type Range } from '../base/range';
import { makeUnion, type Union } from './union';

/** Resistances below this are counted as this, so that closed switches side by side share their current. Ohms. */
export const LEAST_OHMS = 1e-6;

/** A part of the network that touches the rest at ground only. */
export interface Piece {
  /** Without ground, in the order of first mention. */
  readonly nodes: readonly string[];
  readonly elements: readonly Element[];
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

/** The two nodes of an element. */
export function endsOf(element: Element): readonly [string, string] {
  switch (element.type) {
    case 'resistor':
      return [element.a, element.b];
    case 'source':
      return [element.plus, element.minus];
    case 'current':
      return [element.from, element.to];
    case 'diode':
      return [element.anode, element.cathode];
  }
}

export function checkNetwork(network: Network): CheckedNetwork {
  const faults = [...figureFaults(network.elements), ...loopFaults(network.elements)];
  if (faults.length > 0) {
    return { faults, notes: [], pieces: [], idle: [] };
  }
  const notes: string[] = [];
  const tied = makeUnion();
  const joined = makeUnion();
  tied.find(network.ground);
  for (const element of network.elements) {
    const [a, b] = endsOf(element);
    // A current element pushes but does not hold: it ties nothing down.
    tied.find(a);
    tied.find(b);
    if (element.type !== 'current') {
      tied.join(a, b);
    }
    if (a !== network.ground && b !== network.ground) {
      joined.join(a, b);
    }
  }
  const ties = floatingGroups(network.ground, tied).map((group) => {
    const first = group[0] ?? '';
    notes.push(
      `Nothing ties ${group.join(', ')} to ${network.ground}; voltages there are counted from ${first}.`,
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

function floatingGroups(ground: string, tied: Union): readonly (readonly string[])[] {
  return tied.groups().filter((group) => !group.includes(ground));
}

function splitPieces(
  network: Network,
  joined: Union,
  ties: readonly string[],
  idle: ReadonlySet<string>,
): readonly Piece[] {
  const pieces = new Map<string, { nodes: Set<string>; elements: Element[] }>();
  for (const element of network.elements) {
    const inner = endsOf(element).filter((node) => node !== network.ground);
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

function figureFaults(elements: readonly Element[]): readonly string[] {
  const faults: string[] = [];
  const ids = new Set<string>();
  for (const element of elements) {
    if (ids.has(element.id)) {
      faults.push(`The name ${element.id} is used for two elements.`);
    }
    ids.add(element.id);
    for (const [name, range, sign] of figuresOf(element)) {
      if (![range.min, range.typ, range.max].every(Number.isFinite)) {
        faults.push(`The ${name} of ${element.id} is not a number.`);
      } else if (!(range.min <= range.typ && range.typ <= range.max)) {
        faults.push(`The ${name} of ${element.id} has its limits in the wrong order.`);
      } else if (sign === 'not negative' ? range.min < 0 : sign === 'positive' && range.min <= 0) {
        faults.push(`The ${name} of ${element.id} cannot be ${range.min < 0 ? 'negative' : 'zero'}.`);
      }
    }
  }
  return faults;
}

function figuresOf(
  element: Element,
): readonly (readonly [string, Range, 'any' | 'not negative' | 'positive'])[] {
  switch (element.type) {
    case 'resistor':
      return [['resistance', element.ohms, 'not negative']];
    case 'source':
      return [
        ['voltage', element.volts, 'any'],
        ['source resistance', element.ohms, 'not negative'],
      ];
    case 'current':
      return [['current', element.amps, 'any']];
    case 'diode':
      return [
        ['forward voltage', element.volts, 'positive'],
        ['test current', exactly(element.atAmps), 'positive'],
      ];
  }
}

/** Sources that a loop without any resistance shorts, or sets against another source. */
function loopFaults(elements: readonly Element[]): readonly string[] {
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
        faults.push(`Nothing limits the current of ${element.id}: a loop without resistance closes over it.`);
      }
      short.join(element.plus, element.minus);
    }
  }
  return faults;
}
