/**
 * The DC operating point of a network: what flows where, at the least, usually and at the most. This is the figure
 * behind every finding about currents and levels.
 */
import type { Element, Network, OperatingPoint } from '../base/circuit';
import { exactly, type Range } from '../base/range';
import { figureFaults } from './check-figures';
import { checkNetwork, type Piece } from './check-network';
import { coreElements, isInner, ownerOf } from './core';
import { exploreCorners } from './corners';
import { spreadLarge } from './large-piece';
import { compilePiece } from './linear-part';
import { hasRelays, solveRelays } from './relays';

/** Unknowns of one piece above which its tolerances are taken by slopes and its equations as a sparse matrix. */
const FULL_UNKNOWNS = 60;
/** Unknowns of one piece above which no sum is tried: it would hold up whoever waits for it. */
const MOST_UNKNOWNS = 20_000;
/** Volts that no build has; a figure beyond it comes from a current that the model lets nowhere go. */
const MOST_VOLTS = 1e6;

/**
 * Solves a network at the corners of its tolerances. Volts against `network.ground`, amperes with the signs that
 * OperatingPoint documents. Never throws and never gives NaN: what has no answer comes back with `converged` false,
 * all figures 0, and the reason in the notes.
 */
export function solveNetwork(network: Network): OperatingPoint {
  const faults = figureFaults(network.elements);
  if (faults.length > 0) {
    return withoutFigures(network, faults);
  }
  return hasRelays(network) ? solveRelays(network, solveStill) : solveStill(network);
}

/** Solves with every contact as it stands. */
function solveStill(network: Network): OperatingPoint {
  const elements = network.elements.flatMap(coreElements);
  const ends = network.elements.flatMap(endsOf);
  const checked = checkNetwork({ ground: network.ground, elements, nodes: ends });
  const notes = [...checked.faults, ...checked.notes];
  const nodes = new Map<string, Range>([[network.ground, exactly(0)]]);
  const amps = new Map<string, Range>();
  let converged = checked.faults.length === 0;
  for (const piece of checked.pieces) {
    converged = solvePiece(piece, network.ground, nodes, amps, notes) && converged;
  }
  if (!converged) {
    return withoutFigures(network, notes);
  }
  // Open contacts, and loads that nothing feeds, carry nothing; a node that only they touch is taken as 0 V.
  const named = (found: ReadonlyMap<string, Range>, wanted: Iterable<string>): Record<string, Range> =>
    Object.fromEntries([...wanted].map((name) => [name, found.get(name) ?? exactly(0)]));
  const shown = [...new Set([...nodes.keys(), ...ends])].filter((name) => !isInner(name));
  return { nodes: named(nodes, shown), amps: named(amps, ampsNames(network)), converged, notes };
}

function solvePiece(
  piece: Piece,
  ground: string,
  nodes: Map<string, Range>,
  amps: Map<string, Range>,
  notes: string[],
): boolean {
  const part = compilePiece(piece);
  const about = ownerOf(piece.elements[0]?.id ?? ground);
  if (part.size > MOST_UNKNOWNS) {
    notes.push(
      `The network around ${about} has ${part.size} unknowns; more than ${MOST_UNKNOWNS} are not solved.`,
    );
    return false;
  }
  const spread = part.size > FULL_UNKNOWNS ? spreadLarge(part) : exploreCorners(part);
  const slopes = spread?.complete === false && part.size <= FULL_UNKNOWNS ? spreadLarge(part) : undefined;
  if (spread === undefined || !spread.converged) {
    notes.push(
      `The sum for the network around ${about} has no solution${spread ? ' at some tolerances' : ''}.`,
    );
    return false;
  }
  if (!spread.complete) {
    notes.push(
      `The network around ${about} is large: not every combination of its tolerances was looked at.`,
    );
  }
  // Where not all corners could be looked at, the slopes at the typical point tell how far the rest may reach.
  const rangeAt = (at: number): Range => ({
    min: Math.min(spread.low[at] ?? 0, slopes?.low[at] ?? Number.POSITIVE_INFINITY),
    typ: spread.nominal[at] ?? 0,
    max: Math.max(spread.high[at] ?? 0, slopes?.high[at] ?? Number.NEGATIVE_INFINITY),
  });
  let held = true;
  part.nodes.forEach((node, index) => {
    const range = rangeAt(index);
    nodes.set(node, range);
    held &&= Math.max(-range.min, range.max) <= MOST_VOLTS;
  });
  piece.elements.forEach((element, index) => {
    amps.set(element.id, rangeAt(part.nodes.length + index));
  });
  if (!held) {
    notes.push(`A current around ${about} has no way back to ${ground}.`);
    return false;
  }
  return true;
}

/** The nodes of an element as the network names them. */
function endsOf(element: Element): readonly string[] {
  switch (element.type) {
    case 'resistor':
    case 'coil':
    case 'switch':
      return [element.a, element.b];
    case 'source':
      return [element.plus, element.minus];
    case 'current':
      return [element.from, element.to];
    case 'diode':
      return [element.anode, element.cathode];
    case 'transistor':
      return [element.collector, element.emitter, element.control];
  }
}

/** What an operating point tells the currents of. */
function ampsNames(network: Network): readonly string[] {
  return network.elements.flatMap((element) =>
    element.type === 'transistor' && element.gain !== undefined
      ? [element.id, `${element.id}:control`]
      : [element.id],
  );
}

function withoutFigures(network: Network, notes: readonly string[]): OperatingPoint {
  const zero = exactly(0);
  const names = new Set([network.ground, ...network.elements.flatMap(endsOf)]);
  return {
    nodes: Object.fromEntries([...names].map((name) => [name, zero])),
    amps: Object.fromEntries(ampsNames(network).map((name) => [name, zero])),
    converged: false,
    notes,
  };
}
